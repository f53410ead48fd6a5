"""Design files read: one tube with its tables at the top, or a list of pieces."""

from __future__ import annotations

import tomllib
from functools import lru_cache
from pathlib import Path

from frogless.design.document import Design, PiecesDesign, TubeDesign
from frogless.files import Document, parse_document, read_text, refuse_overgrown

WHAT = "design file"

KEPT = 64
"""Texts that are remembered: whoever edits one thing drafts with the others as they were."""


def read_design(path: Path | str) -> Document[Design]:
    """A design from its file.

    Raises:
        InputError: it cannot be read, is no TOML, or keys are missing, unknown or wrong.
    """
    path = Path(path)
    return parse_design(read_text(path, what=WHAT), path.name)


@lru_cache(maxsize=KEPT)
def parse_design(text: str, name: str = "") -> Document[Design]:
    """A design from its text; `name` is what its faults are told of.

    Raises:
        InputError: as `read_design`, or the text is far too long for a design.
    """
    refuse_overgrown(text, name, what=WHAT)
    model: type[Design] = PiecesDesign if _has_pieces(text) else TubeDesign
    return parse_document(text, name, model, what=WHAT)


def _has_pieces(text: str) -> bool:
    try:  # what is no TOML is told of where it is parsed for good
        return "piece" in tomllib.loads(text)
    except (tomllib.TOMLDecodeError, RecursionError):
        return False
