"""Rows expanded to stitches."""

from __future__ import annotations

from itertools import pairwise

import pytest

from frogless.errors import InputError
from frogless.fabric.expand import expand, place_order
from frogless.fabric.model import RowFabric
from frogless.fabric.stretches import stretch
from frogless.rows.nodes import (
    Base,
    Chain,
    Edge,
    End,
    Into,
    Node,
    Piece,
    Program,
    Repeat,
    Row,
    Side,
    Skip,
    Start,
    Together,
    Work,
)
from frogless.stitches.load import dictionary

D, S, F = "double_crochet", "single_crochet", "foundation_double_crochet"
NO_CHAIN, OPEN = Start(), End()


def foundation(count: int, end: End = OPEN) -> Row:
    """A foundation row."""
    return Row(0, "RS", "start", (Work(F, count),), count, end=end)


def row_of(
    *body: Node,
    number: int = 1,
    side: Side = "RS",
    start: Start = NO_CHAIN,
    end: End = OPEN,
    backwards: bool = False,
) -> Row:
    """A row of that body; `count` is not looked at here."""
    return Row(number, side, "body", body, 0, start, end, backwards=backwards)


def rows_of(*rows: Row, closed: bool = True) -> tuple[RowFabric, ...]:
    """The rows as one piece, expanded."""
    program = Program((Piece("skirt", closed, rows),))
    return expand(program, dictionary()).pieces["skirt"]


def second(count: int, row: Row, end: End = OPEN) -> RowFabric:
    """A row worked over a foundation of `count`."""
    return rows_of(foundation(count, end), row)[1]


def names(row: RowFabric) -> list[str]:
    """Keys of the stitches in the order worked."""
    return [row.keys[i] for i in row.stitch]


def test_a_foundation_stands_on_nothing_when_it_begins_a_piece() -> None:
    """It leaves one place for each stitch and uses none."""
    (row,) = rows_of(foundation(5))
    assert row.first.tolist() == [-1] * 5
    assert row.made_by.tolist() == [0, 1, 2, 3, 4]
    assert (row.used.size, row.overrun) == (0, 0)


def test_a_foundation_chain_leaves_a_place_for_each_chain_when_each() -> None:
    """A run of chains is one place, a foundation chain many."""
    (run,), (each,) = (rows_of(row_of(Chain(4, e), number=0)) for e in (False, True))
    assert (run.made_by.tolist(), run.counted.tolist()) == ([0], [1, 0, 0, 0])
    assert (each.made_by.tolist(), each.counted.tolist()) == ([0, 1, 2, 3], [1, 1, 1, 1])


def test_stitches_stand_on_the_places_in_order_when_unturned() -> None:
    """Skipped places are marked, shared ones used twice, closed-together ones taken at once."""
    row = second(7, row_of(Work(D, 2), Skip(), Into((Work(D, 2),)), Together(D, 2), Work(D)))
    assert names(row) == [D] * 6
    assert row.first.tolist() == [0, 1, 3, 3, 4, 6]
    assert row.taken.tolist() == [1, 1, 1, 1, 2, 1]
    assert row.used.tolist() == [1, 1, 0, 2, 1, 1, 1]
    assert row.skipped.tolist() == [0, 0, 1, 0, 0, 0, 0]
    assert row.made_by.tolist() == [0, 1, 2, 3, 4, 5]
    assert row.overrun == 0


def test_ornaments_stand_on_nothing_and_are_not_counted_when_worked() -> None:
    """A picot in a group leaves no place; the chain between groups leaves one."""
    body = (Work(S, 3), Into((Repeat((Work(S), Work("picot")), 3),)), Chain(1))
    row = second(4, row_of(*body, start=Start(1)))
    assert names(row) == ["chain", S, S, S, S, "picot", S, "picot", S, "picot", "chain"]
    assert row.first.tolist() == [-1, 0, 1, 2, 3, -1, 3, -1, 3, -1, -1]
    assert row.counted.tolist() == [0, 1, 1, 1, 1, 0, 1, 0, 1, 0, 1]
    assert row.used.tolist() == [1, 1, 1, 3]
    assert row.places == 7


def test_a_repeat_is_tiled_when_it_holds_skips_and_groups() -> None:
    """The second time stands as far on as the first time takes."""
    shell = (Work(S), Skip(2), Into((Work(D, 3),)), Skip(2))
    row = second(12, row_of(Repeat(shell, 2)))
    assert row.first.tolist() == [0, 3, 3, 3, 6, 9, 9, 9]
    assert row.skipped.nonzero()[0].tolist() == [1, 2, 4, 5, 7, 8, 10, 11]


def test_a_group_takes_its_place_once_when_it_holds_groups() -> None:
    """Skips, chains and stitches closed together inside one place stay in that place."""
    row = second(2, row_of(Into((Together(D, 3), Chain(2), Work(D), Skip(4))), Work(D)))
    assert row.first.tolist() == [0, -1, -1, 0, 1]
    assert row.taken.tolist() == [1, 0, 0, 1, 1]
    assert (row.used.tolist(), row.skipped.tolist()) == ([2, 1], [0, 0])


def test_a_turning_chain_stands_on_the_first_place_when_it_counts() -> None:
    """Its last chain carries the place; the others only lift the work."""
    row = second(3, row_of(Work(D, 2), start=Start(3, counts=True)))
    assert names(row) == ["chain"] * 3 + [D] * 2
    assert row.first.tolist() == [-1, -1, 0, 1, 2]
    assert row.counted.tolist() == [0, 0, 1, 1, 1]
    assert row.made_by.tolist() == [2, 3, 4]


def test_a_turning_chain_leaves_the_first_place_to_the_body_when_it_does_not_count() -> None:
    """A round opened with chain 2 that does not count has a stitch in its first stitch too."""
    row = second(3, row_of(Work(D, 3), start=Start(2)))
    assert row.first.tolist() == [-1, -1, 0, 1, 2]
    assert (row.used.tolist(), row.places) == ([1, 1, 1], 3)


@pytest.mark.parametrize(
    ("body", "overrun", "used", "first"),
    [
        ((Work(D, 5),), 2, [1, 1, 1], [0, 1, 2, -1, -1]),
        ((Work(D, 2), Together(D, 3)), 2, [1, 1, 1], [0, 1, 2]),
        ((Work(D, 3), Skip(4)), 4, [1, 1, 1], [0, 1, 2]),
        ((Work(D, 2),), 0, [1, 1, 0], [0, 1]),
    ],
    ids=["stitches over", "half of a decrease over", "skips over", "a place unused"],
)
def test_an_unsound_row_is_expanded_as_far_as_it_goes_when_places_are_missing(
    body: tuple[Node, ...], overrun: int, used: list[int], first: list[int]
) -> None:
    """What is wrong stands in the arrays; nothing is raised."""
    row = second(3, row_of(*body))
    assert (row.overrun, row.used.tolist(), row.first.tolist()) == (overrun, used, first)


JOINED, TOP = End("first_stitch", turn=True), End("chain_top", turn=True)
COUNTS, LIFTS = Start(3, counts=True), Start(2)


@pytest.mark.parametrize(
    ("below", "row", "order"),
    [
        (foundation(4), row_of(), [0, 1, 2, 3]),
        (foundation(4), row_of(side="WS"), [3, 2, 1, 0]),
        (foundation(4), row_of(backwards=True), [3, 2, 1, 0]),
        (foundation(4), row_of(side="WS", backwards=True), [0, 1, 2, 3]),
        (row_of(start=COUNTS, end=TOP), row_of(side="WS", start=COUNTS), [0, 3, 2, 1]),
        (row_of(start=COUNTS, end=TOP), row_of(side="WS", start=LIFTS), [0, 3, 2, 1]),
        (row_of(start=LIFTS, end=TOP), row_of(side="WS", start=LIFTS), [3, 2, 1, 0]),
        (foundation(4, JOINED), row_of(side="WS", start=COUNTS), [0, 3, 2, 1]),
        (foundation(4, JOINED), row_of(side="WS", start=LIFTS), [3, 2, 1, 0]),
        (row_of(start=COUNTS), row_of(side="WS", start=COUNTS), [3, 2, 1, 0]),
        (row_of(start=COUNTS, end=TOP), row_of(start=COUNTS), [0, 1, 2, 3]),
    ],
    ids=[
        "spiral",
        "turned",
        "backwards",
        "turned and backwards",
        "joined into a counted chain",
        "chain counted below only",
        "no chain counts",
        "opened on the joined stitch",
        "joined stitch left to the body",
        "flat rows",
        "joined, not turned",
    ],
)
def test_places_are_met_in_their_order_when_a_row_follows(
    below: Row, row: Row, order: list[int]
) -> None:
    """In order, reversed, or from the joined place and then reversed."""
    assert place_order(row, below, 4).tolist() == order


def test_chains_stand_on_chains_when_joined_rounds_are_turned() -> None:
    """In turned rounds with a counted chain the chain column runs straight up the join."""
    rows = [foundation(6, JOINED)]
    sides: tuple[Side, ...] = ("WS", "RS", "WS", "RS")
    for number, side in enumerate(sides, start=1):
        rows.append(row_of(Work(D, 5), number=number, side=side, start=COUNTS, end=TOP))
    for below, row in pairwise(rows_of(*rows)):
        assert row.made_by[0] == 2
        assert row.first[2] == 0
        assert sorted(row.first[row.first >= 0].tolist()) == list(range(below.places))


def base_row(edge: Edge, row: Row) -> RowFabric:
    """The first row of a piece on an edge of a flat piece: 4 chains, then 5, 6 and 7 stitches."""
    more = Into((Work(S, 2),))
    band = Piece(
        "band",
        False,
        (
            row_of(Chain(4, each=True), number=0),
            row_of(Work(S, 3), more, number=1, side="WS"),
            row_of(Work(S, 4), more, number=2),
            row_of(Work(S, 5), more, number=3, side="WS"),
        ),
    )
    skirt = Piece("skirt", False, (row,), (Base("band", edge),))
    return expand(Program((band, skirt)), dictionary()).pieces["skirt"][0]


@pytest.mark.parametrize(
    ("edge", "places", "first"),
    [("foundation", 4, [0, 1, 2]), ("row_ends", 3, [0, 1, 2]), ("last_row", 7, [6, 5, 4])],
)
def test_a_piece_takes_the_places_of_an_edge_when_it_has_a_base(
    edge: Edge, places: int, first: list[int]
) -> None:
    """Foundation and row ends in order, the last row like any next row (here turned)."""
    row = base_row(edge, row_of(Work(S, 3)))
    assert (row.used.size, row.first.tolist()) == (places, first)


def test_an_edge_is_taken_in_reverse_when_worked_backwards() -> None:
    """Crab stitch along the other side of a foundation."""
    assert base_row("foundation", row_of(Work(S, 2), backwards=True)).first.tolist() == [3, 2]


def test_a_foundation_row_has_a_row_end_when_it_is_of_stitches() -> None:
    """A foundation chain lies flat and has none."""
    ends = Base("skirt", "row_ends")
    of_stitches = rows_of(foundation(3), row_of(Work(D, 3)))
    of_chain = rows_of(row_of(Chain(3, each=True), number=0), row_of(Work(D, 3)))
    assert stretch(ends, {"skirt": of_stitches}).size == 2
    assert stretch(ends, {"skirt": of_chain}).size == 1


def test_a_base_is_refused_when_it_is_no_earlier_piece() -> None:
    """The sentence names the piece and the near name."""
    lost = Piece("skirt", True, (row_of(Work(D)),), (Base("bnad", "last_row"),))
    band = Piece("band", True, (foundation(3),))
    with pytest.raises(InputError, match=r'skirt: .*"bnad".*did you mean "band"'):
        expand(Program((band, lost)), dictionary())


@pytest.mark.parametrize("node", [Work("dubble_crochet"), Repeat((Together("x", 2),), 2)])
def test_an_unknown_stitch_is_refused_with_its_row_when_expanded(node: Node) -> None:
    """The sentence names piece and row."""
    with pytest.raises(InputError, match="skirt row 1: unknown stitch"):
        second(3, row_of(node))


def test_arrays_are_int32_when_expanded() -> None:
    """One dtype for everything that is counted."""
    body = (Repeat((Work(D, 2), Into((Work(D, 2),)), Skip(), Chain(2)), 3), Together(D, 2))
    row = second(20, row_of(*body, start=COUNTS))
    arrays = [row.stitch, row.first, row.taken, row.counted, row.made_by, row.used, row.skipped]
    assert {array.dtype.name for array in [*arrays, row.order]} == {"int32"}
