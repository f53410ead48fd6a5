"""Where on a garment a depth lies, in a maker's words."""

from __future__ import annotations

from dataclasses import replace

import pytest
from examples import Example, drafted

from frogless.publish.places_said import NEAR, where


@pytest.mark.parametrize("key", ["waist_girth", "high_hip_girth", "hip_girth", "hem"])
def test_depth_near_a_landmark_is_at_it(key: str) -> None:
    """A little above it as well as a little below."""
    found = drafted()
    piece = found.plan.main
    mark = next(mark for mark in piece.landmarks if mark.key == key)
    name = {"waist_girth": "waist", "high_hip_girth": "high hip", "hip_girth": "hip"}.get(key, key)
    for off in (-NEAR, 0.0, NEAR):
        assert where(found, piece, mark.depth + off) == f"at the {name}"


def test_depth_between_landmarks_is_so_far_below_the_waist() -> None:
    """In the units of the draft, as a tape is read."""
    piece = drafted().plan.main
    assert where(drafted(), piece, 55.0) == "5.5 cm below the waist"
    assert where(drafted(Example(), "in"), piece, 55.0) == "2 1/4 in below the waist"


def test_waist_below_the_top_edge_is_counted_from() -> None:
    """What lies above it is told from the top edge."""
    found = drafted()
    marks = tuple(replace(mark, depth=mark.depth + 100) for mark in found.plan.main.landmarks)
    piece = replace(found.plan.main, landmarks=marks)
    assert where(found, piece, 155.0) == "5.5 cm below the waist"
    assert where(found, piece, 50.0) == "5 cm below the top edge"


def test_piece_without_landmarks_is_measured_from_its_top() -> None:
    """There is nothing else to go by."""
    found = drafted()
    piece = replace(found.plan.main, landmarks=())
    assert where(found, piece, 300.0) == "30 cm below the top edge"
