"""Where the work or the wear can hurt: the entries of `data/cautions.toml` that hold."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.body.children import is_for_child
from frogless.body.measurements import Body
from frogless.fit.model import Caution
from frogless.fit.stride import hem_of, hip_of, hobbles, is_pegged, skirt_of
from frogless.fit.tables import document
from frogless.plan.edging_beads import BEAD
from frogless.plan.model import CordPlan, EdgingPlan, Plan
from frogless.rows.count import worked
from frogless.stitches.edgings import build, patterns
from frogless.units import Units, show_length

YOUNG_AGE = 3
# From waist to ankle, for a hem near the floor, from memory: share of the stature, or mm without.
LONG_SHARE = 0.53
LONG = 900.0
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
    if any(isinstance(piece.waist, CordPlan) for piece in plan.pieces):
        yield "cord"
    if any(piece.construction == "cord" for piece in plan.pieces):
        yield "ties"
    strands = [strand for piece in plan.pieces for strand in piece.strands]
    if strands:
        yield "strand"
    finishes = [piece.edging for piece in plan.pieces if piece.edging]
    strung = any(one.beads for one in strands) or any(one.beads for one in finishes)
    if strung or _slides_beads(plan):
        yield "beads"
    if any(_has_fringe(one) for one in finishes):
        yield "fringe"
    if any(word in fibre.lower() for word in _BURNS):
        yield "burns readily"
    if _is_long(plan, body):
        yield "long"
    if hobbles(plan, body):
        yield "hobbled"
    elif is_pegged(plan):
        yield "pegged"


def _slides_beads(plan: Plan) -> bool:
    """Whether beads are slid up in the rows themselves."""
    rows = (row for piece in plan.program.pieces for row in piece.rows)
    return any(worked(row.body)[BEAD] for row in rows)


def _has_fringe(one: EdgingPlan) -> bool:
    found = patterns().get(one.pattern)
    return found is not None and build(found).fringe is not None


def _top(plan: Plan) -> float:
    marks = skirt_of(plan).landmarks
    return marks[0].garment.value if marks else 0.0


def _is_long(plan: Plan, body: Body) -> bool:
    piece = skirt_of(plan)
    depth = piece.depths[-1] if piece.depths and piece.landmarks else 0.0
    stature = body.get("stature")
    return depth > (stature.value.value * LONG_SHARE if stature else LONG)


def _figures(plan: Plan, units: Units) -> dict[str, str]:
    figures = {
        "hem": show_length(hem_of(plan), units),
        "hip": show_length(hip_of(plan), units),
    }
    waist = next((p.waist for p in plan.pieces if isinstance(p.waist, CordPlan)), None)
    if waist is not None:
        end = max(0.0, (waist.cord - _top(plan)) / 2)
        figures["cord_end"] = show_length(end, units)
    return figures
