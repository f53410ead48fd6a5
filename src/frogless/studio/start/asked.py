"""What the first page of a garment asks: the least that its design can be drafted from."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.stitches.patterns import patterns
from frogless.studio.fields import Field, Values, respelled, with_unit
from frogless.studio.needs import Needs, PatternNeed
from frogless.studio.people.measured import field as measurement
from frogless.studio.people.shown import AGE
from frogless.units import Units

BODY, SWATCH = "body-", "swatch-"
"""What the names of fields begin with: they are those of the rooms of people and of swatches."""

WINDOW: Mapping[Units, str] = {"cm": "10", "in": "4"}
"""Over how much stitches and rows are counted when nobody says otherwise."""

WINDOW_HINTS: Mapping[str, str] = {
    "count": "In {}, counted in the middle of the swatch. Halves count: 17 1/2.",
    "rows": "In {} of height.",
}
"""What is said under a count, with the width or height that it is counted over."""

WINDOW_OF: Mapping[str, str] = {"count": "width", "rows": "height"}

PATTERN_ROWS = 12
STITCHES_IN_REPEATS = 24
LEAST_REPEATS = 4
"""So much of a stitch pattern is measured: enough that a slip of the tape does not matter."""

STATES = (
    ("washed", "after washing and drying"),
    ("as worked", "as it came off the hook"),
)

PICTURES = "/swatches/"


@dataclass(frozen=True, slots=True)
class Reading:
    """What is read of one stitch or stitch pattern.

    Args:
        number: of the reading in the form of a swatch.
        title: what it is read in, "Half double crochet".
        of, key, numbers: the same as the form of a swatch has it.
        asked: the two fields that nobody can do without.
        others: the two with a value that most will keep.
        kept: what these begin with.
    """

    number: int
    title: str
    of: str
    key: str
    numbers: str
    asked: tuple[Field, ...]
    others: tuple[Field, ...]
    kept: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Asked:
    """The fields of one design's page, by where they stand on it."""

    measurements: tuple[Field, ...]
    worth: tuple[Field, ...]
    about_body: tuple[Field, ...]
    hook: Field
    readings: tuple[Reading, ...]
    about_swatch: tuple[Field, ...]

    @property
    def needed(self) -> tuple[Field, ...]:
        """What has to be filled in, from top to bottom."""
        read = (field for reading in self.readings for field in reading.asked)
        return (*self.measurements, self.hook, *read)

    @property
    def fields(self) -> tuple[Field, ...]:
        """Every field that is written in."""
        others = (field for reading in self.readings for field in reading.others)
        return (*self.needed, *self.worth, *self.about_body, *others, *self.about_swatch)


def asked(need: Needs, terms: Dialect, units: Units) -> Asked:
    """The fields for what a design needs."""
    return Asked(
        measurements=tuple(_measurement(key, "", needed=True) for key in need.measurements),
        worth=tuple(_measurement(one.key, one.why) for one in need.worth),
        about_body=(
            Field(f"{BODY}name", "Name", hint="What the pattern calls whom it is for."),
            Field(f"{BODY}age", AGE.label, hint=AGE.hint),
        ),
        hook=Field(f"{SWATCH}hook", "Hook", "fine", "The millimeters printed on it.", needed=True),
        readings=tuple(_readings(need, terms, units)),
        about_swatch=(Field(f"{SWATCH}name", "Name of the swatch", hint="Its yarn, for example."),),
    )


def _measurement(key: str, why: str, *, needed: bool = False) -> Field:
    plain = measurement(key, why)
    return Field(f"{BODY}{key}", plain.label, plain.kind, plain.hint, needed, picture=plain.picture)


def _readings(need: Needs, terms: Dialect, units: Units) -> Iterator[Reading]:
    stitches = [(key, dictionary()[key].terms[terms].name) for key in need.needed_stitches]
    for number, (key, name) in enumerate(stitches, 1):
        yield _of_stitch(number, key, name, units)
    for number, one in enumerate(need.patterns, len(stitches) + 1):
        yield _of_pattern(number, one, terms)


def _of_stitch(number: int, key: str, name: str, units: Units) -> Reading:
    start = f"{SWATCH}r{number}-"
    told, high = (hint.format(f"{WINDOW[units]} {units}") for hint in WINDOW_HINTS.values())
    return Reading(
        number,
        name[:1].upper() + name[1:],
        f"stitch:{key}",
        "",
        "",
        asked=(
            Field(f"{start}count", "Stitches", "", told, True, picture=f"{PICTURES}stitches.svg"),
            Field(f"{start}rows", "Rows", "", high, True, picture=f"{PICTURES}rows.svg"),
        ),
        others=(
            Field(f"{start}width", "Stitches counted over", "size", "More is surer."),
            Field(f"{start}height", "Rows counted over", "size", "More is surer."),
        ),
        kept={f"{start}width": WINDOW[units], f"{start}height": WINDOW[units]},
    )


def _of_pattern(number: int, one: PatternNeed, terms: Dialect) -> Reading:
    start, repeats = f"{SWATCH}r{number}-", _repeats(one.key)
    picture = f"{PICTURES}repeats.svg"
    wide = "Whole repeats, side by side, from the beginning of one to the beginning of another."
    return Reading(
        number,
        pattern_title(one, terms),
        f"pattern:{one.key}" if one.key in patterns() else "pattern:",
        "" if one.key in patterns() else one.key,
        ", ".join(f"{name} {n}" for name, n in one.parameters),
        asked=(
            Field(f"{start}width", f"Width of {repeats} repeats", "size", wide, True, (), picture),
            Field(
                f"{start}height",
                f"Height of {PATTERN_ROWS} rows",
                "size",
                "Measured in the middle of the swatch.",
                needed=True,
                picture=f"{PICTURES}rows.svg",
            ),
        ),
        others=(
            Field(f"{start}count", "Repeats measured", "", "More are surer."),
            Field(f"{start}rows", "Rows measured", "", "More are surer."),
        ),
        kept={f"{start}count": str(repeats), f"{start}rows": str(PATTERN_ROWS)},
    )


def _repeats(key: str) -> int:
    """How many repeats are measured: of a narrow one more."""
    entry = patterns().get(key)
    ways = (entry.rounds, entry.rows) if entry else ()
    multiple = next((way.multiple for way in ways if way), LEAST_REPEATS)
    if not isinstance(multiple, int):
        return LEAST_REPEATS
    return max(LEAST_REPEATS, math.ceil(STITCHES_IN_REPEATS / multiple))


def pattern_title(one: PatternNeed, terms: Dialect) -> str:
    """ "Fans and arches, half 5": a stitch pattern with its numbers."""
    entry = patterns().get(one.key)
    name = entry.names[terms] if entry else one.key.replace("_", " ")
    numbers = ", ".join(f"{key.replace('_', ' ')} {n}" for key, n in one.parameters)
    return ", ".join(filter(None, (name[:1].upper() + name[1:], numbers)))


def first_values(page: Asked, *, body_name: str, swatch_name: str) -> dict[str, str]:
    """What the page begins with."""
    values = {f"{BODY}name": body_name, f"{SWATCH}name": swatch_name, f"{SWATCH}state": "washed"}
    for reading in page.readings:
        values |= reading.kept
    return values


def in_other_units(page: Asked, values: Values, old: Units, new: Units) -> dict[str, str]:
    """The same for a page of other units: what was typed stays, a usual window is the usual one."""
    changed = respelled(values, page.fields, old, new)
    for window in _windows(page):
        if values.get(window) == WINDOW[old]:
            changed[window] = WINDOW[new]
    return changed


def moved_windows(page: Asked, values: Values, old: Units, new: Units) -> dict[str, str]:
    """By count that was there before its window became that of other units: what to look at."""
    if old == new:
        return {}
    found = {}
    for reading in page.readings:
        for count, window in WINDOW_OF.items():
            start = f"{SWATCH}r{reading.number}-"
            usual = values.get(start + window) == WINDOW[old] and start + window in _windows(page)
            if usual and values.get(start + count):
                found[start + count] = (
                    f"Was it counted in {WINDOW[new]} {new}, as is said here now? If it was in "
                    f"{WINDOW[old]} {old}, write that under “Measured over more or less”."
                )
    return found


def _windows(page: Asked) -> tuple[str, ...]:
    """The fields of the widths and heights that stitches and rows are counted over."""
    return tuple(
        f"{SWATCH}r{reading.number}-{window}"
        for reading in page.readings
        for window in WINDOW_OF.values()
        if reading.of.startswith("stitch:")
    )


def over_its_window(field: Field, page: Asked, values: Values, units: Units) -> Field:
    """The field of a count, its hint told for the window that the page holds."""
    start, _, part = field.name.rpartition("-")
    window = f"{start}-{WINDOW_OF.get(part, '')}"
    if part not in WINDOW_HINTS or window not in _windows(page):
        return field
    written = with_unit(values.get(window) or WINDOW[units], "size", units)
    return replace(field, hint=WINDOW_HINTS[part].format(written))
