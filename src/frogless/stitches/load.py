"""The stitch dictionary and the reading words, from their data files."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any, get_args

from frogless.errors import Fault, InputError, Place, near_names
from frogless.stitches.model import Dialect, Motion, Ratio, Step, Stitch, Term
from frogless.stitches.node_data import known_stitch
from frogless.stitches.steps import closes, loops_after

_STEP = re.compile(r"(?P<motion>[a-z_]+)(?: (?P<loops>\d+))?(?: in (?P<where>[a-z_]+))?")
_FILLED = re.compile(r"\{([a-z_]+)\}")
_PLAIN = frozenset({"kind", "stands_on", "leaves", "turning_chain", "how", "source", "basis"})
_NEEDED = _PLAIN | {"us", "uk", "height", "width", "steps"}
_EXTRA = frozenset({"terms_basis", "chain_counts", "foundation_extra", "begins_on"})
_KEYS = _NEEDED | _EXTRA | {"height_over_width"}
_DIALECTS: tuple[Dialect, ...] = get_args(Dialect)


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


def read_dictionary(text: str, file: str) -> Mapping[str, Stitch]:
    """Stitches from the text of a dictionary file, each checked.

    Raises:
        InputError: all faults told together.
    """
    faults: list[Fault] = []
    stitches: dict[str, Stitch] = {}
    for key, entry in tomllib.loads(text).items():
        try:
            stitches[key] = _stitch(key, entry)
        except InputError as error:
            faults.extend(error.at(Place(file, key=key)).faults)
    if faults:
        raise InputError.of(faults)
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


def explain(stitch: Stitch, dialect: Dialect) -> str:
    """`how` with every `{key}` filled with the dialect's own term, beginning with a capital."""
    known = words(dialect)

    def term(found: re.Match[str]) -> str:
        key = found[1]
        return known[key].name if key in known else stitch_named(key).terms[dialect].name

    text = _FILLED.sub(term, stitch.how)
    return text[:1].upper() + text[1:]


def data_file(name: str) -> str:
    """The text of a data file of this part."""
    return files("frogless.stitches").joinpath("data", name).read_text(encoding="utf-8")


def _stitch(key: str, entry: Mapping[str, Any]) -> Stitch:
    _check_keys(entry)
    stitch = Stitch(
        key=key,
        terms=MappingProxyType({dialect: _term(entry, dialect) for dialect in _DIALECTS}),
        height=_ratio(entry, "height"),
        width=_ratio(entry, "width"),
        steps=tuple(_step(text) for text in entry["steps"]),
        height_over_width=(
            _ratio(entry, "height_over_width") if "height_over_width" in entry else None
        ),
        **{name: entry[name] for name in _PLAIN | (_EXTRA & entry.keys())},
    )
    if not closes(stitch):
        raise InputError(
            f"its steps leave {', '.join(map(str, loops_after(stitch.steps)))} loops on the hook; "
            "a stitch ends with 1 and never has fewer"
        )
    return stitch


def _check_keys(entry: Mapping[str, Any]) -> None:
    if missing := sorted(_NEEDED - entry.keys()):
        raise InputError(f"{', '.join(missing)} missing")
    if unknown := sorted(entry.keys() - _KEYS):
        raise InputError(f'unknown key "{unknown[0]}"{near_names(unknown[0], _KEYS)}')


def _term(entry: Mapping[str, Any], dialect: Dialect) -> Term:
    if len(entry[dialect]) != 2:
        raise InputError(f"{dialect} is {entry[dialect]}; write a name and an abbreviation")
    return Term(*entry[dialect])


def _ratio(entry: Mapping[str, Any], name: str) -> Ratio:
    if len(entry[name]) != 3 or sorted(entry[name]) != entry[name]:
        raise InputError(f"{name} is {entry[name]}; write low, typical and high, smallest first")
    return Ratio(*entry[name])


def _step(text: str) -> Step:
    found = _STEP.fullmatch(text)
    motions: tuple[Motion, ...] = get_args(Motion)
    for motion in motions:
        if found and found["motion"] == motion:
            return Step(motion, int(found["loops"] or 1), found["where"] or "")
    raise InputError(
        f'"{text}" is not a step; write a motion ({", ".join(motions)}), such as "pull_through 2"'
    )
