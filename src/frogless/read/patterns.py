"""Stitch patterns from their text: read over a few repeats, and lifted to any number of them."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from functools import cache

from frogless.errors import Fault, InputError, Place
from frogless.read.pattern_lines import Lines, Told, check_again, lifted, pattern_lines
from frogless.read.vocabulary import Vocabulary, vocabulary
from frogless.rows.colours import changes
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect, Stitch
from frogless.stitches.parameters import filled_in
from frogless.stitches.pattern_rows import Way, multiple_of, multiples, worked
from frogless.stitches.patterns import WayText, pattern_named
from frogless.stitches.sums import whole

_SUM = re.compile(r"\{([^{}]*)\}")
_ROW = re.compile(r"(?:row|rnd) (?P<number>\d+) ")
_AT = re.compile(r"\b(?:line|place) (\d+)\b")
#: Read over so many repeats, which have to say the same.
_REPEATS = (2, 3)
#: The most places that rows are tried over, and the most that a pattern of a known multiple takes.
MOST_TRIED, MOST_PLACES = 120, 10_000
_FAR = 12


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
    values = filled_in(key, entry.parameters, parameters or {})
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
            names the line, the row and the place, and the multiple that the rows have instead.
    """
    multiple, offset = whole(told.multiple, values), whole(told.offset, values)
    if not 1 <= multiple <= MOST_PLACES or offset > MOST_PLACES:
        raise InputError(f"a multiple of {multiple} and {offset}; write 1 to {MOST_PLACES}")
    known = vocabulary(stitches, dialect)
    lines = pattern_lines(_summed(told.text, values), known, closed=closed)
    stated = Way(closed, multiple, offset, (), told.setup, told.least, colour=lines.colour)
    try:
        return _stated(lines, stated, known)
    except InputError as error:
        raise InputError(_with_found(error, lines, stated, known), error.faults[0].place) from error


def find_way(
    text: str,
    stitches: Mapping[str, Stitch],
    dialect: Dialect,
    *,
    closed: bool,
    setup: int = 0,
    values: Mapping[str, int] | None = None,
) -> Way:
    """The rows of a pattern whose multiple nobody said: it is found by trying every count.

    Args:
        setup: so many of the rows come once.

    Raises:
        InputError: a line is not understood, or the rows come out over no number of places, or not
            over numbers that are one step apart. Shown is the try that got furthest.
    """
    known = vocabulary(stitches, dialect)
    lines = pattern_lines(_summed(text, values or {}), known, closed=closed)
    return _found(lines, setup, known)


def _summed(text: str, values: Mapping[str, int]) -> str:
    return _SUM.sub(lambda found: str(whole(found[1], values)), text)


def _stated(lines: Lines, way: Way, known: Vocabulary) -> Way:
    """The rows of a pattern whose multiple was said."""
    ways = [lifted(lines, way.places(max(n, way.least)), known) for n in _REPEATS]
    if ways[0] != ways[1]:
        raise InputError("its rows are not the same over two repeats and over three")
    way = _with_rows(way, ways[0], lines)
    for repeats in (way.least, *_REPEATS):
        _check_comes_again(way, way.places(repeats), lines, known)
    _check_keeps_its_count(way, way.places(way.least), known)
    for repeats in _REPEATS:
        check_again(lines, way.places(max(repeats, way.least)), way.setup, known)
    return way


def _with_rows(way: Way, told: Told, lines: Lines) -> Way:
    rows, side = told
    if lines.again is not None:
        setup = lines.again - lines.lines[0].said.label.first
        if way.setup not in (0, setup):
            raise InputError(
                f"{way.setup} of its rows come once, but the rows from {lines.named(lines.again)} on "
                "are said to come again"
            )
        way = replace(way, setup=setup)
    told_rows = (node for row in rows for node in (*row.before, *row.repeat, *row.after))
    if not lines.colour and (met := next(changes(told_rows), None)):
        raise InputError(
            f"its rows change to color {met.colour}, and it is not said in which they begin; write "
            '"Begin with color A." before the first'
        )
    if not 0 <= way.setup < len(rows):
        raise InputError(f"{way.setup} of its {len(rows)} rows come once; one at least repeats")
    return replace(way, rows=rows, side=side)


def _check_comes_again(way: Way, places: int, lines: Lines, known: Vocabulary) -> None:
    """Whether the rows come out over and over."""
    try:
        worked(way, places, way.setup + 2 * way.period, known.stitches)
    except InputError as error:
        row = _ROW.match(str(error))
        number = lines.lines[0].said.label.first - 1 + int(row["number"] if row else 1)
        message = (
            f"over {places} sts, when {lines.named(number)} comes again it {str(error)[row.end() :]}"
            if row
            else str(error)
        )
        raise InputError(message, lines.place(number)) from error


def _found(lines: Lines, setup: int, known: Vocabulary) -> Way:
    """The pattern over as many places as its rows come out over, found count by count."""
    came: list[int] = []
    failed: dict[int, Fault] = {}
    before: Told | None = None
    for places in range(1, MOST_TRIED + 1):
        try:
            told = lifted(lines, places, known)
        except InputError as error:
            failed[places] = error.faults[0]
            continue
        if told == before:
            return _of_count(places, told, lines, setup, known)
        before = told
        came.append(places)
    if len(came) > 1:
        raise InputError(f"its rows are not the same over {came[-2]} sts and over {came[-1]}")
    if came:
        raise InputError(_fits(tuple(came)))
    furthest = max(failed, key=lambda places: (_reached(failed[places]), -places))
    fault = failed[furthest]
    raise InputError(
        f"over no number of sts from 1 to {MOST_TRIED} do the rows come out; over {furthest}, "
        f"which gets furthest: {fault.message}",
        fault.place,
    )


def _reached(fault: Fault) -> tuple[int, ...]:
    """The line, and the place in it, that a fault lies at; a place far out says no more.

    A fault at no place, as in how a row ends, is met when all its places have come out.
    """
    found = [int(n) for n in _AT.findall(f"{fault.place.key} {fault.message}")[:2]]
    return (*found[:1], *(min(place, _FAR) for place in found[1:] or (_FAR,)))


def _of_count(places: int, told: Told, lines: Lines, setup: int, known: Vocabulary) -> Way:
    """The pattern whose rows come out over a count, over all that they come out over."""
    way = _with_rows(Way(lines.closed, 1, 0, (), setup, colour=lines.colour), told, lines)
    counts = multiples(way, known.stitches, MOST_TRIED)
    if not counts:
        _check_comes_again(way, places, lines, known)
    steps = multiple_of(counts)
    if steps is None:
        raise InputError(_fits(counts))
    multiple, offset, least = steps
    _check_keeps_its_count(way, counts[0], known)
    check_again(lines, places, way.setup, known)
    return replace(way, multiple=multiple, offset=offset, least=least)


def _check_keeps_its_count(way: Way, places: int, known: Vocabulary) -> None:
    """Whether the rows that come again leave as many places as they met."""
    rows = worked(way, places, len(way.rows), known.stitches)
    met = rows[way.setup - 1].count if way.setup else places
    if rows[-1].count != met:
        raise InputError(
            f"the rows that come again leave {rows[-1].count} sts where they began on {met}; the "
            "rows of a pattern leave as many as they met"
        )


def _fits(counts: tuple[int, ...]) -> str:
    listed = ", ".join(map(str, counts[:6])) + (", ..." if len(counts) > 6 else "")
    return (
        f"the rows come out over {listed} sts, which is no multiple; mark what repeats along the "
        'row, "*...; rep from * across"'
    )


def _with_found(error: InputError, lines: Lines, stated: Way, known: Vocabulary) -> str:
    """A fault, and the multiple that the rows come out over, if there is another."""
    message = error.faults[0].message
    try:
        way = _found(lines, stated.setup, known)
    except InputError:
        return message
    if (way.multiple, way.offset) == (stated.multiple, stated.offset):
        return message
    plus = f" and {way.offset}" if way.offset else ""
    return f"{message}; the rows come out over a multiple of {way.multiple}{plus}"
