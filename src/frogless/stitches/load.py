"""The stitch dictionary and the reading words, from their data files."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any, get_args

from frogless.errors import InputError, Place, near_names
from frogless.stitches.entries import read_stitch
from frogless.stitches.model import Dialect, Stitch, Term
from frogless.stitches.node_data import known_stitch

_FILLED = re.compile(r"\{([a-z_]+)\}")
_DIALECTS: tuple[Dialect, ...] = get_args(Dialect)
_NONE: Mapping[str, Stitch] = MappingProxyType({})
Stitches = Mapping[str, Stitch]


@cache
def dictionary() -> Mapping[str, Stitch]:
    """Every stitch by key, in the order of the file; cannot be changed.

    Raises:
        InputError: an entry is incomplete, or its steps do not close with one loop on the hook.
    """
    return read_dictionary(data_file("stitches.toml"), "stitches.toml")


@cache
def words(dialect: Dialect) -> Mapping[str, Term]:
    """The reading words of a dialect by key: `skip`, `gauge`, `right_side`, ...

    `abbreviation` is the word itself where no abbreviation is in use.
    """
    table = tomllib.loads(data_file("words.toml"))
    return MappingProxyType(
        {key: Term(*(entry.get("both") or entry[dialect])) for key, entry in table.items()}
    )


def read_dictionary(text: str, file: str, known: Mapping[str, Stitch] = _NONE) -> Stitches:
    """Stitches from the text of a dictionary file, each checked.

    Args:
        known: stitches that the entries may name besides those before them in the file.

    Raises:
        InputError: all faults told together.
    """
    faults: dict[str, InputError] = {}
    stitches: dict[str, Stitch] = {}
    for key, entry in _tables(text, file).items():
        try:
            if key in known:
                raise InputError("there is a stitch of that key already; give it a key of its own")
            stitches[key] = read_stitch(key, entry, {**known, **stitches})
        except InputError as error:
            faults[key] = error
    there = {**known, **stitches}
    for key, stitch in stitches.items():
        if key not in faults and (fault := _sentence_fault(stitch, there)):
            faults[key] = InputError(fault)
    for dialect in _DIALECTS:
        for key, fault in _term_faults(there, dialect).items():
            faults.setdefault(key, InputError(fault))
    if faults:
        told = [f for key, e in faults.items() for f in e.at(Place(file, key=key)).faults]
        raise InputError.of(told)
    return MappingProxyType(stitches)


def stitch_named(key: str, stitches: Mapping[str, Stitch] | None = None) -> Stitch:
    """The stitch of that key.

    Raises:
        InputError: no such key, with the nearest ones.
    """
    known = dictionary() if stitches is None else stitches
    return known[known_stitch(key, known)]


def stands_on(stitches: Mapping[str, Stitch]) -> Mapping[str, int]:
    """Places each stitch takes of the row below, by key: what `rows.count` asks for."""
    return MappingProxyType({key: stitch.stands_on for key, stitch in stitches.items()})


def leaves(stitches: Mapping[str, Stitch]) -> Mapping[str, int]:
    """Places each stitch leaves for the next row, by key: what `rows.count` asks for."""
    return MappingProxyType({key: stitch.leaves for key, stitch in stitches.items()})


def explain(stitch: Stitch, dialect: Dialect, stitches: Mapping[str, Stitch] | None = None) -> str:
    """`how` with every `{key}` filled with the dialect's own term, beginning with a capital.

    Args:
        stitches: those that it may name; the dictionary unless others are handed in.
    """
    return _told(stitch.how, dialect, stitches)


def explain_left_handed(
    stitch: Stitch, dialect: Dialect, stitches: Mapping[str, Stitch] | None = None
) -> str:
    """As `explain`, for a left-hander; the same where no word differs."""
    return _told(stitch.left_handed or stitch.how, dialect, stitches)


def data_file(name: str) -> str:
    """The text of a data file of this part."""
    return files("frogless.stitches").joinpath("data", name).read_text(encoding="utf-8")


def _tables(text: str, file: str) -> dict[str, Mapping[str, Any]]:
    try:
        tables = tomllib.loads(text)
    except (tomllib.TOMLDecodeError, RecursionError) as error:
        raise InputError(f"it is not understood as TOML: {error}", Place(file)) from None
    for key, entry in tables.items():
        if not isinstance(entry, Mapping):
            raise InputError(f"{entry!r} is no stitch; write a table [{key}]", Place(file, key=key))
    return tables


def _sentence_fault(stitch: Stitch, known: Mapping[str, Stitch]) -> str:
    """What its sentences name that is neither a stitch nor a reading word."""
    for key in _FILLED.findall(stitch.how + stitch.left_handed):
        if key not in known and key not in words("us"):
            return f'"{{{key}}}" is neither a stitch nor a reading word{near_names(key, known)}'
    return ""


def _told(sentence: str, dialect: Dialect, stitches: Mapping[str, Stitch] | None) -> str:
    known = words(dialect)

    def term(found: re.Match[str]) -> str:
        key = found[1]
        return known[key].name if key in known else stitch_named(key, stitches).terms[dialect].name

    text = _FILLED.sub(term, sentence)
    return text[:1].upper() + text[1:]


def _term_faults(stitches: Mapping[str, Stitch], dialect: Dialect) -> dict[str, str]:
    """For a stitch whose name or abbreviation means something else already, what that is."""
    meanings = {
        word.casefold(): f"the word {key}"
        for key, term in words(dialect).items()
        for word in (term.name, term.abbreviation)
    }
    faults: dict[str, str] = {}
    for key, stitch in stitches.items():
        term = stitch.terms[dialect]
        told = (term.name, term.abbreviation, *term.others)
        for word in dict.fromkeys(word.casefold() for word in told):
            if word in meanings:
                faults[key] = f'{dialect}: "{word}" already stands for {meanings[word]}'
        meanings |= {word.casefold(): key for word in told}
    return faults
