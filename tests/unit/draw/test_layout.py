"""Room for lettering, and labels that make way."""

from __future__ import annotations

from itertools import pairwise, product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from frogless.draw.drawing import Circle, Line, Text, polyline
from frogless.draw.layout import Box, extent, spread, text_box, text_width, wrap

HEIGHTS = st.floats(1, 12)
LABELS = st.lists(st.tuples(st.floats(-50, 150), HEIGHTS), min_size=1, max_size=8)


def test_labels_stay_when_there_is_room() -> None:
    """Nothing moves that does not have to."""
    assert spread([0.0, 10.0, 30.0], [4.0, 4.0, 4.0]) == pytest.approx((0.0, 10.0, 30.0))


def test_two_labels_part_evenly_when_they_want_one_spot() -> None:
    """Each gives way by half."""
    assert spread([10.0, 10.0], [4.0, 4.0]) == pytest.approx((8.0, 12.0))


def test_group_pushes_its_neighbour_when_it_grows() -> None:
    """A chain of three settles as one pool about its mean."""
    assert spread([0.0, 0.0, 3.0], [4.0, 4.0, 4.0]) == pytest.approx((-3.0, 1.0, 5.0))


def test_labels_keep_inside_when_bounds_are_given() -> None:
    """The first and the last are held by the edge, in their order."""
    assert spread([0.0, 1.0], [4.0, 4.0], 0.0, 20.0) == pytest.approx((2.0, 6.0))
    assert spread([19.0, 20.0], [4.0, 4.0], 0.0, 20.0) == pytest.approx((14.0, 18.0))


@given(LABELS)
def test_labels_never_overlap(labels: list[tuple[float, float]]) -> None:
    """Neighbours are at least half of both heights apart, in the order wanted."""
    wanted, heights = sorted(y for y, _ in labels), [height for _, height in labels]
    places = list(zip(spread(wanted, heights), heights, strict=True))
    for (a, high), (b, low) in pairwise(places):
        assert b - a >= (high + low) / 2 - 1e-6


def test_spread_is_the_least_move_when_all_others_are_tried() -> None:
    """No arrangement on a half-millimetre grid moves labels less, by squares."""
    wanted, heights = [0.0, 1.0, 1.5], [2.0, 3.0, 2.0]

    def moved(places: tuple[float, ...]) -> float:
        return sum((a - b) ** 2 for a, b in zip(places, wanted, strict=True))

    grid = [i / 2 for i in range(-12, 16)]
    allowed = (
        p for p in product(grid, repeat=3) if p[1] - p[0] >= 2.5 and p[2] - p[1] >= 2.5
    )  # fmt: skip
    assert moved(spread(wanted, heights)) <= min(moved(places) for places in allowed) + 1e-9


def test_bold_and_longer_text_takes_more_room() -> None:
    """Width grows with letters, wide letters and weight."""
    assert text_width("hip", "value") < text_width("high hip", "value")
    assert text_width("iii", "value") < text_width("mmm", "value")
    assert text_width("hip", "value") / 3.7 < text_width("hip", "name") / 3.8


def test_box_follows_anchor_and_turn() -> None:
    """Start, middle and end lie as set; a quarter turn stands the box upright."""
    width = text_width("61 cm", "length")
    boxes = [
        text_box(Text((10, 20), "61 cm", "length", anchor)) for anchor in ("start", "middle", "end")
    ]
    assert [box.left for box in boxes] == pytest.approx([10, 10 - width / 2, 10 - width])
    upright = text_box(Text((10, 20), "61 cm", "length", "middle", -90))
    assert upright.bottom - upright.top == pytest.approx(width)
    assert upright.right - upright.left == pytest.approx(boxes[0].bottom - boxes[0].top)
    assert upright.left < 10 < upright.right


def test_long_text_breaks_at_blanks_only() -> None:
    """Lines keep to the width where words allow; what is bound by a no-break space stays whole."""
    text = "farthest from wanted: +3\u00a0cm\u00a0in\u00a0round\u00a01, -2\u00a0cm"
    lines = wrap(text, "legend", 40.0)
    assert " ".join(lines) == text
    assert all(text_width(line, "legend") <= 40.0 for line in lines)
    assert wrap("unbreakable", "legend", 1.0) == ("unbreakable",)


def test_extent_holds_every_kind_of_shape() -> None:
    """Lines, paths, circles and lettering count with all they cover."""
    shapes = (
        Line((0, 0), (1, 1), "tick"),
        Circle((5, 5), 2, "bead"),
        polyline([(3, -4)], "wanted"),
    )
    assert extent(shapes) == Box(0, -4, 7, 7)
    assert extent((*shapes, Text((0, 20), "x", "name"))).bottom > 20


def test_boxes_that_touch_do_not_overlap() -> None:
    """A shared edge is no overlap; a shared strip is."""
    box = Box(0, 0, 2, 2)
    assert not box.overlaps(Box(2, 0, 4, 2))
    assert box.overlaps(Box(1.9, 1.9, 4, 4))
    assert Box(-1, -1, 3, 3).holds(box)
    assert not box.holds(Box(-1, -1, 3, 3))


def test_line_crosses_a_box_only_through_its_inside() -> None:
    """Through, into and along an edge; past a corner; short of it."""
    box = Box(0, 0, 4, 2)
    assert box.crossed_by((-1, 1), (5, 1))
    assert box.crossed_by((2, -1), (2, 1))
    assert box.crossed_by((-1, -1), (3, 1.5))
    assert not box.crossed_by((-1, 2), (5, 2))
    assert not box.crossed_by((-1, 1), (0, 4))
    assert not box.crossed_by((-3, 1), (-1, 1))
