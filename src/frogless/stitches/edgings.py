"""Edging patterns: fragments of rows with parameters, from a data file. A new one is data only."""

from __future__ import annotations

import tomllib
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import product
from types import MappingProxyType
from typing import Any

from frogless.errors import InputError, Place, near_names
from frogless.rows.count import consumed, left
from frogless.rows.nodes import Node
from frogless.rows.walk import stitch_keys
from frogless.stitches.load import data_file, dictionary, leaves, stands_on
from frogless.stitches.model import Dialect, Edging, Term
from frogless.stitches.node_data import read_nodes
from frogless.stitches.sums import whole

_NEEDED = ("us", "uk", "multiple", "round", "source", "basis")
_NO_PARAMETERS: Mapping[str, int] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Parameter:
    """A whole number that an edging pattern leaves open, with what it is unless said otherwise."""

    default: int
    low: int
    high: int


@dataclass(frozen=True, slots=True)
class Pattern:
    """An edging pattern as read, its numbers still sums over `parameters`."""

    key: str
    parameters: Mapping[str, Parameter]
    entry: Mapping[str, Any]


@cache
def patterns() -> Mapping[str, Pattern]:
    """Every edging pattern by key, each tried with its parameters at their ends and defaults.

    Raises:
        InputError: a pattern that does not fill its multiple, or is not understood.
    """
    return read_patterns(data_file("edgings.toml"), "edgings.toml")


def edgings() -> tuple[str, ...]:
    """The keys of all edging patterns."""
    return tuple(patterns())


def edging(key: str, parameters: Mapping[str, int] = _NO_PARAMETERS) -> Edging:
    """The edging of that key with its parameters filled in; those not given take their default.

    Raises:
        InputError: unknown pattern or parameter, or a value out of range, with what is accepted.
    """
    known = patterns()
    if key not in known:
        raise InputError(
            f'unknown edging "{key}"; accepted: {", ".join(known)}{near_names(key, known)}'
        )
    return build(known[key], parameters)


def read_patterns(text: str, file: str) -> Mapping[str, Pattern]:
    """Patterns from the text of a file of edgings, each tried out.

    Raises:
        InputError: the first pattern that does not hold, with its key.
    """
    found: dict[str, Pattern] = {}
    for key, entry in tomllib.loads(text).items():
        try:
            found[key] = _pattern(key, entry)
        except InputError as error:
            raise error.at(Place(file, key=key)) from error
    return MappingProxyType(found)


def build(pattern: Pattern, parameters: Mapping[str, int] = _NO_PARAMETERS) -> Edging:
    """The edging that a pattern gives with these parameters.

    Raises:
        InputError: as `edging`; or a repeat that does not use what the round below it leaves.
    """
    values = _values(pattern, parameters)
    entry = pattern.entry
    rounds: list[tuple[Node, ...]] = []
    backwards: list[bool] = []
    chains: list[int] = []
    for fragment in entry["round"]:
        times = whole(fragment.get("times", 1), values)
        rounds += [read_nodes(fragment["nodes"], values, dictionary())] * times
        backwards += [bool(fragment.get("backwards", False))] * times
        chains += [whole(fragment.get("turning_chain", 0), values)] * times
    multiple = whole(entry["multiple"], values)
    _check_fills(rounds, multiple)
    dialects: tuple[Dialect, ...] = ("us", "uk")
    return Edging(
        key=pattern.key,
        terms=MappingProxyType({dialect: Term(*entry[dialect]) for dialect in dialects}),
        multiple=multiple,
        offset=whole(entry.get("offset", 0), values),
        rounds=tuple(rounds),
        backwards=tuple(backwards),
        turning_chains=tuple(chains),
        stitches=_stitches(rounds),
        source=entry["source"],
        basis=entry["basis"],
    )


def _pattern(key: str, entry: Mapping[str, Any]) -> Pattern:
    if missing := [name for name in _NEEDED if name not in entry]:
        raise InputError(f"it needs {', '.join(missing)}")
    parameters = {name: Parameter(**p) for name, p in entry.get("parameters", {}).items()}
    pattern = Pattern(key, MappingProxyType(parameters), entry)
    for values in _corners(parameters):
        build(pattern, values)
    return pattern


def _values(pattern: Pattern, parameters: Mapping[str, int]) -> dict[str, int]:
    values = {name: parameter.default for name, parameter in pattern.parameters.items()}
    for name, value in parameters.items():
        if name not in values:
            raise InputError(
                f'"{pattern.key}" has no parameter "{name}"; '
                f"accepted: {', '.join(values) or 'none'}{near_names(name, values)}"
            )
        known = pattern.parameters[name]
        if type(value) is not int or not known.low <= value <= known.high:
            raise InputError(
                f'"{value}" is not accepted for {name} of "{pattern.key}"; '
                f"write a whole number from {known.low} to {known.high}"
            )
        values[name] = value
    return values


def _corners(parameters: Mapping[str, Parameter]) -> Iterable[dict[str, int]]:
    ends = ([(name, v) for v in (p.low, p.default, p.high)] for name, p in parameters.items())
    return (dict(values) for values in product(*ends))


def _check_fills(rounds: Sequence[tuple[Node, ...]], multiple: int) -> None:
    """Each round's repeat must use just what the round below leaves, or the round cannot close."""
    there = multiple
    for number, body in enumerate(rounds, start=1):
        used = consumed(body, stands_on(dictionary()))
        if used != there:
            raise InputError(
                f"round {number} uses {used} places in a repeat, but there are {there}"
            )
        there = left(body, leaves(dictionary()))


def _stitches(rounds: Iterable[tuple[Node, ...]]) -> tuple[str, ...]:
    used = frozenset[str]().union(*(stitch_keys(body) for body in rounds))
    return tuple(key for key in dictionary() if key in used)
