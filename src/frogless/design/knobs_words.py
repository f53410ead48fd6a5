"""What the keys of a design are called where a person turns them, from a data file."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Any

from frogless.design.strict import Strict


@dataclass(frozen=True, slots=True)
class Words:
    """What is said of one key, as `data/knobs.toml` has it.

    Args:
        default: what holds where nothing is written; "" leaves it to the format.
        source: what its choices are taken from; "" when they stand in the format or in `choices`.
        unit: of a number that is written without one; "" for the unit of the page.
        group: whether its tables are groups of their own.
        beside: the group that its knobs belong to; "" for that of its own table.
        knob: whether it is turned at all; else it is written in the text of the design only.
    """

    label: str
    hint: str = ""
    default: str = ""
    source: str = ""
    choices: tuple[str, ...] = ()
    unit: str = ""
    group: bool = False
    beside: str = ""
    knob: bool = True


@cache
def _table() -> Mapping[str, Mapping[str, Any]]:
    text = files("frogless.design").joinpath("data", "knobs.toml").read_text(encoding="utf-8")
    return tomllib.loads(text)


@cache
def words(model: type[Strict], key: str) -> Words:
    """What is said of a key of a table.

    Raises:
        KeyError: nothing is.
    """
    for table in _tables(model.__name__):
        if key in table:
            return _words(table[key])
    raise KeyError(f"{model.__name__}.{key}")


def is_turned(model: type[Strict]) -> bool:
    """Whether a table has knobs, or is written in the text of the design only."""
    return bool(_table()[model.__name__].get("knob", True))


def _tables(name: str) -> Iterator[Mapping[str, Any]]:
    """The table of that name, then the one that it is like."""
    table = _table()[name]
    yield table
    if "like" in table:
        yield from _tables(table["like"])


def _words(told: Mapping[str, Any]) -> Words:
    given = dict(told)
    source, choices = given.pop("from", ""), tuple(given.pop("choices", ()))
    return Words(source=source, choices=choices, **given)
