"""Strokes for small pictures of garments: rounds hinted at, edges trimmed, folds of a full hem."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import cos, dist, floor, hypot, radians, sin

from frogless.draw.curves import Knot, flat, smooth
from frogless.draw.drawing import Circle, Line, Path, Point, Shape, Text, polyline

#: Between two hints of rounds, from scallop to scallop, and how deep a scallop hangs, mm on the
#: sheet.
BETWEEN, SCALLOP, DEEP = 3.3, 2.4, 1.25


def rounds(
    outline: Sequence[Point], unit: float, *, angle_deg: float = 0.0, sag: float = 0.0
) -> Iterator[Shape]:
    """Light lines across an area, evenly spaced, as rounds or rows run.

    Args:
        outline: corners of the area, mm of garment.
        unit: mm of garment for a mm on the sheet.
        angle_deg: how the lines lie, clockwise from level.
        sag: how much they hang down in their middle, in parts of their length.
    """
    level = [turned(point, -angle_deg) for point in outline]
    step = BETWEEN * unit
    low, high = min(y for _, y in level), max(y for _, y in level)
    number = max(1, floor((high - low) / step))
    for i in range(1, number):
        y = low + (high - low) * i / number
        ends = sorted(_crossed(level, y))
        for left, right in zip(ends[::2], ends[1::2], strict=False):
            start, end = turned((left, y), angle_deg), turned((right, y), angle_deg)
            yield (
                polyline(bow(start, end, sag * (right - left)), "row hint")
                if sag
                else Line(start, end, "row hint")
            )


def scallops(edge: Sequence[Point], unit: float, style: str = "trimming") -> Path:
    """Scallops along an edge, hanging off to its right-hand side on the sheet as it runs."""
    total = sum(dist(a, b) for a, b in pairwise(edge))
    number = max(3, round(total / (SCALLOP * unit)))
    spots = [along(edge, i / number) for i in range(number + 1)]
    segments: list[tuple[Point, ...]] = []
    for a, b in pairwise(spots):
        span = dist(a, b) or 1.0
        # Quadratic curves reach half way to their control point.
        out = 2 * DEEP * unit * min(1.0, span / (SCALLOP * unit))
        x, y = (a[0] + b[0]) / 2, (a[1] + b[1]) / 2
        control = (x - (b[1] - a[1]) / span * out, y + (b[0] - a[0]) / span * out)
        segments.append((control, b))
    back: list[tuple[Point, ...]] = [(point,) for point in reversed(edge[:-1])]
    return Path(spots[0], (*segments, *back), style, closed=True)


def strip(edge: Sequence[Point], unit: float, style: str = "trimming", deep: float = 1.0) -> Path:
    """A narrow even border along an edge, on the same side as `scallops`."""
    out = [_beside(edge, i, deep * unit) for i in range(len(edge))]
    return polyline([*edge, *reversed(out)], style, closed=True)


def along(points: Sequence[Point], part: float) -> Point:
    """The spot at a part of the length of a line, 0 to 1."""
    lengths = [dist(a, b) for a, b in pairwise(points)]
    left = part * sum(lengths)
    for (a, b), length in zip(pairwise(points), lengths, strict=True):
        if left <= length and length:
            return (a[0] + (b[0] - a[0]) * left / length, a[1] + (b[1] - a[1]) * left / length)
        left -= length
    return points[-1]


def bow(left: Point, right: Point, sag: float, steps: int = 16) -> tuple[Point, ...]:
    """A line from left to right that hangs down by `sag` in its middle (a parabola)."""
    return tuple(
        (
            left[0] + (right[0] - left[0]) * t,
            left[1] + (right[1] - left[1]) * t + 4 * sag * t * (1 - t),
        )
        for t in (i / steps for i in range(steps + 1))
    )


def rounded(points: Sequence[Point]) -> tuple[Point, ...]:
    """A smooth line through the points, as many short straight pieces."""
    kept = [point for i, point in enumerate(points) if not i or dist(point, points[i - 1]) > 1e-6]
    return flat(smooth([Knot(point) for point in kept])) if len(kept) > 2 else tuple(kept)


def waved(line: Sequence[Point], folds: int, deep: float) -> tuple[Point, ...]:
    """The line in waves, so many from end to end, each so deep, mm."""
    steps = 12 * max(1, folds)
    spots = [along(line, i / steps) for i in range(steps + 1)]
    return tuple(
        (x, y + deep * (1 - cos(radians(360 * folds * i / steps))) / 2)
        for i, (x, y) in enumerate(spots)
    )


def simple(points: Sequence[Point], off: float) -> tuple[Point, ...]:
    """The line with as few of its points as keep it within `off` mm of where it ran.

    Source: halving where it strays farthest (Ramer, Douglas and Peucker), from memory.
    """
    if len(points) < 3:
        return tuple(points)
    strays = [_off_line(point, points[0], points[-1]) for point in points[1:-1]]
    worst = max(strays)
    if worst <= off:
        return (points[0], points[-1])
    at = strays.index(worst) + 1
    return (*simple(points[: at + 1], off)[:-1], *simple(points[at:], off))


def mirrored(points: Sequence[Point]) -> tuple[Point, ...]:
    """The mirror image in x = 0, run through backwards."""
    return tuple((-x, y) for x, y in reversed(points))


def fitted(shapes: Sequence[Shape], scale: float, dx: float, dy: float) -> tuple[Shape, ...]:
    """The shapes at a scale, then shifted; lettering is not scaled."""
    return tuple(_fitted(shape, scale, dx, dy) for shape in shapes)


def _fitted(shape: Shape, scale: float, dx: float, dy: float) -> Shape:
    def at(point: Point) -> Point:
        return (point[0] * scale + dx, point[1] * scale + dy)

    match shape:
        case Line(start, end, style):
            return Line(at(start), at(end), style)
        case Circle(centre, radius, style):
            return Circle(at(centre), radius * scale, style)
        case Path(start, segments, style, closed):
            return Path(at(start), tuple(tuple(map(at, s)) for s in segments), style, closed)
        case Text():
            return Text(at(shape.at), shape.text, shape.style, shape.anchor, shape.angle_deg)


def _crossed(outline: Sequence[Point], y: float) -> Iterator[float]:
    for (x1, y1), (x2, y2) in pairwise([*outline, outline[0]]):
        if min(y1, y2) <= y < max(y1, y2):
            yield x1 + (x2 - x1) * (y - y1) / (y2 - y1)


def _off_line(point: Point, start: Point, end: Point) -> float:
    """How far a point lies from a line, or from where it starts when it has no length."""
    span = dist(start, end)
    if not span:
        return dist(point, start)
    (x, y), (x1, y1), (x2, y2) = point, start, end
    return abs((x2 - x1) * (y - y1) - (y2 - y1) * (x - x1)) / span


def turned(point: Point, angle_deg: float) -> Point:
    """The point turned clockwise round (0, 0)."""
    turn = radians(angle_deg)
    x, y = point
    return (x * cos(turn) - y * sin(turn), x * sin(turn) + y * cos(turn))


def _beside(edge: Sequence[Point], i: int, out: float) -> Point:
    """The spot so far off a corner of a line, square to its course there."""
    before, behind = edge[max(0, i - 1)], edge[min(len(edge) - 1, i + 1)]
    span = hypot(behind[0] - before[0], behind[1] - before[1]) or 1.0
    x, y = edge[i]
    return (x - (behind[1] - before[1]) / span * out, y + (behind[0] - before[0]) / span * out)
