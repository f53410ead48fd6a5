"""What is expanded once is handed out again, and nobody can change it."""

from __future__ import annotations

import pytest

from frogless.fabric.expand import expand
from frogless.rows.nodes import Base, Chain, Piece, Program, Row, Work
from frogless.stitches.load import dictionary

CHAINS = Row(0, "RS", "", (Chain(4, each=True),), 4)
FLAP = Piece("flap", False, (CHAINS, Row(1, "WS", "", (Work("single_crochet", 4),), 4)))
EDGE = Piece(
    "edge", False, (Row(1, "RS", "", (Work("slip_stitch", 4),), 4),), (Base("flap", "last_row"),)
)


def test_a_piece_that_comes_again_is_not_expanded_again() -> None:
    """Also when the pattern around it is another."""
    alone = expand(Program((FLAP,)), dictionary()).pieces["flap"]
    edged = expand(Program((FLAP, EDGE)), dictionary()).pieces["flap"]
    assert alone is edged


def test_a_piece_begun_on_another_edge_is_another() -> None:
    """Though its own rows are the same."""
    five = Row(0, "RS", "", (Chain(5, each=True),), 5)
    wider = Piece("flap", False, (five, Row(1, "WS", "", (Work("single_crochet", 5),), 5)))
    on_four = expand(Program((FLAP, EDGE)), dictionary()).pieces["edge"][0]
    on_five = expand(Program((wider, EDGE)), dictionary()).pieces["edge"][0]
    assert (on_four.order.size, on_five.order.size) == (4, 5)


def test_stitches_of_another_dictionary_are_expanded_by_themselves() -> None:
    """They may stand on other places though they have the same keys."""
    ours = expand(Program((FLAP,)), dictionary()).pieces["flap"]
    theirs = expand(Program((FLAP,)), {**dictionary()}).pieces["flap"]
    assert ours is not theirs


def test_rows_cannot_be_changed() -> None:
    """A row is shared by all who ask for it."""
    row = expand(Program((FLAP,)), dictionary()).pieces["flap"][1]
    for array in row.arrays:
        with pytest.raises(ValueError, match="read-only"):
            array[:] = 0
