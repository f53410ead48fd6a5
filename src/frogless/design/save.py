"""A design changed as its author would change it: her comments, her order and her blanks stay.

`tomlkit` keeps what `tomllib` throws away. A document of which nothing is changed comes back byte
for byte.
"""

from __future__ import annotations

from collections.abc import Mapping, MutableMapping, MutableSequence

import tomlkit
from tomlkit.items import Item

from frogless.design.load import parse_design
from frogless.errors import InputError, Place
from frogless.files import dotted
from frogless.toml_text import Steps

Written = str | int | float | bool


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
    document = tomlkit.parse(text)
    for steps, value in changes.items():
        _set(document, steps, value)
    changed = tomlkit.dumps(document)
    parse_design(changed)
    return changed


def _set(document: tomlkit.TOMLDocument, steps: Steps, value: Written) -> None:
    holder: object = document
    for place, step in enumerate(steps[:-1]):
        if isinstance(holder, MutableMapping) and isinstance(step, str) and step not in holder:
            holder[step] = tomlkit.table()
        holder = _inside(holder, steps[: place + 1])
    match holder, steps[-1]:
        case MutableMapping(), str(key):
            if key not in holder or not _same(holder[key], value):
                holder[key] = value
        case MutableSequence(), int(place) if 0 <= place < len(holder):
            if not _same(holder[place], value):
                holder[place] = value
        case _:
            raise _nowhere(steps)


def _inside(holder: object, steps: Steps) -> object:
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


def _same(there: object, value: Written) -> bool:
    """Whether a value is there already; true is not 1, and 1.0 is not 1."""
    plain = there.unwrap() if isinstance(there, Item) else there
    return type(plain) is type(value) and bool(plain == value)
