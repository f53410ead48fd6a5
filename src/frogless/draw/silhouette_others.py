"""Small pictures of hats, bags and shawls, and of anything else as its pieces side by side."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import atan2, degrees, dist

from frogless.draw.drawing import Path, Point, Shape, polyline
from frogless.draw.sketch import bow, rounds, scallops, simple, strip, turned
from frogless.plan.model import PiecePlan, Plan

SAG = 0.045
#: What stands for work without an outline, mm.
SWATCH = [(0.0, 0.0), (150.0, 0.0), (150.0, 150.0), (0.0, 150.0)]
#: Air between two pieces side by side, mm on the sheet.
GAP = 2.5


def hat(plan: Plan, unit: float) -> Iterator[Shape]:
    """A hat from the front, its edge a little from below."""
    corners = _hanging(_ring(plan.main))
    yield polyline(corners, "cloth", closed=True)
    yield from rounds(corners, unit, sag=SAG)
    for start, end in (line for line in _lines(plan.main) if len(line) == 2):
        left, right = sorted((start, end))
        yield polyline(bow(left, right, SAG * (right[0] - left[0])), "fold")
    yield polyline(corners, "outline", closed=True)
    if plan.main.edging is not None:
        yield _edged(plan.main, _lower(corners), unit)


def bag(plan: Plan, unit: float) -> Iterator[Shape]:
    """A bag from the front, open at the top, with its rim and its handles."""
    ring = _ring(plan.main)
    left, right = min(x for x, _ in ring), max(x for x, _ in ring)
    top, bottom = min(y for _, y in ring), max(y for _, y in ring)
    width = right - left
    sag = SAG * width if plan.main.construction == "disc" else 0.0
    handles = [p for p in plan.pieces if p.construction == "cord"]
    rims = [p for p in plan.pieces if p.construction == "border"]
    rim = max((_height(p) for p in rims), default=0.0)
    if handles:
        yield from _handle(left, right, top - rim - sag, _length(handles[0]), behind=True)
    if sag:
        mouth = [*bow((left, top - rim), (right, top - rim), sag)]
        back = bow((left, top - rim), (right, top - rim), -sag)
        yield polyline([*mouth, *reversed(back)], "inside", closed=True)
    lower = bow((left, bottom), (right, bottom), sag or 0.0)
    upper = bow((left, top), (right, top), sag)
    body = [*upper, *reversed(lower)]
    yield polyline(body, "cloth", closed=True)
    yield from rounds(
        [(left, top), (right, top), (right, bottom), (left, bottom)], unit, sag=sag / width
    )
    yield polyline(body, "outline", closed=True)
    if rims:
        edge = bow((left, top - rim), (right, top - rim), sag)
        yield polyline([*edge, *reversed(upper)], "trimming", closed=True)
    if handles:
        yield from _handle(left, right, top - rim + sag, _length(handles[0]), behind=False)


def shawl(plan: Plan, unit: float) -> Iterator[Shape]:
    """A shawl spread out, its longest edge on top."""
    ring = list(simple(_closed(_ring(plan.main)), 0.4 * unit)[:-1])
    grown = plan.main.shape.way if plan.main.shape else None
    last = _last_row(ring, is_from_middle=grown is None)
    angle = _turn(ring)
    ring, last = [turned(p, angle) for p in ring], [turned(p, angle) for p in last]
    if _is_upside_down(ring):
        ring, last = [(x, -y) for x, y in ring], [(x, -y) for x, y in reversed(last)]
    yield polyline(ring, "cloth", closed=True)
    if grown is None:
        yield from _from_middle(ring, last, unit)
    else:
        lie = degrees(atan2(last[-1][1] - last[0][1], last[-1][0] - last[0][0]))
        yield from rounds(ring, unit, angle_deg=lie)
    yield polyline(ring, "outline", closed=True)
    if plan.main.edging is not None:
        yield _edged(plan.main, _outward(last, ring), unit)


def pieces(plan: Plan, unit: float) -> Iterator[Shape]:
    """Every piece that has a shape, side by side on a common floor; a swatch when none has."""
    shown = [
        p for p in plan.pieces if p.shape is not None and p.construction not in {"border", "cord"}
    ]
    shown = shown or [p for p in plan.pieces if p.shape is not None]
    rings = [(_ring(p), p.shape.outlines[1:] if p.shape else ()) for p in shown]
    x = 0.0
    for ring, holes in rings or [(SWATCH, ())]:
        left, low = min(p[0] for p in ring), max(p[1] for p in ring)
        placed = [(px - left + x, py - low) for px, py in ring]
        yield polyline(placed, "cloth", closed=True)
        yield from rounds(placed, unit)
        yield polyline(placed, "outline", closed=True)
        for hole in holes:
            yield polyline([(a - left + x, b - low) for a, b in hole], "trimming", closed=True)
        x = max(p[0] for p in placed) + GAP * unit


def _ring(piece: PiecePlan) -> list[Point]:
    return list(piece.shape.outlines[0]) if piece.shape else []


def _lines(piece: PiecePlan) -> Sequence[Sequence[Point]]:
    return piece.shape.lines if piece.shape else ()


def _closed(ring: Sequence[Point]) -> list[Point]:
    return [*ring, ring[0]]


def _hanging(ring: Sequence[Point]) -> list[Point]:
    """The outline, its level lower edge hanging down a little in the middle."""
    low = max(y for _, y in ring)
    around: list[Point] = []
    for a, b in pairwise(_closed(ring)):
        around.append(a)
        if a[1] > low - 0.5 and b[1] > low - 0.5 and abs(a[0] - b[0]) > 1.0:
            around += bow(a, b, SAG * abs(b[0] - a[0]))[1:-1]
    return around


def _lower(corners: Sequence[Point]) -> list[Point]:
    """The lower edge from left to right."""
    xs = [x for x, _ in corners]
    left, right = min(xs), max(xs)
    low = max(y for x, y in corners if x in {left, right})
    return sorted((p for p in corners if p[1] >= low - 0.5), key=lambda p: p[0])


def _edged(piece: PiecePlan, edge: Sequence[Point], unit: float) -> Path:
    many = piece.edging is not None and piece.edging.multiple > 1
    return scallops(edge, unit) if many else strip(edge, unit)


def _last_row(ring: Sequence[Point], *, is_from_middle: bool) -> list[Point]:
    """The edge where the work ends: all but the straight upper edge, or the lower one."""
    sides = list(pairwise(_closed(ring)))
    if not is_from_middle:
        low = max(y for _, y in ring)
        return sorted((p for p in ring if p[1] > low - 1.0), key=lambda p: p[0])
    longest = max(sides, key=lambda side: dist(*side) if abs(side[0][1] - side[1][1]) < 1 else 0.0)
    at = sides.index(longest) + 1
    return [*ring[at:], *ring[:at]]


def _turn(ring: Sequence[Point]) -> float:
    """By how many degrees the outline is turned so that its longest side lies level."""
    a, b = max(pairwise(_closed(ring)), key=lambda side: dist(*side))
    left, right = sorted((a, b))
    return -degrees(atan2(right[1] - left[1], right[0] - left[0]))


def _is_upside_down(ring: Sequence[Point]) -> bool:
    a, b = max(pairwise(_closed(ring)), key=lambda side: dist(*side))
    return sum(y for _, y in ring) / len(ring) < (a[1] + b[1]) / 2


def _outward(edge: Sequence[Point], ring: Sequence[Point]) -> list[Point]:
    """The edge, run through so that its trimming hangs outside."""
    a, b = edge[0], edge[-1]
    x, y = sum(p[0] for p in ring) / len(ring), sum(p[1] for p in ring) / len(ring)
    side = (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])
    is_outside_right = side < 0 if len(edge) == 2 else a[0] < b[0]
    return list(edge) if is_outside_right else list(reversed(edge))


def _from_middle(ring: Sequence[Point], last: Sequence[Point], unit: float) -> Iterator[Shape]:
    """Rows of a shawl that grows from the middle of its upper edge."""
    top = min(y for _, y in ring)
    x = (min(p[0] for p in ring) + max(p[0] for p in ring)) / 2
    deep = max(y for _, y in ring) - top
    number = max(2, int(deep / (3.3 * unit)))
    for i in range(1, number):
        part = i / number
        yield polyline([(x + (a - x) * part, top + (b - top) * part) for a, b in last], "row hint")


def _handle(left: float, right: float, y: float, length: float, *, behind: bool) -> Iterator[Shape]:
    """A handle as an arch over the mouth of a bag; the one behind a little higher."""
    middle, half = (left + right) / 2, (right - left) * 0.24
    rise = max(length / 2 - half, 0.3 * length) * (1.0 if behind else 0.88)
    shift = -0.07 * (right - left) if behind else 0.0
    start, end = (middle - half - shift, y), (middle + half - shift, y)
    arch = (
        (
            (start[0], y - rise * 0.75),
            (middle - half * 0.8, y - rise),
            (middle - shift, y - rise),
        ),
        ((middle + half * 0.8, y - rise), (end[0], y - rise * 0.75), end),
    )
    yield Path(start, arch, "strap")
    yield Path(start, arch, "strap inside")


def _length(piece: PiecePlan) -> float:
    return max(x for x, _ in _ring(piece)) - min(x for x, _ in _ring(piece))


def _height(piece: PiecePlan) -> float:
    return max(y for _, y in _ring(piece)) - min(y for _, y in _ring(piece))
