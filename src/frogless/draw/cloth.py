"""Crocheted cloth in few strokes: posts with tops, row upon row, and fans of them."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from math import cos, pi, sin

from frogless.draw.drawing import Path, Point, Shape, polyline

Placing = Callable[[float, float], Point]
"""From a spot on the cloth (mm to the right and up) to the sheet."""

#: How far the top of a post lies below the top of its row, and a top bulges, in parts of the row.
BULGE = 0.16
#: The stitches of a fan, and how far its outer ones stand off the row below, in half turns.
RAYS, SIDE_ON = 7, 0.08


@dataclass(frozen=True, slots=True)
class Cloth:
    """A swatch lying flat: stitches across, rows up, the size of each in mm."""

    stitches: int
    rows: int
    stitch: float
    row: float

    @property
    def width(self) -> float:
        """Of the whole swatch, mm."""
        return self.stitches * self.stitch

    @property
    def height(self) -> float:
        """Of the whole swatch, mm."""
        return self.rows * self.row


def posts(cloth: Cloth, at: Placing) -> Iterator[Shape]:
    """The cloth in plain tall stitches."""
    yield ground(cloth, at)
    for row in range(cloth.rows):
        yield run(cloth, at, row, 0, cloth.stitches, "stitch")


def run(cloth: Cloth, at: Placing, row: int, first: int, last: int, style: str) -> Path:
    """Some neighbouring stitches of a row, counted from 0; `last` is the one after them."""
    low, top = row * cloth.row, (row + 1 - BULGE) * cloth.row
    segments: list[tuple[Point, ...]] = []
    for i in range(first, last):
        x, half = (i + 0.5) * cloth.stitch, cloth.stitch / 2
        crown = at(x, top + BULGE * cloth.row)
        segments += [
            (at(x - half / 2, top + BULGE * cloth.row), crown),
            (at(x, low),),
            (crown,),
            (at(x + half / 2, top + BULGE * cloth.row), at(x + half, top)),
        ]
    return Path(at(first * cloth.stitch, top), tuple(segments), style)


def fans(cloth: Cloth, at: Placing) -> Iterator[Shape]:
    """The cloth in fans, each as wide as one of its stitches and as high as a row."""
    yield ground(cloth, at)
    for row in range(cloth.rows):
        low = row * cloth.row
        segments: list[tuple[Point, ...]] = []
        for i in range(cloth.stitches):
            foot = (i + 0.5) * cloth.stitch
            for k in range(RAYS):
                turn = pi * (SIDE_ON + (1 - 2 * SIDE_ON) * k / (RAYS - 1))
                # A petal from the foot of the fan and back; its end is the top of a stitch.
                for way in (-1, 1):
                    ray = turn + way * pi / (RAYS - 1) / 2.6
                    x = foot - cos(ray) * cloth.stitch * 0.5
                    segments.append((at(x, low + max(0.0, sin(ray)) * cloth.row),))
                segments.append((at(foot, low),))
        yield Path(at(0.5 * cloth.stitch, low), tuple(segments), "stitch")


def ground(cloth: Cloth, at: Placing) -> Path:
    """The plain area of the cloth."""
    corners = ((0.0, 0.0), (cloth.width, 0.0), (cloth.width, cloth.height), (0.0, cloth.height))
    return polyline((at(x, y) for x, y in corners), "swatch", closed=True)
