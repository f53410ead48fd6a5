"""How rows and pieces begin: rings, chains that share a place, slip stitches across an armhole."""

from __future__ import annotations

import numpy as np
import pytest

from frogless.fabric.expand import expand
from frogless.fabric.geometry import shaping_points
from frogless.fabric.model import RowFabric
from frogless.rows.count import row_consumed, row_left, row_worked
from frogless.rows.nodes import (
    Chain,
    End,
    Into,
    Node,
    Piece,
    Program,
    Repeat,
    Row,
    Skip,
    Start,
    Together,
    Work,
)
from frogless.stitches.load import dictionary, leaves, stands_on

D, S, F = "double_crochet", "single_crochet", "foundation_single_crochet"
JOINED, TURN = End("first_stitch"), End(turn=True)
RING: tuple[Node, ...] = (Work("adjustable_ring"),)


def names(row: RowFabric) -> list[str]:
    """Keys of the stitches in the order worked."""
    return [row.keys[i] for i in row.stitch]


def disc(ring: tuple[Node, ...], *rounds: Row) -> tuple[RowFabric, ...]:
    """Rounds from a ring."""
    begun = Row(0, "RS", "crown", ring, 1, end=JOINED)
    return expand(Program((Piece("hat", True, (begun, *rounds)),)), dictionary()).pieces["hat"]


@pytest.mark.parametrize("ring", [RING, (Chain(4),)], ids=["adjustable", "chains"])
def test_a_ring_is_one_place_when_the_first_round_is_worked(ring: tuple[Node, ...]) -> None:
    """Twelve double crochets stand in it; the second round doubles them to 24."""
    first = Row(1, "RS", "crown", (Into((Work(D, 12),)),), 12, Start(2), JOINED)
    double = Row(2, "RS", "crown", (Repeat((Into((Work(D, 2),)),), 12),), 24, Start(2), JOINED)
    begun, one, two = disc(ring, first, double)
    assert begun.places == 1
    assert (one.used.tolist(), one.places, one.overrun) == ([12], 12, 0)
    assert (two.places, len(shaping_points(two))) == (24, 12)


def test_a_chain_that_counts_stands_in_the_ring_too_when_it_shares() -> None:
    """Ch 3 (counts) and 11 dc in the ring are twelve."""
    row = Row(1, "RS", "crown", (Into((Work(D, 11),)),), 12, Start(3, True, shares=True), JOINED)
    one = disc(RING, row)[1]
    assert (one.used.tolist(), one.places, one.overrun) == ([12], 12, 0)
    assert one.first.tolist() == [-1, -1, *[0] * 12]
    assert row_consumed(row, stands_on(dictionary())) == 1
    assert row_left(row, leaves(dictionary())) == 12


def worked_on(count: int, row: Row) -> RowFabric:
    """A row in an open piece, worked on a foundation of `count`."""
    rows = (Row(0, "WS", "start", (Work(F, count),), count, end=TURN), row)
    return expand(Program((Piece("back", False, rows),)), dictionary()).pieces["back"][1]


@pytest.mark.parametrize("first", [Into((Work(D),)), Work(D)], ids=["into", "work"])
def test_an_increase_at_the_edge_takes_the_first_place_twice_when_shared(first: Node) -> None:
    """Ch 3, dc in the same place, then one in each: five places become six."""
    row = Row(1, "RS", "body", (first, Work(D, 4)), 6, Start(3, True, shares=True))
    made = worked_on(5, row)
    assert made.order.tolist() == [4, 3, 2, 1, 0]
    assert (made.used.tolist(), made.places) == ([1, 1, 1, 1, 2], 6)
    assert shaping_points(made) == ((2, 3),)


def test_an_armhole_begins_across_its_places_when_slip_stitched() -> None:
    """Five slip stitches lead over five places and leave none; five at the end are left out."""
    row = Row(1, "RS", "body", (Work(S, 10), Skip(5)), 10, Start(1, across=5))
    made = worked_on(20, row)
    assert names(made) == ["slip_stitch"] * 5 + ["chain"] + [S] * 10
    assert made.used[made.order].tolist() == [1] * 15 + [0] * 5
    assert made.skipped[made.order].tolist() == [0] * 15 + [1] * 5
    assert made.counted.tolist() == [0] * 6 + [1] * 10
    assert (made.places, made.overrun) == (10, 0)
    assert row_worked(row) == {"slip_stitch": 5, "chain": 1, S: 10}
    assert row_consumed(row, stands_on(dictionary())) == 20


def test_places_passed_across_are_gone_when_the_next_row_comes() -> None:
    """Neither they nor the slip stitches are offered again."""
    rows = (
        Row(0, "WS", "start", (Work(F, 9),), 9, end=TURN),
        Row(1, "RS", "body", (Work(S, 4), Skip(2)), 4, Start(1, across=3), TURN),
        Row(2, "WS", "body", (Work(S, 4),), 4, Start(1)),
    )
    last = expand(Program((Piece("back", False, rows),)), dictionary()).pieces["back"][2]
    assert (last.used.tolist(), last.behind) == ([1, 1, 1, 1], 0)


def test_a_chain_that_counts_stands_beyond_the_slip_stitches_when_across() -> None:
    """After three of them it stands on the fourth place and shares it with a decrease over two."""
    row = Row(1, "RS", "body", (Together(D, 2), Work(D, 2)), 4, Start(3, True, True, 3))
    made = worked_on(7, row)
    assert made.first.tolist() == [6, 5, 4, -1, -1, 3, 3, 1, 0]
    assert bool(np.all(made.used[:3] == 1))
    assert made.used.tolist() == [1, 1, 1, 2, 1, 1, 1]


def test_slip_stitches_are_known_when_the_dictionary_has_none() -> None:
    """The tree works chains and slip stitches by itself."""
    few = {key: stitch for key, stitch in dictionary().items() if key in (S, F)}
    rows = (
        Row(0, "WS", "start", (Work(F, 3),), 3, end=TURN),
        Row(1, "RS", "body", (Work(S, 2),), 2, Start(1, across=1)),
    )
    made = expand(Program((Piece("back", False, rows),)), few).pieces["back"][1]
    assert names(made) == ["slip_stitch", "chain", S, S]
