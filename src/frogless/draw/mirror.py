"""The mirror image that a left-hander makes of the same rows: what changes sides in a drawing.

A left-hander works each row the other way, and so the fabric comes out as the mirror image. Lettering
stays as it is.

Source: geometry.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import Literal

from frogless.design.work import JoinAt
from frogless.draw.drawing import Point
from frogless.draw.outline import ShapingLine, fold
from frogless.plan.model import Measure, PiecePlan, Plan, Shape

Hand = Literal["right", "left"]

OTHER_SIDE: Mapping[JoinAt, JoinAt] = {
    "centre back": "centre back",
    "left side": "right side",
    "right side": "left side",
}


def join_for(join_at: JoinAt, hand: Hand) -> JoinAt:
    """Where rounds begin and end on the wearer, of rounds that a right-hander joins at `join_at`."""
    return join_at if hand == "right" else OTHER_SIDE[join_at]


def lines_for(lines: Iterable[ShapingLine], hand: Hand) -> tuple[ShapingLine, ...]:
    """Shaping lines as they run round the wearer."""
    if hand == "right":
        return tuple(lines)
    return tuple(
        replace(line, stands=tuple((depth, fold(-turns)) for depth, turns in line.stands))
        for line in lines
    )


def turns_for(turns: Iterable[float], hand: Hand) -> tuple[float, ...]:
    """Places in turns from centre front, the wearer's left positive."""
    return tuple(turns) if hand == "right" else tuple(fold(-turn) for turn in turns)


def plan_for(plan: Plan, hand: Hand) -> Plan:
    """The plan with the shapes of its pieces as they lie, right side up."""
    if hand == "right":
        return plan
    return replace(plan, pieces=tuple(_piece(piece) for piece in plan.pieces))


def _piece(piece: PiecePlan) -> PiecePlan:
    if piece.shape is None:
        return piece
    measures = tuple(_measure(measure) for measure in piece.measures)
    return replace(piece, shape=_shape(piece.shape), measures=measures)


def _shape(shape: Shape) -> Shape:
    way = None if shape.way is None else _point(shape.way)
    return Shape(_runs(shape.outlines), _runs(shape.lines), way)


def _runs(runs: tuple[tuple[Point, ...], ...]) -> tuple[tuple[Point, ...], ...]:
    return tuple(tuple(_point(point) for point in run) for run in runs)


def _measure(measure: Measure) -> Measure:
    if measure.line is None:
        return measure
    start, end = measure.line
    return replace(measure, line=(_point(start), _point(end)))


def _point(point: Point) -> Point:
    # Adding nothing makes a plain zero of a negative one.
    return (-point[0] + 0.0, point[1])
