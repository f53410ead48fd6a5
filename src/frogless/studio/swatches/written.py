"""A filled-in form as a swatch file: what was not touched stays as its author wrote it."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable, Iterator, Mapping, MutableMapping
from dataclasses import dataclass
from typing import Any

import tomlkit
from tomlkit.items import Array

from frogless.errors import Fault, InputError
from frogless.studio.fields import Values, with_noun, with_unit
from frogless.studio.swatches.form import (
    COUNTS,
    HEAD,
    MORE,
    OWN_PATTERN,
    YARN,
    is_empty,
    numbers_of,
    values_of,
    was_of,
)
from frogless.studio.swatches.hooks import hook_words
from frogless.swatch_file import STITCH_NAMES, parse_swatch_file
from frogless.units import Units, parse_number

ABBREVIATIONS = {full: short for short, full in STITCH_NAMES.items()}
WHOLE = ("yarn-category", "yarn-plies")
KINDS = {f"{field.name}": field.kind for field in (*HEAD, *YARN)}
OF_READING = {field.name: field.kind for field in (*COUNTS, *MORE)}

PLAIN = {
    "name is missing": "a name is needed",
    "hook is missing": "the hook is needed: the millimeters printed on it",
}

NOUNS = {
    "count": "the number of stitches",
    "rows": "the number of rows",
    "width": "the width",
    "height": "the height",
    "hook": "the hook",
    "plies": "the number of plies",
    "category": "the category",
}
"""What a sentence that begins with its verb is about, by the end of its field."""

NUMBER = re.compile("-?[0-9]{1,9}")

Table = MutableMapping[str, Any]


@dataclass(frozen=True, slots=True)
class Written:
    """A form as a text.

    Args:
        fields: the field that each key of the text comes from.
        faults: what is wrong in fields that no text can say; by name of the field.
    """

    text: str
    fields: Mapping[str, str]
    faults: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Checked:
    """A form as a text, and what is wrong with it: a sentence for each field."""

    text: str
    errors: Mapping[str, str]


def written(values: Values, before: str = "") -> Written:
    """The form as a swatch file.

    Args:
        before: the text that it was filled in from; its comments and spellings stay.
    """
    units: Units = "in" if values.get("units") == "in" else "cm"
    old = values_of(before, units) if before else {}
    numbers = _kept(values)
    if before:
        text = _edited(before, values, old, units, numbers)
    else:
        document = tomlkit.document()
        document["format"] = "frogless-swatch/1"
        _fill(document, values, old, units, numbers, tomlkit.table)
        text = tomlkit.dumps(document)
    fields, faults = dict(_fields(values, numbers)), dict(_own_faults(values, numbers))
    return Written(text, fields, faults)


def checked(values: Values, before: str = "") -> Checked:
    """The form as a swatch file, with the faults of each field."""
    made = written(values, before)
    errors = dict(made.faults)
    try:
        parse_swatch_file(made.text)
    except InputError as error:
        for fault in error.faults:
            field = _field_of(fault, made.fields)
            if field not in made.faults:
                errors[field] = "; ".join(
                    filter(None, (errors.get(field, ""), _told(fault, field, values)))
                )
    return Checked(made.text, errors)


def _field_of(fault: Fault, fields: Mapping[str, str]) -> str:
    key = fault.place.key
    while key and key not in fields:
        key = key.rpartition(".")[0]
    return fields.get(key, "name")


def _told(fault: Fault, field: str, values: Values) -> str:
    last, part = fault.place.key.rpartition(".")[2], field.rpartition("-")[2]
    if part == "hook" and (words := hook_words(values.get(field, ""))):
        return words
    told = PLAIN.get(f"{last} {fault.message}", fault.message)
    for count in ("stitches", "repeats", "rows"):
        told = told.replace(f"{count} is given", f"{count} are given")
    return with_noun(told.replace("millimetres", "millimeters"), NOUNS.get(part, "this"))


def order_of(values: Values) -> tuple[int, ...]:
    """The readings of a form in the order in which the text has them."""
    return _in_order(values, _kept(values))


def _in_order(values: Values, numbers: tuple[int, ...]) -> tuple[int, ...]:
    """Those that the text had first, in its order, then the new ones."""
    was = was_of(values)
    saved = sorted((n for n in numbers if n in was), key=lambda n: was[n])
    return (*saved, *(n for n in numbers if n not in saved))


def _kept(values: Values) -> tuple[int, ...]:
    """The readings that hold something; where none does, the first."""
    numbers = numbers_of(values)
    return tuple(n for n in numbers if not is_empty(values, n)) or numbers[:1]


def _edited(
    before: str, values: Values, old: Values, units: Units, numbers: tuple[int, ...]
) -> str:
    plain = tomllib.loads(before)
    _fill(plain, values, old, units, numbers, dict)
    document = tomlkit.parse(before)
    inline = isinstance(document.get("reading"), Array)
    make = tomlkit.inline_table if inline else tomlkit.table
    _fill(document, values, old, units, numbers, make)
    text = tomlkit.dumps(document)
    try:
        same = tomllib.loads(text) == plain
    except ValueError:
        same = False
    # A text whose layout no edit can keep is written anew: what it says matters more.
    return text if same else tomlkit.dumps(plain)


def _fill(
    document: Table,
    values: Values,
    old: Values,
    units: Units,
    numbers: tuple[int, ...],
    make: Callable[[], Any],
) -> None:
    """Puts the form into a document, touching only what the form changed."""
    for key in ("name", "stitch", "hook", "colour"):
        if values.get(key, "") != old.get(key, ""):
            _put(document, key, _top(key, values.get(key, ""), units))
    _fill_yarn(document, values, old, units, make)
    _fill_readings(document, values, old, units, numbers, make)


def _top(key: str, text: str, units: Units) -> str:
    text = text.strip()
    return ABBREVIATIONS.get(text, text) if key == "stitch" else with_unit(text, KINDS[key], units)


def _fill_yarn(
    document: Table, values: Values, old: Values, units: Units, make: Callable[[], Any]
) -> None:
    for field in YARN:
        text = values.get(field.name, "").strip()
        if text == old.get(field.name, ""):
            continue
        if "yarn" not in document:
            document["yarn"] = make() if make is dict else tomlkit.table()
        value: object = with_unit(text, field.kind, units)
        _put(document["yarn"], field.name.removeprefix("yarn-"), value)
        if field.name in WHOLE and text:
            document["yarn"][field.name.removeprefix("yarn-")] = _number(text)


def _fill_readings(
    document: Table,
    values: Values,
    old: Values,
    units: Units,
    numbers: tuple[int, ...],
    make: Callable[[], Any],
) -> None:
    there = len(document.get("reading", ()))
    was = {n: place for n, place in was_of(values).items() if n in numbers and place <= there}
    order = sorted((n for n in numbers if n in was), key=lambda n: was[n])
    for number in order:
        table = document["reading"][was[number] - 1]
        _fill_reading(table, values, number, old, was[number], units)
    kept = set(was.values())
    for place in reversed(range(there)):
        if place + 1 not in kept:
            del document["reading"][place]
    for number in (n for n in numbers if n not in was):
        table = make()
        _fill_reading(table, values, number, {}, 0, units)
        if not len(document.get("reading", ())):
            document["reading"] = [] if make is dict else tomlkit.aot()
        document["reading"].append(table)


def _fill_reading(
    table: Table, values: Values, number: int, old: Values, place: int, units: Units
) -> None:
    def now(part: str) -> str:
        return values.get(f"r{number}-{part}", "").strip()

    def changed(*parts: str) -> bool:
        return not place or any(now(p) != old.get(f"r{place}-{p}", "") for p in parts)

    of = now("of")
    if changed("state"):
        _put(table, "state", now("state"))
    if changed("of", "key", "numbers"):
        _fill_kind(table, of, now("key"), now("numbers"))
    if changed("of", "count"):
        across = "repeats" if of.startswith(OWN_PATTERN) else "stitches"
        table.pop({"repeats": "stitches", "stitches": "repeats"}[across], None)
        _put(table, across, _number(now("count")) if now("count") else "")
    for part, kind in OF_READING.items():
        if part != "count" and changed(part):
            text = with_unit(now(part), kind, units)
            _put(table, part, _number(text) if part == "rows" and text else text)


def _fill_kind(table: Table, of: str, key: str, numbers: str) -> None:
    """What a reading is of: a stitch, or a stitch pattern with its numbers."""
    if not of.startswith(OWN_PATTERN):
        table.pop("pattern", None)
        table.pop("parameters", None)
        full = of.removeprefix("stitch:")
        _put(table, "stitch", ABBREVIATIONS.get(full, full))
        return
    table.pop("stitch", None)
    table["pattern"] = of.removeprefix(OWN_PATTERN) or key
    found = _parameters(numbers)
    if not found:
        table.pop("parameters", None)
    elif dict(table.get("parameters", {})) != found:
        inline = tomlkit.inline_table()
        inline.update(found)
        table["parameters"] = found if type(table) is dict else inline


def _parameters(text: str) -> dict[str, int] | None:
    """Names and numbers of "half 5, block = 3"; None where they cannot be read."""
    found = {}
    for part in filter(None, (one.strip() for one in text.split(","))):
        name, number = (*part.replace("=", " ").split(), "", "")[:2]
        if len(part.replace("=", " ").split()) != 2 or not NUMBER.fullmatch(number):
            return None
        found[name] = int(number)
    return found


def _put(table: Table, key: str, value: object) -> None:
    if value == "":
        table.pop(key, None)
    else:
        table[key] = value


def _number(text: str) -> int | float | str:
    """A number where it is one; the library says what is wrong with anything else."""
    try:
        number = parse_number(text)
    except InputError:
        return text
    return int(number) if number.is_integer() else number


def _fields(values: Values, numbers: tuple[int, ...]) -> Iterator[tuple[str, str]]:
    """Each key of the text with the field that it comes from."""
    yield from ((key, key) for key in ("name", "stitch", "hook", "colour"))
    yield from ((field.name.replace("-", ".", 1), field.name) for field in YARN)
    yield ("reading", f"r{numbers[0]}-count" if numbers else "name")
    for place, number in enumerate(_in_order(values, numbers), 1):
        start = f"reading[{place}]"
        yield (start, f"r{number}-count")
        yield from ((f"{start}.{part}", f"r{number}-{part}") for part in OF_READING)
        yield from (
            (f"{start}.{key}", f"r{number}-{part}")
            for key, part in (
                ("state", "count" if is_empty(values, number) else "state"),
                ("stitch", "of"),
                ("pattern", "of"),
                ("parameters", "numbers"),
                ("stitches", "count"),
                ("repeats", "count"),
            )
        )


def _own_faults(values: Values, numbers: tuple[int, ...]) -> Iterator[tuple[str, str]]:
    for number in numbers:
        of = values.get(f"r{number}-of", "")
        text = values.get(f"r{number}-numbers", "").strip()
        key = values.get(f"r{number}-key", "").strip()
        if of == OWN_PATTERN and not key:
            yield f"r{number}-key", "the key that the stitch pattern has in your design is needed"
        if of.startswith(OWN_PATTERN) and _parameters(text) is None:
            yield (
                f"r{number}-numbers",
                f'"{text[:40]}" is not a list of numbers with their names; write it as: half 5',
            )
        if of != OWN_PATTERN and key:
            yield f"r{number}-key", 'this belongs to "a stitch pattern of my own design"'
        if not of.startswith(OWN_PATTERN) and text:
            yield f"r{number}-numbers", "only a stitch pattern has numbers; leave this empty"
    if not numbers:
        yield "name", "a swatch needs one reading at least; add one"
