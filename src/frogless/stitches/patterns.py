"""Stitch patterns as their data files tell them: what they are called, and their rows as text.

The rows are in the language of written patterns; `read.patterns` makes rows of them.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import get_args

from frogless.errors import InputError, Place, near_names
from frogless.stitches.model import Dialect
from frogless.stitches.parameters import Parameter, parameters_of
from frogless.stitches.tables import Entry, check_keys, read_folder, texts_of

DIALECTS: tuple[Dialect, ...] = get_args(Dialect)
_NEEDED = frozenset({"us", "uk", "family", "drape", "stretch", "bias", "source", "basis"})
_KEYS = _NEEDED | {"also", "parameters", "rows", "rounds", "note"}
_WAY_NEEDED = frozenset({"multiple", "text"})
_WAY_KEYS = _WAY_NEEDED | {"offset", "setup", "least"}


@dataclass(frozen=True, slots=True)
class WayText:
    """A pattern in rows or in rounds as text in US terms, numbers in braces still sums.

    Args:
        multiple, offset: numbers, or sums over the pattern's parameters.
        setup: rows that come once, before those that repeat.
    """

    text: str
    multiple: int | str
    offset: int | str = 0
    setup: int = 0
    least: int = 1


@dataclass(frozen=True, slots=True)
class PatternEntry:
    """A stitch pattern, its rows not yet read.

    Args:
        names: by dialect; `also`: what else it is called, in words that suit both.
        drape, stretch, bias: how it behaves, a few words each; `bias` which way it leans.
    """

    key: str
    family: str
    names: Mapping[Dialect, str]
    also: tuple[str, ...]
    rows: WayText | None
    rounds: WayText | None
    parameters: Mapping[str, Parameter]
    drape: str
    stretch: str
    bias: str
    note: str
    source: str
    basis: str


@cache
def patterns() -> Mapping[str, PatternEntry]:
    """Every stitch pattern of the library by key, family by family.

    Raises:
        InputError: an entry is incomplete, or two have one key.
    """
    return read_folder(texts_of("patterns"), pattern_entry)


def pattern_named(key: str) -> PatternEntry:
    """The stitch pattern of that key.

    Raises:
        InputError: no such key, with the nearest ones.
    """
    known = patterns()
    if key not in known:
        raise InputError(f'unknown stitch pattern "{key}"{near_names(key, known)}')
    return known[key]


def pattern_entry(key: str, entry: Entry) -> PatternEntry:
    """The pattern that a table of a data file tells of.

    Raises:
        InputError: it is incomplete, or has a key that is not known.
    """
    check_keys(entry, _NEEDED, _KEYS)
    if "rows" not in entry and "rounds" not in entry:
        raise InputError("it has neither rows nor rounds")
    return PatternEntry(
        key=key,
        family=entry["family"],
        names=MappingProxyType({dialect: entry[dialect] for dialect in DIALECTS}),
        also=tuple(entry.get("also", ())),
        rows=_way(entry, "rows"),
        rounds=_way(entry, "rounds"),
        parameters=parameters_of(entry),
        drape=entry["drape"],
        stretch=entry["stretch"],
        bias=entry["bias"],
        note=entry.get("note", ""),
        source=entry["source"],
        basis=entry["basis"],
    )


def _way(entry: Entry, name: str) -> WayText | None:
    if name not in entry:
        return None
    try:
        check_keys(entry[name], _WAY_NEEDED, _WAY_KEYS)
    except InputError as error:
        raise error.at(Place(key=name)) from error
    return WayText(**entry[name])
