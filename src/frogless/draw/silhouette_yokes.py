"""Small pictures of garments with a yoke, raglan or round."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from frogless.draw.drawing import Point, Shape, polyline
from frogless.draw.silhouette_sleeves import Sleeve, both_sleeves, measure, sleeve_of
from frogless.draw.sketch import bow, mirrored, rounded, rounds, simple, strip
from frogless.plan.model import PiecePlan, Plan

#: The part of a neck opening that is seen from the front as its width, and how deep it dips.
NECK_SEEN, NECK_DIPS = 0.36, 0.3
SAG = 0.03
YOKES = frozenset({"raglan yoke", "round yoke"})
STEPS_OFF = 12.0


def yoke_top(plan: Plan, unit: float) -> Iterator[Shape]:
    """A garment with a yoke from the front.

    Args:
        unit: mm of garment for a mm on the sheet.
    """
    yoke = next(piece for piece in plan.pieces if piece.construction in YOKES)
    depth, neck = measure(yoke, "yoke depth"), measure(yoke, "neck opening") * NECK_SEEN / 2
    side = _side(plan, depth) or [(-measure(yoke, "body at the underarm") / 4, depth)]
    arm = measure(yoke, "sleeve at the underarm") / 2
    sleeve = sleeve_of(plan) or Sleeve(0.12 * arm, arm, is_edged=False)
    line = _arm(side[0], arm, sleeve, neck)
    front = bow((-neck, 0.0), (neck, 0.0), NECK_DIPS * 2 * neck)
    back = bow((-neck, 0.0), (neck, 0.0), -0.06 * 2 * neck)
    yield polyline([*front, *reversed(back)], "inside", closed=True)
    yield from both_sleeves(line, line[-4:], sleeve, unit)
    low = side[-1]
    hem = bow(low, (-low[0], low[1]), SAG * -low[0])
    around = [*side, *hem[1:-1], *mirrored(side), *reversed(front)]
    yield polyline(around, "cloth", closed=True)
    yield from rounds(around, unit, sag=SAG)
    if yoke.construction == "round yoke":
        yield polyline([*side, *hem[1:-1], *mirrored(side)], "outline")
        yield _ring(line, side[0])
    else:
        yield polyline(around, "outline", closed=True)
    yield strip(front[::-1], unit, deep=1.3)


def _ring(line: Sequence[Point], under: Point) -> Shape:
    """The lower edge of a round yoke, which runs over front and sleeves alike."""
    x, y = line[-4][0] * 0.93, under[1] * 0.62
    return polyline(bow((x, y), (-x, y), under[1] * 0.3), "fold")


def _arm(under: Point, width: float, sleeve: Sleeve, neck: float) -> list[Point]:
    """The left sleeve from the neck over the shoulder to its end, and up to the underarm."""
    top = (under[0] + sleeve.out[0] * width, under[1] + sleeve.out[1] * width)
    outer, inner = sleeve.end(top, under)
    shoulder = (top[0] * 0.8 - neck * 0.12, top[1] * 0.44)
    return [*rounded([(-neck, 0.0), shoulder, top])[:-1], top, outer, inner, under]


def _side(plan: Plan, top: float) -> list[Point]:
    """The left side of the body, which lies folded, from its upper edge down."""
    body: PiecePlan | None = plan.piece("body")
    if body is None or body.shape is None:
        return []
    left = sorted((p for p in body.shape.outlines[0] if p[0] < 0), key=lambda point: point[1])
    return list(rounded(simple([(x, y + top) for x, y in left], STEPS_OFF)))
