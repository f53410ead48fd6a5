"""A tape laid round a body or along it, and the string from which depths are measured."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import atan2, cos, dist, hypot, sin

from frogless.draw.curves import Knot, path, smooth
from frogless.draw.drawing import Circle, Line, Path, Point, Shape, polyline

#: How far a loop seems to hang down in front, in parts of its half width.
SAG = 0.17
#: The same of the string, from which depths are measured where it is seen.
SNUG = 0.05
#: Control points of a quarter of an ellipse, from memory.
QUARTER = 0.5523


@dataclass(frozen=True, slots=True)
class Look:
    """How heavy a tape is: its styles round the body and along it, and an arrow's head, mm."""

    round: str
    along: str
    head: float


ALONE = Look("tape", "tape along", 3.4)
AMONG_OTHERS = Look("tape fine", "tape fine", 2.3)


def loop(
    left: Point,
    right: Point,
    *,
    front: str = "tape",
    behind: str = "tape behind",
    sag: float = SAG,
    rise: float | None = None,
) -> Iterator[Path]:
    """A loop round a part of the body between its edges: behind it dashed, before it solid.

    Args:
        left, right: its two turns, mm on the sheet; both at one height when it is level.
        sag: how far it seems to hang down in front, in parts of the half width.
        rise: how far up behind; None: as far.
    """
    yield _half(left, right, -(sag if rise is None else rise), behind)
    yield _half(left, right, sag, front)


def arrow(points: Sequence[Point], look: Look = ALONE) -> Iterator[Shape]:
    """A tape along the body through points (at least two), with a head at both ends."""
    curves = smooth([Knot(point) for point in points])
    start, end = curves[0], curves[-1]
    total = sum(dist(curve[0], curve[3]) for curve in curves)
    head = min(look.head, total / 3)
    # The tape itself ends inside its heads, or its round ends would stand out beyond them.
    first = (_toward(start[0], start[1], 0.7 * head), *start[1:])
    last = (*(first if len(curves) == 1 else end)[:3], _toward(end[3], end[2], 0.7 * head))
    yield path((last,) if len(curves) == 1 else (first, *curves[1:-1], last), look.along)
    yield _head(start[0], start[1], head)
    yield _head(end[3], end[2], head)


def string(left: Point, right: Point) -> Iterator[Shape]:
    """A thin string tied round the waist, its knot at one side of the front."""
    yield from loop(left, right, front="string", behind="string behind", sag=SNUG)
    half = (right[0] - left[0]) / 2
    x, y = left[0] + half * 0.45, left[1] + half * SNUG * 0.84
    yield Circle((x, y), 0.55, "string knot")
    for way in (-1, 1):
        yield Path((x, y), (((x + way * 0.35, y + 1.4), (x + way * 1.1, y + 2.8)),), "string")


def level(left: Point, right: Point) -> Line:
    """A thin dashed line at the height where a length ends."""
    return Line(left, right, "level")


def _half(left: Point, right: Point, sag: float, style: str) -> Path:
    """Half an ellipse over the line from left to right."""
    half = dist(left, right) / 2
    angle = atan2(right[1] - left[1], right[0] - left[0])
    middle = ((left[0] + right[0]) / 2, (left[1] + right[1]) / 2)

    def at(along: float, across: float) -> Point:
        x, y = along * half, across * half * sag
        return (
            middle[0] + x * cos(angle) - y * sin(angle),
            middle[1] + x * sin(angle) + y * cos(angle),
        )

    first = (at(-1, QUARTER), at(-QUARTER, 1), at(0, 1))
    second = (at(QUARTER, 1), at(1, QUARTER), right)
    return Path(left, (first, second), style)


def _head(tip: Point, toward: Point, size: float) -> Path:
    """A filled head at the tip, open toward another point."""
    x, y = _way(tip, toward)
    corners = [
        (tip[0] + size * (x - side * y * 0.45), tip[1] + size * (y + side * x * 0.45))
        for side in (-1, 1)
    ]
    return polyline((tip, *corners), "tape end", closed=True)


def _toward(start: Point, end: Point, by: float) -> Point:
    x, y = _way(start, end)
    return (start[0] + x * by, start[1] + y * by)


def _way(start: Point, end: Point) -> Point:
    """The unit vector from one point to another."""
    span = hypot(end[0] - start[0], end[1] - start[1]) or 1.0
    return ((end[0] - start[0]) / span, (end[1] - start[1]) / span)
