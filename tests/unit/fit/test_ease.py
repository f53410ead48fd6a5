"""Ease by landmark."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from one_piece import alter

from frogless.fit.ease import landmarks
from frogless.plan.model import Landmark, Plan


def test_ease_is_garment_less_body_when_a_landmark_has_a_body(skirt: Callable[..., Plan]) -> None:
    """The hip of 208 stitches is 115.6 cm: 3.6 cm of the 4 cm wanted."""
    hip = landmarks(skirt())[1]
    assert hip.at == "hip_girth"
    assert hip.ease == pytest.approx(35.6, abs=0.1)
    assert hip.wanted_ease == pytest.approx(40)
    assert hip.verdict == "ok"


def test_ease_is_none_when_a_hem_meets_no_body(skirt: Callable[..., Plan]) -> None:
    """A hem without a body girth has a garment girth and no ease."""
    hem = landmarks(skirt())[2]
    assert (hem.body, hem.ease, hem.wanted_ease) == (None, None, None)


def test_interval_is_two_sided_95_percent_when_the_gauge_is_uncertain(
    skirt: Callable[..., Plan],
) -> None:
    """At 1 % the waist of 844 mm lies within 1.96 x 8.4 mm."""
    waist = landmarks(skirt())[0]
    assert waist.high - waist.garment == pytest.approx(1.96 * 8.44, abs=0.05)
    assert waist.garment - waist.low == pytest.approx(1.96 * 8.44, abs=0.05)


@pytest.mark.parametrize(
    ("low", "high", "verdict"),
    [
        (860.0, 900.0, "tight"),
        (800.0, 840.0, "loose"),
        (152 * 100 / 18, 900.0, "ok"),
        (float("-inf"), float("inf"), "ok"),
    ],
)
def test_verdict_follows_the_bounds_when_the_garment_is_beside_or_on_them(
    landmark: Callable[..., Landmark],
    skirt: Callable[..., Plan],
    low: float,
    high: float,
    verdict: str,
) -> None:
    """Below the least allowed is tight, above the most loose, on a bound ok."""
    waist = replace(landmark("waist_girth", 0, 152, 840.0, 840.0), low=low, high=high)
    assert landmarks(alter(skirt(), landmarks=(waist,)))[0].verdict == verdict


def test_estimated_is_carried_over_when_the_body_was_estimated(
    landmark: Callable[..., Landmark], skirt: Callable[..., Plan]
) -> None:
    """What was estimated stays marked."""
    hip = replace(landmark("hip_girth", 20, 208, 1120.0, 1160.0), estimated=True)
    assert landmarks(alter(skirt(), landmarks=(hip,)))[0].estimated
