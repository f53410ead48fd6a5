"""The pages on yokes have every key with its default, and their examples are designs."""

from __future__ import annotations

import re

import pytest
from pages import examples, page
from pydantic import TypeAdapter

from frogless.design.document import PieceChoice, PiecesDesign
from frogless.design.load import parse_design
from frogless.design.pieces.raglan import RaglanChoice
from frogless.design.pieces.round_yoke import RoundYokeChoice
from frogless.design.pieces.yoke import YokeChoice

PAGES: dict[str, type[YokeChoice]] = {
    "pieces/raglan.md": RaglanChoice,
    "pieces/round-yoke.md": RoundYokeChoice,
}
GARMENT = (
    'format = "frogless-design/1"\ntitle = "Sample"\n[garment]\nkind = "top"\n'
    '[work]\nstitch = "double_crochet"\nturning_chain = 3\n'
)


def told(name: str) -> dict[str, str]:
    """What the page says of each key's default."""
    table = page(name).split("| --- | --- | --- | --- |\n", 1)[1].split("\n\n", 1)[0]
    rows = re.finditer(r"^\| `(\w+)` \|.*\|(.*)\|$", table, re.MULTILINE)
    return {row[1]: row[2].strip() for row in rows}


@pytest.mark.parametrize("name", PAGES)
def test_page_names_every_key_and_no_other(name: str) -> None:
    """As a file writes them."""
    fields = PAGES[name].model_fields
    assert set(told(name)) == {field.alias or key for key, field in fields.items()}


@pytest.mark.parametrize("name", PAGES)
def test_page_tells_every_default(name: str) -> None:
    """A key without one has none on the page."""
    for key, field in PAGES[name].model_fields.items():
        text = told(name)[field.alias or key]
        if field.is_required():
            assert text == "", key
        elif isinstance(field.default, str):
            assert text == f'`"{field.default}"`', key
        elif isinstance(field.default, int):
            assert text == f"`{field.default}`", key
        else:
            assert text, key


@pytest.mark.parametrize("name", PAGES)
def test_example_on_the_page_is_a_piece(name: str) -> None:
    """It can be copied into a design."""
    (example,) = examples(page(name), "toml")
    design = parse_design(GARMENT + example).checked
    assert isinstance(design, PiecesDesign)
    assert isinstance(design.piece[0], PAGES[name])
    TypeAdapter(PieceChoice).validate_python(design.piece[0])
