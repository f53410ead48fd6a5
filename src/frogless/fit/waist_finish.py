"""Whether the waist's own finish (elastic, cord, band) lets the widest girth through."""

from __future__ import annotations

from dataclasses import dataclass

from frogless.fit.model import Passing
from frogless.fit.rounds import has_join
from frogless.plan.elastic import elastics, stretch
from frogless.plan.model import BandPlan, CordPlan, ElasticPlan, Plan
from frogless.units import Units, show_length


@dataclass(frozen=True, slots=True)
class Finish:
    """What a waist finish says about going on, with its reason and its ways out."""

    verdict: Passing = "passes"
    reason: str = ""
    ways_out: tuple[str, ...] = ()


def waist_finish(plan: Plan, widest: float, body_waist: float | None, units: Units) -> Finish:
    """The finish of the plan's waist against the widest girth it travels over.

    Args:
        widest: mm. body_waist: girth of the waist that the finish has to hold, mm, when known.
    """
    waist = plan.main.waist
    if isinstance(waist, ElasticPlan):
        return _elastic(waist, widest, body_waist, units, joined=has_join(plan))
    if isinstance(waist, CordPlan):
        return _cord(waist, widest, units)
    if isinstance(waist, BandPlan):
        return _band(waist, widest)
    return Finish()


def _elastic(
    waist: ElasticPlan, widest: float, body_waist: float | None, units: Units, *, joined: bool
) -> Finish:
    needed = widest / waist.finished
    kind = stretch(waist.kind)
    usual, longest = kind.comfortable, kind.longest
    if needed <= usual:
        return Finish()
    ways = [_longer_elastic(waist, widest / usual, usual, body_waist, units, joined=joined)]
    softer = [one.kind for one in elastics() if needed <= one.longest]
    if waist.kind not in softer and softer:
        ways.insert(0, f"Take a {softer[0]} elastic, which stretches further.")
    # Comfortable is what can be worn; for the moment of stepping in an elastic goes further.
    tight = needed <= kind.pulled_on
    upto = f"{usual:g}" + (f" to {longest:g}" if longest > usual else "")
    return Finish(
        "uncertain" if tight else "does not pass",
        f"The elastic has to stretch {needed:.2f} times"
        + (" and will be tight to pull on" if tight else "")
        + f": {waist.kind} elastic is comfortable up to about {upto} times, and goes for a moment"
        f" to about {kind.pulled_on:g} (from memory).",
        tuple(ways),
    )


def _longer_elastic(
    waist: ElasticPlan,
    ring: float,
    usual: float,
    body_waist: float | None,
    units: Units,
    *,
    joined: bool,
) -> str:
    """A ring that passes, if it still holds the waist; otherwise a finish that opens."""
    if body_waist is not None and ring >= body_waist:
        return (
            f"An elastic that passes with ease would be a ring of {show_length(ring, units)}, no"
            f" smaller than the waist of {show_length(body_waist, units)}: take a drawcord"
            + (", or leave the join open at the top with a closure." if joined else ".")
        )
    return (
        f"Cut the elastic {show_length(ring + waist.lap, units)} long (a ring of"
        f" {show_length(ring, units)}): it then has to stretch {usual:.2f} times"
        " only (check that it still holds the waist)."
    )


def _cord(waist: CordPlan, widest: float, units: Units) -> Finish:
    if waist.cord >= widest:
        return Finish()
    return Finish(
        "does not pass",
        f"A cord of {show_length(waist.cord, units)} cannot open to {show_length(widest, units)}.",
        (f"Make the cord at least {show_length(widest + 300, units)} long, ends included.",),
    )


def _band(waist: BandPlan, widest: float) -> Finish:
    needed = widest / waist.girth.value
    if needed <= 1:
        return Finish()
    return Finish(
        "uncertain",
        f"The band has to stretch {needed:.2f} times, and its rib has not been measured.",
        (
            f"Work a swatch of the rib: it must reach {needed:.2f} times its length with ease.",
            "Work the band longer and gather it with an elastic.",
        ),
    )
