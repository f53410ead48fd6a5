"""Stitches told as spread evenly are read as the places that the spread has."""

from __future__ import annotations

import pytest

from frogless.errors import InputError
from frogless.read.build import read_piece
from frogless.rows.nodes import Base, Node
from frogless.rows.spread import even_spread, worked_over
from frogless.stitches.load import dictionary

BASE = Base("skirt", "row_ends")


def body(text: str) -> tuple[Node, ...]:
    """The body of a row over twelve places, an edge not at hand."""
    line = f"Row 1 (RS): {text}."
    return read_piece([line], dictionary(), "us", name="band", bases=(BASE,)).rows[0].body


def test_an_even_spread_is_read_place_by_place() -> None:
    """Ten over four: 2, 3, 2, 3."""
    told = body("Work 10 sc evenly over next 4 row ends (2 take 3 and 2 take 2)")
    assert told == worked_over("single_crochet", even_spread(10, 4))


@pytest.mark.parametrize(
    "shares", ["1 takes 3 and 3 take 2", "2 take 3 and 3 take 2", "2 take 3 and 2 take 1"]
)
def test_shares_that_do_not_come_out_are_refused(shares: str) -> None:
    """The sentence says what they are."""
    with pytest.raises(InputError, match="over 4 places, 2 take 3 and 2 take 2"):
        body(f"Work 10 sc evenly over next 4 row ends ({shares})")
