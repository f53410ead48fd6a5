"""A swatch as a form: its fields, and what a file's text puts into them. Knows no Django."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from frogless.errors import InputError
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.stitches.patterns import patterns
from frogless.studio.fields import Field, Filled, Values, filled, respelled, with_unit
from frogless.swatch import yarn_ranges
from frogless.swatch_file import STITCH_NAMES, stitch_key
from frogless.units import Units

READINGS = "readings"
"""The field that lists the numbers of the form's readings, "1 2 4"."""

WAS = "was"
"""The part of a reading that says which place it had in the saved text, from 1; "" for none."""

OWN_PATTERN = "pattern:"
"""The choice of a stitch pattern that the library does not have."""

MOST_READINGS = 60

STATES = (
    ("washed", "after washing and drying"),
    ("as worked", "as it came off the hook"),
    ("hung", "hanging, with a load"),
)

HEAD = (
    Field("name", "Name", hint="What the pattern calls this swatch.", needed=True),
    Field("hook", "Hook", "fine", "The millimeters printed on it.", needed=True),
    Field(
        "colour",
        "Color of a design",
        hint="Its letter, when this yarn is for one color of several.",
    ),
)
"""What the whole swatch has, besides its main stitch."""

YARN = (
    Field("yarn-name", "Yarn", hint="The name on the label, or your own."),
    Field(
        "yarn-category",
        "Weight category",
        choices=(
            ("", "not known"),
            *((str(n), f"{n}, {one.name.lower()}") for n, one in yarn_ranges().items()),
        ),
    ),
    Field("yarn-fibre", "Fiber", hint="In your words: cotton, wool and nylon."),
    Field("yarn-plies", "Plies", hint="Strands twisted together."),
    Field("yarn-ball_mass", "Mass of a ball", "mass"),
    Field("yarn-ball_length", "Length in a ball", "long"),
)

COUNTS = (
    Field("count", "Stitches"),
    Field("width", "over a width of", "size"),
    Field("rows", "Rows"),
    Field("height", "over a height of", "size"),
)
MORE = (
    Field("mass", "Mass", "mass", "Of just these stitches and rows, edge to edge."),
    Field(
        "stretched_width",
        "Stretched width",
        "size",
        "The same stitches, pulled as far as is comfortable.",
    ),
    Field("load", "Load", "mass", "What hung on it; for a reading of a hanging swatch."),
    Field("hook", "Another hook", "fine", "When this was worked on another than the main one."),
)
PATTERN = (
    Field("key", "Its key", hint="For a stitch pattern of a design of yours."),
    Field("numbers", "Its numbers", hint="Where they are not the usual ones, such as: half 5"),
)
TEXTS = ("key", "numbers")
PARTS = (*COUNTS, *MORE, *PATTERN)
"""What is written in one reading, besides what it is of and its state."""


@dataclass(frozen=True, slots=True)
class ReadingForm:
    """One reading as a page shows it.

    Args:
        title: "Reading 2: fans and arches, washed". brief: what was counted, in a line.
        parts: its fields by name of the part.
        more: whether what is folded away holds something. open: whether it is shown unfolded.
    """

    number: int
    title: str
    was: str
    of: Filled
    state: Filled
    parts: Mapping[str, Filled]
    in_pattern: bool
    more: bool
    remark: str
    brief: str
    open: bool

    @property
    def counted(self) -> tuple[Filled, ...]:
        """The fields that are counted and measured: they may be asked about."""
        return tuple(self.parts[one.name] for one in COUNTS)


def numbers_of(values: Values) -> tuple[int, ...]:
    """The readings of a form, in their order."""
    found = (int(n) for n in values.get(READINGS, "").split() if n.isdecimal() and len(n) < 4)
    return tuple(dict.fromkeys(n for n in found if 0 < n < 1000))[:MOST_READINGS]


def was_of(values: Values) -> dict[int, int]:
    """The place, from 1, that each reading had in the saved text; new ones have none."""
    found: dict[int, int] = {}
    for number in numbers_of(values):
        place = values.get(f"r{number}-{WAS}", "")
        known = place.isdecimal() and len(place) < 4 and int(place) > 0
        if known and int(place) not in found.values():
            found[number] = int(place)
    return found


def empty_values(units: Units) -> dict[str, str]:
    """The form of a swatch that nobody has read yet."""
    return {"units": units, "stitch": "double_crochet", READINGS: "1", "r1-state": "washed"}


def values_of(text: str, units: Units) -> dict[str, str]:
    """What the form holds for a swatch file that was found good.

    Sizes stand as they were written; one in the unit of the page stands without it.
    """
    data = tomllib.loads(text)
    values = {"units": units, "stitch": stitch_key(data["stitch"])}
    for key in ("name", "hook", "colour"):
        values[key] = str(data.get(key, "")).strip()
    values |= {f"yarn-{key}": str(one).strip() for key, one in data.get("yarn", {}).items()}
    readings = data["reading"]
    values[READINGS] = " ".join(str(n) for n in range(1, len(readings) + 1))
    for number, reading in enumerate(readings, 1):
        values |= {f"r{number}-{part}": v for part, v in _reading_values(reading).items()}
        values[f"r{number}-{WAS}"] = str(number)
    return respelled(values, all_fields(values), units, units)


def _reading_values(reading: Mapping[str, Any]) -> dict[str, str]:
    parts = {part.name for part in (*COUNTS, *MORE)}
    values = {key: str(one).strip() for key, one in reading.items() if key in parts}
    values["state"] = reading["state"]
    count = reading.get("repeats" if "pattern" in reading else "stitches")
    values["count"] = "" if count is None else str(count)
    if "stitch" in reading:
        values["of"] = f"stitch:{stitch_key(reading['stitch'])}"
    if "pattern" in reading:
        known = reading["pattern"] in patterns()
        values["of"] = OWN_PATTERN + (reading["pattern"] if known else "")
        values["key"] = "" if known else reading["pattern"]
        values["numbers"] = in_words(reading.get("parameters", {}))
    return values


def in_words(numbers: Mapping[str, int]) -> str:
    """ "half 5, block 3"."""
    return ", ".join(f"{name} {number}" for name, number in sorted(numbers.items()))


def all_fields(values: Values) -> tuple[Field, ...]:
    """Every field of the form that is written in."""
    return (*HEAD, *YARN, *(f for number in numbers_of(values) for f in reading_fields(number)))


def reading_fields(number: int) -> tuple[Field, ...]:
    """The fields of one reading that are written in."""
    return tuple(
        Field(f"r{number}-{one.name}", one.label, one.kind, one.hint, one.needed) for one in PARTS
    )


def is_empty(values: Values, number: int) -> bool:
    """Whether nothing was counted, measured or weighed in a reading."""
    parts = (part.name for part in (*COUNTS, *MORE))
    return not any(values.get(f"r{number}-{part}", "").strip() for part in parts)


def in_units(values: Values, units: Units) -> dict[str, str]:
    """The form for numbers in other units: nothing is converted, units are written out."""
    before: Units = "in" if values.get("units") == "in" else "cm"
    return {**respelled(values, all_fields(values), before, units), "units": units}


def with_reading(values: Values, like: int | None = None) -> dict[str, str]:
    """The form with one reading more: of the stitch and state of another, or of the last one."""
    numbers = numbers_of(values)
    if len(numbers) >= MOST_READINGS:
        raise InputError(f"a swatch has {MOST_READINGS} readings at most; make another swatch")
    new = max(numbers, default=0) + 1
    kept = ("of", "state", "key", "numbers", "hook") if like in numbers else ("state",)
    model = like if like in numbers else (numbers[-1] if numbers else 0)
    more = {f"r{new}-{part}": values.get(f"r{model}-{part}", "") for part in kept}
    more.setdefault(f"r{new}-state", "washed")
    return {**values, **more, READINGS: " ".join(str(n) for n in (*numbers, new))}


def without_reading(values: Values, number: int) -> dict[str, str]:
    """The form without a reading."""
    left = [str(n) for n in numbers_of(values) if n != number]
    kept = {name: text for name, text in values.items() if not name.startswith(f"r{number}-")}
    return {**kept, READINGS: " ".join(left)}


def stitch_choices(terms: Dialect) -> tuple[tuple[str, str], ...]:
    """The stitches that a swatch can be read in, by their names."""
    names = ((key, dictionary()[key].terms[terms].name) for key in STITCH_NAMES.values())
    return tuple(sorted(names, key=lambda one: (one[0] != "double_crochet", one[1])))


def pattern_choices(terms: Dialect) -> tuple[tuple[str, str], ...]:
    """The stitch patterns of the library, by their names."""
    found = ((OWN_PATTERN + key, one.names[terms]) for key, one in patterns().items())
    return tuple(sorted(found, key=lambda one: one[1].casefold()))


def head_fields(values: Values, errors: Values, terms: Dialect, units: Units) -> tuple[Filled, ...]:
    """Name, main stitch, hook and color, filled in."""
    stitch = Field("stitch", "Main stitch", choices=stitch_choices(terms))
    fields = (HEAD[0], stitch, *HEAD[1:])
    return filled(fields, values, units, errors)


def yarn_fields(values: Values, errors: Values, units: Units) -> tuple[Filled, ...]:
    """The yarn, filled in."""
    return filled(YARN, values, units, errors)


def reading_forms(
    values: Values, errors: Values, terms: Dialect, units: Units
) -> tuple[ReadingForm, ...]:
    """The readings, filled in."""
    names = {f"stitch:{key}": name for key, name in stitch_choices(terms)}
    names |= dict(pattern_choices(terms))
    names[""] = dict(stitch_choices(terms)).get(values.get("stitch", ""), "main stitch")
    numbers = numbers_of(values)
    return tuple(
        _reading_form(place, number, values, errors, units, names)
        for place, number in enumerate(numbers, 1)
    )


def _reading_form(
    place: int, number: int, values: Values, errors: Values, units: Units, names: Mapping[str, str]
) -> ReadingForm:
    of, state = values.get(f"r{number}-of", ""), values.get(f"r{number}-state", "washed")
    parts = filled(reading_fields(number), values, units, errors)
    by_name = dict(zip((part.name for part in PARTS), parts, strict=True))
    own = values.get(f"r{number}-key", "").replace("_", " ") or "a stitch pattern"
    name = own if of == OWN_PATTERN else names.get(of, "")
    if of.startswith(OWN_PATTERN) and values.get(f"r{number}-numbers", "").strip():
        name = f"{name}, {values[f'r{number}-numbers'].strip()[:40]}"
    folded = (by_name[part.name] for part in MORE)
    faulty = any(field.startswith(f"r{number}-") for field in errors)
    new = not values.get(f"r{number}-{WAS}", "")
    return ReadingForm(
        number,
        f"Reading {place}: {name}, {state}",
        values.get(f"r{number}-{WAS}", ""),
        Filled(Field(f"r{number}-of", "Worked in"), of, error=errors.get(f"r{number}-of", "")),
        Filled(
            Field(f"r{number}-state", "Read", choices=STATES),
            state,
            error=errors.get(f"r{number}-state", ""),
        ),
        by_name,
        of.startswith(OWN_PATTERN),
        any(one.value or one.error for one in folded),
        _numbers_remark(of),
        _brief(by_name, of),
        new or faulty or place == 1,
    )


def _brief(parts: Mapping[str, Filled], of: str) -> str:
    """ "27 stitches over 15.0 cm, 15 rows over 15.8 cm"."""
    across = "repeats" if of.startswith(OWN_PATTERN) else "stitches"
    told = []
    for count, length, what in (("count", "width", across), ("rows", "height", "rows")):
        if parts[count].value and parts[length].value:
            written = with_unit(
                parts[length].value, "size", "in" if parts[length].unit == "in" else "cm"
            )
            told.append(f"{parts[count].value} {what} over {written}")
    return ", ".join(told)


def _numbers_remark(of: str) -> str:
    """The numbers that a stitch pattern has, with the usual ones."""
    key = of.removeprefix(OWN_PATTERN)
    entry = patterns().get(key) if of.startswith(OWN_PATTERN) else None
    if entry is None or not entry.parameters:
        return ""
    told = [
        f"{name} is {one.default} when you write nothing ({one.low} to {one.high})"
        for name, one in entry.parameters.items()
    ]
    return "; ".join(told)


def posted(sent: Mapping[str, str], known: Sequence[str] = ()) -> dict[str, str]:
    """What a page sent, as far as it belongs to the form."""
    values = {"units": "in" if sent.get("units") == "in" else "cm"}
    names = ["stitch", READINGS, *(field.name for field in (*HEAD, *YARN)), *known]
    values |= {name: sent[name] for name in names if name in sent}
    for number in numbers_of(values):
        for part in ("of", "state", WAS, *(one.name for one in PARTS)):
            name = f"r{number}-{part}"
            if name in sent:
                values[name] = sent[name]
    return {name: text.replace("\0", "") for name, text in values.items()}
