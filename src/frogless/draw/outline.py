"""The shape of the piece, round by round, and where its shaping points run.

All of it is read from the plan and its row program; nothing is decided here.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from frogless.design.work import JoinAt
from frogless.plan.model import Plan, SectionPlan
from frogless.rows.count import left_for_later
from frogless.rows.nodes import Chain, Into, Node, Repeat, Row, Skip, Together, Work

JOIN_TURNS: Mapping[JoinAt, float] = {"centre back": -0.5, "left side": 0.25, "right side": -0.25}


@dataclass(frozen=True, slots=True)
class Level:
    """The lower edge of one round: its depth and girth, mm, and whether the round shapes."""

    round: int
    depth: float
    count: int
    girth: float
    shapes: bool = False


@dataclass(frozen=True, slots=True)
class ShapingLine:
    """One shaping point through one section: where it stands in each shaping round.

    Args:
        top, bottom: depths between which its marker is carried, mm.
        stands: depth of the round's lower edge, mm, and place in turns from centre front
            (-0.5 to 0.5, the wearer's left positive).
    """

    top: float
    bottom: float
    stands: tuple[tuple[float, float], ...]


def levels(plan: Plan) -> tuple[Level, ...]:
    """Every round of the skirt from the top edge (depth 0) to the hem, edging left out."""
    rows, found = _rows_by_number(plan), list[Level]()
    for section in plan.main.sections:
        first = section.first_round if found else max(0, section.first_round - 1)
        numbers = range(first, section.last_round + 1)
        whole = (rows[n] for n in numbers if not left_for_later(rows[n].body))
        found.extend(_level(plan, section, row) for row in whole)
    if found[0].depth > 0:
        found.insert(0, replace(found[0], depth=0.0, shapes=False))
    return tuple(found)


def shaping_rounds(section: SectionPlan) -> tuple[int, ...]:
    """The section's shaping rounds, as the piece numbers them."""
    if section.chosen is None:
        return ()
    return tuple(section.first_round - 1 + r for r in section.chosen.rhythm.rounds)


def meeting(plan: Plan, join_at: str) -> str:
    """The name of the words for where rounds begin: joined there, or only begun there in a spiral.

    The first row is the foundation, a ring in any case, and the last one may be joined to end it.
    """
    rounds = plan.program.pieces[0].rows[1 : plan.main.sections[-1].last_round]
    spiral = bool(rounds) and all(row.end.join == "none" for row in rounds)
    return f"{'begin' if spiral else 'join'}_{join_at}"


def girth_at(shape: Sequence[Level], depth: float) -> float:
    """Girth at a depth, straight between the lower edges of two rounds."""
    depths, girths = [level.depth for level in shape], [level.girth for level in shape]
    return float(np.interp(depth, depths, girths))


def wanted_profile(plan: Plan) -> tuple[tuple[float, float], ...]:
    """Depths and wanted girths between which the wanted profile runs straight.

    Landmarks are knots, and so are the ends of sections: a straight one keeps the girth that was
    wanted where it begins; a shaped one that ends at no landmark has only its own girth to show.
    """
    if all(section.profile for section in plan.main.sections):
        knots = [(0.0, plan.main.landmarks[0].wanted)]
        knots.extend(knot for section in plan.main.sections for knot in section.profile)
        return tuple(dict.fromkeys(knots))
    waist, *others = plan.main.landmarks
    knots = [(0.0, waist.wanted)]
    for section in plan.main.sections:
        top, bottom = (
            plan.main.depths[max(0, section.first_round - 1)],
            plan.main.depths[section.last_round],
        )
        if section.chosen is None and knots[-1][0] < top:
            knots.append((top, knots[-1][1]))
        # A section ends on a whole round, so the landmark it was made for may lie a little below.
        reach = bottom + section.gauge.height.value
        met = sorted((m.depth, m.wanted) for m in others if knots[-1][0] < m.depth <= reach)
        knots.extend(met)
        if knots[-1][0] < bottom - section.gauge.height.value:
            kept = knots[-1][1] if section.chosen is None else _girth_after(section)
            knots.append((bottom, kept))
    return tuple(knots)


def wanted_at(plan: Plan, depth: float) -> float:
    """Wanted girth at a depth; beyond the first and last landmark it stays as there."""
    depths, girths = zip(*wanted_profile(plan), strict=True)
    return float(np.interp(depth, depths, girths))


def edging_height(plan: Plan) -> float:
    """How far the edging hangs below the hem, mm."""
    if plan.main.edging is None:
        return 0.0
    last, hem = plan.main.edging.last_round, plan.main.sections[-1].last_round
    if last < len(plan.main.depths) and last > hem:
        return plan.main.depths[last] - plan.main.depths[hem]
    rounds = max(1, last - plan.main.edging.first_round + 1)
    return rounds * plan.main.edging.gauge.height.value


def shaping_lines(plan: Plan, join_at: JoinAt = "centre back") -> tuple[ShapingLine, ...]:
    """Every shaping point, section by section, where the row program puts it.

    A skirt worked from the waist down is held waist downwards. A right-hander's work runs from
    right to left in the hand, so from the join towards the wearer's right when worn; turned
    rounds run the other way.
    """
    rows = _rows_by_number(plan)
    return tuple(
        line
        for section in plan.main.sections
        for line in _section_lines(plan, section, rows, join_at)
    )


def fold(turns: float) -> float:
    """The same place with a whole turn added or taken until it lies from -0.5 to 0.5."""
    return (turns + 0.5) % 1.0 - 0.5


def is_front(turns: float) -> bool:
    """Whether a place lies on the front half, side edges included."""
    return abs(turns) <= 0.25 + 1e-9


def _girth_after(section: SectionPlan) -> float:
    return section.girth_after.value


def _level(plan: Plan, section: SectionPlan, row: Row) -> Level:
    """The count is the row's own: nothing that is drawn is counted again."""
    girth = plan.main.girth_of(row.number, row.count, section.gauge)
    shapes = row.number in shaping_rounds(section)
    return Level(row.number, plan.main.depths[row.number], row.count, girth, shapes)


def _rows_by_number(plan: Plan) -> dict[int, Row]:
    """The rows of the piece that the first section is worked in."""
    names = {section.name for section in plan.main.sections}
    for piece in plan.program.pieces:
        if any(row.section in names for row in piece.rows):
            return {row.number: row for row in piece.rows}
    return {}


def _section_lines(
    plan: Plan, section: SectionPlan, rows: dict[int, Row], join_at: JoinAt
) -> tuple[ShapingLine, ...]:
    if section.chosen is None or section.lines == "staggered":
        return ()
    tracks: list[list[tuple[float, float]]] = [[] for _ in range(section.chosen.points)]
    for number in shaping_rounds(section):
        parts = _shaped_parts(rows.get(number), section.chosen.points)
        way = -1 if number in rows and rows[number].side == "WS" else 1
        found = sorted(fold(JOIN_TURNS[join_at] + way * part) for part in parts)
        places = _in_line([track[-1][1] for track in tracks if track], found)
        for track, place in zip(tracks, places, strict=False):
            track.append((plan.main.depths[number], place))
    top, bottom = (
        plan.main.depths[max(0, section.first_round - 1)],
        plan.main.depths[section.last_round],
    )
    return tuple(ShapingLine(top, bottom, tuple(track)) for track in tracks if track)


def _in_line(above: Sequence[float], places: Sequence[float]) -> Sequence[float]:
    """The places in the order of those above them: near centre back the first may be the last."""
    if len(above) != len(places):
        return places

    def apart(by: int) -> float:
        turned = (*places[by:], *places[:by])
        return sum(abs(fold(b - a)) for a, b in zip(above, turned, strict=True))

    by = min(range(len(places)), key=apart)
    return (*places[by:], *places[:by])


def _shaped_parts(row: Row | None, points: int) -> tuple[float, ...]:
    """Places of the shaping in parts of the round; evenly spread when the row does not say."""
    # A turning chain that counts is the first stitch; the body goes on after it.
    spots, made = _spots(row.body, 1.0 if row.start.counts else 0.0) if row else ((), 0.0)
    if len(spots) != points or not made:
        return tuple((i + 0.5) / points for i in range(points))
    return tuple(spot / made for spot in spots)


def _spots(body: Sequence[Node], start: float = 0.0) -> tuple[tuple[float, ...], float]:
    """Middles of the groups that shape, in stitches from the beginning, and the stitches made."""
    spots: list[float] = []
    made = start
    for node in body:
        match node:
            case Work(_, times):
                made += times
            case Chain(times, each):
                made += times if each else 1
            case Into(inner):
                many = _spots(inner)[1]
                if many > 1:
                    spots.append(made + many / 2)
                made += many
            case Together():
                spots.append(made + 0.5)
                made += 1
            case Repeat(inner, times):
                for _ in range(times):
                    more, made = _spots(inner, made)
                    spots.extend(more)
            case Skip():
                pass
    return tuple(spots), made
