"""What holds the garment up."""

from __future__ import annotations

from frogless.design.document import Kind
from frogless.fit.openings import is_strapless
from frogless.plan.model import BandPlan, CordPlan, ElasticPlan, Plan
from frogless.units import Units, show_length


def staying_up(plan: Plan, units: Units = "cm") -> str:
    """One sentence: what holds the garment at the waist, or a warning that nothing does."""
    waist = _waist(plan)
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


def staying_up_on(plan: Plan, kind: Kind, units: Units = "cm") -> str:
    """What holds a garment of a kind up; "" where the shoulders or the head do, or nothing has to."""
    if kind == "skirt":
        return staying_up(plan, units)
    if kind not in ("top", "dress") or not (is_strapless(plan) or has_straps(plan)):
        return ""
    if _waist(plan) is not None:
        return staying_up(plan, units)
    if has_straps(plan):
        return "Straps hold it up."
    return _own_tightness(plan, units)


def is_held(plan: Plan) -> bool:
    """Whether an elastic, a cord, a band or straps hold it, so that nothing slips."""
    return _waist(plan) is not None or has_straps(plan)


def has_straps(plan: Plan) -> bool:
    """Whether cords or straps are among its pieces."""
    return any(piece.construction == "cord" for piece in plan.pieces)


def _waist(plan: Plan) -> ElasticPlan | CordPlan | BandPlan | None:
    return next((piece.waist for piece in plan.pieces if piece.waist is not None), None)


def _own_tightness(plan: Plan, units: Units) -> str:
    bust = next((m for m in plan.landmarks if m.key == "bust_girth" and m.body), None)
    if bust is None or bust.body is None or bust.garment.value >= bust.body.value:
        return "Nothing holds it up: plan straps, an elastic or a band."
    less = 100 * (1 - bust.garment.value / bust.body.value)
    return (
        f"Only its own tightness holds it up: {show_length(bust.garment.value, units)} on a bust of"
        f" {show_length(bust.body.value, units)}, {less:.0f} % less. Crochet slackens in wear:"
        " plan an elastic, a band or straps."
    )


def _against_waist(plan: Plan, ring: float) -> str:
    body = next((m.body for m in plan.landmarks if m.key == "waist_girth" and m.body), None)
    return f", {100 * ring / body.value:.0f} % of the waist" if body else ""


def _held_by_nothing(plan: Plan) -> str:
    for landmark in plan.landmarks:
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
