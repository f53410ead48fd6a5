"""The pages on flat pieces and cords have every key with its default, and examples that are designs."""

from __future__ import annotations

import re

import pytest
from pages import examples, page, part
from pydantic import BaseModel

from frogless.design.document import PiecesDesign
from frogless.design.load import parse_design
from frogless.design.pieces.cord import CordChoice
from frogless.design.pieces.panel import (
    Armhole,
    Cap,
    FullBust,
    Neck,
    PanelChoice,
    PanelSection,
    Shoulder,
)

TABLES: dict[tuple[str, str], type[BaseModel]] = {
    ("pieces/panel.md", "# How do I write a flat piece?"): PanelChoice,
    ("pieces/panel.md", "## section"): PanelSection,
    ("pieces/panel.md", "## armhole"): Armhole,
    ("pieces/panel.md", "## neck"): Neck,
    ("pieces/panel.md", "## shoulder"): Shoulder,
    ("pieces/panel.md", "## full_bust"): FullBust,
    ("pieces/panel.md", "## cap"): Cap,
    ("pieces/cord.md", "# How do I write a cord or a strap?"): CordChoice,
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
        elif isinstance(field.default, int):
            assert text == f"`{field.default}`", key
        else:
            assert text, key


@pytest.mark.parametrize(
    ("name", "kind"), [("pieces/panel.md", PanelChoice), ("pieces/cord.md", CordChoice)]
)
def test_example_on_the_page_is_a_piece(name: str, kind: type[BaseModel]) -> None:
    """It can be copied into a design."""
    (example,) = examples(page(name), "toml")
    design = parse_design(GARMENT + example).checked
    assert isinstance(design, PiecesDesign)
    assert isinstance(design.piece[0], kind)
