"""Work left for later: short rows in rows and in rounds, drawn by hand."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import pytest

from frogless.fabric.expand import expand
from frogless.fabric.geometry import angles, marked_parent
from frogless.fabric.model import RowFabric
from frogless.rows.nodes import (
    End,
    Into,
    Leave,
    Node,
    Piece,
    Program,
    Row,
    Side,
    Skip,
    Start,
    Work,
)
from frogless.stitches.load import dictionary

S, F = "single_crochet", "foundation_single_crochet"
TURN, NO_CHAIN = End(turn=True), Start()


def expanded(count: int, *bodies: tuple[Node, ...], closed: bool = False) -> tuple[RowFabric, ...]:
    """Turned rows over a foundation of `count`, the first of them on the right side."""
    join = "first_stitch" if closed else "none"
    rows = [
        Row(
            0,
            "RS" if closed else "WS",
            "start",
            (Work(F, count),),
            count,
            end=End(join, not closed),
        )
    ]
    for number, body in enumerate(bodies, start=1):
        side: Side = "RS" if number % 2 else "WS"
        rows.append(Row(number, side, "body", body, 0, end=TURN))
    return expand(Program((Piece("back", closed, tuple(rows)),)), dictionary()).pieces["back"]


def met(row: RowFabric) -> list[tuple[int, int]]:
    """The places offered in the order met, by the row that made each and its number there."""
    return [(int(row.from_row[p]), int(row.from_place[p])) for p in row.order]


def test_a_short_row_leaves_places_when_turned_in_an_open_piece() -> None:
    """Ten places: seven worked, three left; the row back meets seven; the next meets all ten."""
    rows = expanded(10, (Work(S, 7), Leave(3)), (Work(S, 7),), (Work(S, 10),))
    short, back, whole = rows[1:]
    assert (short.used.sum(), short.left.tolist()) == (7, [1, 1, 1, 0, 0, 0, 0, 0, 0, 0])
    assert met(back) == [(1, place) for place in range(6, -1, -1)]
    assert (back.behind, whole.behind) == (3, 0)
    assert met(whole) == [(2, place) for place in range(6, -1, -1)] + [(0, 2), (0, 1), (0, 0)]
    assert (whole.overrun, whole.used.tolist()) == (0, [1] * 10)


def test_places_are_numbered_by_the_row_below_first_when_some_are_older() -> None:
    """0 to 6 are those of the row below as it made them; 7, 8, 9 are the older ones as met."""
    whole = expanded(10, (Work(S, 7), Leave(3)), (Work(S, 7),), (Work(S, 10),))[3]
    assert whole.order.tolist() == [6, 5, 4, 3, 2, 1, 0, 7, 8, 9]
    assert whole.first.tolist() == whole.order.tolist()


def test_what_both_ends_leave_is_met_in_turn_when_short_rows_nest() -> None:
    """A shoulder sloped at one end and a dart at the other: each end waits for its own side."""
    rows = expanded(
        10,
        (Work(S, 8), Leave(2)),
        (Work(S, 5), Leave(3)),
        (Work(S, 7),),
        (Work(S, 10),),
    )
    assert met(rows[3]) == [(2, p) for p in range(4, -1, -1)] + [(0, 1), (0, 0)]
    assert met(rows[4]) == [(3, p) for p in range(6, -1, -1)] + [(1, 2), (1, 1), (1, 0)]
    assert rows[3].behind == 3


def test_a_stepped_shoulder_is_met_step_by_step_when_all_is_worked_at_last() -> None:
    """C11: 20 stitches in steps of 7, 7 and 6 (hand arithmetic), closed by a row over all."""
    rows = expanded(
        20,
        (Work(S, 13), Leave(7)),
        (Work(S, 13),),
        (Work(S, 6), Leave(14)),
        (Work(S, 6),),
        (Work(S, 20),),
    )
    last = rows[5]
    assert met(last)[:6] == [(4, p) for p in range(5, -1, -1)]
    assert met(last)[6:13] == [(2, p) for p in range(6, -1, -1)]
    assert met(last)[13:] == [(0, p) for p in range(6, -1, -1)]
    assert bool(np.all(last.used == 1))


def full_seat() -> tuple[RowFabric, ...]:
    """A17: 208 places, the join at centre back; turned after 78, 52 and 26, then on to the join."""
    turns = [(39, 169), (78, 130), (65, 143), (52, 156), (39, 169), (26, 182)]
    rows = [Row(0, "RS", "start", (Work(F, 208),), 208, end=End("first_stitch"))]
    for number, (work, rest) in enumerate(turns, start=1):
        side: Side = "RS" if number % 2 else "WS"
        rows.append(Row(number, side, "seat", (Work(S, work), Leave(rest)), 0, end=TURN))
    rows.append(Row(7, "RS", "seat", (Work(S, 13), Leave(195)), 13))
    rows.append(Row(8, "RS", "body", (Work(S, 208),), 208))
    return expand(Program((Piece("back", True, tuple(rows)),)), dictionary()).pieces["back"]


def test_the_work_back_passes_the_join_when_a_short_row_turns_in_the_round() -> None:
    """It meets its own 39, then what was left from its far end: places 207, 206, …"""
    back = full_seat()[2]
    assert met(back)[:39] == [(1, place) for place in range(38, -1, -1)]
    assert met(back)[39:78] == [(0, place) for place in range(207, 168, -1)]
    assert (back.behind, int(back.used.sum()), int(back.left.sum())) == (0, 78, 130)


def test_a_full_seat_is_centred_when_worked_in_short_rows() -> None:
    """Three pairs more at the centre, then two, then one, the same on both sides; 208 again."""
    rows = full_seat()
    assert [int(row.used.sum()) for row in rows[1:]] == [39, 78, 65, 52, 39, 26, 13, 208]
    assert all(row.overrun == 0 for row in rows)
    high = rows_over(rows)
    assert high[:39] == [7] * 13 + [5] * 13 + [3] * 13
    assert high[-39:] == [3] * 13 + [5] * 13 + [7] * 13
    assert high[39:-39] == [1] * 130
    assert met(rows[8])[0] == (6, 12)  # the row back made it over the first place of the round


def rows_over(rows: Sequence[RowFabric]) -> list[int]:
    """How many rows stand above each place of the first, in rows of one stitch to a place."""
    over = np.zeros(rows[0].places, np.int64)
    columns = [np.arange(rows[0].places)]
    for row in rows[1:]:
        below = [columns[r][p] for r, p in zip(row.from_row, row.from_place, strict=True)]
        columns.append(np.asarray(below)[row.first])
        over[columns[-1]] += 1
    return over.tolist()


def test_a_round_worked_on_meets_what_was_left_first_when_not_turned() -> None:
    """The loop stands where the row ended."""
    rows = (
        Row(0, "RS", "start", (Work(F, 6),), 6, end=End("first_stitch")),
        Row(1, "RS", "body", (Work(S, 4), Leave(2)), 4),
        Row(2, "RS", "body", (Work(S, 6),), 6),
    )
    last = expand(Program((Piece("hat", True, rows),)), dictionary()).pieces["hat"][2]
    assert met(last) == [(0, 4), (0, 5), (1, 0), (1, 1), (1, 2), (1, 3)]


def test_a_row_begins_at_the_far_end_when_it_is_not_turned_in_an_open_piece() -> None:
    """The yarn is cut and joined anew: its own places first, then those left."""
    rows = (
        Row(0, "RS", "start", (Work(F, 5),), 5),
        Row(1, "RS", "body", (Work(S, 3), Leave(2)), 3, end=End(fasten_off=True)),
        Row(2, "RS", "body", (Work(S, 5),), 5),
    )
    last = expand(Program((Piece("band", False, rows),)), dictionary()).pieces["band"][2]
    assert met(last) == [(1, 0), (1, 1), (1, 2), (0, 3), (0, 4)]


def test_crab_stitch_is_met_from_its_end_when_worked_over() -> None:
    """It ran backwards, so a row in the usual way meets its last stitch first."""
    rows = (
        Row(0, "RS", "start", (Work(F, 3),), 3, end=End("first_stitch")),
        Row(1, "RS", "edge", (Work(S, 3),), 3, end=End("first_stitch"), backwards=True),
        Row(2, "RS", "edge", (Work(S, 3),), 3),
    )
    last = expand(Program((Piece("hem", True, rows),)), dictionary()).pieces["hem"][2]
    assert last.order.tolist() == [2, 1, 0]


def test_leaving_more_than_there_is_counts_as_overrun_when_expanded() -> None:
    """Nothing is raised; the proof finds it."""
    row = expanded(5, (Work(S, 3), Leave(4)))[1]
    assert (row.overrun, row.left.sum(), row.used.sum()) == (2, 2, 3)


def test_skipped_places_are_gone_when_the_next_row_comes() -> None:
    """Passed over on purpose is not left for later."""
    rows = expanded(6, (Work(S, 3), Skip(1), Leave(2)), (Work(S, 3),), (Work(S, 5),))
    assert met(rows[3])[3:] == [(0, 1), (0, 0)]


@pytest.mark.parametrize(("body", "row", "at"), [(7, 1, 0.05), (7, 2, 0.65)])
def test_a_short_row_lies_on_its_part_of_the_edge_when_placed(
    body: int, row: int, at: float
) -> None:
    """Seven of ten stitches: the first stands at a twentieth, the row back begins at 13/20."""
    rows = expanded(10, (Work(S, body), Leave(10 - body)), (Work(S, body),))
    assert float(angles(rows)[row][0]) == pytest.approx(at)


def test_a_marker_waits_where_it_is_when_a_short_row_does_not_reach_it() -> None:
    """It was put in the eighth stitch; two rows turn before it; the next increase finds it."""
    inc = Into((Work(S, 2),))
    rows = list(expanded(10, (Work(S, 9), inc), (Work(S, 11),)))
    marked = [
        ((inc, Work(S, 9)), (0,)),
        ((Work(S, 6), Leave(5)), ()),
        ((Work(S, 6),), ()),
        ((Work(S, 10), inc), (0,)),
    ]
    made = [rows[0].row]
    for number, (body, marks) in enumerate(marked, start=1):
        side: Side = "WS" if number % 2 == 0 else "RS"
        made.append(Row(number, side, "body", body, 0, NO_CHAIN, TURN, marks))
    # Row 1 (RS) ends with the increase at the far end of row 2's way; rows 2 and 3 turn before it.
    piece = expand(Program((Piece("back", False, tuple(made)),)), dictionary()).pieces["back"]
    followed = marked_parent(piece)
    assert followed.looked_at == 1
    assert followed.faults == ()
