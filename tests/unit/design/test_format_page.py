"""The page on the design format has every key, in its place, with its default."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

import pytest
from pydantic import BaseModel

from frogless.design.colours import Colours, Stripe, Stripes
from frogless.design.document import TubeDesign, TubeGarment
from frogless.design.load import parse_design
from frogless.design.patterns import OwnNumber, OwnPattern, OwnRow
from frogless.design.pieces.tube import Plain, Seat, Section, Start, Through
from frogless.design.trims import (
    BeadedStrand,
    CoveredElastic,
    Drawcord,
    EdgingBeads,
    EdgingChoice,
    RibbedBand,
)
from frogless.design.work import DesignerGauge, Work
from frogless.plan.limits import MOST_STITCHES
from frogless.plan.sections import MOST_ROUNDS
from frogless.stitches.edgings import edgings

PAGE = (Path(__file__).parents[3] / "docs" / "design-format.md").read_text(encoding="utf-8")
HEADINGS: dict[str, type[BaseModel]] = {
    "## The top of the file": TubeDesign,
    "## [garment]": TubeGarment,
    "## [gauge]": DesignerGauge,
    "## [pattern.NAME]": OwnPattern,
    "### [pattern.NAME.parameters.NUMBER]": OwnNumber,
    "### [[pattern.NAME.round]]": OwnRow,
    "## [work]": Work,
    "## [colours]": Colours,
    "### [[colours.stripes]]": Stripes,
    "### [[colours.stripes.repeat]]": Stripe,
    "## [start]": Start,
    "### [start.seat]": Seat,
    "## [[section]]": Section,
    "### [[section.plain]]": Plain,
    "### [[section.through]]": Through,
    "## [edging]": EdgingChoice,
    "### [edging.beads]": EdgingBeads,
    '### kind = "covered elastic"': CoveredElastic,
    '### kind = "drawcord"': Drawcord,
    '### kind = "ribbed band"': RibbedBand,
    "## [[strand]]": BeadedStrand,
}


def rows(heading: str) -> dict[str, str]:
    """The lines of the tables below a heading, by key."""
    below = PAGE.split(f"\n{heading}\n", 1)[1]
    part = re.split(r"\n##+ ", below, maxsplit=1)[0]
    return {m[1]: m[0] for m in re.finditer(r"^\| `(\w+)` \|.*$", part, re.MULTILINE)}


def models(model: type[BaseModel]) -> set[type[BaseModel]]:
    """A model and all that stand in it."""
    found, stack = {model}, [f.annotation for f in model.model_fields.values()]
    while stack:
        kind = stack.pop()
        if isinstance(kind, type) and issubclass(kind, BaseModel):
            found |= models(kind)
        stack.extend(getattr(kind, "__args__", ()))
    return found


def test_every_table_of_the_format_has_its_part_of_the_page() -> None:
    """A new one is not forgotten."""
    assert set(HEADINGS.values()) == models(TubeDesign)


@pytest.mark.parametrize("heading", HEADINGS)
def test_every_key_is_on_the_page_and_no_other(heading: str) -> None:
    """Under the heading of its table."""
    fields = HEADINGS[heading].model_fields
    keys = {field.alias or name for name, field in fields.items()}
    assert set(rows(heading)) == keys


@pytest.mark.parametrize("heading", HEADINGS)
def test_every_default_is_told(heading: str) -> None:
    """As it is written in a file; a key without one has none on the page."""
    for name, field in HEADINGS[heading].model_fields.items():
        told = rows(heading)[field.alias or name].rsplit("|", 2)[1].strip()
        if field.is_required():
            assert told == "", name
        elif isinstance(field.default, str | int) and field.default != "":
            written = field.default
            text = str(written).lower() if isinstance(written, bool) else f"{written}"
            quoted = f'`"{text}"`' if isinstance(written, str) else f"`{text}`"
            assert told == quoted, name
        else:
            assert told, name


def test_example_on_the_page_is_a_design() -> None:
    """And what it leaves out has a default."""
    example = re.search(r"```toml\n(.*?)```", PAGE, re.DOTALL)
    assert example is not None
    design = parse_design(example[1]).checked
    assert isinstance(design, TubeDesign)
    assert [s.name for s in design.section] == ["waist to hip", "hip to hem"]
    assert set(tomllib.loads(example[1])) < {
        f.alias or n for n, f in TubeDesign.model_fields.items()
    }


def test_edgings_and_limits_are_those_of_the_program() -> None:
    """The page names each edging, and the largest section and round."""
    for key in edgings():
        assert f'`"{key}"`' in rows("## [edging]")["pattern"]
    assert f"more than {MOST_ROUNDS} rounds" in PAGE
    assert f"more than {MOST_STITCHES} stitches" in PAGE
