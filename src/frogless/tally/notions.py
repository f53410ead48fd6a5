"""What to have ready besides yarn: hooks, markers, elastic, cord, beads, needles."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.plan.model import CordPlan, EdgingBeadsPlan, ElasticPlan, Plan, StrandPlan
from frogless.tally.model import Notion
from frogless.units import Units, show_fine, show_length, show_long

# Thread for a crocheted cord over its length: common practice (chain cord 5.1 in one measurement).
CORD_THREAD = (4, 8)


def notions(plan: Plan, units: Units = "cm") -> tuple[Notion, ...]:
    """Everything to have ready, tools first."""
    return (
        *_hooks(plan, units),
        *_markers(plan),
        *_waist(plan, units),
        *_beads(plan, units),
        *_needles(plan),
        Notion("tape_measure", 1, None, "for girths and depths on the way"),
    )


def _hooks(plan: Plan, units: Units) -> Iterator[Notion]:
    """One hook of each size with what it is for, in the order met."""
    uses: dict[float, list[str]] = {}
    for piece in plan.program.pieces:
        for row in piece.rows:
            uses.setdefault(row.hook, []).append(row.section)
    for strand in _strands(plan):
        uses.setdefault(strand.hook, []).append(strand.name)
    for size, names in uses.items():
        if size > 0:
            told = ", ".join(dict.fromkeys(names))
            yield Notion("hook", 1, None, f"{show_fine(size, units)}: {told}")


def _markers(plan: Plan) -> Iterator[Notion]:
    rows = [row for piece in plan.program.pieces for row in piece.rows]
    points = max((len(row.marks) for row in rows), default=0)
    if points:
        yield Notion(
            "marker",
            points + 1,
            None,
            f"one for each of {points} shaping points and one for the join",
        )
    elif any(piece.closed for piece in plan.program.pieces):
        yield Notion("marker", 1, None, "for the join")


def _waist(plan: Plan, units: Units) -> Iterator[Notion]:
    for piece in plan.pieces:
        if isinstance(piece.waist, ElasticPlan):
            yield _elastic(piece.waist, units)
        if isinstance(piece.waist, CordPlan):
            yield _cord(piece.waist, units)


def _strands(plan: Plan) -> tuple[StrandPlan, ...]:
    return tuple(strand for piece in plan.pieces for strand in piece.strands)


def _elastic(elastic: ElasticPlan, units: Units) -> Notion:
    needed, usual = elastic.needed_stretch, elastic.comfortable_stretch
    test = f"it must stretch {needed:.2f} times with ease"
    if needed > usual:
        test += (
            f" ({elastic.kind} elastic is comfortable to about {usual:g}: try it before cutting)"
        )
    return Notion(
        "elastic",
        1,
        elastic.cut,
        f"{show_fine(elastic.width, units)} wide, {elastic.kind}, of which"
        f" {show_length(elastic.lap, units)} is the lap; {test}",
    )


def _cord(cord: CordPlan, units: Units) -> Notion:
    low, high = (show_long(cord.cord * times, units) for times in CORD_THREAD)
    return Notion(
        "cord",
        1,
        cord.cord,
        f"through {len(cord.gaps)} eyelets; it has to slide through a stitch's hole;"
        f" crocheted it takes {low} to {high} of yarn",
    )


def _beads(plan: Plan, units: Units) -> Iterator[Notion]:
    for strand in _strands(plan):
        if strand.beads:
            yield Notion("bead", strand.beads + strand.spare_beads, None, _bead(strand, units))
    for beads in _edging_beads(plan):
        yield Notion("bead", beads.strung, None, _edging_bead(beads, units))


def _edging_beads(plan: Plan) -> tuple[EdgingBeadsPlan, ...]:
    edgings = (piece.edging for piece in plan.pieces)
    return tuple(edging.beads for edging in edgings if edging and edging.beads)


def _edging_bead(beads: EdgingBeadsPlan, units: Units) -> str:
    """What to look for: the hole takes the yarn doubled at the needle (from memory)."""
    hole, across = show_fine(beads.bead_hole, units), show_fine(beads.bead_diameter, units)
    told = f"edging: {beads.spare} spare among them, about {across} across, hole {hole}"
    if beads.yarn_diameter is None:
        return f"{told}; the yarn passes it folded at the needle: try one first"
    doubled = 2 * beads.yarn_diameter
    told += f"; the yarn folded at the needle is about {show_fine(round(doubled, 1), units)}"
    if doubled <= beads.bead_hole:
        return f"{told} and passes: try one first"
    return f"{told} and does not pass: take a larger hole, or a stiffened single end"


def _bead(strand: StrandPlan, units: Units) -> str:
    """What to look for: the hole takes the strand doubled at the needle (from memory)."""
    doubled = 2 * strand.strand_diameter
    hole, thick = show_fine(strand.bead_hole, units), show_fine(round(doubled, 1), units)
    told = (
        f"{strand.name}: {strand.spare_beads} spare among them, about"
        f" {show_fine(strand.bead_diameter, units)} across, hole {hole};"
        f" {strand.plies} plies folded at the needle are about {thick}"
    )
    if doubled <= strand.bead_hole:
        return f"{told} and pass: try one first"
    return f"{told} and do not pass: take fewer plies, a larger hole, or a stiffened single end"


def _needles(plan: Plan) -> Iterator[Notion]:
    yield Notion("yarn_needle", 1, None, "blunt, with an eye for the yarn: ends and seams")
    if any(isinstance(piece.waist, ElasticPlan) for piece in plan.pieces):
        yield Notion("sewing_needle", 1, None, "sharp, with strong thread: the lap of the elastic")
    if any(strand.beads for strand in _strands(plan)) or _edging_beads(plan):
        yield Notion(
            "beading_needle", 1, None, "fine enough to pass the beads' holes with the yarn"
        )
