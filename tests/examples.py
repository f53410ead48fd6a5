"""The examples of designs/, for every test that drafts one or a changed copy of one."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from itertools import product
from pathlib import Path
from tempfile import TemporaryDirectory

from frogless import draft
from frogless.proof.model import Subject
from frogless.publish.drafted import Drafted
from frogless.units import Units
from frogless.write.pattern import write_program

FOLDER = Path(__file__).parents[1] / "designs"
TEXTS = {
    path.parent.name: path.read_text(encoding="utf-8")
    for path in sorted(FOLDER.glob("*/design.toml"))
}
GARMENTS = tuple(name for name, text in TEXTS.items() if "[[piece]]" in text)
"""Designs of several pieces."""

DESIGNS = tuple(name for name in TEXTS if name not in GARMENTS)
"""Skirts of one tube."""

BODIES = tuple(sorted(path.stem for path in FOLDER.glob("bodies/*.toml")))
SWATCHES = tuple(sorted(path.stem for path in FOLDER.glob("swatches/*.toml")))


@dataclass(frozen=True, slots=True)
class Example:
    """One design for one body in one yarn; by default the one that every page shows."""

    design: str = "ring-dance-skirt"
    body: str = "dancer-3"
    swatch: str = "light-cotton"

    @property
    def files(self) -> tuple[Path, Path, Path]:
        """The three files."""
        return (
            FOLDER / self.design / "design.toml",
            FOLDER / "bodies" / f"{self.body}.toml",
            FOLDER / "swatches" / f"{self.swatch}.toml",
        )

    def texts(self) -> dict[str, str]:
        """The three files' texts by name: design.toml, body.toml, swatch.toml."""
        return {
            name: path.read_text(encoding="utf-8")
            for name, path in zip(NAMES, self.files, strict=True)
        }


NAMES = ("design.toml", "body.toml", "swatch.toml")


def every_example() -> Iterator[Example]:
    """All combinations."""
    return (Example(*names) for names in product(DESIGNS, BODIES, SWATCHES))


@cache
def drafted(example: Example = Example(), units: Units = "cm") -> Drafted:
    """The example drafted; each once in a run."""
    design, body, swatch = example.files
    return draft.draft(draft.Request(design, body, (swatch,), units=units)).drafted


def changed_draft(example: Example, *swaps: tuple[str, str], units: Units = "cm") -> Drafted:
    """The example drafted with some of its design's lines changed: (as it stands, instead)."""
    text = TEXTS[example.design]
    for old, new in swaps:
        assert old in text, old
        text = text.replace(old, new)
    _, body, swatch = example.files
    with TemporaryDirectory() as folder:
        design = Path(folder) / "design.toml"
        design.write_text(text, encoding="utf-8")
        return draft.draft(draft.Request(design, body, (swatch,), units=units)).drafted


def subject(found: Drafted) -> Subject:
    """What the proof of a draft looks at."""
    texts = {d: write_program(found.plan.program, found.stitches, d) for d in draft.DIALECTS}
    bought = tuple(need.colour for need in found.tally.yarn)
    return Subject(
        found.plan, found.plan.program, found.fabric, found.fit, found.stitches, texts, bought
    )


def write_files(folder: Path, texts: Mapping[str, str]) -> list[str]:
    """Writes the three files; gives the arguments that draft them."""
    for name, text in texts.items():
        (folder / name).write_text(text, encoding="utf-8")
    design, body, swatch = (str(folder / name) for name in NAMES)
    return ["draft", design, "--body", body, "--swatch", swatch]
