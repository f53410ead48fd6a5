"""A design changed as its author would change it: her comments, her order and her blanks stay.

`tomlkit` keeps what `tomllib` throws away. A document of which nothing is changed comes back byte
for byte.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, MutableMapping, MutableSequence, Sequence
from typing import Any

import tomlkit
from tomlkit.items import Item

from frogless.design.load import parse_design
from frogless.errors import InputError, Place
from frogless.files import dotted
from frogless.toml_text import Steps

Written = str | int | float | bool
Value = Written | list[str] | list[int]
"""What a key may hold that is no table."""


def set_values(text: str, changes: Mapping[Steps, Written]) -> str:
    """The text of a design with other values.

    Args:
        changes: by the way to each value: `("section", 1, "points")`, places counted from 0. A key
            or a table that is not there yet is written where its table ends.

    Raises:
        InputError: the text is no design file, a way leads nowhere, or the changed text is no
            design: an unknown key or a value that is not accepted, with its line and key.
    """
    parse_design(text)
    changed = edited(text, changes)
    parse_design(changed)
    return changed


def edited(text: str, changes: Mapping[Steps, Value], without: Iterable[Steps] = ()) -> str:
    """The text of a document with other values and without some keys; nothing is checked.

    Args:
        changes: as in `set_values`; a list is changed item by item where it stays as long.
        without: ways to the keys, tables and items that are taken out; what is not there is not
            missed.

    Raises:
        InputError: a way leads nowhere.
    """
    document = tomlkit.parse(text)
    for steps in without:
        _drop(document, steps)
    for steps, value in changes.items():
        _set(document, steps, value)
    return tomlkit.dumps(document)


def _drop(document: tomlkit.TOMLDocument, steps: Steps) -> None:
    holder: object = document
    for place in range(1, len(steps)):
        holder = _step(holder, steps[:place])
    match holder, steps[-1]:
        case MutableMapping(), str(key) if key in holder:
            del holder[key]
        case MutableSequence(), int(place) if 0 <= place < len(holder):
            del holder[place]


def inside(data: Any, path: Steps) -> Any:  # noqa: ANN401 what stands in a document may be anything
    """What stands at a place of a document's data, which has to be there."""
    for step in path:
        data = data[step]
    return data


def _set(document: tomlkit.TOMLDocument, steps: Steps, value: Value) -> None:
    holder: object = document
    for place, step in enumerate(steps[:-1]):
        if isinstance(holder, MutableMapping) and isinstance(step, str) and step not in holder:
            # A table within a table stands on one line, with the keys of what it belongs to.
            holder[step] = tomlkit.inline_table() if place else tomlkit.table()
        holder = _step(holder, steps[: place + 1])
    there = _there(holder, steps[-1])
    if isinstance(value, list) and isinstance(there, MutableSequence) and len(there) == len(value):
        items: Sequence[Written] = value
        for at, item in enumerate(items):
            if not _same(there[at], item):
                there[at] = item
        return
    match holder, steps[-1]:
        case MutableMapping(), str(key):
            if key not in holder or not _same(holder[key], value):
                holder[key] = value
        case MutableSequence(), int(place) if 0 <= place < len(holder):
            if not _same(holder[place], value):
                holder[place] = value
        case _:
            raise _nowhere(steps)


def _there(holder: object, step: str | int) -> object:
    return holder.get(step) if isinstance(holder, MutableMapping) else None


def _step(holder: object, steps: Steps) -> object:
    """What stands at the last of these steps.

    Raises:
        InputError: nothing does.
    """
    match holder, steps[-1]:
        case MutableMapping(), str(key) if key in holder:
            return holder[key]
        case MutableSequence(), int(place) if 0 <= place < len(holder):
            return holder[place]
    raise _nowhere(steps)


def _nowhere(steps: Steps) -> InputError:
    return InputError("there is no such place in the design", Place(key=dotted(steps)))


def _same(there: object, value: Value) -> bool:
    """Whether a value is there already; true is not 1, and 1.0 is not 1."""
    plain = there.unwrap() if isinstance(there, Item) else there
    return type(plain) is type(value) and bool(plain == value)
