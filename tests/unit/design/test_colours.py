"""The colours of a design: what may be written, and what the page on stripes shows."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from frogless.design.colours import Colours, Stripe
from frogless.design.load import parse_design
from frogless.errors import InputError
from frogless.plan.stripes import MOST_CARRIED
from frogless.tally.yarn import TAIL

ROOT = Path(__file__).parents[3]
PAGE = (ROOT / "docs" / "colours.md").read_text(encoding="utf-8")
DESIGN = (ROOT / "designs" / "moth-wing-shawl" / "design.toml").read_text(encoding="utf-8")
NAMES = 'names = { A = "cream", B = "rust" }\n'


def read(table: str) -> Colours:
    """The colours of a design with this table."""
    found = parse_design(DESIGN + "\n" + table).checked.colours
    assert found is not None
    return found


def test_examples_on_the_page_are_designs() -> None:
    """The first is whole; the second adds stripes to it."""
    first, second = re.findall(r"```toml\n(.*?)```", PAGE, re.DOTALL)
    assert read(first).stripes[0].repeat == (
        Stripe(colour="A", rows=2),
        Stripe(colour="B", rows=2),
    )
    both = read(first + second)
    assert both.names == {"A": "cream", "B": "rust"}
    assert both.stripes[1].on == ("cuff", "neckband")
    assert both.stripes[1].repeat == (Stripe(colour="B"),)


def test_page_tells_the_figures_of_the_program() -> None:
    """Rows over which a colour is carried, and what is left at each end."""
    words = ("no", "one", "two", "three", "four")
    assert f"after at most {words[MOST_CARRIED]} rows" in PAGE
    assert f"{TAIL / 10:g} cm for each end" in PAGE


@pytest.mark.parametrize(
    ("table", "told"),
    [
        ('names = { a = "cream" }', "names.a: must be one capital letter from A to Z"),
        ('names = { AB = "cream" }', "names.AB: must be one capital letter"),
        ("names = {}", "names: needs 1 or more"),
        ('names = { A = "" }', "names.A: must not be empty"),
        (NAMES + 'stripes = [{ repeat = [{ colour = "b" }] }]', "colour: must be one capital"),
        (NAMES + "stripes = [{ repeat = [] }]", "repeat: needs 1 or more"),
        (NAMES + 'stripes = [{ repeat = [{ colour = "A", rows = 0 }] }]', "must be 1 or more"),
        (NAMES + 'stripes = [{ repeat = [{ color = "A" }] }]', 'did you mean "colour"?'),
    ],
)
def test_colours_are_refused_with_their_key_when_they_are_no_colours(table: str, told: str) -> None:
    """In one sentence each."""
    with pytest.raises(InputError) as refused:
        read(f"[colours]\n{table}")
    assert told in str(refused.value)
    assert "colours." in str(refused.value)
