"""Does it go on? The narrowest opening, stretched, against the widest girth it travels over."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from frogless.body.measurements import Body
from frogless.fit.model import GoingOn, Passing
from frogless.fit.rounds import ClosedRound, closed_rounds, has_join
from frogless.fit.routes import Route, girth, routes
from frogless.fit.waist_finish import waist_finish
from frogless.plan.model import ElasticPlan, Plan
from frogless.units import Units, show_length

StartKind = Literal["chain", "foundation"]

# No published stretch of a crocheted edge was found. What nobody measured is judged against what
# bodies ask: of the surveyed women all but one in twenty need no more than 0.34.
WITHIN_REASON = 0.35
# Waist elastic cut to nine tenths of the waist plus a lap of 2.5 cm: common practice.
ELASTIC_SHARE = 0.9
LAP = 25.0

# What a landmark is called where something has to pass it.
PLACES = {
    "hip_girth": "hips",
    "high_hip_girth": "high hip",
    "waist_girth": "waist",
    "shoulder_girth": "shoulders",
    "bust_girth": "bust",
    "head_girth": "head",
    "hand_girth": "hand",
}

_SLACK = 0.05
ORDER: tuple[Passing, ...] = ("passes", "uncertain", "does not pass")
"""Verdicts, the surest first."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """The comfortable stretch of the fabric as a ratio, or None when nobody measured it."""

    ratio: float | None
    start: StartKind

    @property
    def known(self) -> float:
        """What may be counted on: the measured ratio, else nothing."""
        return self.ratio or 0.0

    def verdict(self, needed: float) -> Passing:
        """Whether a stretch of `needed` can be had.

        A swatch measures the fabric; a chain edge gives less than its fabric (common practice), so
        with a chain start a measured fabric never settles it.
        """
        if needed <= 1e-4:
            return "passes"
        if self.ratio is not None:
            if needed > self.ratio + 1e-4:
                return "does not pass"
            return "uncertain" if self.start == "chain" else "passes"
        if self.start == "chain" or needed > WITHIN_REASON:
            return "does not pass"
        return "uncertain"


def going_on(
    plan: Plan,
    *,
    stretch: float | None,
    start_kind: StartKind,
    body: Body,
    units: Units = "cm",
) -> GoingOn:
    """Whether the garment goes on over the feet or, where the shoulders are known, over the head.

    Args:
        stretch: comfortable stretch of the fabric as a ratio, from the swatch; None: not measured.
        start_kind: what the first round is made of.

    Raises:
        InputError: the body has no hip girth.

    Source: opening × (1 + stretch) ≥ widest girth passed: geometry.
    """
    give = Stretch(stretch, start_kind)
    if not closed_rounds(plan):
        return _open_garment(plan, body, give)
    tried = [_along(plan, route, give, body, units) for route in routes(plan, body)]
    return min(tried, key=lambda found: (ORDER.index(found.verdict), found.needed_stretch))


def _along(plan: Plan, route: Route, give: Stretch, body: Body, units: Units) -> GoingOn:
    narrow = route.narrowest
    reach = narrow.girth * (1 + give.known)
    needed = max(0.0, route.widest / narrow.girth - 1)
    needed_opening = route.widest / (1 + give.known)
    fabric = give.verdict(needed)
    finish = waist_finish(plan, route.widest, girth(plan, body, "waist_girth"), units)
    verdict = max(fabric, finish.verdict, key=ORDER.index)
    needed_count = math.ceil(needed_opening / narrow.width - 1e-6)
    fabric_ways = () if fabric == "passes" else _ways_out(plan, route, give, body, units)
    return GoingOn(
        opening=narrow.girth,
        stretch=give.known,
        measured=give.ratio is not None,
        reach=reach,
        widest_at=route.widest_at,
        widest=route.widest,
        short=max(0.0, route.widest - reach) if route.widest - reach > _SLACK else 0.0,
        needed_stretch=needed,
        needed_opening=needed_opening,
        needed_count=needed_count,
        verdict=verdict,
        ways_out=(*fabric_ways, *finish.ways_out),
        over=route.over,
        reasons=tuple(s for s in (_reason(route, give, units), finish.reason) if s),
    )


def _open_garment(plan: Plan, body: Body, give: Stretch) -> GoingOn:
    """A piece without a closed round opens as far as one likes."""
    hip = girth(plan, body, "hip_girth") or 0.0
    return GoingOn(
        opening=hip,
        stretch=give.known,
        measured=give.ratio is not None,
        reach=hip,
        widest_at="hip_girth",
        widest=hip,
        short=0.0,
        needed_stretch=0.0,
        needed_opening=hip,
        needed_count=0,
        verdict="passes",
        ways_out=(),
        reasons=("No round is closed, so the garment opens.",),
    )


def _reason(route: Route, give: Stretch, units: Units) -> str:
    narrow = route.narrowest
    opening, widest = show_length(narrow.girth, units), show_length(route.widest, units)
    place = PLACES.get(route.widest_at, "widest part")
    needed = max(0.0, route.widest / narrow.girth - 1)
    if needed <= 1e-4:
        return f"The opening of {opening} passes the {place} ({widest}) unstretched."
    told = (
        f"The opening of {opening} has to stretch {100 * needed:.0f} %"
        f" to pass the {place} ({widest})"
    )
    short = route.widest - narrow.girth * (1 + give.known)
    if give.ratio is None:
        return (
            f"{told}, {show_length(short, units)} short unstretched; how far it stretches has not"
            " been measured."
        )
    chain = "; a chain edge stretches less than its fabric" if give.start == "chain" else ""
    lacks = f": {show_length(short, units)} short" if short > _SLACK else ""
    return f"{told}; the fabric stretches {100 * give.ratio:.0f} % with comfort{chain}{lacks}."


def _ways_out(plan: Plan, route: Route, give: Stretch, body: Body, units: Units) -> tuple[str, ...]:
    needed = route.widest / route.narrowest.girth - 1
    ways = [_larger_opening(plan, route, give, body, units)]
    at_start = _is_start(route)
    if give.start == "chain" and at_start:
        ways.append(
            "Begin with foundation stitches (chain and stitch in one) instead of a chain,"
            f" the least elastic edge there is, and see that it stretches {100 * needed:.0f} %."
        )
    if give.ratio is None:
        ways.append(
            "Measure the stretch on a swatch begun as the garment is:"
            f" its edge must reach {1 + needed:.2f} times its length with ease."
        )
    if has_join(plan):
        ways.extend(_placket(route, give, units))
    if route.over == "feet" and girth(plan, body, "shoulder_girth") is None:
        ways.append(
            "Measure the shoulder girth (shoulder_girth): over the head may be easier (the shoulders are the wider part"
            " in 57 % of surveyed women, the hips in the rest)."
        )
    return tuple(ways)


def _is_start(route: Route) -> bool:
    """Whether the narrowest round is as wide as the start, so that the start is what to widen."""
    return route.narrowest.girth > route.rounds[0].girth - _SLACK


def _larger_opening(plan: Plan, route: Route, give: Stretch, body: Body, units: Units) -> str:
    width = route.narrowest.width
    count = math.ceil(route.widest / (1 + give.known) / width - 1e-6)
    if not _is_start(route):
        narrow = route.narrowest
        return (
            f"Have {count} stitches ({show_length(count * width, units)}) in round"
            f" {narrow.number}, {show_length(narrow.depth, units)} below the top edge, where it is"
            " narrowest: widen the section there."
        )
    told = f"Begin with {count} stitches ({show_length(count * width, units)})"
    waist = girth(plan, body, "waist_girth")
    if isinstance(plan.main.waist, ElasticPlan):
        finished, cut = plan.main.waist.finished, plan.main.waist.cut
    elif waist is not None:
        finished = waist * ELASTIC_SHARE
        cut = finished + LAP
    else:
        return f"{told} and gather them with elastic."
    return (
        f"{told} and gather them with elastic: cut {show_length(cut, units)} (lap included);"
        f" it must stretch {route.widest / finished:.2f} times."
    )


def _placket(route: Route, give: Stretch, units: Units) -> tuple[str, ...]:
    """Leave the join open down to the first round from which on everything passes."""
    tight = [r for r in route.rounds if r.girth * (1 + give.known) < route.widest - _SLACK]
    if not tight or _last_is_tight(route.rounds, tight[-1]):
        return ()
    lowest = tight[-1]
    return (
        f"Leave the join open for {show_length(max(lowest.depth, 0.0), units)} from the top"
        f" (through round {lowest.number}) as a placket, with a closure: below it all passes.",
    )


def _last_is_tight(rounds: tuple[ClosedRound, ...], lowest: ClosedRound) -> bool:
    return lowest.number == rounds[-1].number
