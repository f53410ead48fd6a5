"""Body against garment at every landmark."""

from __future__ import annotations

from frogless.fit.model import LandmarkFit, Verdict
from frogless.plan.model import Landmark, Plan

# mm; below what a tape shows, so that a bound met exactly is met.
_SLACK = 0.05


def landmarks(plan: Plan) -> tuple[LandmarkFit, ...]:
    """The fit at each landmark of every piece, from the top down, with the garment's 95 % interval."""
    return tuple(
        _fit_at(landmark, piece.name) for piece in plan.pieces for landmark in piece.landmarks
    )


def _fit_at(landmark: Landmark, piece: str) -> LandmarkFit:
    low, high = landmark.garment.interval()
    body = landmark.body.value if landmark.body else None
    return LandmarkFit(
        at=landmark.key,
        depth=landmark.depth,
        body=body,
        garment=landmark.garment.value,
        low=low,
        high=high,
        wanted=landmark.wanted,
        ease=None if body is None else landmark.garment.value - body,
        wanted_ease=None if body is None else landmark.wanted - body,
        verdict=_verdict(landmark),
        estimated=landmark.estimated,
        piece=piece,
    )


def _verdict(landmark: Landmark) -> Verdict:
    if landmark.garment.value < landmark.low - _SLACK:
        return "tight"
    if landmark.garment.value > landmark.high + _SLACK:
        return "loose"
    return "ok"
