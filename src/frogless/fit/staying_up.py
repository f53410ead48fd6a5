"""What holds the garment up."""

from __future__ import annotations

from frogless.plan.model import BandPlan, CordPlan, ElasticPlan, Plan
from frogless.units import Units, show_length


def staying_up(plan: Plan, units: Units = "cm") -> str:
    """One sentence: what holds the garment at the waist, or a warning that nothing does."""
    waist = plan.main.waist
    if isinstance(waist, ElasticPlan):
        return (
            f"A covered {waist.kind} elastic {waist.width:g} mm wide holds it up: a ring of"
            f" {show_length(waist.finished, units)}{_against_waist(plan, waist.finished)}."
        )
    if isinstance(waist, CordPlan):
        return (
            f"A cord of {show_length(waist.cord, units)} through {len(waist.gaps)} eyelets, tied at"
            " the waist, holds it up."
        )
    if isinstance(waist, BandPlan):
        return (
            f"A ribbed band of {show_length(waist.girth.value, units)}"
            f"{_against_waist(plan, waist.girth.value)} holds it up as long as its"
            " rib springs back; a thin elastic can be drawn through later."
        )
    return _held_by_nothing(plan)


def _against_waist(plan: Plan, ring: float) -> str:
    body = next((m.body for m in plan.main.landmarks if m.key == "waist_girth" and m.body), None)
    return f", {100 * ring / body.value:.0f} % of the waist" if body else ""


def _held_by_nothing(plan: Plan) -> str:
    for landmark in plan.main.landmarks:
        if landmark.key == "waist_girth" and landmark.body:
            if landmark.garment.value < landmark.body.value:
                return (
                    "Only its own tightness at the waist holds it up, and crochet slackens in wear:"
                    " plan an elastic, a cord or a band."
                )
            return (
                "Nothing holds it up: the waist is no smaller than the body there;"
                " plan an elastic, a cord or a band."
            )
    return "Nothing holds it up at the waist: plan an elastic, a cord or a band."
