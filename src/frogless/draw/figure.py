"""A standing figure in plain line, from the front, the back and the side.

Its heights are those of a woman of mean proportions, from `data/landmarks.csv`; its outline runs
through the points of `data/figure.csv`, mm, one half of it for the views that are symmetric.
"""

from __future__ import annotations

import csv
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from importlib import resources
from itertools import groupby
from typing import Literal

from frogless.draw.curves import Cubic, Knot, crossings, filled, flat, seen, smooth
from frogless.draw.drawing import Point, Shape
from frogless.draw.layout import Box

View = Literal["front", "back", "side", "hand"]

#: What is painted by its line alone, by part.
MARKS = frozenset(
    {"eye", "mouth", "nose", "collar", "breast", "navel", "kneecap", "blade", "spine", "seat"}
    | {"fold", "hollow", "finger one", "finger two", "finger three"}
)


@dataclass(frozen=True, slots=True)
class Stand:
    """Where a figure stands on the sheet.

    Args:
        scale: mm on the sheet for a mm of body.
        middle, floor: of the figure, mm on the sheet; the floor may lie below the sheet.
        window: the part of the sheet that it is seen in.
    """

    scale: float
    middle: float
    floor: float
    window: Box

    def at(self, point: Point) -> Point:
        """The spot of a point of the body: mm from its middle, and its height, mm."""
        return (self.middle + point[0] * self.scale, self.floor - point[1] * self.scale)


@cache
def landmarks() -> Mapping[str, float]:
    """Heights above the floor by name, mm, of a woman of mean stature."""
    return {row["key"]: float(row["height"]) for row in _table("landmarks.csv")}


def figure(view: View, stand: Stand) -> tuple[Shape, ...]:
    """The figure from one side, as far as its window shows it."""
    match view:
        case "front":
            return tuple(_front(stand))
        case "back":
            return tuple(_back(stand))
        case "side":
            return tuple(_side(stand))
        case "hand":
            return tuple(_hand(stand))


def edges(view: View, part: str, height: float) -> tuple[float, ...]:
    """Every x at which a part's outline crosses a height, from left to right, mm from the middle.

    Of a part that is drawn once and mirrored, those on the right.
    """
    owner = "front" if view == "back" else view
    return crossings(smooth(_knots(owner)[part], closed=part == "body"), height)


@cache
def _knots(view: str) -> Mapping[str, tuple[Knot, ...]]:
    rows = [row for row in _table("figure.csv") if row["view"] == view]
    return {
        part: tuple(_knot(row) for row in found)
        for part, found in groupby(rows, key=lambda row: row["part"])
    }


def _knot(row: Mapping[str, str]) -> Knot:
    return Knot((float(row["x"]), float(row["height"])), row["knot"] == "corner")


def _front(stand: Stand) -> Iterator[Shape]:
    parts = _knots("front")
    yield from _limbs(stand)
    for ear in _both(smooth(parts["ear"])):
        yield from _area(ear, stand, "figure")
    yield from _area(_ring(parts["head"]), stand, "figure")
    yield from _area(_ring(parts["hair"]), stand, "hair")
    yield from _marks("front", stand)


def _back(stand: Stand) -> Iterator[Shape]:
    parts = _knots("front")
    for ear in _both(smooth(parts["ear"])):
        yield from _area(ear, stand, "figure")
    yield from _limbs(stand)
    yield from _area(_ring(_knots("back")["hair"]), stand, "hair")
    yield from _marks("back", stand)


def _limbs(stand: Stand) -> Iterator[Shape]:
    """Everything below the head; it begins behind the head, so its upper end is not drawn."""
    parts = _knots("front")
    half = (*smooth(parts["arm"]), *smooth(parts["trunk"]))
    whole = (*half, *_mirrored(half))
    yield from filled(_placed(whole, stand), stand.window, "figure")
    yield from seen(_placed(whole, stand), stand.window, "figure line")


def _side(stand: Stand) -> Iterator[Shape]:
    """In profile; the arm only in outline, so that the body is seen through it."""
    parts = _knots("side")
    body = _placed(smooth(parts["body"], closed=True), stand)
    yield from filled(body, stand.window, "figure")
    yield from filled(_placed(smooth(parts["hair"], closed=True), stand), stand.window, "hair")
    yield from seen(_placed(smooth(parts["hairline"]), stand), stand.window, "figure line")
    yield from seen(body, stand.window, "figure line")
    yield from _area(smooth(parts["ear"], closed=True), stand, "figure")
    for name, style in (("shell", "figure mark"), ("eye", "figure mark"), ("arm", "figure arm")):
        yield from seen(_placed(smooth(parts[name]), stand), stand.window, style)


def _hand(stand: Stand) -> Iterator[Shape]:
    curves = smooth(_knots("hand")["outline"])
    ends = curves[-1][3], curves[0][0]
    yield from filled(_placed((*curves, (ends[0], *ends, ends[1])), stand), stand.window, "figure")
    yield from seen(_placed(curves, stand), stand.window, "figure line")
    yield from _marks("hand", stand)


def _area(curves: Sequence[Cubic], stand: Stand, style: str) -> Iterator[Shape]:
    """An area with its line round it."""
    placed = _placed(curves, stand)
    yield from filled(placed, stand.window, style)
    yield from seen(placed, stand.window, "figure line")


def _marks(view: View, stand: Stand) -> Iterator[Shape]:
    for name, knots in _knots(view).items():
        if name not in MARKS:
            continue
        curves = smooth(knots)
        for each in _both(curves) if view != "hand" else (curves,):
            yield from seen(_placed(each, stand), stand.window, "figure mark")


def _ring(half: Sequence[Knot]) -> tuple[Cubic, ...]:
    """A half outline from top to bottom, and its mirror image back to the top."""
    back = [Knot((-k.at[0], k.at[1]), k.is_corner) for k in reversed(half[1:-1])]
    return smooth([*half, *back], closed=True)


def _both(curves: Sequence[Cubic]) -> tuple[tuple[Cubic, ...], ...]:
    """The curves and, unless they lie in or across the middle, their mirror image."""
    if any(x < 1e-9 for x, _ in flat(curves)):
        return (tuple(curves),)
    return (tuple(curves), _mirrored(curves))


def _mirrored(curves: Sequence[Cubic]) -> tuple[Cubic, ...]:
    """The mirror image, run through backwards."""
    return tuple(_flipped(curve) for curve in reversed(curves))


def _flipped(curve: Cubic) -> Cubic:
    a, b, c, d = ((-x, y) for x, y in curve)
    return (d, c, b, a)


def _placed(curves: Sequence[Cubic], stand: Stand) -> tuple[Cubic, ...]:
    return tuple((stand.at(a), stand.at(b), stand.at(c), stand.at(d)) for a, b, c, d in curves)


def _table(name: str) -> Iterator[dict[str, str]]:
    text = (resources.files("frogless") / "draw" / "data" / name).read_text(encoding="utf-8")
    return csv.DictReader(text.splitlines())
