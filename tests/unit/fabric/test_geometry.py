"""Where stitches lie, and the lines of their shaping points."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from frogless.errors import InputError
from frogless.fabric.expand import expand
from frogless.fabric.geometry import (
    angles,
    column_drift,
    decrease_points,
    is_mirrored,
    marked_parent,
    positions,
    shaping_points,
)
from frogless.fabric.model import RowFabric
from frogless.rows.nodes import (
    Chain,
    End,
    Into,
    Node,
    Piece,
    Program,
    Repeat,
    Row,
    Side,
    Start,
    Together,
    Work,
)
from frogless.stitches.load import dictionary

D = "double_crochet"
JOINED = End("chain_top", turn=True)
PLAIN = Start(2)


def expanded(*rows: Row) -> tuple[RowFabric, ...]:
    """The rows as one closed piece."""
    return expand(Program((Piece("skirt", True, rows),)), dictionary()).pieces["skirt"]


def round_of(
    number: int, side: Side, *body: Node, marks: tuple[int, ...] = (), start: Start = PLAIN
) -> Row:
    """A joined round."""
    return Row(number, side, "hip", body, 0, start, JOINED, marks)


def foundation(count: int) -> Row:
    """A joined foundation row."""
    return Row(0, "RS", "hip", (Work("foundation_double_crochet", count),), count, end=JOINED)


def increases(before: int, after: int, points: int = 2, each: int = 2) -> Repeat:
    """`points` increases, each between plain stitches."""
    plain = [Work(D, before)], [Work(D, after)]
    return Repeat((*plain[0], Into((Work(D, each),)), *plain[1]), points)


def skirt() -> tuple[Row, ...]:
    """Ten stitches; an increase at two points, a plain round, the next increase: turned rounds."""
    return (
        foundation(10),
        round_of(1, "WS", increases(2, 2), marks=(0, 0)),
        round_of(2, "RS", Work(D, 12)),
        round_of(3, "WS", increases(2, 3), marks=(1, 1)),
        round_of(4, "RS", increases(3, 3), marks=(0, 0)),
    )


def test_stitches_share_the_round_evenly_when_none_counts_as_the_join() -> None:
    """Each stands in the middle of its share; a chain that does not count stands on the join."""
    (at,) = angles(expanded(round_of(1, "RS", Chain(4, each=True))))
    assert at.tolist() == [0.0, 0.0, 0.125, 0.375, 0.625, 0.875]
    assert at.dtype == np.float64


def test_the_join_is_the_chain_when_it_counts() -> None:
    """The counted chain's middle lies at 0, in right-side and in wrong-side rounds."""
    counted = Start(3, counts=True)
    rows = expanded(
        foundation(4),
        round_of(1, "RS", Work(D, 3), start=counted),
        round_of(2, "WS", Work(D, 3), start=counted),
    )
    _, right, wrong = angles(rows)
    assert right.tolist() == [0, 0, 0, 0.25, 0.5, 0.75]
    assert wrong.tolist() == [0, 0, 0, 0.75, 0.5, 0.25]


def test_each_stitch_stands_over_its_own_when_rounds_are_turned() -> None:
    """In plain turned rounds a stitch lies just where the one lies that it stands on."""
    below, row = expanded(foundation(7), round_of(1, "WS", Work(D, 7)))
    under, over = angles([below, row])
    body = row.first >= 0
    assert over[body] == pytest.approx(under[below.made_by[row.first[body]]])


def test_ornaments_stand_with_the_stitch_before_them_when_they_leave_no_place() -> None:
    """A picot and the later chains of a run take no share of the round."""
    body = (Work(D), Work("picot"), Chain(3), Work(D))
    (at,) = angles(expanded(round_of(1, "RS", *body, start=Start())))
    assert at == pytest.approx(np.array([1, 1, 3, 3, 3, 5]) / 6)


@pytest.mark.parametrize(
    ("side", "backwards", "mirrored"),
    [("RS", False, False), ("WS", False, True), ("RS", True, True), ("WS", True, False)],
)
def test_a_row_is_mirrored_when_it_runs_against_the_right_side(
    side: Side, backwards: bool, mirrored: bool
) -> None:
    """Turned work and crab stitch run the other way; both together run on."""
    below, row = expanded(
        foundation(3), replace(round_of(1, side, Work(D, 3)), backwards=backwards)
    )
    assert is_mirrored(row) is mirrored
    last = angles([below, row])[1][-1]
    assert last == pytest.approx(1 / 6 if mirrored else 5 / 6)


def test_a_flat_row_begins_at_its_far_edge_when_turned() -> None:
    """Without a join the lifting chain of a wrong-side row stands at the far edge, not at 0."""
    flat = replace(round_of(1, "WS", Work(D, 2)), end=End(turn=True))
    assert angles(expanded(foundation(2), flat))[1].tolist() == [1.0, 1.0, 0.75, 0.25]


def test_a_row_without_places_lies_on_the_join_when_nothing_is_left() -> None:
    """A row of ornaments only has no round to share."""
    assert angles(expanded(round_of(1, "RS", Work("picot", 2))))[0].tolist() == [0.0] * 4


def test_positions_are_millimetres_when_width_and_height_are_given() -> None:
    """x along the unrolled tube, y in the middle of each row."""
    rows = expanded(foundation(4), round_of(1, "RS", Work(D, 4), start=Start()))
    (x0, y0), (x1, y1) = positions(rows, [5.0, 6.0], [8.0, 10.0])
    assert x0.tolist() == [2.5, 7.5, 12.5, 17.5]
    assert x1.tolist() == [3.0, 9.0, 15.0, 21.0]
    assert (set(y0.tolist()), set(y1.tolist())) == ({4.0}, {13.0})


def test_positions_are_refused_when_a_height_is_missing() -> None:
    """Every row needs its own width and height."""
    with pytest.raises(InputError, match="1 rows, 1 widths, 2 heights"):
        positions(expanded(foundation(4)), [5.0], [8.0, 10.0])


def test_shaping_points_are_the_groups_in_one_place_when_ornaments_stand_between() -> None:
    """Indices of the stitches that share a place, without the picots."""
    group = Into((Work(D), Work("picot"), Work(D)))
    _, row = expanded(foundation(5), round_of(1, "RS", Work(D, 2), group, Work(D, 2)))
    assert shaping_points(row) == ((4, 6),)
    assert shaping_points(expanded(foundation(3))[0]) == ()


def test_decrease_points_are_the_stitches_over_several_places_when_closed_together() -> None:
    """Each is a group of one."""
    _, row = expanded(foundation(6), round_of(1, "RS", Together(D, 2), Work(D), Together(D, 3)))
    assert decrease_points(row) == ((2,), (4,))
    assert shaping_points(row) == ()


def test_lines_run_straight_when_increases_are_centred() -> None:
    """Two points in turned rounds stray by half a stitch at most."""
    drifts = column_drift(expanded(*skirt()))
    assert [drift.number for drift in drifts] == [1, 3, 4]
    assert drifts[0].strays == pytest.approx((0.0, 0.0))
    assert max(drift.greatest for drift in drifts) == pytest.approx(0.5)


def test_a_line_strays_to_its_own_side_when_an_increase_is_off() -> None:
    """One stitch late lies further along in a right-side round and less far in a turned one."""
    late = increases(3, 1)
    for side, stray in (("RS", 1.0), ("WS", -1.0)):
        rows = expanded(foundation(10), round_of(1, side, late, marks=(0, 0)))
        assert column_drift(rows)[0].strays == pytest.approx((stray, stray))


def test_markers_lead_to_each_increase_when_moved_up() -> None:
    """Two increases in round 3 and two in round 4 are looked at; round 1 places the markers."""
    followed = marked_parent(expanded(*skirt()))
    assert (followed.faults, followed.looked_at) == ((), 4)


def test_an_increase_is_a_fault_when_no_marker_leads_to_it() -> None:
    """With the marker in the other stitch of the group round 3 misses it by one."""
    rows = list(skirt())
    rows[1] = replace(rows[1], marks=(1, 1))
    followed = marked_parent(expanded(*rows))
    assert followed.looked_at == 4
    assert followed.faults == (
        "row 3: shaping point 1 is worked into place 10 of the row below, where no marker is",
        "row 3: shaping point 2 is worked into place 4 of the row below, where no marker is",
    )


def test_a_marker_is_lost_when_the_stitch_over_it_is_missing() -> None:
    """A plain round that works two into the marked place does not lead on."""
    rows = list(skirt())
    rows[2] = round_of(2, "RS", Work(D, 3), Into((Work(D, 2),)), Work(D, 8))
    rows[3] = round_of(3, "WS", increases(2, 3), Work(D), marks=(0, 0))
    assert marked_parent(expanded(*rows[:4])).faults == (
        "row 3: shaping point 2 is worked into place 5 of the row below, where no marker is",
    )


@pytest.mark.parametrize(
    ("marks", "said"),
    [
        ((0,), "row 1: 1 markers for 2 shaping points"),
        ((0, 2), "row 1: marker 2 should go into stitch 3 of a group of 2"),
    ],
)
def test_marks_are_a_fault_when_they_do_not_fit_their_groups(
    marks: tuple[int, ...], said: str
) -> None:
    """As many marks as groups, each naming a stitch of its group."""
    rows = (skirt()[0], replace(skirt()[1], marks=marks))
    assert marked_parent(expanded(*rows)).faults == (said,)


def test_markers_are_placed_afresh_when_a_section_has_other_points() -> None:
    """A new section with four points asks nothing of the old markers; the same one does."""
    four = round_of(3, "WS", increases(1, 1, 4), marks=(0,) * 4)
    same_section = marked_parent(expanded(*skirt()[:3], four))
    other = marked_parent(expanded(*skirt()[:3], replace(four, section="hem")))
    assert same_section.faults == ("row 3: 4 shaping points, but 2 markers lead to it",)
    assert (other.faults, other.looked_at) == ((), 0)


def test_a_marker_leads_to_a_decrease_when_it_is_among_its_places() -> None:
    """Places worked together hold the marked one; one further on they do not."""
    first = round_of(1, "RS", increases(2, 2), marks=(0, 0))
    for before, after, faults in ((2, 2, 0), (1, 3, 0), (3, 1, 2)):
        over = Repeat((Work(D, before), Together(D, 2), Work(D, after)), 2)
        rows = (replace(foundation(10), end=End("first_stitch")), first)
        down = replace(round_of(2, "RS", over), marks=(0, 0))
        assert len(marked_parent(expanded(*rows, down)).faults) == faults
