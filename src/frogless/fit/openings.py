"""What a garment of several pieces goes on through: each opening against what has to pass it."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import reduce

from frogless.body.measurements import Body, known_measurements
from frogless.design.document import Kind
from frogless.fit.going_on import ORDER, PLACES, WITHIN_REASON
from frogless.fit.model import GoingOn, Over, Passing
from frogless.fit.rounds import first_is_chain
from frogless.plan.model import PiecePlan, Plan
from frogless.units import Measured, Units, show_length

# mm; below what a tape shows, so that an opening that just passes passes.
_SLACK = 0.05

#: Openings by the names that pieces give them; in words for what is told.
NECK = ("neck opening",)
NECK_EDGE = "neck edge"
CUFF = ("cuff",)
BRIM = ("brim", "head opening", "opening", "hem")

#: Constructions that begin at the neck, so that their first row is the edge of its opening.
FROM_THE_NECK = frozenset({"raglan", "raglan yoke", "round_yoke", "round yoke"})

#: Girths of the body that a closed garment goes round, and where it can be too narrow on the way.
ROUND_THE_BODY = frozenset(
    {"top_edge", "bust_girth", "waist_girth", "high_hip_girth", "hip_girth", "hem"}
)


@dataclass(frozen=True, slots=True)
class Need:
    """What has to pass an opening.

    Args:
        name: of the opening, in words. measures: what pieces call it.
        landmark: the key it has where it is a landmark, "" for none.
        passes: girths of the body; the widest of those that are known.
        must: a garment of the kind has it, so that it is told when the plan does not say.
    """

    name: str
    measures: tuple[str, ...]
    over: Over
    passes: tuple[str, ...]
    landmark: str = ""
    must: bool = False


NEEDS: Mapping[Kind, tuple[Need, ...]] = {
    "top": (
        Need("neck opening", NECK, "head", ("head_girth",)),
        Need("cuff", CUFF, "hand", ("hand_girth",), "wrist_girth"),
    ),
    "dress": (
        Need("neck opening", NECK, "head", ("head_girth",)),
        Need("cuff", CUFF, "hand", ("hand_girth",), "wrist_girth"),
    ),
    "cardigan": (Need("cuff", CUFF, "hand", ("hand_girth",), "wrist_girth"),),
    "hat": (Need("brim", BRIM, "head", ("head_girth",), "head_girth", must=True),),
}


@dataclass(frozen=True, slots=True)
class Opening:
    """An opening of a piece: its girth, and whether its edge is a chain, which hardly gives."""

    name: str
    piece: str
    girth: Measured
    count: int
    is_chain: bool = False


def openings(
    plan: Plan, kind: Kind, body: Body, stretch: float | None, units: Units
) -> tuple[GoingOn, ...]:
    """Every opening of the garment with what passes it; none when nothing has to.

    Args:
        stretch: comfortable stretch of the fabric as a ratio; None: not measured.

    Source: opening × (1 + stretch) ≥ girth that passes: geometry.
    """
    found = []
    for need in NEEDS.get(kind, ()):
        made = tuple(_openings(plan, need))
        found += [_passing(each, need, body, stretch, units) for each in made]
        if not made and (need.must or (need.measures == NECK and has_neck(plan))):
            found.append(_not_planned(need))
    if kind in ("top", "dress"):
        found += _round_the_body(plan, body, stretch, units)
    return tuple(found)


def nothing_to_pass(kind: Kind) -> GoingOn:
    """For what has no opening that a body passes: it opens, is wrapped round or is carried."""
    told = {
        "cardigan": "It opens at the front, so nothing has to stretch.",
        "shawl": "It is laid round the shoulders, so nothing has to stretch.",
        "bag": "It is carried, so no body has to pass it.",
    }
    reason = told.get(kind, "No opening of it that a body passes is planned, so none is checked.")
    return _told(Need("opening", (), "head", ("nothing",)), "passes", reason)


def _openings(plan: Plan, need: Need) -> Iterator[Opening]:
    if need.measures == NECK:
        yield from _joined_neck(plan)
    for piece in plan.pieces:
        told = [m for m in piece.measures if m.kind == "girth" and m.name in need.measures]
        for measure in told[:1]:
            yield Opening(
                need.name, piece.name, measure.got, measure.count, _is_chain(plan, piece, need)
            )
        marks = [m for m in piece.landmarks if need.landmark and m.key == need.landmark]
        for mark in marks[:1] if not told else ():
            yield Opening(need.name, piece.name, mark.garment, mark.count)


def _joined_neck(plan: Plan) -> Iterator[Opening]:
    """The neck of panels that are joined at the shoulders: their neck edges, one after the other."""
    edges = [
        (piece, measure)
        for piece in plan.pieces
        for measure in piece.measures
        if (measure.kind, measure.name) == ("edge", NECK_EDGE)
    ]
    if edges:
        girth = reduce(Measured.plus, (m.got.times(p.number_made) for p, m in edges))
        names = " and ".join(dict.fromkeys(piece.name for piece, _ in edges))
        yield Opening(NECK[0], names, girth, 0)


def _is_chain(plan: Plan, piece: PiecePlan, need: Need) -> bool:
    """Whether the edge of the opening is the chain that its piece begins with."""
    if need.measures != NECK or piece.construction not in FROM_THE_NECK:
        return False
    rows = next((p.rows for p in plan.program.pieces if p.name == piece.name), ())
    return bool(rows) and first_is_chain(rows[0].body)


def _passing(
    opening: Opening, need: Need, body: Body, stretch: float | None, units: Units
) -> GoingOn:
    known = [m for key in need.passes if (m := body.get(key)) is not None]
    if not known:
        return _unknown(opening, need, units)
    widest = max(known, key=lambda m: m.value.value)
    return _against(
        opening, need.over, widest.key, widest.value, stretch, units, guessed=widest.estimated
    )


def _against(
    opening: Opening,
    over: Over,
    widest_at: str,
    widest: Measured,
    stretch: float | None,
    units: Units,
    *,
    guessed: bool,
) -> GoingOn:
    """An opening against a girth; what is guessed passes only as far as the guess is sure."""
    girth, known = opening.girth.value, 0.0 if opening.is_chain else stretch or 0.0
    reach = girth * (1 + known)
    needed = max(0.0, widest.value / girth - 1)
    short = widest.value - reach if widest.value - reach > _SLACK else 0.0
    verdict = _verdict(opening, needed, short, stretch)
    unsure = guessed and verdict == "passes" and widest.interval()[1] > reach + _SLACK
    needed_opening = widest.value / (1 + known)
    wide = girth / opening.count if opening.count else 0.0
    told = _reason(opening, widest_at, widest.value, short, stretch, units)
    if unsure:
        name, off = widest_at.replace("_", " "), widest.interval()[1] - widest.value
        told += f" The {name} is an estimate, good to {show_length(off, units)} (95 %)."
    return GoingOn(
        opening=girth,
        stretch=known,
        measured=stretch is not None,
        reach=reach,
        widest_at=widest_at,
        widest=widest.value,
        short=short,
        needed_stretch=needed,
        needed_opening=needed_opening,
        needed_count=math.ceil(needed_opening / wide - 1e-6) if wide else 0,
        verdict="uncertain" if unsure else verdict,
        ways_out=() if verdict == "passes" else tuple(_ways(opening, widest.value, known, units)),
        over=over,
        reasons=(told,),
        name=opening.name,
        piece=opening.piece,
    )


def _verdict(opening: Opening, needed: float, short: float, stretch: float | None) -> Passing:
    """A chain gives nothing that could be counted on (common practice); so it has to pass as it is.

    What nobody measured is within reason as for a waist.
    """
    if not short:
        return "passes"
    if opening.is_chain or stretch is not None or needed > WITHIN_REASON:
        return "does not pass"
    return "uncertain"


def _reason(
    opening: Opening,
    widest_at: str,
    widest: float,
    short: float,
    stretch: float | None,
    units: Units,
) -> str:
    needed = widest / opening.girth.value - 1
    place = PLACES.get(widest_at, widest_at.removesuffix("_girth").replace("_", " "))
    what = f"The {opening.name} of {show_length(opening.girth.value, units)} ({opening.piece})"
    passed = f"the {place} ({show_length(widest, units)})"
    if needed <= 1e-4:
        return f"{what} passes {passed} unstretched."
    told = f"{what} has to stretch {100 * needed:.0f} % to pass {passed}"
    lacks = f": {show_length(short, units)} short" if short else ""
    if opening.is_chain:
        return f"{told}, and a chain edge does not stretch{lacks}."
    if stretch is None:
        return f"{told}; how far it stretches has not been measured."
    return f"{told}; the fabric stretches {100 * stretch:.0f} % with comfort{lacks}."


def _ways(opening: Opening, widest: float, known: float, units: Units) -> Iterator[str]:
    needed = widest / opening.girth.value
    wide = opening.girth.value / opening.count if opening.count else 0.0
    count = f"{math.ceil(widest / (1 + known) / wide - 1e-6)} stitches, " if wide else ""
    yield (f"Make the {opening.name} {count}{show_length(widest / (1 + known), units)} at least.")
    if opening.is_chain:
        yield (
            "Begin with foundation stitches (chain and stitch in one) instead of a chain, and see "
            f"that they stretch {100 * (needed - 1):.0f} %."
        )
    else:
        yield f"Measure the stretch on a swatch: it must reach {needed:.2f} times its width."
    yield f"Leave a slit at the {opening.name}, with a closure."


def _unknown(opening: Opening, need: Need, units: Units) -> GoingOn:
    """What passes was not measured: sure only when the opening passes the widest in any survey."""
    key = need.passes[0]
    most = known_measurements()[key].high
    passes = opening.girth.value >= most
    name = key.replace("_", " ")
    told = f"The {opening.name} of {show_length(opening.girth.value, units)} ({opening.piece})"
    reason = (
        f"{told} passes any {name} in surveys."
        if passes
        else f"{told} is not checked: no {name} is given; measure it ({key})."
    )
    return _told(need, "passes" if passes else "uncertain", reason, opening)


def _not_planned(need: Need) -> GoingOn:
    return _told(
        need, "uncertain", f"The {need.name} is not checked: no piece says how wide it is."
    )


def _told(need: Need, verdict: Passing, reason: str, opening: Opening | None = None) -> GoingOn:
    return GoingOn(
        opening=opening.girth.value if opening else 0.0,
        stretch=0.0,
        measured=False,
        reach=opening.girth.value if opening else 0.0,
        widest_at=need.passes[0],
        widest=0.0,
        short=0.0,
        needed_stretch=0.0,
        needed_opening=0.0,
        needed_count=0,
        verdict=verdict,
        ways_out=(),
        over=need.over,
        reasons=(reason,),
        name=need.name,
        piece=opening.piece if opening else "",
    )


def _round_the_body(
    plan: Plan, body: Body, stretch: float | None, units: Units
) -> Iterator[GoingOn]:
    """The narrowest round of a closed top or dress: over the shoulders, or else over the hips.

    A neck ends the way over the feet. Shoulders are taken with the bust, whichever is wider.
    """
    narrow = min(_rounds(plan), key=lambda each: each.girth.value, default=None)
    if narrow is None:
        return
    ways: list[tuple[Over, tuple[str, ...]]] = [("head", ("shoulder_girth", "bust_girth"))]
    if is_strapless(plan):
        ways.append(("feet", ("hip_girth",)))
    tried = []
    for over, keys in ways:
        known = [m for key in keys if (m := body.get(key)) is not None]
        if known:
            at = max(known, key=lambda m: m.value.value)
            guessed = at.estimated
            tried.append(_against(narrow, over, at.key, at.value, stretch, units, guessed=guessed))
    if tried:
        yield min(tried, key=lambda each: (ORDER.index(each.verdict), each.needed_stretch))


def _rounds(plan: Plan) -> Iterator[Opening]:
    """Where pieces in rounds, or panels joined to a tube, go round the body."""
    closed = {piece.name for piece in plan.program.pieces if piece.closed}
    closed |= {piece.name for piece in plan.pieces if piece.construction == "panel"}
    for piece in plan.pieces:
        marks = [m for m in piece.landmarks if m.key in ROUND_THE_BODY]
        on_body = any(m.key in ROUND_THE_BODY - {"hem", "top_edge"} and m.body for m in marks)
        if piece.name in closed and on_body:
            for mark in marks:
                yield Opening("narrowest round", piece.name, mark.garment, mark.count)


def has_neck(plan: Plan) -> bool:
    """Whether it closes round the neck: a yoke, or panels that are not held by straps."""
    made = {piece.construction for piece in plan.pieces}
    return bool(made & FROM_THE_NECK) or ("panel" in made and "cord" not in made)


def is_strapless(plan: Plan) -> bool:
    """Whether nothing of it goes over the shoulders: tubes, and borders on them."""
    return all(piece.construction in ("tube", "border") for piece in plan.pieces)
