"""A ruler and a counting window to print at true scale, and what they are checked against."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from frogless.draw.drawing import Drawing, Line, Path, Point, Shape, Text, polyline
from frogless.draw.layout import wrap
from frogless.units import INCH, Units

#: Width, height and corner radius of a bank card, mm. Source: ISO/IEC 7810, format ID-1; the
#: corner is the middle of the 2.88 to 3.48 that it allows; from memory.
CARD_WIDTH, CARD_HEIGHT, CARD_CORNER = 85.60, 53.98, 3.18
SQUARE = 100.0
#: What A4 and US letter both hold inside margins of 15 mm: 180 by 249.4 mm.
WIDTH = 180.0

CM_LONG, INCHES_LONG = 15, 6
STRIP = 26.0
LINE = 5.0
#: Control points of a quarter of a circle, from memory.
ROUND = 0.5523

SAYS: Mapping[str, str] = {
    "ruler": "A ruler to print",
    "ruler_told": "A ruler of 15 cm and 6 in, a square of 100 mm, and the outline of a bank card"
    " of 85.60 by 53.98 mm, all at true size when printed at 100 %.",
    "check": "The square must measure 100 mm ({inches}) on every side, and a bank card must cover"
    " its outline. If they do not, print again at 100 %, “actual size”, without fitting to the"
    " page.",
    "square": "100 mm ({inches})",
    "card": "bank card",
    "card_size": "85.60 × 53.98 mm",
    "cm": "cm",
    "in": "in",
    "window": "A window to count through",
    "window_told": "A frame to cut out. Its window is {window} wide and high, with a mark every"
    " {mark} along its edges.",
    "cut": "Print at 100 %, “actual size”. Cut along both lines and lay the frame on the"
    " swatch, well away from its edges: count the stitches across the window, and the rows up.",
}
SQUARE_IN_INCHES = "3 15/16 in"


@dataclass(frozen=True, slots=True)
class Ruled:
    """Marks along a line: one unit, mm, its parts, and how long the mark of each part is, mm."""

    unit: float
    lengths: tuple[float, ...]

    @property
    def step(self) -> float:
        """From mark to mark, mm."""
        return self.unit / len(self.lengths)


MILLIMETRES = Ruled(10.0, (6.0, *(2.6,) * 4, 4.2, *(2.6,) * 4))
EIGHTHS = Ruled(INCH, (6.0, 2.0, 3.0, 2.0, 4.4, 2.0, 3.0, 2.0))
QUARTERS = Ruled(INCH, (6.0, 3.0, 4.4, 3.0))


def ruler(units: Units = "cm") -> Drawing:
    """A ruler of 15 cm and 6 in, a square of 100 mm and the outline of a bank card, true to scale.

    Args:
        units: whose scale stands at the ruler's upper edge.
    """
    shapes: list[Shape] = []
    y = 6.0
    shapes += _strip((WIDTH - INCHES_LONG * INCH) / 2, y, units)
    y += STRIP + 8.0
    check = SAYS["check"].format(inches=SQUARE_IN_INCHES)
    for line in wrap(check, "legend", WIDTH - 4):
        shapes.append(Text((2.0, y), line, "legend"))
        y += LINE
    y += 2.0
    shapes += _square((2.0, y))
    shapes += _card((WIDTH - 8.0 - CARD_HEIGHT, y + (SQUARE - CARD_WIDTH) / 2))
    return Drawing(WIDTH, y + SQUARE + 3.0, SAYS["ruler"], SAYS["ruler_told"], tuple(shapes))


def swatch_window(units: Units = "cm") -> Drawing:
    """A frame to cut out, with a window of 10 cm or 4 in and marks at its edges, true to scale."""
    ruled, number = (MILLIMETRES, 10) if units == "cm" else (QUARTERS, 4)
    side, border, margin = ruled.unit * number, 17.0, 3.0
    outer = side + 2 * border
    left = top = margin + border
    shapes: list[Shape] = [
        _box((margin, margin), outer, outer, "cloth"),
        _box((left, top), side, side, "hole"),
        _box((left, top), side, side, "frame"),
        _box((margin, margin), outer, outer, "cut"),
    ]
    for way in range(4):
        shapes += _edge((left, top), side, ruled, number, way)
    width, y = outer + 2 * margin, margin + outer + 8.0
    middle = left + side / 2
    shapes.append(Text((middle, top + side / 2 + 1.5), f"{number} {units}", "display", "middle"))
    for line in wrap(SAYS["cut"], "legend", width - 2 * margin):
        shapes.append(Text((margin, y), line, "legend"))
        y += LINE
    told = SAYS["window_told"].format(
        window=f"{number} {units}", mark="millimeter" if units == "cm" else "quarter inch"
    )
    return Drawing(width, y, SAYS["window"], told, tuple(shapes))


def marks(ruled: Ruled, number: int) -> Iterator[tuple[float, float]]:
    """Each mark of so many units: how far along it stands, and how long it is, mm."""
    parts = len(ruled.lengths)
    for i in range(number * parts + 1):
        yield i * ruled.step, ruled.lengths[i % parts]


def _strip(left: float, top: float, units: Units) -> Iterator[Shape]:
    """The ruler: one scale at the upper edge, reading down, the other at the lower, reading up."""
    scales: Mapping[Units, tuple[Ruled, int]] = {
        "cm": (MILLIMETRES, CM_LONG),
        "in": (EIGHTHS, INCHES_LONG),
    }
    yield _box((left - 6.0, top), INCHES_LONG * INCH + 12.0, STRIP, "cloth")
    yield _box((left - 6.0, top), INCHES_LONG * INCH + 12.0, STRIP, "frame")
    other: Units = "in" if units == "cm" else "cm"
    each: tuple[tuple[Units, float, int], ...] = ((units, top, 1), (other, top + STRIP, -1))
    for unit, y, way in each:
        ruled, number = scales[unit]
        for along, length in marks(ruled, number):
            yield Line((left + along, y), (left + along, y + way * length), f"{unit} mark")
        for i in range(number + 1):
            baseline = y + way * 9.6 if way > 0 else y - 7.2
            name = str(i) if i else SAYS[unit]
            yield Text((left + i * ruled.unit, baseline), name, "axis", "middle")


def _square(corner: Point) -> Iterator[Shape]:
    x, y = corner
    yield _box(corner, SQUARE, SQUARE, "frame")
    name = SAYS["square"].format(inches=SQUARE_IN_INCHES)
    for line in (((x, y + 12), (x + SQUARE, y + 12)), ((x + 12, y), (x + 12, y + SQUARE))):
        yield Line(*line, "dimension")
        for end_x, end_y in line:
            yield Line((end_x - 1.2, end_y + 1.2), (end_x + 1.2, end_y - 1.2), "tick")
    yield Text((x + SQUARE / 2 + 6, y + 10), name, "legend", "middle")
    yield Text((x + 10, y + SQUARE / 2 + 6), name, "legend", "middle", -90.0)


def _card(corner: Point) -> Iterator[Shape]:
    """A bank card on its short side."""
    x, y = corner
    yield _rounded(corner, CARD_HEIGHT, CARD_WIDTH, CARD_CORNER)
    middle = (x + CARD_HEIGHT / 2, y + CARD_WIDTH / 2)
    yield Text((middle[0], middle[1] - 1.5), SAYS["card"], "legend", "middle")
    yield Text((middle[0], middle[1] + 3.5), SAYS["card_size"], "legend", "middle")


def _rounded(corner: Point, width: float, height: float, radius: float) -> Path:
    """An upright rectangle with round corners."""
    (left, top), right, bottom = corner, corner[0] + width, corner[1] + height
    near = radius * (1 - ROUND)
    return Path(
        (left + radius, top),
        (
            ((right - radius, top),),
            ((right - near, top), (right, top + near), (right, top + radius)),
            ((right, bottom - radius),),
            ((right, bottom - near), (right - near, bottom), (right - radius, bottom)),
            ((left + radius, bottom),),
            ((left + near, bottom), (left, bottom - near), (left, bottom - radius)),
            ((left, top + radius),),
            ((left, top + near), (left + near, top), (left + radius, top)),
        ),
        "frame",
        closed=True,
    )


def _edge(corner: Point, side: float, ruled: Ruled, number: int, way: int) -> Iterator[Shape]:
    """Marks and numbers along one edge of the window; `way` 0 to 3: top, left, bottom, right."""
    left, top = corner

    def at(along: float, out: float) -> Point:
        return (
            (left + along, top - out),
            (left - out, top + side - along),
            (left + along, top + side + out),
            (left + side + out, top + side - along),
        )[way]

    for along, length in marks(ruled, number):
        yield Line(at(along, 0), at(along, length), "cm mark")
    for i in range(1, number):
        x, y = at(i * ruled.unit, 8.6)
        yield Text((x, y + 1.2), str(i), "axis", "middle")


def _box(corner: Point, width: float, height: float, style: str) -> Path:
    (x, y) = corner
    corners = ((x, y), (x + width, y), (x + width, y + height), (x, y + height))
    return polyline(corners, style, closed=True)
