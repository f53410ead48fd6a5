"""Counts landed together against all counts, shaping rounds against what they promise."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from frogless.plan import shaping
from frogless.plan.landing import Rise, Stop, land, land_together
from frogless.plan.shaping import Round
from frogless.rows.count import consumed, left
from frogless.rows.nodes import Side

STANDS = {"double_crochet": 1}


@st.composite
def stops(draw: st.DrawFn) -> list[Stop]:
    """Two to four girths with narrow ranges, some of them carried on."""
    found = []
    for i in range(draw(st.integers(2, 4))):
        width = draw(st.sampled_from([5.0, 100 / 18, 7.3]))
        wanted = float(draw(st.integers(200, 330)))
        step = draw(st.sampled_from([0, 1, 2, 4, 6]))
        rounds = draw(st.sampled_from([None, 1, 3, 8]))
        floor = (draw(st.integers(0, rounds)), draw(st.integers(30, 60))) if rounds else None
        floors = (floor,) if floor and draw(st.booleans()) else ()
        multiple = draw(st.sampled_from([1, 1, 2, 3, 4]))
        found.append(
            Stop(
                wanted=wanted,
                low=wanted - draw(st.integers(0, 40)),
                high=wanted + draw(st.integers(0, 40)),
                width=width,
                rise=Rise() if i == 0 else Rise(step, rounds, draw(st.integers(1, 3)), floors),
                multiple=multiple,
                offset=draw(st.integers(0, multiple - 1)),
                fuller=draw(st.booleans()),
            )
        )
    return found


def shapings_allow(stop: Stop, before: int, after: int) -> bool:
    """Whether any set of shaping rounds leads from one count to the other and keeps the floors."""
    rise, change = stop.rise, after - before
    if rise.step == 0:
        return change == 0 and all(before >= least for _, least in rise.floors)
    if change % rise.step:
        return False
    times, sign = abs(change) // rise.step, 1 if change >= 0 else -1
    if rise.rounds is None:
        return True
    for at in itertools.combinations(range(1, rise.rounds + 1), times):
        if any(b - a < rise.every for a, b in itertools.pairwise(at)):
            continue
        girth = [
            before + sign * rise.step * sum(a <= r for a in at) for r in range(rise.rounds + 1)
        ]
        if all(girth[r] >= least for r, least in rise.floors):
            return True
    return False


@settings(max_examples=300, deadline=None)
@given(stops())
def test_counts_landed_together_are_the_nearest_of_all(given_stops: list[Stop]) -> None:
    """No other counts that may follow each other lie nearer in sum."""
    ranges = [s.counts() if i == 0 or s.rise.step else None for i, s in enumerate(given_stops)]
    ways: list[tuple[int, ...]] = [(n,) for n in ranges[0] or []]
    for stop, choice in zip(given_stops[1:], ranges[1:], strict=True):
        ways = [
            (*way, n)
            for way in ways
            for n in (choice if choice is not None else [way[-1]])
            if shapings_allow(stop, way[-1], n)
        ]
    found = land_together(given_stops)
    assert (found is None) == (not ways)
    if found is not None:
        assert found in ways

        def off(counts: tuple[int, ...]) -> float:
            pairs = zip(given_stops, counts, strict=True)
            return sum(s.cost(n)[0] for i, (s, n) in enumerate(pairs) if i == 0 or s.rise.step)

        assert off(found) == pytest.approx(min(map(off, ways)), abs=1e-3)


@given(
    st.floats(100, 2000),
    st.floats(2, 30),
    st.integers(1, 24),
    st.integers(0, 5),
    st.booleans(),
)
def test_girth_lands_on_the_nearest_count_of_its_multiple(
    girth: float, width: float, multiple: int, offset: int, fuller: bool
) -> None:
    """No count that leaves the offset over the multiple lies nearer."""
    offset %= multiple
    landed = land(girth, width, multiple, offset, fuller=fuller)
    assert landed.count % multiple == offset
    assert landed.count > 0
    nearest = min(
        abs(n * width - girth)
        for n in range(max(landed.count - 2 * multiple, 1), landed.count + 3 * multiple)
        if n % multiple == offset
    )
    assert abs(landed.girth - girth) == pytest.approx(nearest, abs=1e-4)


ADDED = (1, 2, -1, -2)


def sound(one: Round) -> None:
    """A round uses every place, leaves what it says, and shapes evenly about the join."""
    body = shaping.body("double_crochet", one)
    chain = int(one.chain_counts)
    assert consumed(body, STANDS) + chain == one.places
    assert left(body, STANDS) + chain == one.left
    at, n = one.positions(), one.places
    around = [b - a for a, b in zip(at, (*at[1:], at[0] + n), strict=True)]
    assert max(around) - min(around) <= 1
    # The middle of each point, and its mirror image about the join, in half stitches.
    half = [2 * p + one.taken - chain for p in at]
    mirrored = [2 * n - h for h in reversed(half)]
    assert max(abs(a - b) for a, b in zip(half, mirrored, strict=True)) <= 2
    for i, h in enumerate(half):
        assert abs(h / 2 - (2 * i + 1) * n / (2 * one.points)) <= 0.5 + 1e-9


@pytest.mark.parametrize("chain_counts", [False, True])
@pytest.mark.parametrize("add", ADDED)
@pytest.mark.parametrize("points", [1, 2, 3, 4, 5, 6, 8, 12])
def test_shaping_round_is_even_and_symmetric(points: int, add: int, *, chain_counts: bool) -> None:
    """Gaps differ by one at most; symmetric about the join to half a stitch; nothing left over."""
    for places in range(max(40, 3 * points), 201):
        sound(Round(places, points, add, chain_counts=chain_counts))


def leads(below: Round, above: Round) -> bool:
    """Whether each marker of a round leads to a place that the next shaping round takes."""
    marks = shaping.marks(below, above)
    assert all(0 <= mark < below.made for mark in marks)
    marked = [group + mark for group, mark in zip(below.groups(), marks, strict=True)]
    if below.side != above.side:
        last = above.places - int(not above.chain_counts)
        marked = [last - place for place in reversed(marked)]
    return all(
        at <= place < at + above.taken for at, place in zip(above.positions(), marked, strict=True)
    )


@pytest.mark.parametrize("chain_counts", [False, True])
@pytest.mark.parametrize("side", ["RS", "WS"])
@pytest.mark.parametrize("adds", list(itertools.product(ADDED, ADDED)))
def test_markers_lead_from_each_shaping_round_to_the_next(
    adds: tuple[int, int], side: Side, *, chain_counts: bool
) -> None:
    """In turned and unturned rounds, widening, narrowing and where one changes to the other.

    n in 40..200 and one to eight points; the mark lies inside its group.
    """
    for points, places in itertools.product((1, 2, 3, 4, 6, 8), range(40, 201)):
        first = Round(places, points, adds[0], "RS", chain_counts)
        below, above = shaping.in_line(
            (first, Round(first.left, points, adds[1], side, chain_counts))
        )
        assert leads(below, above), (points, places)
        shifts = (
            a - b
            for a, b in zip(
                above.positions(),
                Round(above.places, points, adds[1], side, chain_counts).positions(),
                strict=True,
            )
        )
        assert max(map(abs, shifts)) <= 1
