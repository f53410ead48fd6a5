"""A drawing as a few frozen shapes on paper: mm, x to the right, y down.

A format is one module that reads them.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Literal

Point = tuple[float, float]
Anchor = Literal["start", "middle", "end"]


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line."""

    start: Point
    end: Point
    style: str

    def moved(self, dx: float, dy: float) -> Line:
        """The same, shifted."""
        return Line(_shift(self.start, dx, dy), _shift(self.end, dx, dy), self.style)


@dataclass(frozen=True, slots=True)
class Path:
    """A run of segments from `start`.

    Args:
        segments: each one, two or three points: where it goes, before it the control points.
    """

    start: Point
    segments: tuple[tuple[Point, ...], ...]
    style: str
    closed: bool = False

    @property
    def points(self) -> tuple[Point, ...]:
        """All points in order, control points among them."""
        return (self.start, *(point for segment in self.segments for point in segment))

    def moved(self, dx: float, dy: float) -> Path:
        """The same, shifted."""
        segments = tuple(tuple(_shift(p, dx, dy) for p in segment) for segment in self.segments)
        return Path(_shift(self.start, dx, dy), segments, self.style, self.closed)


@dataclass(frozen=True, slots=True)
class Circle:
    """A circle or, small, a dot."""

    centre: Point
    radius: float
    style: str

    def moved(self, dx: float, dy: float) -> Circle:
        """The same, shifted."""
        return replace(self, centre=_shift(self.centre, dx, dy))


@dataclass(frozen=True, slots=True)
class Text:
    """One line of text on its baseline; `angle_deg` turns it clockwise about that point."""

    at: Point
    text: str
    style: str
    anchor: Anchor = "start"
    angle_deg: float = 0.0

    def moved(self, dx: float, dy: float) -> Text:
        """The same, shifted."""
        return replace(self, at=_shift(self.at, dx, dy))


Shape = Line | Path | Circle | Text


@dataclass(frozen=True, slots=True)
class Drawing:
    """Shapes on a sheet, painted in order, with the words for those who do not see them."""

    width: float
    height: float
    title: str
    description: str
    shapes: tuple[Shape, ...]

    @property
    def texts(self) -> tuple[Text, ...]:
        """The lettering alone."""
        return tuple(shape for shape in self.shapes if isinstance(shape, Text))


def polyline(points: Iterable[Point], style: str, *, closed: bool = False) -> Path:
    """A path of straight segments through points (at least one)."""
    start, *rest = points
    return Path(start, tuple((point,) for point in rest), style, closed)


def dots(points: Iterable[Point], radius: float, style: str) -> tuple[Circle, ...]:
    """A circle at each point."""
    return tuple(Circle(point, radius, style) for point in points)


def _shift(point: Point, dx: float, dy: float) -> Point:
    return (point[0] + dx, point[1] + dy)
