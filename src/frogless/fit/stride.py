"""Does it leave a stride? The hem against the hip above it, where it lies and beside the body."""

from __future__ import annotations

from frogless.body.measurements import Body
from frogless.fit.routes import girth
from frogless.plan.model import PiecePlan, Plan
from frogless.units import Units, show_length

# A hem of less than this share of the hip shortens the stride wherever it lies: common practice.
HOBBLED = 0.8
# From waist to knee where it was not measured, mm: mean of the surveyed women (ANSUR II).
KNEE = 577.0
# Narrower by less than this, mm, is a stitch or two, and no narrower hem.
_SAME = 10.0


def skirt_of(plan: Plan) -> PiecePlan:
    """The piece that goes down over the hips; of others no stride has to be spoken of."""
    over = (p for p in plan.pieces if any(m.key == "hip_girth" for m in p.landmarks))
    return next(over, plan.main)


def hip_of(plan: Plan) -> float:
    """What the skirt measures at the hip, mm; 0 when it does not reach it."""
    marks = skirt_of(plan).landmarks
    return next((m.garment.value for m in marks if m.key == "hip_girth"), 0.0)


def hem_of(plan: Plan) -> float:
    """What it measures at its last landmark, mm; 0 when it has none."""
    marks = skirt_of(plan).landmarks
    return marks[-1].garment.value if marks else 0.0


def has_hem(plan: Plan) -> bool:
    """Whether it goes on below the hip, so that its hem has to leave a stride."""
    return hip_of(plan) > 0 and skirt_of(plan).landmarks[-1].key != "hip_girth"


def is_pegged(plan: Plan) -> bool:
    """Narrower at the hem than at the hip by more than a stitch or two."""
    return 0 < hem_of(plan) < hip_of(plan) - _SAME


def hobbles(plan: Plan, body: Body) -> bool:
    """Narrower than the hip where the knees are, or by a fifth anywhere."""
    if not is_pegged(plan):
        return False
    return hem_of(plan) < hip_of(plan) * HOBBLED or _reaches_knee(plan, body)


def _reaches_knee(plan: Plan, body: Body) -> bool:
    knee = body.get("waist_to_knee")
    return skirt_of(plan).landmarks[-1].depth >= (knee.value.value if knee else KNEE)


def stride(plan: Plan, body: Body, units: Units = "cm") -> str:
    """A warning in figures that the hem leaves no full stride; "" where it leaves one.

    It says as well when the hem does not pass the hips: then the skirt goes on over the feet only.

    Source: common practice: at the knee and below a hem no narrower than the hip, anywhere four
    fifths of it at least; no published threshold was found.
    """
    if not hobbles(plan, body):
        return ""
    hem, hip = hem_of(plan), hip_of(plan)
    told = (
        f"The hem of {show_length(hem, units)} leaves no full stride:"
        f" {_least(plan, body, hip, units)}."
    )
    widest = girth(plan, body, "hip_girth")
    if widest is not None and hem < widest:
        told += (
            f" It does not pass the hips ({show_length(widest, units)}) unstretched either, so the"
            " skirt goes on over the feet only."
        )
    return f"{told} Widen the hem, leave a slit, or end the skirt above the knee."


def _least(plan: Plan, body: Body, hip: float, units: Units) -> str:
    if _reaches_knee(plan, body):
        return f"at the knee and below it should be no narrower than the hip, {show_length(hip, units)}"
    return (
        f"it should be four fifths of the hip at least, {show_length(HOBBLED * hip, units)} of"
        f" {show_length(hip, units)}"
    )
