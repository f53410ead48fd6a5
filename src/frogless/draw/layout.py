"""How much room lettering takes, and how labels make way for each other."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import accumulate
from math import cos, inf, radians, sin

from frogless.draw.drawing import Circle, Line, Path, Point, Shape, Text
from frogless.draw.styles import STYLES

ASCENT = 0.72
DESCENT = 0.24
# Em widths of a roomy serif, from memory. The font on the reader's device is not known, and too
# much room does no harm.
_GROUPS = (
    ("ijl.,:;'|!()[]", 0.34),
    (" \N{NO-BREAK SPACE}ft-/·", 0.36),
    ("rs", 0.50),
    ("mwMW", 0.94),
    ("0123456789", 0.57),
)
_EM = {letter: width for letters, width in _GROUPS for letter in letters}
_CAPITAL, _SMALL, _BOLD = 0.72, 0.57, 1.07


@dataclass(frozen=True, slots=True)
class Box:
    """An upright rectangle."""

    left: float
    top: float
    right: float
    bottom: float

    def overlaps(self, other: Box) -> bool:
        """Whether the two share more than an edge."""
        apart_across = self.right <= other.left or other.right <= self.left
        return not (apart_across or self.bottom <= other.top or other.bottom <= self.top)

    def crossed_by(self, start: Point, end: Point) -> bool:
        """Whether a straight line runs through the inside (Liang and Barsky, from memory)."""
        low, high = 0.0, 1.0
        for a, b, least, most in (
            (start[0], end[0], self.left, self.right),
            (start[1], end[1], self.top, self.bottom),
        ):
            if a == b and not least < a < most:
                return False
            if a != b:
                near, far = sorted(((least - a) / (b - a), (most - a) / (b - a)))
                low, high = max(low, near), min(high, far)
        return low < high

    def holds(self, other: Box) -> bool:
        """Whether the other lies wholly inside."""
        across = self.left <= other.left and other.right <= self.right
        return across and self.top <= other.top and other.bottom <= self.bottom


def text_width(text: str, style: str) -> float:
    """Width of a line of text, mm, on the roomy side."""
    look = STYLES[style]
    ems = sum(_EM.get(c, _CAPITAL if c.isupper() else _SMALL) for c in text)
    return ems * look.size * (_BOLD if look.bold else 1.0)


def text_box(text: Text) -> Box:
    """The upright rectangle round a text, turned ones too."""
    size, width = STYLES[text.style].size, text_width(text.text, text.style)
    left = {"start": 0.0, "middle": -width / 2, "end": -width}[text.anchor]
    turn = radians(text.angle_deg)
    corners = [(x, y) for x in (left, left + width) for y in (-ASCENT * size, DESCENT * size)]
    xs = [text.at[0] + x * cos(turn) - y * sin(turn) for x, y in corners]
    ys = [text.at[1] + x * sin(turn) + y * cos(turn) for x, y in corners]
    return Box(min(xs), min(ys), max(xs), max(ys))


def wrap(text: str, style: str, width: float) -> tuple[str, ...]:
    """The text in lines no wider than `width`, mm, broken at blanks; a longer word stands alone."""
    lines: list[str] = []
    for word in text.split(" "):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(longer, style) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return tuple(lines)


def spread(
    wanted: Sequence[float], heights: Sequence[float], low: float = -inf, high: float = inf
) -> tuple[float, ...]:
    """Middles as near as can be to the wanted ones (least squares), in order, without overlap.

    Args:
        wanted: middles, rising. heights: of each, gap included.
        low, high: what they must stay between, as far as there is room.

    Source: pooling of adjacent violators (isotonic regression), from memory.
    """
    offsets = [end - height / 2 for end, height in zip(accumulate(heights), heights, strict=True)]
    pools: list[tuple[float, int]] = []
    for value, offset in zip(wanted, offsets, strict=True):
        mean, size = value - offset, 1
        while pools and pools[-1][0] > mean:
            before, many = pools.pop()
            mean, size = (before * many + mean * size) / (many + size), many + size
        pools.append((mean, size))
    last = high - sum(heights)
    starts = [max(min(mean, last), low) for mean, size in pools for _ in range(size)]
    return tuple(start + offset for start, offset in zip(starts, offsets, strict=True))


def extent(shapes: Iterable[Shape]) -> Box:
    """The rectangle round all shapes, stroke widths left out (at least one shape)."""
    boxes = [_box(shape) for shape in shapes]
    return Box(
        min(box.left for box in boxes),
        min(box.top for box in boxes),
        max(box.right for box in boxes),
        max(box.bottom for box in boxes),
    )


def _box(shape: Shape) -> Box:
    match shape:
        case Text():
            return text_box(shape)
        case Circle((x, y), radius):
            return Box(x - radius, y - radius, x + radius, y + radius)
        case Line(start, end):
            return _round_points((start, end))
        case Path():
            return _round_points(shape.points)


def _round_points(points: Sequence[Point]) -> Box:
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return Box(min(xs), min(ys), max(xs), max(ys))
