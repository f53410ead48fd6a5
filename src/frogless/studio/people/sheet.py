"""A body to look at: what was measured, what is estimated, group by group."""

from __future__ import annotations

from dataclasses import dataclass

from frogless.body.estimate import complete
from frogless.body.load import parse_body
from frogless.body.measurements import Body, Measurement, known_measurements
from frogless.errors import InputError
from frogless.studio.needs import measurement_name
from frogless.studio.people.body_text import FILE
from frogless.studio.people.checked import SPREAD
from frogless.studio.people.measured import grouped, how_taken
from frogless.units import POUND, Units, show_length

SHORTLY = ("bust_girth", "waist_girth", "hip_girth", "stature")


@dataclass(frozen=True, slots=True)
class Line:
    """One measurement as it is shown; `off` says how far an estimate may be off."""

    key: str
    name: str
    size: str
    off: str = ""
    source: str = ""


@dataclass(frozen=True, slots=True)
class Sheet:
    """Groups with their lines; those of which nothing is known are left out."""

    groups: tuple[tuple[str, tuple[Line, ...]], ...]
    age: str = ""


def sheet(text: str, units: Units) -> Sheet:
    """A body file to look at.

    Raises:
        InputError: it has faults.
    """
    body = parse_body(text, FILE)
    whole = complete(body, (), optional=tuple(known_measurements()))
    groups = tuple(
        (title, tuple(_line(one, units) for key in keys if (one := whole.get(key))))
        for title, keys in grouped().items()
    )
    age = "" if body.age is None else f"{body.age:g}"
    return Sheet(tuple((title, lines) for title, lines in groups if lines), age)


def _line(one: Measurement, units: Units) -> Line:
    name, size = measurement_name(one.key), show_size(one, units)
    if not one.estimated:
        return Line(one.key, name, size)
    off = show_length(SPREAD * one.value.uncertainty, units)
    return Line(one.key, name, f"about {size}", f"± {off}", one.source.removeprefix("estimated "))


def show_size(one: Measurement, units: Units) -> str:
    """A measurement in the person's units."""
    if known_measurements()[one.key].kind != "mass":
        return show_length(one.value.value, units)
    grams = one.value.value
    return f"{grams / 1000:.3g} kg" if units == "cm" else f"{grams / POUND:.3g} lb"


@dataclass(frozen=True, slots=True)
class Blank:
    """A place on a sheet of paper: what is measured, how, and what was, if it was."""

    key: str
    name: str
    how: str
    size: str = ""


def paper(text: str, units: Units) -> tuple[tuple[str, tuple[Blank, ...]], ...]:
    """A sheet to take along: every measurement by group, with those of a body file written in.

    Args:
        text: of a body file; "" for an empty sheet.

    Raises:
        InputError: the file has faults.
    """
    body = parse_body(text, FILE) if text else Body("", {})
    return tuple(
        (title, tuple(_blank(key, body.get(key), units) for key in keys))
        for title, keys in grouped().items()
    )


def _blank(key: str, one: Measurement | None, units: Units) -> Blank:
    size = show_size(one, units) if one else ""
    return Blank(key, measurement_name(key), how_taken(key), size)


def briefly(text: str, units: Units) -> str:
    """ "Bust 90 cm, waist 72 cm, hip 101 cm; 17 measurements"; what is wrong with a faulty one."""
    try:
        body = parse_body(text, FILE)
    except InputError:
        return "This file has faults; open it to mend them."
    number = len(body.measurements)
    counted = "1 measurement" if number == 1 else f"{number or 'no'} measurements"
    told = "; ".join(filter(None, (_main(body, units), counted)))
    return told[:1].upper() + told[1:]


def _main(body: Body, units: Units) -> str:
    given = [(key, body.get(key)) for key in SHORTLY]
    shown = [f"{key.split('_')[0]} {show_size(one, units)}" for key, one in given if one]
    age = [] if body.age is None else [f"{body.age:g} years"]
    return ", ".join((*age, *shown))
