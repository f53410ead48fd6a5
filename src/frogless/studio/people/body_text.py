"""A body file and the form that shows it: what is written in a field is set in the text itself."""

from __future__ import annotations

from typing import Any

import tomlkit
from tomlkit.exceptions import TOMLKitError

from frogless.body.load import parse_body
from frogless.body.measurements import known_measurements
from frogless.errors import InputError
from frogless.studio.fields import Values, respelled, with_unit
from frogless.studio.people.measured import fields, kind_of
from frogless.units import Units, parse_number

FILE = "body.toml"
"""What faults of a text are told of."""

NEW = 'format = "frogless-body/1"\nname = ""\n\n[measurements]\n'


def written(text: str, values: Values, units: Units) -> str:
    """The text with what the form holds; comments, and what has not changed, stay as they are.

    Raises:
        InputError: the text is no body file that fields can be set in.
    """
    try:
        document: Any = tomlkit.parse(text)
        table = document["measurements"]
        _put(document, "name", " ".join(values.get("name", "").split()))
        _put(document, "age", _number(values.get("age", "").strip()))
        for key in known_measurements():
            _put(table, key, with_unit(values.get(key, ""), kind_of(key), units))
    except (TOMLKitError, KeyError, TypeError):
        raise InputError("this text is no body file whose fields can be filled in") from None
    return tomlkit.dumps(document)


def _put(table: Any, key: str, value: str | float) -> None:  # noqa: ANN401 - tomlkit's tables
    if value == "" and key != "name":
        if key in table:
            del table[key]
    elif table.get(key) != value:
        table[key] = value


def _number(text: str) -> int | float | str:
    """A number where it is one; the library says what is wrong with anything else."""
    try:
        number = parse_number(text)
    except InputError:
        return text
    return int(number) if number.is_integer() else number


def values_of(text: str, units: Units) -> dict[str, str] | None:
    """What the form shows of a body file; None when the file has faults and is shown as text."""
    try:
        body = parse_body(text, FILE)
    except InputError:
        return None
    values = {key: one.written for key, one in body.measurements.items()}
    values["name"] = body.name
    if body.age is not None:
        values["age"] = f"{body.age:g}"
    return respelled(values, fields(), units, units)
