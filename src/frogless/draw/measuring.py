"""How each measurement of a body is taken, as a picture."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from difflib import get_close_matches
from functools import cache

from frogless.body.measurements import Known, known_measurements
from frogless.draw.drawing import Drawing, Line, Shape, Text, polyline
from frogless.draw.figure import Stand, View, figure
from frogless.draw.guides import Guide, Scene, guides, waist
from frogless.draw.layout import Box
from frogless.draw.tape import ALONE, Look, arrow, level, loop, string
from frogless.errors import InputError
from frogless.units import Units

#: The sheet, and what is kept free round the figure, mm.
WIDTH, HEIGHT, MARGIN = 108.0, 108.0, 4.0

#: The middles of two figures next to each other, mm on the sheet.
PAIR = (39.0, 89.0)

#: What of the body a scene shows: its middle, its lowest and its highest height, mm.
SCENES: Mapping[Scene, tuple[float, float, float]] = {
    "whole": (0.0, -90.0, 1655.0),
    "trunk": (0.0, 735.0, 1660.0),
    "pair": (0.0, 690.0, 1655.0),
    "reach": (0.0, 590.0, 1660.0),
    "knees": (0.0, 330.0, 1660.0),
    "legs": (0.0, 330.0, 1150.0),
    "neck": (0.0, 1235.0, 1645.0),
    "head": (0.0, 1310.0, 1650.0),
    "arm": (150.0, 960.0, 1470.0),
    "hand": (-10.0, -80.0, 195.0),
}
SEEN: Mapping[View, str] = {
    "front": "Seen from the front.",
    "back": "Seen from behind.",
    "side": "Seen from the side.",
    "hand": "The back of a hand.",
}
#: The height of the scales, mm on the sheet.
SCALES_HIGH = 4.6
READ: Mapping[Units, str] = {
    "cm": "Read the tape to the nearest half centimeter.",
    "in": "Read the tape to the nearest quarter inch.",
}
SCALES: Mapping[Units, str] = {"cm": "kg", "in": "lb"}


@cache
def measuring(key: str, units: Units = "cm") -> Drawing:
    """How a measurement is taken: the tape on a standing figure.

    Args:
        key: of `body.measurements.known_measurements()`.

    Raises:
        InputError: no measurement has that key.
    """
    known = known_of(key)
    guide = guides()[key]
    stand = stand_of(guide.scene)
    shapes = (*_one(guide, stand), *_around(guide, stand, units))
    if guide.beside:
        shapes = (
            *_one(guide, replace(stand, middle=PAIR[0])),
            *_one(guide.beside, replace(stand, middle=PAIR[1])),
        )
    return Drawing(WIDTH, HEIGHT, name_of(known), _told(known, guide, units), shapes)


def known_of(key: str) -> Known:
    """What is known of a measurement.

    Raises:
        InputError: no measurement has that key.
    """
    known = known_measurements().get(key)
    if known is None:
        near = get_close_matches(key, known_measurements(), 3)
        hint = f"; did you mean {' or '.join(near)}?" if near else "; see docs/measuring.md"
        raise InputError(f'"{key}" is no measurement of a body{hint}')
    return known


def name_of(known: Known) -> str:
    """The measurement's name: its term or, without one, its key in words."""
    return known.iso_term or known.key.replace("_", " ")


def tape_on(guide: Guide, stand: Stand, look: Look = ALONE) -> Iterator[Shape]:
    """The tape, and what it is measured from, on a figure that stands so."""
    if guide.has_string:
        yield from string(*(stand.at(point) for point in waist(guide.view)))
    for left, right in guide.levels:
        yield level(stand.at(left), stand.at(right))
    if guide.loop:
        left, right = (stand.at(point) for point in guide.loop)
        yield from loop(left, right, front=look.round, sag=guide.sag, rise=guide.rise)
    if guide.run:
        yield from arrow([stand.at(point) for point in guide.run], look)


def _one(guide: Guide, stand: Stand) -> Iterator[Shape]:
    yield from figure(guide.view, stand)
    yield from tape_on(guide, stand)


def stand_of(scene: Scene) -> Stand:
    """Where the figure stands that a scene shows."""
    middle, low, high = SCENES[scene]
    scale = (HEIGHT - 2 * MARGIN) / (high - low)
    window = Box(MARGIN, MARGIN, WIDTH - MARGIN, HEIGHT - MARGIN)
    return Stand(scale, WIDTH / 2 - middle * scale, MARGIN + high * scale, window)


def _around(guide: Guide, stand: Stand, units: Units) -> Iterator[Shape]:
    """The floor under a whole figure, or the scales."""
    if guide.is_weighed:
        yield from scales(stand, SCALES[units])
    elif guide.scene == "whole":
        y = stand.at((0, 0))[1]
        yield Line((MARGIN * 2, y), (WIDTH - MARGIN * 2, y), "figure mark")


def scales(stand: Stand, unit: str) -> Iterator[Shape]:
    """Bathroom scales under the figure's feet."""
    left, top = stand.at((-210, 0))
    right, bottom = stand.at((210, -SCALES_HIGH / stand.scale))
    corners = ((left, top), (right, top), (right - 1.2, bottom), (left + 1.2, bottom))
    yield polyline(corners, "scales", closed=True)
    yield Text(((left + right) / 2, bottom - 1.2), unit, "number", "middle")


def _told(known: Known, guide: Guide, units: Units) -> str:
    """How it is taken, from where it is seen, and how the tape is read."""
    taken = known.how_taken[:1].upper() + known.how_taken[1:]
    read = READ[units] if known.kind != "mass" else f"Read the scales in {SCALES[units]}."
    return f"{taken}. {SEEN[guide.view]} {read}"
