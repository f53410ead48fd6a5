"""Edging patterns: fragments of rows with parameters, from a data file. A new one is data only."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import Any

from frogless.errors import InputError, near_names
from frogless.rows.count import consumed, left
from frogless.rows.nodes import Node
from frogless.rows.walk import stitch_keys
from frogless.stitches.load import data_file, dictionary, leaves, stands_on
from frogless.stitches.model import Dialect, EdgeRow, Edging, Fringe, Term
from frogless.stitches.node_data import read_nodes
from frogless.stitches.parameters import Parameter, corners, filled_in, parameters_of
from frogless.stitches.sums import whole
from frogless.stitches.tables import Entry, check_keys, read_tables

_NEEDED = ("us", "uk", "multiple", "round", "source", "basis")
_KEYS = frozenset({*_NEEDED, "offset", "parameters", "note", "knots"})
_ROUND_KEYS = frozenset({"times", "turning_chain", "backwards", "nodes", "rows", "sides"})
#: What a sum may name besides the parameters: the number of a round among those of its kind, 0 first.
_TURN = "n"
_NO_PARAMETERS: Mapping[str, int] = MappingProxyType({})
_Told = Mapping[str, Any]
_Round = tuple[_Told, Mapping[str, int]]


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
        near = near_names(key, known) or f"; accepted: {', '.join(known)}"
        raise InputError(f'unknown edging "{key}"{near}')
    return build(known[key], parameters)


def read_patterns(text: str, file: str) -> Mapping[str, Pattern]:
    """Patterns from the text of a file of edgings, each tried out.

    Raises:
        InputError: the patterns that do not hold, each with its key.
    """
    return read_tables(text, file, _pattern)


def build(pattern: Pattern, parameters: Mapping[str, int] = _NO_PARAMETERS) -> Edging:
    """The edging that a pattern gives with these parameters.

    Raises:
        InputError: as `edging`; or a repeat that does not use what the round below it leaves.
    """
    values = filled_in(pattern.key, pattern.parameters, parameters)
    entry = pattern.entry
    told = tuple(_each_round(entry["round"], values))
    multiple = whole(entry["multiple"], values)
    rounds = tuple(_nodes(fragment["nodes"], known) for fragment, known in told)
    rows, sides = _edge_rows("rows", told, rounds), _edge_rows("sides", told, rounds)
    _check_fills(tuple(EdgeRow((), body, ()) for body in rounds), multiple, "round")
    _check_fills(rows, multiple, "row")
    _check_fills(sides, multiple, "round, on a side,")
    _check_corners(sides)
    dialects: tuple[Dialect, ...] = ("us", "uk")
    return Edging(
        key=pattern.key,
        terms=MappingProxyType({dialect: Term(*entry[dialect]) for dialect in dialects}),
        multiple=multiple,
        offset=whole(entry.get("offset", 0), values),
        rounds=rounds,
        backwards=tuple(bool(fragment.get("backwards", False)) for fragment, _ in told),
        turning_chains=tuple(whole(f.get("turning_chain", 0), known) for f, known in told),
        stitches=_stitches((*rounds, *_bodies(rows), *_bodies(sides))),
        source=entry["source"],
        basis=entry["basis"],
        rows=rows,
        row_offset=_framing(rows),
        sides=sides,
        side_offset=_framing(sides),
        note=entry.get("note", ""),
        fringe=_fringe(entry.get("knots"), values),
    )


def _fringe(told: _Told | None, values: Mapping[str, int]) -> Fringe | None:
    if told is None:
        return None
    check_keys(told, (), ("strands", "length_cm"))
    return Fringe(whole(told["strands"], values), 10.0 * whole(told["length_cm"], values))


def _each_round(fragments: Iterable[_Told], values: Mapping[str, int]) -> Iterator[_Round]:
    """Each round as it is told, with what its sums may name."""
    for fragment in fragments:
        check_keys(fragment, (), _ROUND_KEYS)
        for turn in range(whole(fragment.get("times", 1), values)):
            yield fragment, {**values, _TURN: turn}


def _nodes(told: Iterable[_Told], values: Mapping[str, int]) -> tuple[Node, ...]:
    return read_nodes(told, values, dictionary())


def _edge_rows(
    name: str, told: Sequence[_Round], rounds: Sequence[tuple[Node, ...]]
) -> tuple[EdgeRow, ...]:
    """The rows that begin and end; what they repeat is that of the round unless they say so.

    Raises:
        InputError: some rounds have them and some have not.
    """
    having = [name in fragment for fragment, _ in told]
    if not any(having):
        return ()
    if not all(having):
        raise InputError(f"round {having.index(False) + 1} has no {name}, but others have")
    return tuple(
        EdgeRow(
            _nodes(fragment[name].get("before", ()), known),
            _nodes(fragment[name]["nodes"], known) if "nodes" in fragment[name] else body,
            _nodes(fragment[name].get("after", ()), known),
            _nodes(fragment[name].get("corner", ()), known),
        )
        for (fragment, known), body in zip(told, rounds, strict=True)
    )


def _bodies(rows: Iterable[EdgeRow]) -> tuple[tuple[Node, ...], ...]:
    return tuple((*row.before, *row.repeat, *row.after, *row.corner) for row in rows)


def _framing(rows: Sequence[EdgeRow]) -> int:
    """Places that the first row takes besides its repeats."""
    return sum(consumed((*row.before, *row.after), stands_on(dictionary())) for row in rows[:1])


def _pattern(key: str, entry: Entry) -> Pattern:
    check_keys(entry, _NEEDED, _KEYS)
    pattern = Pattern(key, parameters_of(entry), entry)
    for values in corners(pattern.parameters):
        build(pattern, values)
    return pattern


def _check_fills(rows: Sequence[EdgeRow], multiple: int, name: str) -> None:
    """Each repeat, and what frames the repeats, must use just what is below it, or the row cannot end."""
    there, framed = multiple, _framing(rows)
    for number, row in enumerate(rows, start=1):
        used = consumed(row.repeat, stands_on(dictionary()))
        if used != there:
            raise InputError(
                f"{name} {number} uses {used} places in a repeat, but there are {there}"
            )
        frame = (*row.before, *row.after)
        used = consumed(frame, stands_on(dictionary()))
        if used != framed:
            raise InputError(
                f"{name} {number} uses {used} places before and after its repeats, "
                f"but there are {framed}"
            )
        there, framed = left(row.repeat, leaves(dictionary())), left(frame, leaves(dictionary()))


def _check_corners(rows: Sequence[EdgeRow]) -> None:
    """A corner is one place for the first round, and for each later one what is left in it."""
    there = 1
    for number, row in enumerate(rows, start=1):
        used = consumed(row.corner, stands_on(dictionary()))
        if used != there:
            raise InputError(
                f"round {number} uses {used} places in a corner, but there are {there}"
            )
        there = left(row.corner, leaves(dictionary()))


def _stitches(rounds: Iterable[tuple[Node, ...]]) -> tuple[str, ...]:
    used = frozenset[str]().union(*(stitch_keys(body) for body in rounds))
    return tuple(key for key in dictionary() if key in used)
