"""What holds of every fabric, whatever is worked."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
from hypothesis import given
from hypothesis import strategies as st
from property.strategies import LEAVES, STANDS_ON, bodies, left_by, programs

from frogless.fabric.claims import left_over, spots
from frogless.fabric.compare import same
from frogless.fabric.expand import expand
from frogless.fabric.geometry import angles, column_drift, marked_parent, shaping_points
from frogless.fabric.model import Fabric, RowFabric, runs_back
from frogless.fabric.stretches import stretch
from frogless.rows.count import consumed, left, row_worked, worked
from frogless.rows.nodes import End, Into, Node, Piece, Program, Repeat, Row, Side, Start, Work
from frogless.rows.walk import flatten, unrolled
from frogless.stitches.load import dictionary

D = "double_crochet"
SHAPED = {*range(1, 20, 3), *range(23, 59, 7)}


def on_places(body: tuple[Node, ...], places: int) -> Fabric:
    """A body worked over a foundation of `places`, sound or not."""
    start = Row(0, "RS", "start", (Work("foundation_single_crochet", places),), places)
    row = Row(1, "RS", "body", body, 0)
    return expand(Program((Piece("piece", False, (start, row)),)), dictionary())


def every_row(program: Program) -> list[RowFabric]:
    """The rows of all pieces."""
    return [row for rows in expand(program, dictionary()).pieces.values() for row in rows]


@given(programs())
def test_sound_rows_account_for_every_place_when_expanded(program: Program) -> None:
    """Each place offered is used, skipped or left; what stitches take is what is used."""
    for row in every_row(program):
        assert row.overrun == 0
        assert bool(np.all((row.used > 0).astype(int) + row.skipped + row.left == 1))
        assert bool(np.all(np.diff(row.left[row.order]) >= 0))
        assert int(row.used.sum()) == int(row.taken.sum())
        assert sorted(row.order.tolist()) == list(range(row.used.size))
        assert row.places == int(row.counted.sum()) == row.row.count


@given(programs())
def test_places_are_conserved_when_rows_are_worked(program: Program) -> None:
    """What was made or begun on is used or skipped once, or still waits; nothing else is."""
    for name, rows in expand(program, dictionary()).pieces.items():
        waiting: set[tuple[int, int]] = set()
        if program.piece(name).bases:
            first = rows[0]
            waiting = set(zip(first.from_row.tolist(), first.from_place.tolist(), strict=True))
            assert len(waiting) == first.used.size
        for index, row in enumerate(rows):
            offered = list(zip(row.from_row.tolist(), row.from_place.tolist(), strict=True))
            assert len(set(offered)) == len(offered)
            assert set(offered) <= waiting
            assert row.behind == len(waiting) - len(offered)
            gone = (row.used > 0) | (row.skipped > 0)
            waiting -= {spot for spot, is_gone in zip(offered, gone, strict=True) if is_gone}
            waiting |= {(index, place) for place in range(row.places)}
        own = {(len(rows) - 1, place) for place in range(rows[-1].places)}
        assert set(left_over(rows)) == waiting - own


@given(programs())
def test_a_row_meets_the_last_stitch_first_when_it_is_turned(program: Program) -> None:
    """And the first of them when it goes on the same way round an open piece."""
    for name, rows in expand(program, dictionary()).pieces.items():
        for index, (below, row) in enumerate(pairwise(rows)):
            met = row.from_row[row.order] == index
            own = row.from_place[row.order][met].tolist()
            is_turned = runs_back(row.row) != runs_back(below.row)
            if is_turned and below.row.end.join == "none":
                assert own == sorted(own, reverse=True)
                assert not own or met[: len(own)].all()
            elif not is_turned:
                assert own == sorted(own)
                assert len(own) == below.places, name


@given(programs())
def test_pieces_begun_on_edges_stand_on_their_stretches_when_expanded(program: Program) -> None:
    """As many places as the stretches have, each of which the edge really has."""
    made = expand(program, dictionary()).pieces
    for piece in program.pieces:
        found = [stretch(base, made) for base in piece.bases]
        if found:
            assert made[piece.name][0].used.size == sum(each.size for each in found)
        for each in found:
            for _, part, row, place in spots(each):
                assert 0 <= row < len(made[each.piece])
                assert (
                    part in ("end", "left_end", "right_end") or place < made[each.piece][row].places
                )


@given(programs())
def test_stitches_are_those_counted_when_expanded(program: Program) -> None:
    """The arrays hold just the stitches that the tree counts, without unrolling either."""
    for row in every_row(program):
        found = np.bincount(row.stitch, minlength=len(row.keys)).tolist()
        assert {k: n for k, n in zip(row.keys, found, strict=True) if n} == row_worked(row.row)


@given(programs())
def test_stitches_lie_within_the_round_when_placed(program: Program) -> None:
    """Every fraction is from 0 to 1, in rising order for a row that is not mirrored."""
    rows = every_row(program)
    for row, at in zip(rows, angles(rows), strict=True):
        assert at.shape == row.stitch.shape
        assert bool(np.all((at >= 0) & (at <= 1)))
        if row.row.side == "RS" and not row.row.backwards:
            assert bool(np.all(np.diff(at) >= 0))


@given(bodies(), st.integers(0, 4), st.integers(0, 60))
def test_a_repeat_equals_its_flattening_when_expanded(
    body: tuple[Node, ...], times: int, places: int
) -> None:
    """Repeats, unrolled bodies and merged runs are one fabric, on enough places or too few."""
    repeat = (Repeat(body, times),)
    written_out = on_places(tuple(unrolled(repeat)), places)
    assert same(on_places(repeat, places), written_out) is None
    assert same(on_places(flatten(repeat), places), written_out) is None


@given(bodies(), st.integers(0, 5))
def test_a_repeat_counts_as_often_as_it_is_worked_when_counted(
    body: tuple[Node, ...], times: int
) -> None:
    """Places taken, places left and stitches worked are multiplied, and kept by flattening."""
    repeat = (Repeat(body, times),)
    assert consumed(repeat, STANDS_ON) == times * consumed(body, STANDS_ON)
    assert left(repeat, LEAVES) == times * left_by(body)
    assert sum(worked(repeat).values()) == times * sum(worked(body).values())
    flat = flatten(repeat)
    assert flatten(flat) == flat
    assert worked(flat) == worked(repeat)
    assert consumed(flat, STANDS_ON) == times * consumed(body, STANDS_ON)
    assert left_by(flat) == left(repeat, LEAVES)


@given(bodies(), st.integers(0, 30))
def test_overrun_is_what_is_missing_when_places_are_too_few(
    body: tuple[Node, ...], places: int
) -> None:
    """Whatever is asked, the row expands, and what is missing is counted."""
    row = on_places(body, places).pieces["piece"][1]
    assert row.overrun == max(0, consumed(body, STANDS_ON) - places)
    assert row.places == left_by(body)
    assert int(row.used.sum()) == int(row.taken.sum())


def flared_skirt(counts: bool, turned: bool) -> tuple[RowFabric, ...]:
    """152 stitches, 60 rounds, eight more in each of thirteen rounds, the increases in a line."""
    count, end = 152, End("first_stitch", turned)
    start = Start(3, True) if counts else Start(2)
    rows = [Row(0, "RS", "start", (Work("foundation_double_crochet", count),), count, end=end)]
    for number in range(1, 61):
        side: Side = "WS" if turned and number % 2 else "RS"
        first = int(counts)
        body: tuple[Node, ...] = (Work(D, count - first),)
        if number in SHAPED:
            body = _shaped(count, first)
            count += 8
        marks = (count // 8 % 2,) * 8 if number in SHAPED else ()
        end = End("chain_top", turned)
        rows.append(Row(number, side, "body", body, count, start, end, marks))
    return expand(Program((Piece("skirt", True, tuple(rows)),)), dictionary()).pieces["skirt"]


def _shaped(count: int, first: int) -> tuple[Node, ...]:
    """Eight increases, each in the middle of its eighth; a counted chain stands for a stitch."""
    gap = count // 8
    before = (gap - 1 + first) // 2
    once = (Work(D, before), Into((Work(D, 2),)), Work(D, gap - 1 - before))
    return (Work(D, before - first), *once[1:], Repeat(once, 7))


def test_a_flared_skirt_has_12960_stitches_when_expanded() -> None:
    """The hand-worked skirt: 152 to 256 in 60 rounds, 12 960 double crochets in all."""
    for counts in (True, False):
        for turned in (True, False):
            rounds = flared_skirt(counts, turned)[1:]
            assert sum(int(row.counted.sum()) for row in rounds) == 12_960
            made = sum(int((row.stitch == row.keys.index(D)).sum()) for row in rounds)
            assert made == 12_960 - 60 * counts
            assert rounds[-1].places == 256
            assert all(row.overrun == 0 and bool(np.all(row.used > 0)) for row in rounds)
            assert sum(len(shaping_points(row)) for row in rounds) == 13 * 8


def test_lines_of_a_flared_skirt_run_true_when_increases_are_centred() -> None:
    """No shaping point strays more than half a stitch, worked either way."""
    for counts in (True, False):
        for turned in (True, False):
            drifts = column_drift(flared_skirt(counts, turned))
            assert len(drifts) == 13
            assert max(drift.greatest for drift in drifts) <= 0.5 + 1e-9


def test_markers_are_followed_through_a_flared_skirt_when_looked_at() -> None:
    """Twelve rounds of eight increases lie above the first."""
    followed = marked_parent(flared_skirt(counts=False, turned=False))
    assert (followed.faults, followed.looked_at) == ((), 96)
