"""What a swatch tells, in words and in the reader's units. Knows no Django."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.stitches.patterns import patterns
from frogless.swatch import (
    SAME_WIDTH,
    STATES,
    Pooled,
    Reading,
    Swatch,
    YarnRange,
    advice_by_reading,
    comfortable_stretch,
    disagreements,
    growth,
    mass_per_stitch,
    pooled,
    yarn_ranges,
)
from frogless.units import INCH, Measured, Units, show_long, show_mass

HIP = {"cm": 1000.0, "in": 40 * INCH}
LENGTH = {"cm": 600.0, "in": 24 * INCH}
"""What an uncertain gauge is told on: a hip and the length of a garment, in round numbers, mm."""

WINDOW = {"cm": 100.0, "in": 4 * INCH}
WINDOW_NAME = {"cm": "10 cm", "in": "4 in"}

SURE = 1.96
"""Standard uncertainties on each side of a 95 % interval."""


@dataclass(frozen=True, slots=True)
class ShownGauge:
    """One gauge: what it is of, stitches and rows with their intervals, what these mean.

    Args:
        across, upward: "18.0 ± 0.3 stitches in 10 cm"; "" when not read.
        girth, length: "± 1.6 cm at a hip of 100 cm"; "" when not read.
        sizes: whether it sizes a garment, or a reading that comes before it does.
        main: whether it is of the main stitch.
    """

    name: str
    state: str
    across: str
    upward: str
    girth: str
    length: str
    readings: tuple[int, ...]
    sizes: bool
    main: bool


@dataclass(frozen=True, slots=True)
class Compared:
    """One thing that the swatch and the label or its category both tell."""

    what: str
    here: str
    usual: str
    verdict: str


@dataclass(frozen=True, slots=True)
class Found:
    """Something that was found besides the gauge: growth, stretch, mass; name, value, meaning."""

    name: str
    value: str
    meaning: str = ""


@dataclass(frozen=True, slots=True)
class Said:
    """A sentence and the readings that it is about, counted from 1."""

    sentence: str
    readings: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Told:
    """Everything that a page shows of a swatch."""

    gauges: tuple[ShownGauge, ...]
    found: tuple[Found, ...]
    compared: tuple[Compared, ...]
    said: tuple[Said, ...]

    @property
    def others(self) -> int:
        """How many gauges are of other stitches than the main one."""
        return sum(not one.main for one in self.gauges)


def told(swatch: Swatch, units: Units, terms: Dialect) -> Told:
    """What a swatch tells."""
    groups = pooled(swatch)
    sizing = {(one.stitch, one.hook): one for one in sorted(groups, key=_rank, reverse=True)}
    ordered = sorted(groups, key=lambda g: (g.stitch != swatch.stitch, bool(g.pattern)))
    first = main_gauge(swatch) or ordered[0]
    gauges = tuple(
        _shown(
            one,
            units,
            terms,
            sizes=sizing[one.stitch, one.hook] is one,
            main=one.stitch == first.stitch,
        )
        for one in ordered
    )
    said = (*disagreements(swatch), *advice_by_reading(swatch))
    return Told(
        gauges,
        tuple(_found(swatch, units, terms)),
        tuple(_compared(swatch, units, terms)),
        tuple(Said(_upper(one.sentence), tuple(n + 1 for n in one.readings)) for one in said),
    )


def _rank(one: Pooled) -> tuple[bool, int]:
    """First what is whole, then in the order in which states size a garment."""
    return (one.width is None or one.height is None, STATES.index(one.state))


def main_gauge(swatch: Swatch) -> Pooled | None:
    """The group that sizes a garment: of the main stitch, on the main hook, washed first."""
    groups = [one for one in pooled(swatch) if not one.pattern] or list(pooled(swatch))
    groups.sort(key=lambda g: (g.stitch != swatch.stitch, g.hook != swatch.hook, *_rank(g)))
    return groups[0] if groups else None


def headline(swatch: Swatch, units: Units) -> str:
    """ "18.0 stitches and 9.5 rows in 10 cm, ± 1.6 %"; how sure its surer half is not is told."""
    main = main_gauge(swatch)
    if main is None:
        return ""
    across = "repeats" if main.pattern else "stitches"
    parts = [
        f"{WINDOW[units] / one.value:.1f} {what}"
        for one, what in ((main.width, across), (main.height, "rows"))
        if one is not None
    ]
    known = main.width or main.height
    sure = f", ± {percent(known)}" if known else ""
    return f"{' and '.join(parts)} in {WINDOW_NAME[units]}{sure}"


def percent(one: Measured) -> str:
    """ "1.6 %": half the 95 % interval, in two figures."""
    return f"{two_figures(100 * SURE * one.relative)} %"


def two_figures(number: float) -> str:
    """ "12", "1.6", "0.43": no more digits than an uncertainty is worth."""
    if number <= 0:
        return "0"
    digits = max(0, 1 - math.floor(math.log10(number)))
    return f"{number:.{digits}f}"


def stitch_name(key: str, terms: Dialect) -> str:
    """What a stitch, or a stitch pattern with its numbers, is called."""
    if key in dictionary():
        return dictionary()[key].terms[terms].name
    pattern, _, numbers = key.partition(" ")
    name = patterns()[pattern].names[terms] if pattern in patterns() else pattern.replace("_", " ")
    return f"{name}, {numbers}" if numbers else name


def off(length: float, units: Units) -> str:
    """ "± 1.6 cm" or "± 0.6 in", in two figures down to the millimetre."""
    size = length / 10 if units == "cm" else length / INCH
    return f"± {size:.1f} {units}" if size >= 0.1 else f"± {size:.2f} {units}"


def round_length(length: float, units: Units) -> str:
    """ "100 cm", "40 in"."""
    return f"{length / (10 if units == 'cm' else INCH):.4g} {units}"


def at_hip(one: Measured, units: Units) -> str:
    """ "± 1.6 cm at a hip of 100 cm"."""
    hip = HIP[units]
    return f"{off(SURE * one.relative * hip, units)} at a hip of {round_length(hip, units)}"


def over_length(one: Measured, units: Units) -> str:
    """ "± 0.9 cm over a length of 60 cm"."""
    length = LENGTH[units]
    return (
        f"{off(SURE * one.relative * length, units)} over a length of {round_length(length, units)}"
    )


def _shown(one: Pooled, units: Units, terms: Dialect, *, sizes: bool, main: bool) -> ShownGauge:
    name = stitch_name(one.stitch, terms)
    across = ""
    if one.width is not None:
        across = (
            f"a repeat of {_size(one.width, units)}"
            if one.pattern
            else f"{_count(one.width, units)} stitches"
        )
    return ShownGauge(
        _upper(name),
        f"{one.state}, {one.hook:g} mm hook",
        across,
        f"{_count(one.height, units)} rows" if one.height is not None else "",
        at_hip(one.width, units) if one.width is not None else "",
        over_length(one.height, units) if one.height is not None else "",
        tuple(n + 1 for n in one.readings),
        sizes,
        main,
    )


def _count(one: Measured, units: Units) -> str:
    """ "18.0 ± 0.3"."""
    count = WINDOW[units] / one.value
    half = SURE * one.relative * count
    digits = 1 if half >= 0.1 else 2
    return f"{count:.{digits}f} ± {half:.{digits}f}"


def _size(one: Measured, units: Units) -> str:
    """ "5.48 ± 0.05 cm"."""
    unit = 10 if units == "cm" else INCH
    return f"{one.value / unit:.2f} ± {max(0.01, SURE * one.uncertainty / unit):.2f} {units}"


def _upper(text: str) -> str:
    return text[:1].upper() + text[1:]


def _found(swatch: Swatch, units: Units, terms: Dialect) -> Iterator[Found]:
    """Growth, stretch and mass, of each stitch that has them."""
    plain = dict.fromkeys(r.stitch for r in swatch.readings if not r.pattern)
    for stitch in plain:
        name = stitch_name(stitch, terms)
        grown = growth(swatch, stitch)
        if grown is not None:
            more = LENGTH[units] * grown.value
            yield Found(
                f"Growth when hung, {name}",
                f"{100 * grown.value:.1f} % ± {100 * SURE * grown.uncertainty:.1f}",
                f"{_plain(more, units)} on a length of {round_length(LENGTH[units], units)}",
            )
        give = comfortable_stretch(swatch, stitch)
        if give is not None:
            opening = LENGTH[units]
            yield Found(
                f"Comfortable stretch, {name}",
                f"{100 * give:.0f} %",
                f"an opening of {round_length(opening, units)} passes "
                f"{_plain(opening * (1 + give), units)}",
            )
        weighed = mass_per_stitch(swatch, stitch)
        if weighed is not None:
            yield Found(
                f"Yarn in one stitch, {name}",
                f"{1000 * weighed.value:.1f} mg ± {percent(weighed)}",
                f"1000 stitches take {show_mass(1000 * weighed.value, units)}",
            )


def _plain(length: float, units: Units) -> str:
    return f"{length / (10 if units == 'cm' else INCH):.1f} {units}"


def _compared(swatch: Swatch, units: Units, terms: Dialect) -> Iterator[Compared]:
    """The swatch beside what is published for the label's category."""
    yarn = swatch.yarn
    if yarn.category is None:
        return
    table = yarn_ranges()[yarn.category]
    main = main_gauge(replace(swatch, readings=_plain_readings(swatch)))
    if main is not None and main.width is not None and main.stitch in SAME_WIDTH:
        yield _gauge_compared(main, main.width, table, units, terms)
    yield Compared(
        "Hook",
        f"{swatch.hook:g} mm",
        f"{_span(table.hook)} mm",
        _verdict(swatch.hook, table.hook, "smaller", "larger"),
    )
    if yarn.tex is not None and yarn.ball_mass and yarn.ball_length:
        metres = 1e5 / yarn.tex
        yield Compared(
            "Length in 100 g",
            f"{show_long(1000 * metres, units)}",
            _long_span(table.metres, units),
            _verdict(metres, table.metres, "thicker", "thinner"),
        )


def _plain_readings(swatch: Swatch) -> tuple[Reading, ...]:
    return tuple(r for r in swatch.readings if not r.pattern)


def _gauge_compared(
    main: Pooled, width: Measured, table: YarnRange, units: Units, terms: Dialect
) -> Compared:
    window, factor = WINDOW[units], WINDOW[units] / (4 * INCH)
    low, high = (factor * end for end in table.gauge)
    name = stitch_name(table.stitch, terms)
    alike = "" if main.stitch == table.stitch else ", taken to be as wide"
    return Compared(
        f"Stitches in {WINDOW_NAME[units]}",
        f"{window / width.value:.1f}, {stitch_name(main.stitch, terms)}",
        f"{_span((round(low, 1), round(high, 1)))}, {name}{alike}",
        _verdict(window / width.value, (low, high), "fewer", "more"),
    )


def _verdict(found: float, usual: tuple[float, float], below: str, above: str) -> str:
    low, high = usual
    if found < low:
        return below
    return above if found > high else "within it"


def _span(ends: tuple[float, float]) -> str:
    low, high = ends
    if math.isinf(high):
        return f"{low:g} or more"
    return f"{low:g} to {high:g}" if low else f"{high:g} or fewer"


def _long_span(ends: tuple[float, float], units: Units) -> str:
    low, high = ends
    if math.isinf(high):
        return f"{show_long(1000 * low, units)} or more"
    if not low:
        return f"{show_long(1000 * high, units)} or less"
    return f"{show_long(1000 * low, units).split()[0]} to {show_long(1000 * high, units)}"
