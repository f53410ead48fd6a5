"""Several measurements of a body at once, numbered, on figures side by side."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from frogless.body.measurements import known_measurements
from frogless.draw.drawing import Circle, Drawing, Line, Point, Shape, Text
from frogless.draw.figure import Stand, View, figure
from frogless.draw.guides import Guide, guides, waist
from frogless.draw.layout import Box, spread
from frogless.draw.measuring import SCALES, known_of, name_of, scales, tape_on
from frogless.draw.tape import AMONG_OTHERS, string
from frogless.units import Units

SCALE = 0.078
TOP, BOTTOM = 5.0, 10.0
#: Half the room that a figure takes with its arms, mm on the sheet, and between figures.
HALF: Mapping[View, float] = {"front": 26.0, "back": 26.0, "side": 13.0, "hand": 0.0}
COLUMN = 8.0
DISC = 2.7
STEP = 2 * DISC + 0.8

#: What is shown close by when it stands alone, on the whole figure: mm of body.
ON_FRONT: Mapping[str, tuple[Point, Point]] = {
    "wrist_girth": ((252, 790), (305, 797)),
    "hand_girth": ((265, 705), (320, 712)),
    "head_girth": ((-75, 1545), (75, 1545)),
}
#: Depths from the waist start side by side: mm of body towards the front.
ASIDE: Mapping[str, float] = {
    "waist_to_high_hip": 55.0,
    "waist_to_hip": 15.0,
    "waist_to_floor": -25.0,
}
#: Where stature stands, left of the numbers, and the room it takes, mm on the sheet.
STATURE_AT = -490.0
STATURE_ROOM = 7.0


@dataclass(frozen=True, slots=True)
class _Shown:
    """One measurement with its number, on its figure."""

    number: int
    key: str
    guide: Guide


def all_measurements(keys: Sequence[str], units: Units = "cm") -> Drawing:
    """The figure from each side that is needed, with a number at each tape.

    Args:
        keys: of `body.measurements.known_measurements()`; the first is number 1.

    Raises:
        InputError: a key is no measurement.
    """
    shown = [_shown(number, key) for number, key in enumerate(keys, 1)]
    views: list[View] = [
        view
        for view in ("front", "side", "back")
        if any(each.guide.view == view for each in shown) or (view == "front" and not shown)
    ]
    shapes: list[Shape] = []
    left = STATURE_ROOM if "stature" in keys else 0.0
    height = TOP + 1628.5 * SCALE + BOTTOM
    for view in views:
        middle = left + COLUMN + HALF[view]
        window = Box(left, 0.0, middle + HALF[view] + COLUMN, height)
        stand = Stand(SCALE, middle, height - BOTTOM, window)
        shapes += _figure([each for each in shown if each.guide.view == view], view, stand, units)
        left = window.right
    told = "; ".join(f"{each.number} {name_of(known_measurements()[each.key])}" for each in shown)
    title = "Where each measurement is taken"
    return Drawing(left, height, title, f"A standing figure with numbers: {told}.", tuple(shapes))


def _shown(number: int, key: str) -> _Shown:
    guide = guides()[known_of(key).key]
    if key in ON_FRONT:
        guide = Guide("front", "whole", ON_FRONT[key], guide.sag)
    if key in ASIDE:
        (_, top), (_, bottom) = guide.run
        guide = replace(guide, run=((ASIDE[key], top), (ASIDE[key], bottom)))
    if key == "stature":
        (_, floor), (_, top) = guide.run
        line = ((STATURE_AT - 20, top), (0.0, top))
        guide = replace(guide, run=((STATURE_AT, floor), (STATURE_AT, top)), levels=(line,))
    return _Shown(number, key, guide)


def _figure(shown: Sequence[_Shown], view: View, stand: Stand, units: Units) -> Iterator[Shape]:
    yield from figure(view, stand)
    y = stand.floor
    yield Line((stand.window.left + 3, y), (stand.window.right - 3, y), "figure mark")
    if any(each.guide.has_string for each in shown):
        yield from string(*(stand.at(point) for point in waist(view)))
    for each in shown:
        yield from tape_on(replace(each.guide, has_string=False), stand, AMONG_OTHERS)
        if each.guide.is_weighed:
            yield from scales(stand, SCALES[units])
    yield from _numbers(shown, stand)


def _numbers(shown: Sequence[_Shown], stand: Stand) -> Iterator[Shape]:
    """The numbers in a column on either side, led to their tapes."""
    columns: dict[int, list[tuple[Point, int]]] = {-1: [], 1: []}
    for each in shown:
        x, y = _anchor(each.guide)
        if each.key == "stature":
            yield from _disc(stand.at((x, y)), each.number)
            continue
        if each.guide.loop and min(p[0] for p in each.guide.loop) < 0:
            way = min((-1, 1), key=lambda side: len(columns[side]))
            x = max(p[0] * way for p in each.guide.loop) * way
        else:
            way = 1 if x > 0 else -1
        columns[way].append((stand.at((x, y)), each.number))
    for way, found in columns.items():
        found.sort(key=lambda spot: spot[0][1])
        edge = stand.window.right if way > 0 else stand.window.left
        x = edge - way * (DISC + 0.8)
        low, high = DISC, stand.window.bottom - DISC
        places = spread([at[1] for at, _ in found], [STEP] * len(found), low, high)
        for (at, number), y in zip(found, places, strict=True):
            yield Line((x - way * DISC, y), at, "leader")
            yield Circle(at, 0.55, "tape end")
            yield from _disc((x, y), number)


def _disc(at: Point, number: int) -> tuple[Shape, ...]:
    return (
        Circle(at, DISC, "number disc"),
        Text((at[0], at[1] + 1.1), str(number), "number", "middle"),
    )


def _anchor(guide: Guide) -> Point:
    """The spot that a number is led to, mm of body."""
    if guide.loop:
        return guide.loop[-1]
    if guide.is_weighed:
        return (210.0, -20.0)
    if len(guide.run) > 2:
        return guide.run[len(guide.run) // 2]
    (x1, y1), (x2, y2) = guide.run
    # Off the middle where it lies level: there the back waist length crosses it.
    part = 0.25 if y1 == y2 else 0.5
    return (x1 + (x2 - x1) * part, y1 + (y2 - y1) * part)
