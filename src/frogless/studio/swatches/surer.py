"""The readings that would make a swatch surer, and what each would gain. Knows no Django.

Nothing is promised that the library does not work out: each gain is the uncertainty of the swatch
as it is against that of the same swatch with one reading more.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from frogless.fit.hanging import usual_growth
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.studio.swatches.gauges import (
    HIP,
    LENGTH,
    SURE,
    main_gauge,
    off,
    percent,
    round_length,
    stitch_name,
    two_figures,
)
from frogless.swatch import (
    Pooled,
    Reading,
    Swatch,
    comfortable_stretch,
    gauge,
    growth,
    has_gauge,
    mass_per_stitch,
    pooled,
)
from frogless.tally.scale import scale
from frogless.units import INCH, Measured, Units

WIDE = {"cm": 150.0, "in": 6 * INCH}
"""mm; a swatch is 15 cm wide and high (common practice)."""

WORTH = 0.9
"""A reading is worth its trouble when it leaves less than this share of the uncertainty."""

FIRST = 1e6
"""Weight of what has to come before anything that can be reckoned in mm."""


@dataclass(frozen=True, slots=True)
class Next:
    """One reading to take.

    Args:
        do: what to do. gain: what it would tell, in numbers.
        reading: the reading that is taken again, counted from 1; None for a new one.
        weight: mm on a hip or a length that it settles; what has most comes first.
    """

    do: str
    gain: str
    reading: int | None
    weight: float


def measure_next(swatch: Swatch, units: Units, terms: Dialect) -> tuple[Next, ...]:
    """What to read next, the most telling first."""
    main = main_gauge(swatch)
    if main is None:
        return ()
    found = [*_missing(main, terms), *_washing(swatch, units)]
    found += [one for across in (True, False) for one in _wider(swatch, main, units, across)]
    if not main.pattern:
        found += [*_hanging(swatch, main, units), *_weighing(swatch, main)]
        found += _stretching(swatch, main, units)
    return tuple(sorted(found, key=lambda one: -one.weight))


def _missing(main: Pooled, terms: Dialect) -> Iterator[Next]:
    name, reading = stitch_name(main.stitch, terms), main.readings[0] + 1
    if main.height is None:
        yield Next(
            f"Count rows over a height too, in {name}",
            "Without it no length is known.",
            reading,
            2 * FIRST,
        )
    if main.width is None:
        yield Next(
            f"Count {'repeats' if main.pattern else 'stitches'} over a width too, in {name}",
            "Without it no girth is known.",
            reading,
            2 * FIRST,
        )


def _washing(swatch: Swatch, units: Units) -> Iterator[Next]:
    if any(reading.state == "washed" for reading in swatch.readings):
        return
    hip = HIP[units]
    yield Next(
        "Wash and dry it as the garment will be, then read it again",
        f"No reading here tells whether it shrinks or gives; each 1 % is "
        f"{off(hip / 100, units).removeprefix('± ')} at a hip of {round_length(hip, units)}.",
        None,
        FIRST,
    )


def _wider(swatch: Swatch, main: Pooled, units: Units, across: bool) -> Iterator[Next]:
    """Stitches or rows counted over more, or once more, whichever gains more."""
    size = main.width if across else main.height
    if size is None:
        return
    tried = [*_over_more(swatch, main, size, units, across), _once_more(swatch, main, size, across)]
    do, reading, then = min(tried, key=lambda one: one[2].relative)
    if then.relative >= WORTH * size.relative:
        return
    whole = HIP[units] if across else LENGTH[units]
    on = "at a hip of" if across else "over a length of"
    was, will = (SURE * one.relative * whole for one in (size, then))
    yield Next(
        do,
        f"± {percent(size)} → {percent(then)}: {off(was, units)} → "
        f"{off(will, units).removeprefix('± ')} {on} {round_length(whole, units)}.",
        reading,
        was - will,
    )


Tried = tuple[str, int | None, Measured]


def _over_more(
    swatch: Swatch, main: Pooled, size: Measured, units: Units, across: bool
) -> Iterator[Tried]:
    """The reading over the shortest length, taken over as much as a good swatch has."""
    places = [p for p in main.readings if _window(swatch.readings[p], across)]
    place = min(places, key=lambda p: _window(swatch.readings[p], across))
    window, wide = _window(swatch.readings[place], across), WIDE[units]
    count = swatch.readings[place].stitches if across else swatch.readings[place].rows
    what = _what(main, across)
    halves = not (main.pattern and across)
    if window < wide - 1:
        do = (
            f"Count {what} over {_short(wide, units)} instead of {_short(window, units)}"
            f"{', to the half' if halves else ''}"
        )
        then = _with_count(swatch, main, place, size, wide, across)
        yield do, place + 1, then
    elif halves and count and float(count).is_integer():
        do = f"Count the same {what} again, to the half"
        yield do, place + 1, _with_count(swatch, main, place, size, window, across)


def _once_more(swatch: Swatch, main: Pooled, size: Measured, across: bool) -> Tried:
    """A second swatch, read as the first reading was."""
    place = next(p for p in main.readings if _window(swatch.readings[p], across))
    again = _counted(swatch.readings[place], size, _window(swatch.readings[place], across), across)
    more = replace(swatch, readings=(*swatch.readings, again))
    what = _what(main, across)
    return f"Count {what} a second time, in another place", None, _size_in(more, main, across)


def _with_count(
    swatch: Swatch, main: Pooled, place: int, size: Measured, window: float, across: bool
) -> Measured:
    readings = list(swatch.readings)
    readings[place] = _counted(readings[place], size, window, across)
    return _size_in(replace(swatch, readings=tuple(readings)), main, across)


def _counted(reading: Reading, size: Measured, window: float, across: bool) -> Reading:
    """The reading as it would be over a window: of the size that is known, and to the half."""
    if across and reading.pattern:
        count = float(max(1, math.floor(window / size.value)))
        return replace(reading, stitches=count, width=count * size.value)
    count = math.floor(window / size.value) + 0.5
    length = count * size.value
    if across:
        return replace(reading, stitches=count, width=length)
    return replace(reading, rows=count, height=length)


def _size_in(swatch: Swatch, main: Pooled, across: bool) -> Measured:
    wanted = (main.stitch, main.state, main.hook)
    one = next(g for g in pooled(swatch) if (g.stitch, g.state, g.hook) == wanted)
    size = one.width if across else one.height
    assert size is not None  # noqa: S101 - the reading that was put in has it
    return size


def _window(reading: Reading, across: bool) -> float:
    return (reading.width if across else reading.height) or 0.0


def _what(main: Pooled, across: bool) -> str:
    return "rows" if not across else "repeats" if main.pattern else "stitches"


def _short(length: float, units: Units) -> str:
    return f"{length / (10 if units == 'cm' else INCH):.3g} {units}"


def _hanging(swatch: Swatch, main: Pooled, units: Units) -> Iterator[Next]:
    if growth(swatch, main.stitch) is not None or main.height is None or main.state == "hung":
        return
    place = next(p for p in main.readings if swatch.readings[p].height)
    hung = replace(swatch.readings[place], state="hung", mass=None, stretched_width=None, load=None)
    known = growth(replace(swatch, readings=(*swatch.readings, hung)), main.stitch)
    if known is None:
        return
    length = LENGTH[units]
    sure = off(SURE * known.uncertainty * length, units)
    usual = usual_growth(swatch.yarn.fibre)
    told = "how much it grows in wear is not known, and nothing is allowed for it"
    weight = 0.02 * length
    if usual is not None:
        name, low, high = usual
        most = off(high * length, units).removeprefix("± ")
        least = off(low * length, units).removeprefix("± ").split()[0] if low else "0"
        told = (
            f"{name} is said to grow {100 * low:.0f} to {100 * high:.0f} % in wear (from memory): "
            f"{least} to {most} on {round_length(length, units)}, and nothing is "
            "allowed for it"
        )
        weight = high * length
    yield Next(
        "Hang it for a day with a load, and measure the same rows",
        f"{told[:1].upper()}{told[1:]}; hung, it is known to {sure}.",
        None,
        weight,
    )


def _weighing(swatch: Swatch, main: Pooled) -> Iterator[Next]:
    """The yarn, by model and by mass."""
    whole = main.width is not None and main.height is not None
    if not whole or mass_per_stitch(swatch, swatch.stitch) is not None:
        return
    if not has_gauge(swatch, swatch.stitch):
        return
    found = gauge(swatch, swatch.stitch)
    by = scale(swatch, found, dictionary(), None)
    place = next(
        (p for p in main.readings if swatch.readings[p].stitches and swatch.readings[p].rows), None
    )
    if place is None:
        return
    one = swatch.readings[place]
    grams = by.mass * (one.stitches or 0) * (one.rows or 0) * found.width.value
    weighed = replace(one, mass=math.floor(grams) + 0.5)
    readings = tuple(weighed if p == place else r for p, r in enumerate(swatch.readings))
    per_stitch = mass_per_stitch(replace(swatch, readings=readings), swatch.stitch)
    then = scale(swatch, found, dictionary(), per_stitch)
    was, will = (two_figures(100 * SURE * s.mass_relative) for s in (by, then))
    yield Next(
        "Weigh it, to a tenth of a gram",
        f"The yarn that a garment takes is known to ± {was} % without its mass, ± {will} % with it.",
        place + 1,
        1.0,
    )


def _stretching(swatch: Swatch, main: Pooled, units: Units) -> Iterator[Next]:
    if comfortable_stretch(swatch, main.stitch) is not None or main.width is None:
        return
    opening = LENGTH[units]
    more = off(opening / 10, units).removeprefix("± ")
    place = next(p for p in main.readings if swatch.readings[p].width)
    yield Next(
        "Stretch it sideways as far as is comfortable, and measure the same stitches",
        f"No stretch is counted on without it; each 10 % lets an opening of "
        f"{round_length(opening, units)} pass {more} more.",
        place + 1,
        0.5,
    )
