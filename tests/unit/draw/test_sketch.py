"""Strokes for small pictures."""

from __future__ import annotations

from itertools import pairwise

import pytest

from frogless.draw.drawing import Circle, Line, Text
from frogless.draw.layout import extent
from frogless.draw.sketch import (
    along,
    bow,
    fitted,
    mirrored,
    rounds,
    scallops,
    simple,
    strip,
    turned,
    waved,
)

SQUARE = [(0.0, 0.0), (100.0, 0.0), (100.0, 100.0), (0.0, 100.0)]


def test_rounds_lie_across_the_area_at_even_distances() -> None:
    """From edge to edge, none on the outline."""
    lines = [line for line in rounds(SQUARE, 5.0) if isinstance(line, Line)]
    assert all((line.start[0], line.end[0]) == (0.0, 100.0) for line in lines)
    gaps = {round(b.start[1] - a.start[1], 6) for a, b in pairwise(lines)}
    assert len(gaps) == 1
    assert 0 < lines[0].start[1] < lines[-1].start[1] < 100


def test_rounds_turn_with_the_work() -> None:
    """At a right angle they run from top to bottom."""
    upright = [line for line in rounds(SQUARE, 5.0, angle_deg=90.0) if isinstance(line, Line)]
    assert all(line.start[0] == pytest.approx(line.end[0]) for line in upright)


def test_scallops_hang_below_an_edge_that_runs_to_the_right() -> None:
    """And nowhere above it; they begin and end with it."""
    box = extent([scallops([(0.0, 0.0), (100.0, 0.0)], 1.0)])
    assert (box.left, box.right, box.top) == (0.0, 100.0, 0.0)
    assert box.bottom > 1.0


def test_strip_lies_on_the_same_side() -> None:
    """A border as deep as it is told."""
    box = extent([strip([(0.0, 0.0), (100.0, 0.0)], 2.0, deep=1.5)])
    assert (box.top, box.bottom) == pytest.approx((0.0, 3.0))


def test_spot_along_a_line_goes_by_length() -> None:
    """Half way round two sides of a square is its corner."""
    assert along(SQUARE[:3], 0.5) == pytest.approx((100.0, 0.0))
    assert along(SQUARE[:3], 1.0) == (100.0, 100.0)


def test_bow_hangs_as_deep_as_it_is_told() -> None:
    """In its middle, and ends where it began in height."""
    line = bow((0.0, 5.0), (10.0, 5.0), 3.0)
    assert max(y for _, y in line) == pytest.approx(8.0)
    assert (line[0], line[-1]) == ((0.0, 5.0), (10.0, 5.0))


def test_waves_come_back_to_the_line_between_folds() -> None:
    """Three folds touch the line four times."""
    line = waved([(0.0, 0.0), (90.0, 0.0)], 3, 4.0)
    assert sum(y < 1e-9 for _, y in line) == 4
    assert max(y for _, y in line) == pytest.approx(4.0)


def test_small_steps_go_and_large_ones_stay() -> None:
    """As far off as is allowed."""
    steps = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (20.0, 10.0), (20.0, 20.0)]
    assert simple(steps, 8.0) == ((0.0, 0.0), (20.0, 20.0))
    assert len(simple(steps, 1.0)) == 5
    ring = [*SQUARE, SQUARE[0]]
    assert simple(ring, 8.0) == tuple(ring)


def test_mirror_image_of_a_mirror_image_is_the_same() -> None:
    """It runs the other way in between."""
    assert mirrored(mirrored(SQUARE)) == tuple(SQUARE)
    assert turned((1.0, 0.0), 90.0) == pytest.approx((0.0, 1.0))


def test_all_shapes_are_scaled_and_shifted() -> None:
    """A circle's radius too; lettering keeps its size."""
    line, circle, text = fitted(
        [Line((0, 0), (1, 1), "rib"), Circle((1, 1), 2, "tie knot"), Text((1, 0), "a", "axis")],
        3.0,
        10.0,
        20.0,
    )
    assert line == Line((10, 20), (13, 23), "rib")
    assert circle == Circle((13, 23), 6, "tie knot")
    assert text == Text((13, 20), "a", "axis")
