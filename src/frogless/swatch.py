"""Readings of a swatch pooled into a gauge with its uncertainty, for each state it was read in."""

from __future__ import annotations

import csv
import math
import statistics
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib import resources
from itertools import pairwise
from pathlib import Path

from frogless.errors import InputError, Place
from frogless.files import read_text
from frogless.swatch_file import (
    STITCH_NAMES,
    WHAT,
    ReadingTable,
    parse_swatch_file,
    shown_cm,
    stitch_key,
)
from frogless.swatch_file import State as State
from frogless.units import Measured

KEPT = 64
"""Texts that are remembered: whoever edits one thing drafts with the others as they were."""

STATES: tuple[State, ...] = ("washed", "as worked", "hung")
"""In the order in which they size a garment: washed and dried first (common practice)."""

TAPE = 1.0
"""Standard uncertainty of one length read on a swatch, mm: a tape read to 1 mm at both ends over a
soft edge (derived). The tolerance of the tape itself is a tenth of that."""

GOOD_WINDOW = 100.0
"""mm; the middle 10 cm of a swatch are counted (common practice)."""

SAME_WIDTH = ("single_crochet", "half_double_crochet", "double_crochet")
"""Stitches about as wide as each other, so that the yarn table's counts hold for all of them."""


@dataclass(frozen=True, slots=True)
class Yarn:
    """The yarn on the label: category 0–7, g and mm per ball."""

    name: str
    category: int | None
    fibre: str
    ball_mass: float | None
    ball_length: float | None
    plies: int | None = None

    @property
    def tex(self) -> float | None:
        """g per km, from the label."""
        if not self.ball_mass or not self.ball_length:
            return None
        return self.ball_mass / (self.ball_length / 1e6)


@dataclass(frozen=True, slots=True)
class Gauge:
    """Width and height of one stitch, mm, each with its standard uncertainty.

    Args:
        hook: what it was worked with, mm; 0 when that is not known.
    """

    stitch: str
    width: Measured
    height: Measured
    state: State
    estimated: bool = False
    source: str = ""
    hook: float = 0.0


@dataclass(frozen=True, slots=True)
class Reading:
    """One swatch, counted and measured in one state. mm and g; what was not read is None.

    Args:
        stitch: in a stitch pattern what the pattern is called with its numbers, "fans fan 9".
        stitches: counted over `width`; in a stitch pattern its repeats.
        pattern: the key of the stitch pattern; "" when it was read in a stitch.
        parameters: name and number, as far as they were written.
        mass: of the whole piece of `stitches` × `rows`. load: what hung on it.
        stretched_width: of the same stitches, stretched as far as is comfortable.
    """

    stitch: str
    state: State
    hook: float
    stitches: float | None = None
    width: float | None = None
    rows: float | None = None
    height: float | None = None
    mass: float | None = None
    load: float | None = None
    stretched_width: float | None = None
    pattern: str = ""
    parameters: tuple[tuple[str, int], ...] = ()


@dataclass(frozen=True, slots=True)
class Swatch:
    """A swatch file, read. `stitch` is the full US name of its main stitch.

    Args:
        colour: letter of the colour of a design that is worked in its yarn; "" for all that have
            no swatch of their own.
    """

    name: str
    stitch: str
    hook: float
    yarn: Yarn
    file: str = ""
    readings: tuple[Reading, ...] = ()
    colour: str = ""


def load_swatch(path: Path | str) -> Swatch:
    """The swatch of a TOML file of the format `frogless-swatch/1`.

    Raises:
        InputError: the file's faults, or a count over so short a length that it tells nothing.
    """
    path = Path(path)
    return parse_swatch(read_text(path, what=WHAT), path.name)


@lru_cache(maxsize=KEPT)
def parse_swatch(text: str, name: str = "") -> Swatch:
    """A swatch from its text; `name` is what its faults are told of.

    Raises:
        InputError: as `load_swatch`.
    """
    document = parse_swatch_file(text, name)
    given = document.checked
    main = stitch_key(given.stitch)
    readings = tuple(_reading(one, main, given.hook) for one in given.reading)
    yarn = Yarn(**given.yarn.model_dump())
    return Swatch(given.name, main, given.hook, yarn, document.file, readings, given.colour or "")


def _reading(given: ReadingTable, stitch: str, hook: float) -> Reading:
    fields = given.model_dump()
    repeats = fields.pop("repeats")
    fields["parameters"] = tuple(sorted(given.parameters.items()))
    fields["pattern"] = given.pattern or ""
    fields["stitch"] = stitch_key(given.stitch) if given.stitch else stitch
    if given.pattern:
        fields["stitch"] = pattern_name(given.pattern, given.parameters)
        fields["stitches"] = repeats
    fields["hook"] = given.hook or hook
    return Reading(**fields)


def pattern_name(pattern: str, parameters: Mapping[str, int]) -> str:
    """What a stitch pattern is called with the numbers that are its own: "fan_arches half 5"."""
    return " ".join([pattern, *(f"{name} {n}" for name, n in sorted(parameters.items()))])


def pattern_gauges(
    swatches: Sequence[Swatch],
    pattern: str,
    parameters: Mapping[str, int],
    usual: Mapping[str, int],
) -> tuple[Gauge, ...]:
    """The gauges that were read in a stitch pattern with just these numbers, one for each hook.

    Their width is that of a whole repeat.

    Args:
        parameters: all numbers of the pattern. usual: those that a reading need not write.
    """
    wanted = dict(parameters)
    found: dict[float, Gauge] = {}
    for swatch in swatches:
        alike = [
            r
            for r in swatch.readings
            if r.pattern == pattern and {**usual, **dict(r.parameters)} == wanted
        ]
        for hook in dict.fromkeys(r.hook for r in alike):
            for state in STATES:
                readings = [r for r in alike if r.hook == hook and r.state == state]
                if hook not in found and _is_whole(readings):
                    found[hook] = _gauge_of(readings, pattern_name(pattern, {}), swatch.name)
    return tuple(found.values())


def has_gauge(swatch: Swatch, stitch: str) -> bool:
    """Whether the swatch has width and height of this stitch in one state."""
    return any(_is_whole(_of(swatch, stitch, state)) for state in STATES)


def gauge(swatch: Swatch, stitch: str, *, state: State | None = None) -> Gauge:
    """The pooled gauge of a stitch; washed when it was washed, else as worked, else hung.

    Several readings pool as Σ stitches / Σ widths. The uncertainty is that of counting and tape, or
    the scatter between readings when that is larger, widened for as few as they are.

    Source: JCGM 100:2008 (GUM): a count to the nearest whole is ± 1/2, rectangular, 0.29 (4.3.7);
    relative uncertainties of a quotient add in quadrature (5.1.6); s / √m for m readings (4.2.3).

    Raises:
        InputError: the swatch has no such gauge; says which it has.
    """
    key = _key(swatch, stitch)
    for one in (state,) if state else STATES:
        readings = _of(swatch, key, one)
        if _is_whole(readings):
            return _gauge_of(readings, key, swatch.name)
    raise InputError(_no_gauge(swatch, key, state), Place(swatch.file))


def _gauge_of(readings: Sequence[Reading], key: str, name: str) -> Gauge:
    """Readings of one stitch in one state and on one hook, pooled."""
    state = readings[0].state
    return Gauge(
        stitch=key,
        width=_pooled(
            [(r.width, r.stitches) for r in readings if r.width and r.stitches],
            counted=not readings[0].pattern,
        ),
        height=_pooled([(r.height, r.rows) for r in readings if r.height and r.rows]),
        state=state,
        source=f'swatch "{name}", {state}',
        hook=readings[0].hook,
    )


@dataclass(frozen=True, slots=True)
class Pooled:
    """The readings of one stitch in one state and on one hook, taken together.

    Args:
        width, height: of a stitch (in a stitch pattern of a repeat) and of a row, mm; None when
            none of them has it.
        readings: their places in the swatch, from 0.
    """

    stitch: str
    state: State
    hook: float
    width: Measured | None
    height: Measured | None
    readings: tuple[int, ...]
    pattern: str = ""


def pooled(swatch: Swatch) -> tuple[Pooled, ...]:
    """All that was read, whole or not, in the order in which it was first written."""
    alike: dict[tuple[str, State, float], list[int]] = {}
    for place, one in enumerate(swatch.readings):
        alike.setdefault((one.stitch, one.state, one.hook), []).append(place)
    found = []
    for (stitch, state, hook), places in alike.items():
        readings = [swatch.readings[place] for place in places]
        pattern = readings[0].pattern
        across = [(r.width, r.stitches) for r in readings if r.width and r.stitches]
        upward = [(r.height, r.rows) for r in readings if r.height and r.rows]
        width = _pooled(across, counted=not pattern) if across else None
        height = _pooled(upward) if upward else None
        found.append(Pooled(stitch, state, hook, width, height, tuple(places), pattern))
    return tuple(found)


# So many standard uncertainties apart, two readings are not of the same fabric: 95 % of pairs that
# are lie nearer (normal distribution).
APART = 1.96


def disagreements(swatch: Swatch) -> tuple[Advice, ...]:
    """Readings of one stitch, state and hook that lie further apart than counting and tape explain.

    Source: JCGM 100:2008 (GUM), 5.1.2: the uncertainty of a difference is the root of the sum of
    squares.
    """
    told = []
    for one in pooled(swatch):
        for way, across in (("stitches", True), ("rows", False)):
            sizes = _sizes(swatch, one, across=across)
            if len(sizes) < 2:
                continue
            low, high = min(sizes, key=lambda s: s[1].value), max(sizes, key=lambda s: s[1].value)
            apart = high[1].value - low[1].value
            if apart <= APART * math.hypot(low[1].uncertainty, high[1].uncertainty):
                continue
            what = "repeats" if one.pattern and across else way
            percent = 100 * apart / low[1].value
            told.append(
                Advice(
                    f"two readings of {_words(one.stitch)}, {one.state}, differ by {percent:.0f} % "
                    f"in their {what}, more than counting and tape explain; count both again",
                    tuple(sorted((low[0], high[0]))),
                )
            )
    return tuple(told)


def _sizes(swatch: Swatch, one: Pooled, *, across: bool) -> list[tuple[int, Measured]]:
    """What each reading makes of a stitch, or of a row."""
    found = []
    for place in one.readings:
        reading = swatch.readings[place]
        length = reading.width if across else reading.height
        count = reading.stitches if across else reading.rows
        if length and count:
            counted = not (across and one.pattern)
            found.append((place, _pooled([(length, count)], counted=counted)))
    return found


def _key(swatch: Swatch, stitch: str) -> str:
    """The key of a stitch, or of a stitch pattern that the swatch was read in."""
    in_pattern = any(r.pattern and r.stitch == stitch for r in swatch.readings)
    return stitch if in_pattern else stitch_key(stitch)


def _no_gauge(swatch: Swatch, key: str, state: State | None) -> str:
    plain = {r.stitch for r in swatch.readings if not r.pattern}
    have = sorted(stitch for stitch in plain if has_gauge(swatch, stitch))
    what = _words(key) + (f" {state}" if state else "")
    known = f"it has {', '.join(_words(h) for h in have)}" if have else "it has none"
    return (
        f"the swatch has no gauge of {what}; {known}; give it a reading of {what}, "
        "stitches over a width and rows over a height"
    )


def _of(swatch: Swatch, stitch: str, state: State) -> list[Reading]:
    """The readings of a stitch that belong together: those on one hook.

    A stitch read on several hooks has as many gauges. The swatch's own hook is the garment's; an
    edging on another hook is read in the same file.
    """
    key = _key(swatch, stitch)
    found = [r for r in swatch.readings if r.stitch == key and r.state == state]
    hooks = {r.hook for r in found}
    taken = swatch.hook if swatch.hook in hooks else next((r.hook for r in found), swatch.hook)
    return [r for r in found if r.hook == taken]


def _is_whole(readings: Sequence[Reading]) -> bool:
    return any(r.stitches for r in readings) and any(r.rows for r in readings)


def _pooled(pairs: Sequence[tuple[float, float]], *, counted: bool = True) -> Measured:
    """Size of one stitch or row, mm, from (length, count) pairs.

    Args:
        counted: so many were counted over a length, to the nearest whole; otherwise a length was
            taken from one repeat to the same place in another, and the tape alone is unsure.
    """
    lengths = Measured(sum(p[0] for p in pairs), TAPE * math.sqrt(len(pairs)))
    unsure = math.hypot(*(_counting(p[1]) for p in pairs)) if counted else 0.0
    counts = Measured(sum(p[1] for p in pairs), unsure)
    size = lengths.over(counts)
    if len(pairs) < 2:
        return size
    scatter = statistics.stdev(p[0] / p[1] for p in pairs) / math.sqrt(len(pairs))
    return Measured(size.value, _with_scatter(size.uncertainty, scatter, len(pairs)))


STUDENT = (
    *((1, 12.71), (2, 4.30), (3, 3.18), (4, 2.78), (5, 2.57), (6, 2.45), (7, 2.36), (8, 2.31)),
    *((9, 2.26), (10, 2.23), (12, 2.18), (15, 2.13), (20, 2.09), (30, 2.04), (50, 2.01)),
    *((100, 1.984), (math.inf, 1.960)),
)  # fmt: skip
"""Degrees of freedom, and the standard uncertainties on either side that hold 95 % (GUM, table G.2)."""


FEWEST = 2.0
"""Degrees of freedom that are taken at least, a choice of our own: by itself a pair of readings would
make any gauge unknown (12.71). Of a pair that disagrees it is said that both be counted again."""


def _with_scatter(counting: float, scatter: float, readings: int) -> float:
    """The standard uncertainty of a mean of readings, so wide that 1.96 of it hold 95 %.

    Counting and tape are known beforehand. What the readings scatter beyond them is known from few
    readings only, so the interval is wider than that of a normal distribution.

    Source: JCGM 100:2008 (GUM): effective degrees of freedom by Welch and Satterthwaite (G.4.1,
    formula G.2b), Student's t for them (G.3, table G.2).
    """
    beyond = scatter**2 - counting**2
    if beyond <= 0:
        return counting
    freedom = max(FEWEST, scatter**4 * (readings - 1) / beyond**2)
    return scatter * student(freedom) / STUDENT[-1][1]


def student(freedom: float) -> float:
    """Student's t that holds 95 %, between the degrees of freedom of the table by their reciprocals.

    >>> student(2)
    4.3
    """
    for (low, wide), (high, narrow) in pairwise(STUDENT):
        if freedom <= high:
            share = (1 / max(freedom, 1) - 1 / high) / (1 / low - 1 / high)
            return narrow + share * (wide - narrow)
    return STUDENT[-1][1]


def _counting(count: float) -> float:
    """Standard uncertainty of a count read to its own last digit: step / √12."""
    step = next(step for step in (1.0, 0.5, 0.25) if (count / step).is_integer())
    return step / math.sqrt(12)


def growth(swatch: Swatch, stitch: str) -> Measured | None:
    """How much longer a row is hung than at rest, as a ratio (0.08: 8 %); None when not hung."""
    hung = [(r.height, r.rows) for r in _of(swatch, stitch, "hung") if r.height and r.rows]
    rests = [
        [(r.height, r.rows) for r in _of(swatch, stitch, state) if r.height and r.rows]
        for state in STATES[:2]
    ]
    rest = next(filter(None, rests), [])
    if not hung or not rest:
        return None
    ratio = _pooled(hung).over(_pooled(rest))
    if {p[1] for p in hung} == {p[1] for p in rest} and len(hung) == len(rest):
        # The same rows were measured twice, so the error of counting them cancels.
        tape = TAPE * math.sqrt(len(rest))
        lengths = [Measured(sum(p[0] for p in pairs), tape) for pairs in (hung, rest)]
        ratio = lengths[0].over(lengths[1])
    return Measured(ratio.value - 1, ratio.uncertainty)


def comfortable_stretch(swatch: Swatch, stitch: str) -> float | None:
    """How much wider the fabric goes in comfort, as a ratio (0.2: 20 %); None when not measured."""
    for state in STATES:
        found = [r for r in _of(swatch, stitch, state) if r.width and r.stretched_width]
        if found:
            stretched = sum(r.stretched_width or 0.0 for r in found)
            return stretched / sum(r.width or 0.0 for r in found) - 1
    return None


def mass_per_stitch(swatch: Swatch, stitch: str) -> Measured | None:
    """g of yarn in one stitch, from the readings that were weighed; None when none was.

    A reading in a stitch pattern tells of repeats, in which no stitch is like another.

    The scale is taken to read to 0.1 g where a mass has tenths, else to 1 g (± half of it, JCGM
    100:2008, 4.3.7); a piece weighed has its edges with it, which no figure corrects.
    """
    plain = "_".join(stitch.lower().split())
    key = STITCH_NAMES.get(plain, plain)
    found = [
        (r.mass, r.stitches * r.rows, _counting(r.stitches), r.stitches, _counting(r.rows), r.rows)
        for r in swatch.readings
        if r.stitch == key and r.mass and r.stitches and r.rows and not r.pattern
    ]
    if not found:
        return None
    scale = math.hypot(*(_scale(f[0]) for f in found))
    counted = math.hypot(*(f[1] * math.hypot(f[2] / f[3], f[4] / f[5]) for f in found))
    return Measured(sum(f[0] for f in found), scale).over(
        Measured(sum(f[1] for f in found), counted)
    )


def _scale(mass: float) -> float:
    return (1.0 if mass.is_integer() else 0.1) / math.sqrt(12)


# The table is a guideline, and hooks finer than its own are in common use: only what lies further
# out than a hook or two explains (half a millimetre of hook is 4 to 8 %, common practice) is worth
# a word.
FAR = 1.2

# A share outside the usual range: beyond it no hand explains
# the proportions (own choice).
ODD_SHAPE = 0.4

# Twice its width and more, no crocheted fabric is stretched in comfort (from memory).
STRETCHES_TO = 2.0

# A mass or a length on the label is questioned when it is off by more than this: fabric, fibre and
# the label's rounding together explain less (own choice).
FAR_OFF = 2.5

# Yarn on an area of solid fabric: 1.27 to 1.6 areas over the yarn's diameter, as makers weighed it;
# diameter 0.0357 √(tex / 0.75) mm, 0.75 g/cm³ between soft acrylic (0.59) and cotton (0.91).
COVER = 1.4
PACKED_DENSITY = 0.75

_NOT_WASHED = (
    "the swatch was not read after washing; wash and dry it as the garment will be, and read it "
    "again, because rows often change length"
)


@dataclass(frozen=True, slots=True)
class Advice:
    """One sentence about a swatch, and the places of the readings that it is about, from 0."""

    sentence: str
    readings: tuple[int, ...] = ()


def advice(swatch: Swatch) -> tuple[str, ...]:
    """What would make the swatch tell more, and what is unusual about it; one sentence each."""
    return tuple(one.sentence for one in advice_by_reading(swatch))


def advice_by_reading(swatch: Swatch) -> tuple[Advice, ...]:
    """As `advice`, each sentence with the readings that it is about."""
    places: dict[str, tuple[int, ...]] = {}
    for place, reading in enumerate(swatch.readings):
        places[reading.stitch] = (*places.get(reading.stitch, ()), place)
    told = [
        Advice(sentence, (place,))
        for place, reading in enumerate(swatch.readings)
        for sentence in _short_windows(reading)
    ]
    if "washed" not in {r.state for r in swatch.readings}:
        told.append(Advice(_NOT_WASHED))
    told += [
        Advice(sentence, where)
        for of in (_against_table, _shape, _weight)
        for stitch, where in places.items()
        if (sentence := of(swatch, stitch))
    ]
    told += [
        Advice(sentence, (place,))
        for place, reading in enumerate(swatch.readings)
        if (sentence := _overstretched(reading))
    ]
    told += [Advice(s) for s in (_ball(swatch), _hook_against_table(swatch)) if s]
    return tuple(told)


def _short_windows(reading: Reading) -> list[str]:
    stitch = _words(reading.stitch)
    windows = (
        (f"{_counted(reading)} of {stitch}", reading.stitches, reading.width),
        (f"rows of {stitch}", reading.rows, reading.height),
    )
    return [
        f"{count:g} {what} over {shown_cm(window)} are known to ± {_percent(window, count):.0f} % "
        "(95 %); count over 10 cm or more"
        for what, count, window in windows
        if count and window and window < GOOD_WINDOW
    ]


def _counted(reading: Reading) -> str:
    return "repeats" if reading.pattern else "stitches"


def _percent(window: float, count: float) -> float:
    return within(_pooled([(window, count)]))


def within(size: Measured) -> float:
    """How far off it may be either way, in percent: half its 95 % interval."""
    low, high = size.interval()
    return 100 * (high - low) / (high + low)


def _words(stitch: str) -> str:
    return stitch.replace("_", " ")


@dataclass(frozen=True, slots=True)
class YarnRange:
    """What the yarn table gives for a category: stitches in 4 in, hook, mm, and m per 100 g.

    An open end is 0 or inf.
    """

    category: int
    name: str
    stitch: str
    gauge: tuple[float, float]
    hook: tuple[float, float]
    metres: tuple[float, float] = (0.0, math.inf)


@cache
def yarn_ranges() -> Mapping[int, YarnRange]:
    """Craft Yarn Council, Standard Yarn Weight System, 2018; from `data/yarn_weights.csv`."""
    text = (resources.files("frogless") / "data" / "yarn_weights.csv").read_text(encoding="utf-8")
    return {
        int(row["category"]): YarnRange(
            category=int(row["category"]),
            name=row["cyc_name"],
            stitch=STITCH_NAMES[row["gauge_stitch_us"]],
            gauge=_range(row, "gauge_{}_per_4in"),
            hook=_range(row, "hook_mm_{}"),
            metres=_range(row, "m_per_100g_{}"),
        )
        for row in csv.DictReader(text.splitlines())
    }


def _range(row: Mapping[str, str], names: str) -> tuple[float, float]:
    low, high = row[names.format("low")], row[names.format("high")]
    return float(low or 0), float(high or "inf")


def _against_table(swatch: Swatch, stitch: str) -> str | None:
    """The table counts in one stitch; it is held against others only where they are as wide."""
    if swatch.yarn.category is None or stitch not in SAME_WIDTH or not has_gauge(swatch, stitch):
        return None
    table = yarn_ranges()[swatch.yarn.category]
    low, high = table.gauge
    count = 100 / gauge(swatch, stitch).width.value
    if low / FAR <= count <= high * FAR:
        return None
    counted_in = _words(table.stitch) + ("" if stitch == table.stitch else ", taken to be as wide")
    return (
        f"{count:.1f} stitches of {_words(stitch)} in 10 cm lie far outside the "
        f"{_span(low, high)} of the yarn weight table for category {table.category} in "
        f"{counted_in}; it is a guideline, but count again"
    )


@dataclass(frozen=True, slots=True)
class Shape:
    """Usual row height over stitch width of a stitch, and what it is called in UK terms."""

    stitch: str
    uk_name: str
    low: float
    high: float


@cache
def shapes() -> Mapping[str, Shape]:
    """The rows of `data/stitch_shapes.csv`, by US name."""
    text = (resources.files("frogless") / "data" / "stitch_shapes.csv").read_text(encoding="utf-8")
    return {
        row["stitch"]: Shape(
            row["stitch"], row["uk_name"], low=float(row["low"]), high=float(row["high"])
        )
        for row in csv.DictReader(text.splitlines())
    }


def _shape(swatch: Swatch, stitch: str) -> str | None:
    """Proportions that a stitch does not have, and the stitch that has them."""
    usual = shapes().get(stitch)
    if usual is None or not has_gauge(swatch, stitch):
        return None
    found = gauge(swatch, stitch)
    ratio = found.height.over(found.width)
    low, high = ratio.interval()
    if low <= usual.high and high >= usual.low:
        return None
    name = _words(stitch)
    told = f"rows of {name} are {ratio.value:.2f} times as high as its stitches are wide, where "
    told += f"{usual.low:g} to {usual.high:g} is usual"
    other = next((s for s in shapes().values() if s.low <= ratio.value <= s.high), None)
    if other is None:
        told += "; count stitches and rows again"
    elif other.uk_name == name:
        told += (
            f"; these proportions are those of {_words(other.stitch)} (UK {other.uk_name}): is "
            "the stitch of the swatch written in US terms?"
        )
    else:
        told += (
            f"; these proportions are those of {_words(other.stitch)}: is that what the swatch is "
            "worked in?"
        )
    far = ratio.value < usual.low * (1 - ODD_SHAPE) or ratio.value > usual.high * (1 + ODD_SHAPE)
    stop = "" if told.endswith("?") else "."
    return f"{told}{stop} No length can be trusted before that is settled." if far else told


def _weight(swatch: Swatch, stitch: str) -> str | None:
    """The mass of a stitch against what its area takes of a yarn of this thickness."""
    weighed, tex = mass_per_stitch(swatch, stitch), swatch.yarn.tex
    if weighed is None or tex is None or not has_gauge(swatch, stitch):
        return None
    found = gauge(swatch, stitch)
    thick = 0.0357 * math.sqrt(tex / PACKED_DENSITY)
    usual = COVER * found.width.value * found.height.value / thick * tex / 1e6
    if 1 / FAR_OFF <= weighed.value / usual <= FAR_OFF:
        return None
    return (
        f"a stitch of {_words(stitch)} weighs {1000 * weighed.value:.0f} mg by the swatch's mass, "
        f"and about {1000 * usual:.0f} mg by its size and the label's length: is `mass` that of "
        "just these stitches and rows, and is the label right?"
    )


def _overstretched(reading: Reading) -> str | None:
    if not reading.width or not reading.stretched_width:
        return None
    ratio = reading.stretched_width / reading.width
    if ratio <= STRETCHES_TO:
        return None
    return (
        f"{reading.stitches or 0:g} {_counted(reading)} of {_words(reading.stitch)} stretched from "
        f"{shown_cm(reading.width)} to {shown_cm(reading.stretched_width)}, {ratio:.1f} times: is "
        "that in comfort, and are they the same stitches?"
    )


def _ball(swatch: Swatch) -> str | None:
    """Metres per 100 g of the label against its category."""
    yarn = swatch.yarn
    if yarn.category is None or yarn.tex is None:
        return None
    low, high = yarn_ranges()[yarn.category].metres
    metres = 1e5 / yarn.tex
    if low / FAR_OFF <= metres <= high * FAR_OFF:
        return None
    return (
        f"the label's ball makes {metres:.0f} m in 100 g, where {_span(low, high)} m are usual for "
        f"category {yarn.category}: are `ball_mass` and `ball_length` right?"
    )


def _hook_against_table(swatch: Swatch) -> str | None:
    if swatch.yarn.category is None:
        return None
    table = yarn_ranges()[swatch.yarn.category]
    low, high = table.hook
    if low / FAR <= swatch.hook <= high * FAR:
        return None
    return (
        f"a hook of {swatch.hook:g} mm is far outside the {_span(low, high)} mm usual for "
        f"category {table.category}; nothing is wrong with that if the fabric feels right"
    )


def _span(low: float, high: float) -> str:
    if math.isinf(high):
        return f"{low:g} or more"
    return f"{low:g} to {high:g}" if low else f"{high:g} or fewer"
