"""Waist, edging and strands as strokes."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

import pytest
from one_piece import alter
from sample_plans import band, build, circle, cord, elastic, flared, long, straight, strand, tiny

from frogless.draw.drawing import Circle, Path, Shape
from frogless.draw.frame import Frame
from frogless.draw.layout import extent
from frogless.draw.outline import levels
from frogless.draw.trims import edging_shapes, strand_shapes, waist_shapes
from frogless.plan.model import Plan


def frame(plan: Plan, scale: float = 0.08) -> Frame:
    """Centre front of the top edge at (60, 20)."""
    return Frame(scale, 60.0, 20.0, levels(plan))


def of(shapes: Iterable[Shape], style: str) -> list[Shape]:
    """Those of one class."""
    return [shape for shape in shapes if shape.style == style]


def test_front_strand_is_drawn_whole() -> None:
    """Between two points of the front: one line with all beads, its span wide, its sag deep."""
    plan = build(flared())
    shapes = strand_shapes(plan.main.strands[0], plan, frame(plan))
    box = extent(of(shapes, "strand"))
    assert len(of(shapes, "bead")) == 12
    assert not of(shapes, "strand behind")
    assert box.bottom - box.top == pytest.approx(50 * 0.08)
    assert box.right - box.left == pytest.approx(32 * 100 / 18 * 0.08)


def test_strand_goes_behind_when_it_passes_the_side() -> None:
    """Only the beads in front are seen, the rest is dashed; nothing leaves the skirt."""
    plan = build(flared())
    shapes = strand_shapes(plan.main.strands[1], plan, frame(plan))
    assert of(shapes, "strand")
    assert of(shapes, "strand behind")
    assert 0 < len(of(shapes, "bead")) < 12
    right = frame(plan).edges(0.0)[1][0]
    assert extent(of(shapes, "strand")).right <= right + 1e-6


def test_strand_at_the_back_shows_no_bead() -> None:
    """Two points behind are joined behind."""
    plan = build(flared())
    shapes = strand_shapes(strand(60, 74, 78, 20), plan, frame(plan))
    assert [shape.style for shape in shapes] == ["strand behind"]


def test_edging_has_a_scallop_for_each_repeat_in_front() -> None:
    """32 repeats, 16 of them in front, along the whole hem and as deep as the edging."""
    plan = build(flared())
    (scallops,) = edging_shapes(plan, frame(plan))
    assert isinstance(scallops, Path)
    assert len(scallops.segments) == 16
    assert scallops.start == frame(plan).edges(600.0)[0]
    assert scallops.segments[-1][-1] == pytest.approx(frame(plan).edges(600.0)[1])


def test_scallops_are_fewer_when_they_would_run_together() -> None:
    """175 repeats at a small scale are hinted at by as many as can be told apart."""
    plan = build(circle())
    (scallops,) = edging_shapes(plan, frame(plan, 0.03))
    assert isinstance(scallops, Path)
    assert 10 < len(scallops.segments) < 87
    xs = [segment[-1][0] for segment in scallops.segments]
    assert min(b - a for a, b in pairwise(xs)) >= 1.2


def test_plain_edging_is_a_strip() -> None:
    """Without repeats there are no scallops; without an edging there is nothing."""
    plan = build(straight())
    (strip,) = edging_shapes(plan, frame(plan))
    assert isinstance(strip, Path)
    assert all(len(segment) == 1 for segment in strip.segments)
    assert edging_shapes(alter(plan, edging=None), frame(plan)) == ()


def test_elastic_is_a_strip_drawn_in_above_the_edge() -> None:
    """As wide at the top as its ring, as at the bottom the edge, with crosses for the stitches."""
    plan = alter(build(flared()), waist=elastic(840))
    strip, *crosses = waist_shapes(plan, frame(plan), "centre back")
    assert isinstance(strip, Path)
    (left, top), (right, _) = strip.points[:2]
    assert right - left == pytest.approx(756 / 2 * 0.08)
    assert top == pytest.approx(20 - 20 * 0.08)
    assert crosses
    assert {cross.style for cross in crosses} == {"hatch"}


def test_band_is_ribbed_upright_to_its_height() -> None:
    """The band stands its height above the edge and its ribs reach from top to bottom."""
    plan = alter(build(long()), waist=band(700, 60, 98))
    outline, *ribs = waist_shapes(plan, frame(plan), "centre back")
    box = extent([outline])
    assert box.bottom - box.top == pytest.approx(60 * 0.08)
    assert len(ribs) > 10
    assert extent(ribs).top == pytest.approx(box.top)


def test_cord_shows_the_eyelets_of_the_front_and_a_bow() -> None:
    """Of 20 eyelets joined at centre back ten lie in front, mirrored, in round 2."""
    plan = alter(build(flared()), waist=cord(20, 8, 1540))
    shapes = waist_shapes(plan, frame(plan), "centre back")
    holes = [shape for shape in of(shapes, "eyelet") if isinstance(shape, Circle)]
    assert len(holes) == 10
    assert sum(hole.centre[0] - 60 for hole in holes) == pytest.approx(0.0, abs=0.1)
    assert {round(hole.centre[1], 3) for hole in holes} == {round(20 + 15 * 0.08, 3)}
    assert len(of(shapes, "cord knot")) == 1


def test_waist_without_treatment_has_no_strokes() -> None:
    """Nothing is hinted where nothing is put on."""
    plan = alter(build(tiny()), waist=None)
    assert waist_shapes(plan, frame(plan), "centre back") == ()
