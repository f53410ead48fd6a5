"""What a swatch is read with: tape, pins, pegs and weights, and the numbers that are counted."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from frogless.draw.drawing import Circle, Line, Point, Shape, Text, polyline
from frogless.units import INCH, Units

#: A tape's width, and how far it lies from what is counted, mm.
TAPE, GAP = 6.4, 0.9
#: A pin from its head to the edge of the tape, and how far its point lies on the tape, mm.
PIN, POINT = 13.0, 1.2


@dataclass(frozen=True, slots=True)
class Tape:
    """A tape's unit on the swatch, mm, how many of them the window has, and its words."""

    unit: float
    units: int
    window: str

    @property
    def length(self) -> float:
        """Of the window, mm."""
        return self.unit * self.units


RULED: Mapping[Units, Tape] = {
    "cm": Tape(10.0, 10, "10 cm"),
    "in": Tape(INCH, 4, "4 in"),
}


def tape(
    start: Point, ruled: Tape, scale: float, *, units: float = 0.0, upright: bool = False
) -> Iterator[Shape]:
    """A tape that begins at a spot and reads from there.

    Args:
        scale: mm on the sheet for a mm of swatch.
        units: how far it reads at least, in its own units; 0 for a little more than the window.
        upright: whether it reads upward instead of to the right.
    """
    step = ruled.unit * scale
    number = int(units or ruled.units)
    length = max(number + 0.5, units) * step

    def at(along: float, across: float) -> Point:
        if upright:
            return (start[0] + across, start[1] - along)
        return (start[0] + along, start[1] + across)

    corners = ((0.0, 0.0), (length, 0.0), (length, TAPE), (0.0, TAPE))
    yield polyline((at(x, y) for x, y in corners), "tape strip", closed=True)
    parts = 2 if ruled.units == 10 else 4
    for i in range(number * parts + 1):
        long = 2.0 if i % parts == 0 else 1.0
        yield Line(at(i * step / parts, 0), at(i * step / parts, long), "tape tick")
    for i in range(0, number + 1, 5 if ruled.units == 10 else 1):
        x, y = at(i * step, TAPE - 0.7)
        if upright:
            yield Text(
                (start[0] + TAPE - 0.5, y + (0.9 if i else 0.0)), str(i), "tape number", "end"
            )
        else:
            yield Text(
                (x + 0.5 if i == 0 else x, y),
                str(i),
                "tape number",
                "start" if i == 0 else "middle",
            )


def numbered(at: Point, number: int) -> Iterator[Shape]:
    """A number on a patch of plain cloth."""
    half = 1.4 if number < 10 else 2.4
    x, y = at
    corners = ((x - half, y - 1.7), (x + half, y - 1.7), (x + half, y + 1.7), (x - half, y + 1.7))
    yield polyline(corners, "patch", closed=True)
    yield Text((x, y + 1.3), str(number), "count", "middle")


def pin(head: Point, way: Point) -> Iterator[Shape]:
    """A pin from its head along `way`, a unit vector."""
    x, y = head
    yield Line(head, (x + way[0] * (PIN + POINT), y + way[1] * (PIN + POINT)), "pin")
    yield Circle(head, 1.1, "pin head")


def pull(start: Point, way: Point) -> Iterator[Shape]:
    """An arrow to one side, as the swatch is pulled; `way` is a level unit vector."""
    x, y = start[0] + way[0] * 6.5, start[1] + way[1] * 6.5
    yield Line(start, (x - way[0] * 1.5, y - way[1] * 1.5), "scale")
    corners = ((x, y), (x - way[0] * 2.4 + way[1], y - 1.1), (x - way[0] * 2.4 - way[1], y + 1.1))
    yield polyline(corners, "join", closed=True)


def clip(at: Point) -> Iterator[Shape]:
    """A peg that holds an upper edge."""
    x, y = at
    corners = ((x - 1.2, y - 6), (x + 1.2, y - 6), (x + 0.9, y + 3), (x - 0.9, y + 3))
    yield polyline(corners, "trim", closed=True)
    yield Circle((x, y - 2.2), 0.5, "join")


def weight(at: Point) -> Iterator[Shape]:
    """A small weight under a lower edge."""
    x, y = at
    yield Line(at, (x, y + 2.0), "rod")
    corners = ((x - 2.0, y + 2.0), (x + 2.0, y + 2.0), (x + 2.8, y + 7.0), (x - 2.8, y + 7.0))
    yield polyline(corners, "weight", closed=True)
