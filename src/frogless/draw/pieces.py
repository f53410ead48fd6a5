"""The pieces of a garment lying flat, at one scale, with their measurements lettered."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import count, product
from string import ascii_lowercase

from frogless.draw.callouts import SAMPLE_WIDTH, Key, Sheet, assemble, moved
from frogless.draw.drawing import Circle, Drawing, Line, Point, Shape, Text, polyline
from frogless.draw.layout import extent
from frogless.draw.scale import scale_key
from frogless.draw.words import with_defaults
from frogless.plan.model import Measure, PiecePlan, Plan
from frogless.units import Units, show_length

#: The height of a single piece, and of a shelf of several, the air between two of them, the sheet's
#: width for one piece and for several, mm; and what a sum of floats may be off.
TALLEST, SHELF = 110.0, 58.0
GAP = 8.0
NARROW, WIDE = 108.0, 165.0
SLACK = 1e-6
NAME_STEP = 6.5
STRIPS = frozenset({"border", "cord"})
#: A letter's disc, the bars at the ends of a dimension line, the arrow of the work, mm.
DISC = 2.3
BAR = 1.1
ARROW = 7.0
HEAD = 1.6
#: Where along its line a letter is tried.
TRIED = (0.5, 0.3, 0.7, 0.15, 0.85, 0.0, 1.0)


@dataclass(frozen=True, slots=True)
class _Drawn:
    """A piece on the sheet, from (0, 0) to the right and down."""

    shapes: tuple[Shape, ...]
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class _Lettered:
    """A piece and its measurements, those with a dimension line under their letters."""

    piece: PiecePlan
    measures: tuple[tuple[str, Measure], ...]


def pieces_drawing(
    plan: Plan, *, title: str, units: Units, labels: Mapping[str, str] | None = None
) -> Drawing | None:
    """Every piece that has a shape, right side up, at one scale; None when none has.

    Borders and cords are long strips that would make all else small: they are told in words only.

    Args:
        labels: words by name that replace those of `words.WORDS`.
    """
    words = with_defaults(labels or {})
    pieces = _lettered([piece for piece in plan.pieces if _is_drawn(piece)])
    if not pieces:
        return None
    wide = len(pieces) > 1
    sheet = Sheet(
        title, describe_pieces(plan, units, labels), WIDE if wide else NARROW, columns=1 + wide
    )
    scale = _scale(pieces, sheet)
    drawn = [_draw(piece, scale, words) for piece in pieces]
    keys = (
        scale_key(scale, units),
        Key(_arrow((SAMPLE_WIDTH / 2 - ARROW / 2, 0.0), (1.0, 0.0)), words["way"]),
        *(
            Key(_letter(letter, (SAMPLE_WIDTH / 2, 0.0)), _told(piece, measure, units, words))
            for piece in pieces
            for letter, measure in piece.measures
        ),
    )
    return assemble(tuple(_on_shelves(drawn, sheet)), words["flat"], keys, sheet)


def describe_pieces(plan: Plan, units: Units, labels: Mapping[str, str] | None = None) -> str:
    """The pieces and their measurements in words, for those who do not see the drawing."""
    words = with_defaults(labels or {})
    told = []
    for piece in plan.pieces:
        if piece.shape is None:
            continue
        measures = "; ".join(_value(measure, units, words) for measure in piece.measures)
        told.append(words["tell_piece"].format(name=piece.name, measures=measures))
    return " ".join(told)


def _is_drawn(piece: PiecePlan) -> bool:
    return piece.shape is not None and piece.construction not in STRIPS


def _lettered(pieces: Sequence[PiecePlan]) -> tuple[_Lettered, ...]:
    letters = _letters()
    return tuple(
        _Lettered(piece, tuple((next(letters), m) for m in piece.measures if m.line is not None))
        for piece in pieces
    )


def _letters() -> Iterator[str]:
    """a, b, … z, aa, ab, …"""
    for length in count(1):
        yield from map("".join, product(ascii_lowercase, repeat=length))


def _corners(piece: PiecePlan) -> list[Point]:
    if piece.shape is None:
        return []
    return [point for ring in piece.shape.outlines for point in ring]


def _size(piece: PiecePlan) -> tuple[float, float]:
    """Width and height of the outline, mm of garment."""
    xs, ys = zip(*_corners(piece), strict=True)
    return max(max(xs) - min(xs), 1.0), max(max(ys) - min(ys), 1.0)


def _scale(pieces: Sequence[_Lettered], sheet: Sheet) -> float:
    """The scale at which the tallest piece fits a shelf, and the widest the sheet.

    Of several pieces the widest takes a third of it, so that three lie side by side.
    """
    sizes = [_size(each.piece) for each in pieces]
    room = sheet.width - 2 * (sheet.margin + DISC)
    tallest = TALLEST if len(pieces) == 1 else SHELF
    if len(pieces) > 1:
        room = (room - 2 * GAP) / 3 - SLACK
    return min(room / max(w for w, _ in sizes), tallest / max(h for _, h in sizes))


def _draw(lettered: _Lettered, scale: float, words: Mapping[str, str]) -> _Drawn:
    piece = lettered.piece
    if piece.shape is None:
        return _Drawn((), 0.0, 0.0)
    corners = _corners(piece)
    left, top = min(x for x, _ in corners), min(y for _, y in corners)
    width, height = (side * scale for side in _size(piece))

    def at(point: Point) -> Point:
        return ((point[0] - left) * scale, (point[1] - top) * scale)

    outer, *holes = piece.shape.outlines
    shapes: list[Shape] = [
        polyline(map(at, outer), "cloth", closed=True),
        polyline(map(at, outer), "outline", closed=True),
        *(polyline(map(at, hole), "edging", closed=True) for hole in holes),
        *(polyline(map(at, line), "shaping") for line in piece.shape.lines),
    ]
    way = piece.shape.way
    if way is not None and abs(way[0]) * width + abs(way[1]) * height > 2 * ARROW:
        middle = (width / 2 - way[0] * ARROW / 2, height / 2 - way[1] * ARROW / 2)
        shapes.extend(_arrow(middle, way))
    taken: list[Point] = []
    for letter, measure in lettered.measures:
        if measure.line is not None:
            ends = at(measure.line[0]), at(measure.line[1])
            taken.append(_free(ends, taken))
            shapes.extend(_dimension(*ends, letter, taken[-1]))
    name = piece.name
    if piece.number_made > 1:
        name = words["make"].format(name=name, number=piece.number_made)
    shapes.append(Text((width / 2, height + NAME_STEP), name, "name", "middle"))
    return _Drawn(tuple(shapes), width, height + NAME_STEP)


def _free(ends: tuple[Point, Point], taken: Sequence[Point]) -> Point:
    """Where on a line its letter stands clear of the others: in the middle, if it can."""
    (x1, y1), (x2, y2) = ends
    spots = [(x1 + (x2 - x1) * part, y1 + (y2 - y1) * part) for part in TRIED]
    clear = (s for s in spots if all(math.dist(s, other) >= 2 * DISC for other in taken))
    return next(clear, spots[0])


def _dimension(start: Point, end: Point, letter: str, at: Point) -> Iterator[Shape]:
    """A line with a bar at both ends and its letter in a disc on it."""
    length = math.dist(start, end) or 1.0
    across = (-(end[1] - start[1]) / length * BAR, (end[0] - start[0]) / length * BAR)
    yield Line(start, end, "dimension")
    for x, y in (start, end):
        yield Line((x - across[0], y - across[1]), (x + across[0], y + across[1]), "tick")
    yield from _letter(letter, at)


def _letter(letter: str, at: Point) -> tuple[Shape, ...]:
    disc = DISC if len(letter) == 1 else DISC * 1.35
    return (Circle(at, disc, "trim"), Text((at[0], at[1] + 1.15), letter, "axis", "middle"))


def _arrow(start: Point, way: Point) -> tuple[Shape, ...]:
    """An arrow along `way`, a unit vector."""
    x, y = way
    end = (start[0] + x * ARROW, start[1] + y * ARROW)
    heads = [
        (end[0] - HEAD * (x - side * y * 0.6), end[1] - HEAD * (y + side * x * 0.6))
        for side in (-1, 1)
    ]
    return (Line(start, end, "scale"), polyline((heads[0], end, heads[1]), "scale"))


def _on_shelves(drawn: Sequence[_Drawn], sheet: Sheet) -> Iterator[Shape]:
    """The pieces from left to right, a new shelf where the sheet is full."""
    x = y = tallest = 0.0
    room = sheet.width - 2 * (sheet.margin + DISC)
    for piece in drawn:
        box = extent(piece.shapes)
        width = max(piece.width, box.right - box.left)
        if x and x + width > room:
            x, y, tallest = 0.0, y + tallest + GAP, 0.0
        yield from moved(piece.shapes, sheet.margin + DISC + x - min(box.left, 0.0), y)
        x += width + GAP
        tallest = max(tallest, piece.height)


def _told(piece: _Lettered, measure: Measure, units: Units, words: Mapping[str, str]) -> str:
    """A line of the legend, without counts: those stand in the tables and in the description."""
    length = show_length(measure.got.value, units)
    value = words["measure"].format(name=measure.name, length=length)
    return words["measure_of"].format(piece=piece.piece.name, measure=value)


def _value(measure: Measure, units: Units, words: Mapping[str, str]) -> str:
    """ "width at the bust: 53 cm (85 sts)"."""
    length = show_length(measure.got.value, units)
    if not measure.count or measure.kind == "edge":
        return words["measure"].format(name=measure.name, length=length)
    counted = "measure_rows" if measure.kind == "length" else "measure_stitches"
    return words[counted].format(name=measure.name, length=length, count=measure.count)
