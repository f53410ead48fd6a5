"""The page on tubes has every key with its default, and its example is a piece."""

from __future__ import annotations

import re

import pytest
from pages import examples, page
from pydantic import BaseModel

from frogless.design.document import PiecesDesign
from frogless.design.load import parse_design
from frogless.design.pieces.tube import PieceSection, PieceStart, Section, TubeChoice

PAGE = page("pieces/tube.md")
TABLES: dict[str, tuple[type[BaseModel], frozenset[str]]] = {
    "# How do I write a tube?": (TubeChoice, frozenset()),
    "## [piece.start]": (PieceStart, frozenset()),
    "## [[piece.section]]": (PieceSection, frozenset(Section.model_fields)),
}
GARMENT = (
    'format = "frogless-design/1"\ntitle = "Sample"\n[garment]\nkind = "top"\n'
    '[work]\nstitch = "double_crochet"\nturning_chain = 3\n'
)


def told(heading: str) -> dict[str, str]:
    """What the first table below a heading says of each key's default."""
    below = PAGE.split(f"{heading}\n", 1)[1]
    table = below.split("| --- | --- | --- | --- |\n", 1)[1].split("\n\n", 1)[0]
    rows = re.finditer(r"^\| `(\w+)` \|.*\|(.*)\|$", table, re.MULTILINE)
    return {row[1]: row[2].strip() for row in rows}


@pytest.mark.parametrize("heading", TABLES)
def test_page_names_every_key_and_no_other(heading: str) -> None:
    """As a file writes them; those of a skirt's section have a page of their own."""
    model, elsewhere = TABLES[heading]
    fields = model.model_fields.items()
    assert set(told(heading)) == {f.alias or n for n, f in fields if n not in elsewhere}


@pytest.mark.parametrize("heading", TABLES)
def test_page_tells_every_default(heading: str) -> None:
    """A key without one has none on the page."""
    model, elsewhere = TABLES[heading]
    for name, field in model.model_fields.items():
        if name in elsewhere:
            continue
        text = told(heading)[field.alias or name]
        if field.is_required():
            assert text == "", name
        elif isinstance(field.default, str):
            assert text == f'`"{field.default}"`', name
        elif isinstance(field.default, int | float):
            assert text == f"`{field.default}`", name
        else:
            assert text, name


def test_example_on_the_page_is_a_tube() -> None:
    """It can be copied into a design."""
    (example,) = examples(PAGE, "toml")
    design = parse_design(GARMENT + example).checked
    assert isinstance(design, PiecesDesign)
    assert isinstance(design.piece[0], TubeChoice)
