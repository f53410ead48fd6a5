"""How a swatch is counted, weighed, stretched and hung, as pictures."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Literal, get_args

from frogless.draw.cloth import Cloth, Placing, fans, posts, run
from frogless.draw.drawing import Drawing, Line, Point, Shape, Text, polyline
from frogless.draw.swatch_tools import (
    GAP,
    PIN,
    RULED,
    Tape,
    clip,
    numbered,
    pin,
    pull,
    tape,
    weight,
)
from frogless.draw.tape import AMONG_OTHERS, arrow
from frogless.errors import InputError
from frogless.units import Units

Task = Literal["stitches", "rows", "repeats", "mass", "stretched_width", "hung_height"]

SIDE = 108.0
#: Stitches and rows in the window; the swatch is half as wide and high again.
COUNTED_STITCHES, COUNTED_ROWS, COUNTED_REPEATS = 18, 10, 4
#: How much wider it is stretched and how much longer it hangs.
STRETCHED, HUNG = 1.25, 1.12
#: mm on the sheet for a mm of swatch, in most of the pictures and when it is pulled.
SCALE, SMALL = 0.67, 0.47


@dataclass(frozen=True, slots=True)
class _Told:
    """What one picture says and how it is drawn."""

    title: str
    description: str
    draw: Callable[[Tape], Iterator[Shape]]


def counting(task: str, units: Units = "cm") -> Drawing:
    """How a swatch is read.

    Args:
        task: "stitches", "rows", "repeats", "mass", "stretched_width" or "hung_height".

    Raises:
        InputError: there is no such task.
    """
    if task not in TOLD:
        raise InputError(f'"{task}" is not read from a swatch; use {", ".join(get_args(Task))}')
    told, ruled = TOLD[task], RULED[units]
    words = {
        "window": ruled.window,
        "stitches": COUNTED_STITCHES,
        "rows": COUNTED_ROWS,
        "repeats": COUNTED_REPEATS,
    }
    return Drawing(
        SIDE,
        SIDE,
        told.title.format(**words),
        told.description.format(**words),
        tuple(told.draw(ruled)),
    )


def _stitches(ruled: Tape) -> Iterator[Shape]:
    cloth, at = _flat(ruled)
    yield from posts(cloth, at)
    first = (cloth.stitches - COUNTED_STITCHES) // 2
    row = cloth.rows // 2
    yield run(cloth, at, row, first, first + COUNTED_STITCHES, "stitch counted")
    for number in (1, 5, 10, 15, COUNTED_STITCHES):
        yield from numbered(
            at((first + number - 0.5) * cloth.stitch, (row + 1.5) * cloth.row), number
        )
    left, right = (first * cloth.stitch, (first + COUNTED_STITCHES) * cloth.stitch)
    y = at(0, row * cloth.row)[1]
    yield from tape((at(left, 0)[0], y + GAP), ruled, SCALE)
    for x in (left, right):
        yield from pin((at(x, 0)[0], y - PIN + GAP), (0, 1))


def _rows(ruled: Tape) -> Iterator[Shape]:
    cloth, at = _flat(ruled)
    yield from posts(cloth, at)
    first = (cloth.rows - COUNTED_ROWS) // 2
    column = cloth.stitches // 2 - 1
    for row in range(first, first + COUNTED_ROWS):
        yield run(cloth, at, row, column, column + 1, "stitch counted")
        yield from numbered(
            at((column - 1.2) * cloth.stitch, (row + 0.45) * cloth.row), row - first + 1
        )
    bottom, top = first * cloth.row, (first + COUNTED_ROWS) * cloth.row
    x = at((column + 1) * cloth.stitch, 0)[0]
    yield from tape((x + GAP, at(0, bottom)[1]), ruled, SCALE, upright=True)
    for y in (bottom, top):
        yield from pin((x - PIN + GAP, at(0, y)[1]), (1, 0))


def _repeats(ruled: Tape) -> Iterator[Shape]:
    pitch = ruled.length * 1.16 / COUNTED_REPEATS
    cloth = Cloth(COUNTED_REPEATS + 1, 6, pitch, pitch * 0.82)
    at = _centred(cloth, SCALE)
    yield from fans(cloth, at)
    row = 2
    left, right = 0.5 * pitch, (COUNTED_REPEATS + 0.5) * pitch
    y = at(0, row * cloth.row)[1]
    yield from tape((at(left, 0)[0], y + GAP), ruled, SCALE, units=ruled.units * 1.2)
    for i in range(COUNTED_REPEATS):
        ends = [at((i + 0.5 + k) * pitch, row * cloth.row) for k in (0, 1)]
        yield from arrow([(ends[0][0] + 1, y - 6), (ends[1][0] - 1, y - 6)], AMONG_OTHERS)
        yield from numbered(((ends[0][0] + ends[1][0]) / 2, y - 8.2), i + 1)
    for x in (left, right):
        yield from pin((at(x, 0)[0], y - PIN + GAP), (0, 1))


def _stretched(ruled: Tape) -> Iterator[Shape]:
    lying = _cloth(ruled)
    cloth = Cloth(lying.stitches, lying.rows, lying.stitch * STRETCHED, lying.row * 0.94)
    at = _centred(cloth, SMALL)
    yield from posts(cloth, at)
    yield _outline(lying, _centred(lying, SMALL))
    first = (cloth.stitches - COUNTED_STITCHES) // 2
    row = cloth.rows // 2
    yield run(cloth, at, row, first, first + COUNTED_STITCHES, "stitch counted")
    left, right = (at((first + n) * cloth.stitch, 0)[0] for n in (0, COUNTED_STITCHES))
    y = at(0, row * cloth.row)[1]
    yield from tape((left, y + GAP), ruled, SMALL, units=ruled.units * 1.35)
    for x in (left, right):
        yield from pin((x, y - PIN + GAP), (0, 1))
    for x, way in ((at(0, 0)[0], -1), (at(cloth.width, 0)[0], 1)):
        for part in (0.2, 0.5, 0.8):
            height = at(0, cloth.height * part)[1]
            yield from pull((x + way * 1.5, height), (way, 0))


def _hung(ruled: Tape) -> Iterator[Shape]:
    lying = _cloth(ruled)
    cloth = Cloth(lying.stitches, lying.rows, lying.stitch * 0.97, lying.row * HUNG)
    top = 16.0
    at = _placed(cloth, SMALL, top)
    yield Line((10, top - 4), (SIDE - 10, top - 4), "rod")
    yield from posts(cloth, at)
    yield _outline(lying, _placed(lying, SMALL, top))
    for part in (0.04, 0.35, 0.65, 0.96):
        yield from clip((at(cloth.width * part, 0)[0], top))
    first = (cloth.rows - COUNTED_ROWS) // 2
    column = cloth.stitches // 2 - 1
    for row in range(first, first + COUNTED_ROWS):
        yield run(cloth, at, row, column, column + 1, "stitch counted")
    bottom, upper = (at(0, (first + n) * cloth.row)[1] for n in (0, COUNTED_ROWS))
    x = at((column + 1) * cloth.stitch, 0)[0]
    yield from tape((x + GAP, bottom), ruled, SMALL, units=ruled.units * 1.2, upright=True)
    for y in (bottom, upper):
        yield from pin((x - PIN + GAP, y), (1, 0))
    left, low = at(0, 0)
    right = at(cloth.width, 0)[0]
    yield Line((left, low + 0.6), (right, low + 0.6), "rod")
    for part in (0.2, 0.5, 0.8):
        yield from weight((left + (right - left) * part, low + 0.6))


def _weighed(ruled: Tape) -> Iterator[Shape]:
    """The swatch lies on the scales, seen a little from above."""
    cloth = _cloth(ruled)
    slant, flat, scale = 0.4, 0.42, 0.42
    width = (cloth.width + cloth.height * slant) * scale
    left, floor = (SIDE - width) / 2, 58.0

    def at(x: float, y: float) -> Point:
        return (left + (x + y * slant) * scale, floor - y * flat * scale)

    def block(grow: float, top: float, bottom: float) -> Iterator[Shape]:
        """A flat box under the swatch, so much larger on each side: its top, front and right."""
        x, y = cloth.width + grow, cloth.height + grow
        near, far = at(-grow, -grow), at(x, -grow)
        back, behind = at(x, y), at(-grow, y)
        for face in (
            [(near, top), (far, top), (back, top), (behind, top)],
            [(near, top), (far, top), (far, bottom), (near, bottom)],
            [(far, top), (back, top), (back, bottom), (far, bottom)],
        ):
            yield polyline([(px, py + down) for (px, py), down in face], "trim", closed=True)

    yield from block(4, 4, 20)
    yield from block(12, 0, 4)
    yield from posts(cloth, at)
    x, y = at(cloth.width / 2, -4)
    window = [(x + a * 14, y + 12.2 + b * 4.4) for a, b in ((-1, -1), (1, -1), (1, 1), (-1, 1))]
    yield polyline(window, "tape strip", closed=True)
    shown = "9.6 g" if ruled.units == 10 else "0.34 oz"
    yield Text((x, y + 14.1), shown, "display", "middle")


def _cloth(ruled: Tape) -> Cloth:
    stitch, row = ruled.length / COUNTED_STITCHES, ruled.length / COUNTED_ROWS
    return Cloth(COUNTED_STITCHES + 8, COUNTED_ROWS + 4, stitch, row)


def _flat(ruled: Tape) -> tuple[Cloth, Placing]:
    cloth = _cloth(ruled)
    return cloth, _centred(cloth, SCALE)


def _centred(cloth: Cloth, scale: float) -> Placing:
    return _placed(cloth, scale, (SIDE - cloth.height * scale) / 2)


def _placed(cloth: Cloth, scale: float, top: float) -> Placing:
    left, bottom = (SIDE - cloth.width * scale) / 2, top + cloth.height * scale

    def at(x: float, y: float) -> Point:
        return (left + x * scale, bottom - y * scale)

    return at


def _outline(cloth: Cloth, at: Placing) -> Shape:
    """Where the swatch lay."""
    corners = ((0.0, 0.0), (cloth.width, 0.0), (cloth.width, cloth.height), (0.0, cloth.height))
    return polyline((at(x, y) for x, y in corners), "level", closed=True)


TOLD: Mapping[str, _Told] = {
    "stitches": _Told(
        "Count the stitches in {window}",
        "A swatch lying flat. Two pins stand {window} apart, away from its edges, with a tape"
        " between them. Between the pins one row is counted across: {stitches} stitches.",
        _stitches,
    ),
    "rows": _Told(
        "Count the rows in {window}",
        "A swatch lying flat. Two pins lie {window} apart, one above the other, with a tape"
        " between them. Between the pins the rows are counted upward: {rows} rows.",
        _rows,
    ),
    "repeats": _Told(
        "Count whole repeats of a stitch pattern",
        "A swatch of fans lying flat. One pin stands in the middle of a fan, the other in the"
        " middle of a later one: {repeats} repeats lie between them. The tape measures from pin"
        " to pin.",
        _repeats,
    ),
    "mass": _Told(
        "Weigh the whole swatch",
        "The whole swatch, with all its stitches and rows, lies on scales that show tenths.",
        _weighed,
    ),
    "stretched_width": _Told(
        "Stretch it and measure the same stitches",
        "The swatch is pulled to both sides as far as is comfortable; where it lay is dashed. The"
        " pins have stayed in their stitches. The tape measures from pin to pin.",
        _stretched,
    ),
    "hung_height": _Told(
        "Hang it and measure the same rows",
        "The swatch hangs by its top edge from a rod, with small weights spread along its bottom"
        " edge; where it lay is dashed. The pins have stayed in their rows. The tape measures"
        " from pin to pin.",
        _hung,
    ),
}
"""The pictures by task."""
