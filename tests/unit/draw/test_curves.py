"""Smooth lines, and what of them lies in a window."""

from __future__ import annotations

from math import cos, pi, sin

import pytest

from frogless.draw.curves import Cubic, Knot, crossings, filled, flat, seen, smooth
from frogless.draw.drawing import Point
from frogless.draw.layout import Box, extent

CIRCLE = [(10 * cos(i * pi / 6), 10 * sin(i * pi / 6)) for i in range(12)]


def ring() -> tuple[Cubic, ...]:
    """Smooth round a circle of radius 10, told by twelve points."""
    return smooth([Knot(point) for point in CIRCLE], closed=True)


def area(points: tuple[Point, ...]) -> float:
    """By Gauss's formula."""
    pairs = zip(points, (*points[1:], points[0]), strict=True)
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in pairs)) / 2


def test_curve_runs_through_its_knots() -> None:
    """In order, from the first to the last."""
    knots = [Knot((0, 0)), Knot((3, 4)), Knot((9, 4)), Knot((9, 0))]
    curves = smooth(knots)
    assert [curve[0] for curve in curves] == [knot.at for knot in knots[:-1]]
    assert curves[-1][3] == (9, 0)


def test_tangent_is_the_same_on_both_sides_of_a_knot_that_is_no_corner() -> None:
    """And at a corner it may break."""
    knots = [Knot((0, 0)), Knot((4, 0)), Knot((4, 4))]
    for is_corner in (False, True):
        before, after = smooth([knots[0], Knot((4, 0), is_corner), knots[2]])
        coming = (before[3][0] - before[2][0], before[3][1] - before[2][1])
        leaving = (after[1][0] - after[0][0], after[1][1] - after[0][1])
        assert (coming == pytest.approx(leaving)) != is_corner


def test_ring_through_twelve_points_is_nearly_a_circle() -> None:
    """Its area is within a hundredth of the circle's."""
    assert area(flat(ring())) == pytest.approx(pi * 100, rel=0.01)


def test_crossings_are_told_from_left_to_right() -> None:
    """Both sides of a ring, symmetric; none above it."""
    left, right = crossings(ring(), 3.0)
    assert left == pytest.approx(-right)
    assert crossings(ring(), 11.0) == ()


def test_window_cuts_a_line_where_it_leaves() -> None:
    """The upper half of a ring, its ends on the edge of the window."""
    window = Box(-20.0, -20.0, 20.0, 2.0)
    (run,) = seen([*ring()[3:], *ring()[:3]], window, "outline")
    assert extent([run]).bottom == pytest.approx(2.0, abs=1e-6)
    assert run.start[1] == pytest.approx(2.0, abs=1e-6)
    assert list(seen(ring(), Box(50, 50, 60, 60), "outline")) == []


def test_area_is_cut_straight_and_left_whole_when_it_lies_inside() -> None:
    """Half of a ring has half its area; one outside has none."""
    (half,) = filled(ring(), Box(-20.0, -20.0, 20.0, 0.0), "cloth")
    assert area(half.points) == pytest.approx(area(flat(ring())) / 2, rel=0.01)
    (whole,) = filled(ring(), Box(-20.0, -20.0, 20.0, 20.0), "cloth")
    assert all(len(segment) == 3 for segment in whole.segments)
    assert filled(ring(), Box(50, 50, 60, 60), "cloth") == ()
