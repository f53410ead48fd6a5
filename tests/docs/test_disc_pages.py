"""The pages on discs and shawls have every key with its default, and examples that are designs."""

from __future__ import annotations

import re

import pytest
from pages import examples, page, part
from pydantic import BaseModel

from frogless.design.document import PiecesDesign
from frogless.design.load import parse_design
from frogless.design.pieces.disc import DiscChoice, DiscSection
from frogless.design.pieces.shawl import ShawlBand, ShawlChoice

TABLES: dict[tuple[str, str], type[BaseModel]] = {
    ("pieces/disc.md", "# How do I write a disc, a hat or a bag?"): DiscChoice,
    ("pieces/disc.md", "## section"): DiscSection,
    ("pieces/shawl.md", "# How do I write a shawl?"): ShawlChoice,
    ("pieces/shawl.md", "## band"): ShawlBand,
}
GARMENT = (
    'format = "frogless-design/1"\ntitle = "Sample"\n[garment]\nkind = "top"\n'
    '[work]\nstitch = "double_crochet"\nturning_chain = 3\n'
)


def told(name: str, heading: str) -> dict[str, str]:
    """What the page says of each key's default."""
    table = part(page(name), heading).split("| --- | --- | --- | --- |\n", 1)[1].split("\n\n", 1)[0]
    rows = re.finditer(r"^\| `(\w+)` \|.*\|(.*)\|$", table, re.MULTILINE)
    return {row[1]: row[2].strip() for row in rows}


@pytest.mark.parametrize("table", TABLES, ids=" ".join)
def test_page_names_every_key_and_no_other(table: tuple[str, str]) -> None:
    """As a file writes them."""
    fields = TABLES[table].model_fields
    assert set(told(*table)) == {field.alias or key for key, field in fields.items()}


@pytest.mark.parametrize("table", TABLES, ids=" ".join)
def test_page_tells_every_default(table: tuple[str, str]) -> None:
    """A key without one has none on the page."""
    for key, field in TABLES[table].model_fields.items():
        text = told(*table)[field.alias or key]
        if field.is_required():
            assert text == "", key
        elif isinstance(field.default, str):
            assert text == f'`"{field.default}"`', key
        elif isinstance(field.default, int | float):
            assert text == f"`{str(field.default).lower()}`", key
        else:
            assert text, key


@pytest.mark.parametrize(
    ("name", "kind"), [("pieces/disc.md", DiscChoice), ("pieces/shawl.md", ShawlChoice)]
)
def test_example_on_the_page_is_a_piece(name: str, kind: type[BaseModel]) -> None:
    """It can be copied into a design."""
    (example,) = examples(page(name), "toml")
    design = parse_design(GARMENT + example).checked
    assert isinstance(design, PiecesDesign)
    assert isinstance(design.piece[0], kind)
