"""Where the work or the wear can hurt: the entries of `data/cautions.toml` that hold."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.body.children import is_for_child
from frogless.body.measurements import Body
from frogless.fit.model import Caution
from frogless.fit.tables import document
from frogless.plan.model import CordPlan, Plan
from frogless.units import Units, show_length

YOUNG_AGE = 3
# From waist to ankle, for a hem near the floor, from memory: share of the stature, or mm without.
LONG_SHARE = 0.53
LONG = 900.0
# A hem of less than this share of the hip shortens the stride wherever it lies: common practice.
HOBBLED = 0.8
# From waist to knee where it was not measured, mm: mean of the surveyed women (ANSUR II).
KNEE = 577.0
# Plant and hairy fibres, which take fire readily: common practice.
_BURNS = (
    "cotton", "linen", "flax", "hemp", "viscose", "rayon", "bamboo", "lyocell", "modal", "mohair",
    "alpaca", "angora", "brushed",
)  # fmt: skip


def cautions(
    plan: Plan,
    body: Body,
    *,
    for_children: bool = False,
    fibre: str = "",
    units: Units = "cm",
) -> tuple[Caution, ...]:
    """The cautions that hold, in the order of the table.

    Args:
        for_children: what the design says of itself.
        fibre: as the yarn's label names it.
    """
    facts = frozenset(_facts(plan, body, for_children, fibre))
    figures = _figures(plan, units)
    return tuple(
        Caution(entry["key"], entry["sentence"].format_map(figures), entry["source"])
        for entry in document("cautions.toml")["caution"]
        if facts.issuperset(entry["when"])
    )


def _facts(plan: Plan, body: Body, for_children: bool, fibre: str) -> Iterator[str]:
    yield "child" if is_for_child(body, for_children=for_children) else "adult"
    yield "under 3" if body.age is not None and body.age < YOUNG_AGE else "not under 3"
    if isinstance(plan.main.waist, CordPlan):
        yield "cord"
    if plan.main.strands:
        yield "strand"
    if any(strand.beads for strand in plan.main.strands):
        yield "beads"
    if any(word in fibre.lower() for word in _BURNS):
        yield "burns readily"
    if _is_long(plan, body):
        yield "long"
    if _hobbles(plan, body):
        yield "hobbled"
    elif _is_pegged(plan):
        yield "pegged"


def _hem(plan: Plan) -> float:
    return plan.main.landmarks[-1].garment.value if plan.main.landmarks else 0.0


def _top(plan: Plan) -> float:
    return plan.main.landmarks[0].garment.value if plan.main.landmarks else 0.0


def _hip(plan: Plan) -> float:
    return next((m.garment.value for m in plan.main.landmarks if m.key == "hip_girth"), 0.0)


def _is_pegged(plan: Plan) -> bool:
    """Narrower at the hem than at the hip by more than a stitch or two."""
    return 0 < _hem(plan) < _hip(plan) - 10


def _hobbles(plan: Plan, body: Body) -> bool:
    """Narrower than the hip where the knees are, or by a fifth anywhere."""
    knee = body.get("waist_to_knee")
    reached = bool(plan.main.landmarks) and plan.main.landmarks[-1].depth >= (
        knee.value.value if knee else KNEE
    )
    return 0 < _hem(plan) < _hip(plan) * HOBBLED or (reached and _is_pegged(plan))


def _is_long(plan: Plan, body: Body) -> bool:
    depth = plan.main.depths[-1] if plan.main.depths else 0.0
    stature = body.get("stature")
    return depth > (stature.value.value * LONG_SHARE if stature else LONG)


def _figures(plan: Plan, units: Units) -> dict[str, str]:
    figures = {
        "hem": show_length(_hem(plan), units),
        "hip": show_length(_hip(plan), units),
    }
    if isinstance(plan.main.waist, CordPlan):
        end = max(0.0, (plan.main.waist.cord - _top(plan)) / 2)
        figures["cord_end"] = show_length(end, units)
    return figures
