"""Stitch patterns as their data files tell them: what they are called, and their rows as text.

The rows are in the language of written patterns; `read.patterns` makes rows of them.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any, get_args

from frogless.errors import Fault, InputError, Place, near_names
from frogless.stitches.edgings import Parameter
from frogless.stitches.model import Dialect

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
    folder = files("frogless.stitches").joinpath("data", "patterns")
    named = sorted(folder.iterdir(), key=lambda each: each.name)
    texts = {f.name: f.read_text(encoding="utf-8") for f in named if f.name.endswith(".toml")}
    return read_files(texts)


def read_files(texts: Mapping[str, str]) -> Mapping[str, PatternEntry]:
    """Patterns from the texts of data files, by the names of the files.

    Raises:
        InputError: a file is refused, or a key is in another file already.
    """
    found: dict[str, PatternEntry] = {}
    stands_in: dict[str, str] = {}
    for file, text in texts.items():
        entries = read_entries(text, file)
        for key in entries:
            if other := stands_in.get(key):
                raise InputError(
                    f"{other} has a pattern of that name already", Place(file, key=key)
                )
            stands_in[key] = file
        found |= entries
    return MappingProxyType(found)


def pattern_named(key: str) -> PatternEntry:
    """The stitch pattern of that key.

    Raises:
        InputError: no such key, with the nearest ones.
    """
    known = patterns()
    if key not in known:
        raise InputError(f'unknown stitch pattern "{key}"{near_names(key, known)}')
    return known[key]


def read_entries(text: str, file: str) -> Mapping[str, PatternEntry]:
    """Patterns from the text of a data file.

    Raises:
        InputError: all faults told together.
    """
    faults: list[Fault] = []
    found: dict[str, PatternEntry] = {}
    for key, entry in tomllib.loads(text).items():
        try:
            found[key] = _entry(key, entry)
        except InputError as error:
            faults.extend(error.at(Place(file, key=key)).faults)
    if faults:
        raise InputError.of(faults)
    return found


def _entry(key: str, entry: Mapping[str, Any]) -> PatternEntry:
    _check(entry, _NEEDED, _KEYS)
    if "rows" not in entry and "rounds" not in entry:
        raise InputError("it has neither rows nor rounds")
    return PatternEntry(
        key=key,
        family=entry["family"],
        names=MappingProxyType({dialect: entry[dialect] for dialect in DIALECTS}),
        also=tuple(entry.get("also", ())),
        rows=_way(entry, "rows"),
        rounds=_way(entry, "rounds"),
        parameters=MappingProxyType(
            {name: Parameter(**told) for name, told in entry.get("parameters", {}).items()}
        ),
        drape=entry["drape"],
        stretch=entry["stretch"],
        bias=entry["bias"],
        note=entry.get("note", ""),
        source=entry["source"],
        basis=entry["basis"],
    )


def _way(entry: Mapping[str, Any], name: str) -> WayText | None:
    if name not in entry:
        return None
    try:
        _check(entry[name], _WAY_NEEDED, _WAY_KEYS)
    except InputError as error:
        raise error.at(Place(key=name)) from error
    return WayText(**entry[name])


def _check(entry: Mapping[str, Any], needed: frozenset[str], known: frozenset[str]) -> None:
    if missing := sorted(needed - entry.keys()):
        raise InputError(f"{', '.join(missing)} missing")
    if unknown := sorted(entry.keys() - known):
        raise InputError(f'unknown key "{unknown[0]}"{near_names(unknown[0], known)}')
