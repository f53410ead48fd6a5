"""Discs and shawls of any gauge and size: how far they are off, how even, never stacked."""

from __future__ import annotations

import math
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from frogless.plan.pieces.disc_rate import FRILL, flat_rate, to_count, to_radius
from frogless.plan.pieces.disc_rows import cornered, grown, spread_at, stacked, staggered
from frogless.plan.pieces.disc_stages import shaped
from frogless.plan.pieces.rounds import Manner
from frogless.plan.pieces.shawl_rows import asymmetric, crescent, gains, spread_of, triangle
from frogless.swatch import Gauge
from frogless.units import Measured

HOW = Manner(turned=False, spiral=True, chain_counts=False, on_chain=False)


@st.composite
def gauges(draw: st.DrawFn) -> Gauge:
    """From fine lace to bulky yarn, from single crochet to treble, good to 1 to 4 %."""
    width = draw(st.floats(2, 12))
    height = width * draw(st.floats(0.75, 2.9))
    off = draw(st.floats(0.01, 0.04))
    return Gauge(
        "double_crochet", Measured(width, width * off), Measured(height, height * off), "washed"
    )


@given(gauges(), st.floats(0.4, 2.5), st.integers(1, 40))
def test_a_disc_strays_no_further_than_can_be_seen(own: Gauge, lie: float, rounds: int) -> None:
    """The edge has what was asked for, within a stitch or the gauge's uncertainty."""
    flat = flat_rate(own)
    made = to_radius(flat, lie, rounds)
    wanted = max(flat.value * lie * rounds, 3)
    assert abs(made.counts[-1] - wanted) <= max(1, flat.relative * wanted) + 1e-6
    assert len(made.counts) == rounds
    steps = {b - a for a, b in pairwise(made.counts)}
    assert len(steps) <= 1 or max(steps) - min(steps) <= 1 or min(made.counts) == 3


@given(gauges(), st.floats(300, 1400), st.floats(1, 4))
def test_a_crown_comes_to_its_girth(own: Gauge, girth: float, seen: float) -> None:
    """Within what cannot be seen, else to the nearest stitch; each round adds no more than one step."""
    flat, exact = flat_rate(own), girth / own.width.value
    made = to_count(flat, 1.0, exact, seen)
    assert abs(made.counts[-1] - exact) <= (seen if made.even else 0.5) + 1e-6
    steps = [made.counts[0], *(b - a for a, b in pairwise(made.counts))]
    assert all(0 < step <= made.per_round for step in steps)
    assert abs(made.per_round - flat.value) <= max(FRILL * flat.value, 0.5) + 1e-6


@given(st.integers(4, 24), st.integers(4, 40))
def test_increases_are_never_stacked_when_every_round_adds_as_many(step: int, rounds: int) -> None:
    """Once there is a stitch between two increases."""
    counts = [step * r for r in range(1, rounds + 1)]
    spreads = list(staggered(counts, 2, HOW))
    for below, above in list(pairwise(spreads))[1:]:
        assert stacked(grown(below), above) == 0
    assert [sum(spread) for spread in spreads] == counts[1:]


@given(st.integers(1, 400), st.data())
def test_increases_are_spread_evenly(places: int, data: st.DataObject) -> None:
    """Gaps differ by one at most, all round."""
    add = data.draw(st.integers(1, 2 * places))
    spread = spread_at(places, add, data.draw(st.sampled_from([0.0, 0.25, 0.5, 0.75])))
    assert sum(spread) == places + add
    assert max(spread) - min(spread) <= 1
    at = [i for i, many in enumerate(spread) if many == max(spread)]
    gaps = {b - a for a, b in pairwise([*at, at[0] + places])}
    assert max(gaps) - min(gaps) <= 1


@given(st.integers(3, 12), st.integers(1, 4), st.integers(3, 30))
def test_a_polygon_keeps_its_corners(corners: int, add: int, rounds: int) -> None:
    """As many stitches lie between any two of them, within one."""
    counts = [corners * add * r for r in range(1, rounds + 1)]
    for spread in cornered(counts, corners, 2, HOW):
        at = [i for i, many in enumerate(spread) if many > 1]
        assert len(at) == corners
        gaps = {b - a for a, b in pairwise([*at, at[0] + len(spread)])}
        assert max(gaps) - min(gaps) <= 1


@given(st.integers(20, 300), st.integers(-60, 200), st.integers(1, 60), st.integers(4, 16))
def test_a_section_comes_to_its_count(before: int, change: int, rounds: int, step: int) -> None:
    """Within what cannot be seen, always the same way."""
    target = max(before + change, 6)
    counts = (before, *shaped(before, target, rounds, step, 1.0))
    assert len(counts) == rounds + 1
    assert abs(counts[-1] - target) <= 1
    steps = [b - a for a, b in pairwise(counts)]
    assert all(s >= 0 for s in steps) if target >= before else all(s <= 0 for s in steps)


@given(st.floats(0.7, 2.9), st.integers(2, 90), st.floats(1, 2.4), st.floats(2, 6))
def test_rows_of_a_shawl_follow_their_rates(
    ratio: float, rows: int, angle: float, times: float
) -> None:
    """Within half a stitch on each side and inside, symmetric where the shape is."""
    for rates in (triangle(angle), crescent(times * 300, 300), asymmetric(angle / 2)):
        made = gains(rates, [ratio] * rows)
        for name in ("right", "left", "spine", "inside"):
            total = sum(getattr(gain, name) for gain in made)
            assert math.isclose(total, getattr(rates, name) * ratio * rows, abs_tol=0.5 + 1e-6)
        if rates.right:
            assert all(gain.right == gain.left for gain in made)


@given(st.floats(0.7, 2.9), st.integers(2, 60), st.floats(1, 2.4))
def test_a_triangle_is_a_mirror_image_of_itself(ratio: float, rows: int, angle: float) -> None:
    """About the stitch of its spine, in every row."""
    count = 1
    for gain in gains(triangle(angle), [ratio] * rows):
        spread = spread_of(count, gain, 0)
        assert count == 1 or spread == spread[::-1]
        count += gain.total
        assert count % 2 == 1
