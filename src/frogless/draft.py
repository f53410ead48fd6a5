"""The pipeline, once: from the files of a body, a swatch and a design to a proven pattern."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

from frogless import files
from frogless.body.estimate import complete
from frogless.body.load import load_body
from frogless.body.measurements import Body, known_measurements
from frogless.body.plausible import question
from frogless.design import formulas
from frogless.design.document import Design, named_formulas
from frogless.errors import InputError, Place
from frogless.plan import basis as basis_
from frogless.plan.basis import Basis
from frogless.plan.make import plan
from frogless.plan.model import Plan
from frogless.stitches.load import dictionary
from frogless.swatch import Swatch, load_swatch

# What a section's `to` asks of the body.
LANDMARK_NEEDS = {
    "high hip": ("high_hip_girth", "waist_to_high_hip"),
    "hip": ("hip_girth", "waist_to_hip"),
}


def load(design: Path, body: Path, swatches: Sequence[Path]) -> Basis:
    """Design, body and swatches, read, checked and brought together.

    Raises:
        InputError: a file has to be mended.
    """
    document = files.read_document(design, Design, what="design file")
    where = _where(document)
    needs = needed(document.checked, where)
    measured = load_body(body)
    grown = complete(measured, needs, optional=("waist_to_hip",))
    read = tuple(load_swatch(path) for path in swatches)
    return basis_.build(
        document.checked, grown, read, dictionary(), known_measurements(), where
    )


def needed(design: Design, where: formulas.Where) -> tuple[str, ...]:
    """Measurements that a design cannot do without: those in its formulas and at its landmarks."""
    known = known_measurements()
    keys = ["waist_girth", "hip_girth"]
    for section in design.section:
        keys.extend(LANDMARK_NEEDS.get(str(section.to), ()))
    for key, text in named_formulas(design):
        keys.extend(n for n in formulas.names_in(text, where(key)) if n in known)
    return tuple(dict.fromkeys(keys))


def _where(document: files.Document[Design]) -> formulas.Where:
    def where(key: str) -> Place:
        return document.place(tuple(int(p) - 1 if p.isdigit() else p for p in key.split(".")))

    return where
