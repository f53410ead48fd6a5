"""The sheet round a drawing: labels led to the spots that they name, heading and legend."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from frogless.draw.drawing import Drawing, Point, Shape, Text, polyline
from frogless.draw.layout import ASCENT, extent, spread, text_width, wrap
from frogless.draw.styles import STYLES

LINE_SKIP = 1.12
LABEL_GAP = 2.2
LEGEND_STEP = 5.2
SAMPLE_WIDTH = 11.0


@dataclass(frozen=True, slots=True)
class Callout:
    """A label of one or more (text, style) lines for a spot."""

    at: Point
    lines: tuple[tuple[str, str], ...]

    @property
    def width(self) -> float:
        """Of its widest line, mm."""
        return max(text_width(text, style) for text, style in self.lines)

    @property
    def height(self) -> float:
        """Of all its lines and the gap to the next label, mm."""
        return sum(_skip(style) for _, style in self.lines) + LABEL_GAP


@dataclass(frozen=True, slots=True)
class Sheet:
    """The sheet a drawing is put on, mm, and its words; `columns` are those of its legend."""

    title: str
    description: str
    width: float = 108.0
    margin: float = 3.0
    columns: int = 1


@dataclass(frozen=True, slots=True)
class Key:
    """One line of the legend: a sample drawn around (0, 0), and what it means."""

    sample: tuple[Shape, ...]
    text: str


def column(callouts: Sequence[Callout], left: float) -> tuple[Shape, ...]:
    """The labels from x = `left`, each as near its spot as the others let it, with leaders."""
    ordered = sorted(callouts, key=lambda callout: callout.at[1])
    middles = spread([c.at[1] for c in ordered], [c.height for c in ordered])
    shapes: list[Shape] = []
    for callout, middle in zip(ordered, middles, strict=True):
        shapes.append(_leader(callout.at, (left - 1.2, middle)))
        shapes.extend(_lettering(callout, left, middle))
    return tuple(shapes)


def legend(keys: Iterable[Key], at: Point, width: float) -> tuple[Shape, ...]:
    """The keys one below the other from a first baseline, long ones on several lines."""
    shapes: list[Shape] = []
    x, y = at
    for key in keys:
        shapes.extend(moved(key.sample, x, y - 0.3 * STYLES["legend"].size))
        for line in wrap(key.text, "legend", width - SAMPLE_WIDTH - 2):
            shapes.append(Text((x + SAMPLE_WIDTH + 2, y), line, "legend"))
            y += LEGEND_STEP
    return tuple(shapes)


def assemble(body: Sequence[Shape], view: str, keys: Iterable[Key], sheet: Sheet) -> Drawing:
    """The heading, the body wherever it was drawn moved below it, the legend under both."""
    heading = wrap(view, "view", sheet.width - 2 * sheet.margin)
    lines = [
        Text((sheet.margin, sheet.margin + 3.0 + i * LEGEND_STEP), text, "view")
        for i, text in enumerate(heading)
    ]
    down = sheet.margin + LEGEND_STEP * len(heading) + 2.5 - extent(body).top
    placed = tuple(moved(body, 0.0, down))
    shapes = (*lines, *placed, *_legends(keys, extent(placed).bottom + 7.5, sheet))
    height = extent(shapes).bottom + sheet.margin
    return Drawing(sheet.width, height, sheet.title, sheet.description, shapes)


def _legends(keys: Iterable[Key], top: float, sheet: Sheet) -> Iterator[Shape]:
    """The legend in its columns, as many keys in each."""
    all_keys = tuple(keys)
    many = -(-len(all_keys) // sheet.columns)
    width = (sheet.width - 2 * sheet.margin) / sheet.columns
    for i in range(sheet.columns):
        column_keys = all_keys[i * many : (i + 1) * many]
        yield from legend(column_keys, (sheet.margin + i * width, top), width - 2)


def moved(shapes: Iterable[Shape], dx: float, dy: float) -> Iterator[Shape]:
    """The shapes, shifted."""
    for shape in shapes:
        yield shape.moved(dx, dy)


def _leader(spot: Point, end: Point) -> Shape:
    """Level from the spot, then slanting to the label when that had to make way."""
    knee = max(spot[0], end[0] - 4.0)
    return polyline((spot, (knee, spot[1]), end), "dimension")


def _lettering(callout: Callout, left: float, middle: float) -> Iterator[Shape]:
    y = middle - (callout.height - LABEL_GAP) / 2
    for text, style in callout.lines:
        yield Text((left, y + ASCENT * STYLES[style].size + 0.15 * STYLES[style].size), text, style)
        y += _skip(style)


def _skip(style: str) -> float:
    return LINE_SKIP * STYLES[style].size
