"""The pages on garments of pieces, joins and borders have every key, and their examples hold."""

from __future__ import annotations

import re

import pytest
from pages import examples, page
from pydantic import BaseModel

from frogless.design.document import JoinChoice, PiecesDesign
from frogless.design.load import parse_design
from frogless.design.pieces.border import BorderChoice
from frogless.plan.make import CONSTRUCTIONS

TABLES: dict[tuple[str, str], type[BaseModel]] = {
    ("pieces.md", "## [[join]]"): JoinChoice,
    ("pieces/border.md", "# How do I write a border?"): BorderChoice,
}


def told(name: str, heading: str) -> dict[str, str]:
    """What the table below a heading says of each key's default."""
    below = page(name).split(f"{heading}\n", 1)[1]
    table = below.split("| --- | --- | --- | --- |\n", 1)[1].split("\n\n", 1)[0]
    rows = re.finditer(r"^\| `(\w+)` \|.*\|(.*)\|$", table, re.MULTILINE)
    return {row[1]: row[2].strip() for row in rows}


@pytest.mark.parametrize("table", TABLES)
def test_page_names_every_key_and_no_other(table: tuple[str, str]) -> None:
    """As a file writes them."""
    fields = TABLES[table].model_fields
    assert set(told(*table)) == {field.alias or key for key, field in fields.items()}


@pytest.mark.parametrize("table", TABLES)
def test_page_tells_which_keys_have_no_default(table: tuple[str, str]) -> None:
    """Those that have to be there."""
    for key, field in TABLES[table].model_fields.items():
        assert (told(*table)[field.alias or key] == "") == field.is_required(), key


def test_page_lists_every_construction() -> None:
    """By the word that a design file writes."""
    listed = re.findall(r'^\| \[`"([\w ]+)"`\]\(pieces/', page("pieces.md"), re.MULTILINE)
    assert sorted(listed) == sorted(CONSTRUCTIONS)


def test_example_is_a_design() -> None:
    """It can be copied."""
    (example,) = examples(page("pieces.md"), "toml")
    design = parse_design(example).checked
    assert isinstance(design, PiecesDesign)
    assert [piece.name for piece in design.piece] == ["back", "front", "lower edge"]
