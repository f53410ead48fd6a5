"""Small pictures of garments in panels: the front put together, its sleeves at its armholes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from frogless.draw.drawing import Path, Point, Shape, polyline
from frogless.draw.silhouette_sleeves import Sleeve, both_sleeves, measure, sleeve_of
from frogless.draw.sketch import mirrored, rounded, rounds, simple, strip
from frogless.plan.model import PiecePlan, Plan

#: The steps of single rows that are left out of an outline, mm of garment.
STEPS_OFF = 12.0


def fronts(plan: Plan) -> tuple[PiecePlan, ...]:
    """The front of a garment with armholes: one piece or two, the wearer's right one first."""
    worn = {p.name: p for p in plan.pieces if p.shape is not None and measure(p, "armhole depth")}
    if "front" in worn:
        return (worn["front"],)
    if "left front" in worn and "right front" in worn:
        return (worn["right front"], worn["left front"])
    return ()


def panel_top(plan: Plan, unit: float) -> Iterator[Shape]:
    """A garment in panels from the front, over what is seen of its back.

    Args:
        unit: mm of garment for a mm on the sheet.
    """
    found, back = fronts(plan), plan.piece("back")
    left = _outline(found[0], 0.0 if len(found) == 1 else -0.5)
    sleeve, depth = sleeve_of(plan), measure(found[0], "armhole depth")
    if sleeve is not None:
        yield from _sleeves(left, depth, sleeve, unit)
    if back is not None:
        yield from _inside(_outline(back, 0.0), left)
    yield from _straps(plan, left)
    is_edged = any(piece.construction == "border" for piece in plan.pieces)
    for corners in (left,) if len(found) == 1 else (left, mirrored(left)):
        yield polyline(corners, "cloth", closed=True)
        yield from rounds(corners, unit)
        yield polyline(corners, "outline", closed=True)
    if is_edged and len(found) == 1:
        yield strip(_neck(left)[::-1], unit, deep=1.3)
    if is_edged and len(found) == 2:
        edge = _neck(left)
        yield strip(edge[::-1], unit, deep=1.3)
        yield strip(mirrored(edge[::-1]), unit, deep=1.3)


def _outline(piece: PiecePlan, shift: float) -> list[Point]:
    """The outline clockwise from its lower left corner, its middle at x = 0, its neck as a curve.

    Args:
        shift: to the right, in parts of its width.
    """
    ring = list(piece.shape.outlines[0]) if piece.shape else []
    left, right = min(x for x, _ in ring), max(x for x, _ in ring)
    if sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise([*ring, ring[0]])) < 0:
        ring.reverse()
    low = max(y for _, y in ring)
    start = ring.index(min((p for p in ring if p[1] > low - 1.0), key=lambda p: p[0]))
    whole = simple([*ring[start:], *ring[:start]], STEPS_OFF)
    middle = (left + right) / 2 - shift * (right - left)
    placed = [(x - middle, y) for x, y in whole]
    first, last = _neck_ends(placed)
    return [*placed[:first], *rounded(placed[first : last + 1]), *placed[last + 1 :]]


def _neck_ends(corners: Sequence[Point]) -> tuple[int, int]:
    """Where the neck begins and ends: the highest corners either side of the middle.

    On one of two fronts it ends at the lower corner of the edge in the middle.
    """
    top = min(y for _, y in corners)
    high = [i for i, (_, y) in enumerate(corners) if y < top + 1.0]
    left = max((i for i in high if corners[i][0] < 0), default=high[0])
    right = min((i for i in high if corners[i][0] > 0), default=0)
    if right:
        return left, right
    inner = max(x for x, _ in corners)
    return left, next(i for i, (x, _) in enumerate(corners) if x > inner - 1.0)


def _neck(corners: Sequence[Point]) -> list[Point]:
    """The edge from the left neck point to the right one, or down to the hem of one of two."""
    top = min(y for _, y in corners)
    high = [i for i, (_, y) in enumerate(corners) if y < top + 1.0]
    left = max(i for i in high if corners[i][0] < 0)
    return list(
        corners[left : min((i for i in high if corners[i][0] > 0), default=len(corners)) + 1]
    )


def _sleeves(left: Sequence[Point], depth: float, sleeve: Sleeve, unit: float) -> Iterator[Shape]:
    """Both sleeves, each from its shoulder point to its underarm; they go under the front."""
    top = min(y for _, y in left)
    shoulder = min((p for p in left if p[1] < top + 0.25 * depth), key=lambda p: (p[0], p[1]))
    under = (_left_edge(left, top + depth + 1.0), top + depth)
    outer, inner = sleeve.end(shoulder, under)
    behind = ((under[0] * 0.7, under[1]), (under[0] * 0.7, shoulder[1]))
    yield from both_sleeves(
        (shoulder, outer, inner, under, *behind), (shoulder, outer, inner, under), sleeve, unit
    )


def _left_edge(corners: Sequence[Point], y: float) -> float:
    """Where a level line first meets an outline."""
    return min(
        x1 + (x2 - x1) * (y - y1) / (y2 - y1)
        for (x1, y1), (x2, y2) in pairwise([*corners, corners[0]])
        if min(y1, y2) <= y < max(y1, y2)
    )


def _inside(back: Sequence[Point], left: Sequence[Point]) -> Iterator[Shape]:
    """The inside of the back, as far as it is seen in the neck."""
    drop = max(y for _, y in left) - max(y for _, y in back)
    neck = [(x, y + drop) for x, y in _neck(back)]
    if max(y for _, y in _neck(left)) <= neck[0][1]:
        return
    low = neck[0][1] + 0.45 * max(y for _, y in back)
    yield polyline([*neck, (neck[-1][0], low), (neck[0][0], low)], "inside", closed=True)


def _straps(plan: Plan, front: Sequence[Point]) -> Iterator[Shape]:
    """Straps rise from the upper corners of the front, and come down again behind."""
    cords = [p for p in plan.pieces if p.construction == "cord" and p.number_made == 2]
    if not cords:
        return
    corner, top = _neck(front)[0]
    rise = measure(cords[0], "length") * 0.42
    for way in (1, -1):
        x, high = corner * way, top - rise
        up = ((x * 0.98, top - rise * 0.6), (x * 0.84, high), (x * 0.76, high))
        down = ((x * 0.66, high), (x * 0.68, top - rise * 0.5), (x * 0.72, top))
        yield Path((x * 0.96, top), (up, down), "strap")
        yield Path((x * 0.96, top), (up, down), "strap inside")
