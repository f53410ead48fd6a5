"""The ways onto a body, over the feet or over the head: what is widest, and what must pass it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from frogless.body.measurements import Body
from frogless.errors import InputError, Place
from frogless.fit.model import Over
from frogless.fit.rounds import ClosedRound, closed_rounds
from frogless.plan.model import Plan


@dataclass(frozen=True, slots=True)
class Route:
    """Over what, the widest girth met on the way (mm), and the rounds that pass it, top down."""

    over: Over
    widest_at: str
    widest: float
    rounds: tuple[ClosedRound, ...]

    @property
    def narrowest(self) -> ClosedRound:
        """The narrowest of the rounds; of equals the highest, which is the start."""
        return min(self.rounds, key=lambda r: (r.girth, r.number))


def girth(plan: Plan, body: Body, key: str) -> float | None:
    """A girth of the body, mm: as the plan used it (estimates included), else as measured."""
    for landmark in plan.landmarks:
        if landmark.key == key and landmark.body:
            return landmark.body.value
    measurement = body.get(key)
    return measurement.value.value if measurement else None


def routes(plan: Plan, body: Body) -> tuple[Route, ...]:
    """Over the feet, and over the head when `shoulder_girth` was measured.

    Over the feet every round that ends up above the widest of hip and high hip has to pass it.
    Over the head every round has to pass shoulders and bust, but none passes the hips.

    Raises:
        InputError: neither hip_girth nor high_hip_girth is known.

    Source: geometry.
    """
    return (_over_feet(plan, body), *_over_head(plan, body))


def _over_feet(plan: Plan, body: Body) -> Route:
    known = [
        (value, key)
        for key in ("hip_girth", "high_hip_girth")
        if (value := girth(plan, body, key)) is not None
    ]
    if not known:
        raise InputError(
            "hip_girth is not given; without it nobody can say whether the skirt goes on",
            Place(body.file, key="measurements.hip_girth"),
        )
    widest, key = max(known)
    depth = next((m.depth for m in plan.landmarks if m.key == key), float("inf"))
    rounds = closed_rounds(plan)
    above = tuple(r for r in rounds if r.depth <= depth) or rounds[:1]
    return Route("feet", key, widest, above)


def _over_head(plan: Plan, body: Body) -> Iterator[Route]:
    shoulders = girth(plan, body, "shoulder_girth")
    if shoulders is None:
        return
    bust = girth(plan, body, "bust_girth") or 0.0
    widest, key = max((shoulders, "shoulder_girth"), (bust, "bust_girth"))
    yield Route("head", key, widest, closed_rounds(plan))
