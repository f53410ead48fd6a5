"""Stitch patterns from their text: read over a few repeats, and lifted to any number of them."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache

from frogless.errors import InputError, Place
from frogless.read.build import BEGIN_COLOUR
from frogless.read.ground import plain
from frogless.read.parse import parse_row
from frogless.read.recover import Heard, rows_of
from frogless.read.spoken import (
    Across,
    Backwards,
    Each,
    Ending,
    FromHook,
    NoTurningChain,
    Said,
    SaidAgain,
    SaidChain,
    SameStart,
    Starred,
)
from frogless.read.vocabulary import Vocabulary, vocabulary
from frogless.rows.count import row_consumed
from frogless.rows.nodes import Node, Repeat, Row, Side, Work
from frogless.stitches.load import dictionary, stands_on
from frogless.stitches.model import Dialect, Stitch
from frogless.stitches.pattern_rows import PatternRow, Way, worked
from frogless.stitches.patterns import WayText, pattern_named
from frogless.stitches.sums import whole

_SUM = re.compile(r"\{([^{}]*)\}")
#: Read over so many repeats, which have to say the same.
_REPEATS = (2, 3)


@dataclass(frozen=True, slots=True)
class _Line:
    number: int
    said: Said


def way_of(key: str, *, closed: bool, parameters: Mapping[str, int] | None = None) -> Way:
    """A pattern of the library in rows, or in rounds (`closed`).

    Raises:
        InputError: no such pattern, not in rows or not in rounds, or a parameter out of range.
    """
    entry = pattern_named(key)
    text = entry.rounds if closed else entry.rows
    if text is None:
        have, lacks = ("rows", "rounds") if closed else ("rounds", "rows")
        raise InputError(f'"{key}" is worked in {have}; it has no {lacks}')
    values = {name: p.default for name, p in entry.parameters.items()}
    for name, value in (parameters or {}).items():
        known = entry.parameters.get(name)
        if known is None or not known.low <= value <= known.high:
            accepted = ", ".join(f"{n} {p.low} to {p.high}" for n, p in entry.parameters.items())
            raise InputError(
                f'{name} = {value} is not accepted by "{key}"; accepted: {accepted or "none"}'
            )
        values[name] = value
    try:
        return _library_way(text, closed, tuple(sorted(values.items())))
    except InputError as error:
        raise error.at(Place(key=f"{key}.{'rounds' if closed else 'rows'}")) from error


@cache
def _library_way(text: WayText, closed: bool, values: tuple[tuple[str, int], ...]) -> Way:
    return read_way(text, dictionary(), "us", closed=closed, values=dict(values))


def read_way(
    told: WayText,
    stitches: Mapping[str, Stitch],
    dialect: Dialect,
    *,
    closed: bool,
    values: Mapping[str, int],
) -> Way:
    """The rows of a pattern from its text.

    Raises:
        InputError: a line is not understood, or a row does not consume what the row before leaves;
            names the line, the row and the place.
    """
    multiple, offset = whole(told.multiple, values), whole(told.offset, values)
    if multiple < 1:
        raise InputError(f"a multiple of {multiple} is none; write 1 or more")
    text = _SUM.sub(lambda found: str(whole(found[1], values)), told.text)
    known = vocabulary(stitches, dialect)
    lines, colour = _lines(text, known)
    lines = _ended(lines, closed=closed)
    ways = [
        _lifted(lines, multiple * max(n, told.least) + offset, known, closed=closed)
        for n in _REPEATS
    ]
    if ways[0] != ways[1]:
        raise InputError("its rows are not the same over two repeats and over three")
    rows, side = ways[0]
    if not 0 <= told.setup < len(rows):
        raise InputError(f"{told.setup} of its {len(rows)} rows come once; one at least repeats")
    way = Way(closed, multiple, offset, rows, told.setup, told.least, side, colour)
    for repeats in (way.least, *_REPEATS):
        worked(way, way.places(repeats), way.setup + 2 * way.period, stitches)
    return way


def _lines(text: str, known: Vocabulary) -> tuple[tuple[_Line, ...], str]:
    """Each line parsed; and the colour that it begins with."""
    found: list[_Line] = []
    colour = ""
    for number, line in enumerate(text.strip().splitlines(), start=1):
        if not line.strip():
            continue
        if begun := BEGIN_COLOUR.fullmatch(line.strip()):
            colour = begun["letter"].upper()
            continue
        try:
            said = parse_row(line.strip(), known)
        except InputError as error:
            raise error.at(Place(key=f"line {number}")) from error
        if isinstance(said, SaidAgain):
            raise InputError("write the rows once, without repeating them", _place(number))
        colour = said.colour or colour
        found.append(_Line(number, said))
    if not found:
        raise InputError("it has no rows")
    return tuple(found), colour


def _ended(lines: tuple[_Line, ...], *, closed: bool) -> tuple[_Line, ...]:
    """Where no row says how it ends, rows are turned and rounds joined (common practice)."""
    if any(line.said.endings for line in lines):
        return lines
    return tuple(
        _Line(line.number, replace(line.said, endings=(_ending(line.said, closed=closed),)))
        for line in lines
    )


def _ending(said: Said, *, closed: bool) -> Ending:
    first = said.items[0]
    if not closed:
        return Ending("turn")
    if isinstance(first, SaidChain) and first.sense != "not_counted":
        return Ending("join_top", chains=first.times)
    return Ending("join_first")


def _lifted(
    lines: tuple[_Line, ...], places: int, known: Vocabulary, *, closed: bool
) -> tuple[tuple[PatternRow, ...], Side]:
    """The rows read over so many places, each with its repeat found; and the side of the first."""
    heard = Heard(plain(places), closed)
    found: list[PatternRow] = []
    side: Side = "RS"
    for line in lines:
        before = places if not heard.done else heard.done[-1].row.count
        try:
            (row, *others), heard = rows_of(line.said, heard, known)
            _check_filled(row, before, known)
        except InputError as error:
            raise error.at(_place(line.number)) from error
        side = row.side if not found else side
        found += [_lift(each, line.said) for each in (row, *others)]
    return tuple(found), side


def _lift(row: Row, said: Said) -> PatternRow:
    """A row with its repeat apart from what frames it."""
    items = [item for item in said.items if not isinstance(item, _STARTS)]
    star = next((i for i, item in enumerate(items) if isinstance(item, Starred | Each)), None)
    end = replace(row.end, fasten_off=False)
    if star is None:
        return PatternRow(row.start, row.body, (), (), end, row.backwards)
    behind = len(items) - 1 - star
    at = len(row.body) - 1 - behind
    return PatternRow(
        row.start,
        row.body[:at],
        _once(row.body[at]),
        row.body[at + 1 :],
        end,
        row.backwards,
    )


def _once(node: Node) -> tuple[Node, ...]:
    """What is worked in one repeat."""
    match node:
        case Repeat(body, _):
            return body
        case Work(stitch, _):
            return (Work(stitch),)
    raise TypeError(f"{node!r} does not repeat")


def _check_filled(row: Row, places: int, known: Vocabulary) -> None:
    took = row_consumed(row, stands_on(known.stitches))
    if took != places:
        what = "rnd" if row.end.join != "none" else "row"
        raise InputError(
            f"{what} {row.number} uses {took} places, but there are {places}: "
            + (f"{places - took} are left from place {took + 1} on" if took < places
               else f"it runs out at place {places + 1}")
        )  # fmt: skip


def _place(number: int) -> Place:
    return Place(key=f"line {number}")


_STARTS = (Across, Backwards, FromHook, NoTurningChain, SameStart)
