"""Smooth lines through given points, and what of them lies in a window."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import dist

from frogless.draw.drawing import Path, Point, polyline
from frogless.draw.layout import Box

Cubic = tuple[Point, Point, Point, Point]

#: Straight pieces by which a curve is told where only its course matters.
STEPS = 12
#: The same of an area that is cut: its line is drawn over it.
FEW_STEPS = 5


@dataclass(frozen=True, slots=True)
class Knot:
    """A point that a line runs through; at a corner it may break."""

    at: Point
    is_corner: bool = False


def smooth(knots: Sequence[Knot], *, closed: bool = False) -> tuple[Cubic, ...]:
    """Cubic curves through the knots (at least two), with one tangent at each that is no corner.

    Source: tangents of the parabola through three neighbours, told by chord lengths, from memory.
    """
    ring = [*knots, knots[0]] if closed else list(knots)
    before = [ring[-2] if closed else None, *ring[:-1]]
    behind = [*ring[1:], ring[1] if closed else None]
    tangents = [_tangent(*three) for three in zip(before, ring, behind, strict=True)]
    return tuple(
        _cubic(a.at, b.at, leaving, coming)
        for (a, b), ((_, leaving), (coming, _)) in zip(
            pairwise(ring), pairwise(tangents), strict=True
        )
    )


def flat(curves: Sequence[Cubic], steps: int = STEPS) -> tuple[Point, ...]:
    """Points along the curves, close enough to run straight between them."""
    points = [curves[0][0]]
    points += [_at(curve, i / steps) for curve in curves for i in range(1, steps + 1)]
    return tuple(points)


def path(curves: Sequence[Cubic], style: str, *, closed: bool = False) -> Path:
    """The curves as one shape."""
    return Path(curves[0][0], tuple(curve[1:] for curve in curves), style, closed)


def crossings(curves: Sequence[Cubic], y: float) -> tuple[float, ...]:
    """Every x at which the curves cross a height, from left to right."""
    found = []
    for (x1, y1), (x2, y2) in pairwise(flat(curves)):
        if min(y1, y2) <= y < max(y1, y2):
            found.append(x1 + (x2 - x1) * (y - y1) / (y2 - y1))
    return tuple(sorted(found))


def seen(curves: Sequence[Cubic], window: Box, style: str) -> Iterator[Path]:
    """The runs of the curves that lie in a window, each as one path."""
    run: list[Cubic] = []
    for piece in (part for curve in curves for part in _parts(curve, window)):
        if run and dist(run[-1][3], piece[0]) > 1e-6:
            yield path(run, style)
            run = []
        run.append(piece)
    if run:
        yield path(run, style)


def filled(curves: Sequence[Cubic], window: Box, style: str) -> tuple[Path, ...]:
    """The area that closed curves enclose, cut straight at the window's edges.

    Source: clipping of a polygon edge by edge (Sutherland and Hodgman), from memory.
    """
    points = list(flat(curves, FEW_STEPS))
    if all(_is_in(point, window) for point in points):
        return (path(curves, style, closed=True),)
    for side, limit, keeps_above in (
        (0, window.left, True),
        (0, window.right, False),
        (1, window.top, True),
        (1, window.bottom, False),
    ):
        points = list(_cut(points, side, limit, keeps_above=keeps_above))
    return (polyline(points, style, closed=True),) if points else ()


def _tangent(before: Knot | None, here: Knot, behind: Knot | None) -> tuple[Point, Point]:
    """How the curve comes to a knot and how it leaves it; at a corner or an end straight."""
    coming = _slope(before, here) if before else (0.0, 0.0)
    leaving = _slope(here, behind) if behind else (0.0, 0.0)
    if here.is_corner or before is None or behind is None:
        return coming, leaving
    first, second = dist(before.at, here.at), dist(here.at, behind.at)
    along = (
        (coming[0] * second + leaving[0] * first) / (first + second),
        (coming[1] * second + leaving[1] * first) / (first + second),
    )
    return along, along


def _slope(start: Knot, end: Knot) -> Point:
    span = dist(start.at, end.at)
    return ((end.at[0] - start.at[0]) / span, (end.at[1] - start.at[1]) / span)


def _cubic(start: Point, end: Point, leaving: Point, coming: Point) -> Cubic:
    third = dist(start, end) / 3
    return (
        start,
        (start[0] + leaving[0] * third, start[1] + leaving[1] * third),
        (end[0] - coming[0] * third, end[1] - coming[1] * third),
        end,
    )


def _at(curve: Cubic, t: float) -> Point:
    weights = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3)
    return (
        sum(w * p[0] for w, p in zip(weights, curve, strict=True)),
        sum(w * p[1] for w, p in zip(weights, curve, strict=True)),
    )


def _parts(curve: Cubic, window: Box) -> Iterator[Cubic]:
    """The parts of a curve in the window, cut where it leaves."""
    inside = [_is_in(_at(curve, i / STEPS), window) for i in range(STEPS + 1)]
    if all(inside):
        yield curve
        return
    start: float | None = 0.0 if inside[0] else None
    for i, (was, now) in enumerate(pairwise(inside)):
        if was == now:
            continue
        edge = _edge(curve, i / STEPS, (i + 1) / STEPS, lambda p: _is_in(p, window))
        if now:
            start = edge
        elif start is not None:
            yield _between(curve, start, edge)
            start = None
    if start is not None:
        yield _between(curve, start, 1.0)


def _edge(curve: Cubic, low: float, high: float, is_in: Callable[[Point], bool]) -> float:
    """Where between two places a curve enters or leaves, by halving; the last spot inside."""
    first = is_in(_at(curve, low))
    for _ in range(30):
        middle = (low + high) / 2
        if is_in(_at(curve, middle)) == first:
            low = middle
        else:
            high = middle
    return low if first else high


def _between(curve: Cubic, low: float, high: float) -> Cubic:
    """The part of a curve between two places on it (de Casteljau's construction, from memory)."""
    right = _split(curve, low)[1] if low > 0 else curve
    return _split(right, (high - low) / (1 - low))[0] if high < 1 else right


def _split(curve: Cubic, t: float) -> tuple[Cubic, Cubic]:
    def mix(a: Point, b: Point) -> Point:
        return (a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t)

    a, b, c = (mix(p, q) for p, q in pairwise(curve))
    d, e = mix(a, b), mix(b, c)
    middle = mix(d, e)
    return (curve[0], a, d, middle), (middle, e, c, curve[3])


def _is_in(point: Point, window: Box) -> bool:
    across = window.left <= point[0] <= window.right
    return across and window.top <= point[1] <= window.bottom


def _cut(points: Sequence[Point], side: int, limit: float, *, keeps_above: bool) -> Iterator[Point]:
    """A polygon's part on one side of an upright or level line."""
    way = 1 if keeps_above else -1
    for a, b in pairwise([points[-1], *points] if points else []):
        a_in, b_in = ((p[side] - limit) * way >= 0 for p in (a, b))
        if a_in != b_in:
            part = (limit - a[side]) / (b[side] - a[side])
            yield (a[0] + (b[0] - a[0]) * part, a[1] + (b[1] - a[1]) * part)
        if b_in:
            yield b
