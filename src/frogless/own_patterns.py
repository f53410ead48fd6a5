"""The stitch patterns that a design may use, made into rows: its own, and those of the program."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from functools import cache

from frogless.design.document import Design
from frogless.design.formulas import Where
from frogless.design.patterns import OwnPattern, OwnRow
from frogless.errors import Fault, InputError, Place, near_names
from frogless.plan.patterns import Library, Pattern
from frogless.read.patterns import find_way, read_way, way_of
from frogless.rows.nodes import End, Start
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.stitches.node_data import read_nodes
from frogless.stitches.parameters import filled_in, usual
from frogless.stitches.pattern_rows import PatternRow, Way, multiple_of, multiples, worked
from frogless.stitches.patterns import WayText, pattern_named, patterns
from frogless.stitches.sums import whole

_LINE = re.compile(r"line (\d+)")
_ROW = re.compile(r"(?:row|rnd) (\d+) ")
#: Read over so many repeats.
_REPEATS = (2, 3)
MOST_TRIED = 24


def library_of(design: Design, where: Where) -> Library:
    """Where a design's patterns are found; every pattern of its own is read, used or not.

    Args:
        where: the place of a key of the design file.

    Raises:
        InputError: a pattern of its own is not understood, or a row of it does not consume what the
            row before leaves; names file, line, row and place. All such patterns are told together.
    """
    faults: list[Fault] = []
    for key, own in design.pattern.items():
        if told := list(_amiss(key, own, where)):
            faults.extend(told)
            continue
        for closed in _ways(own):
            try:
                _own(key, own, closed, usual(own.parameters), where)
            except InputError as error:
                faults.extend(error.faults)
    if faults:
        raise InputError.of(faults)

    def find(key: str, closed: bool, parameters: Mapping[str, int]) -> Pattern:
        if key not in design.pattern:
            return _of_library(key, closed, parameters, tuple(design.pattern))
        own = design.pattern[key]
        values = filled_in(key, own.parameters, parameters)
        found = _own(key, own, closed, values, where)
        return Pattern(key, found, values, usual(own.parameters), {"us": own.name, "uk": own.name})

    return Library(find, (*design.pattern, *patterns()))


def _amiss(key: str, own: OwnPattern, where: Where) -> Iterator[Fault]:
    """What is wrong with a pattern before its rows are read."""
    at = f"pattern.{key}"
    if key in patterns():
        told = "is the key of a pattern of the library, whose gauge it would take; write another"
        yield Fault(told, where(at))
    if not any(_has(own, closed=closed) for closed in (False, True)):
        told = 'has neither "rows" nor "rounds"; write one of them, or tables "row" or "round"'
        yield Fault(told, where(at))
    for text, data in (("rows", "row"), ("rounds", "round")):
        if getattr(own, text) and getattr(own, data):
            told = f'stands as text in "{text}" and as data in "{data}"; leave one of them out'
            yield Fault(told, where(f"{at}.{data}"))
    for name, number in own.parameters.items():
        if not number.low <= number.default <= number.high:
            told = (
                f"goes from {number.low} to {number.high}, and its default is {number.default}; "
                "low, default and high have to stand in this order"
            )
            yield Fault(told, where(f"{at}.parameters.{name}"))


def _of_library(
    key: str, closed: bool, parameters: Mapping[str, int], own: tuple[str, ...]
) -> Pattern:
    if key not in patterns():
        raise InputError(f'unknown stitch pattern "{key}"{near_names(key, (*own, *patterns()))}')
    entry = pattern_named(key)
    way = way_of(key, closed=closed, parameters=parameters)
    known = entry.parameters
    values = filled_in(key, known, parameters)
    return Pattern(key, way, values, usual(known), entry.names)


def _has(own: OwnPattern, *, closed: bool) -> bool:
    return bool((own.rounds or own.round) if closed else (own.rows or own.row))


def _ways(own: OwnPattern) -> Iterator[bool]:
    return (closed for closed in (False, True) if _has(own, closed=closed))


def _own(key: str, own: OwnPattern, closed: bool, values: Mapping[str, int], where: Where) -> Way:
    if not _has(own, closed=closed):
        have, lacks = ("rows", "rounds") if closed else ("rounds", "rows")
        raise InputError(f'"{key}" is worked in {have}; it has no {lacks}')
    text = own.rounds if closed else own.rows
    if text is None:
        return _of_data(key, own, closed, values, where)
    place = where(f"pattern.{key}.{'rounds' if closed else 'rows'}")
    multiple = "" if own.multiple is None else own.multiple
    told = WayText(text, multiple, 0 if closed else own.offset, own.setup, own.least)
    try:
        return _read(told, own.terms, closed, tuple(sorted(values.items())))
    except InputError as error:
        raise InputError.of([_placed(fault, place, text) for fault in error.faults]) from None


@cache
def _read(
    told: WayText, dialect: Dialect, closed: bool, numbers: tuple[tuple[str, int], ...]
) -> Way:
    """The rows of a text, read once for however many bodies; a multiple that is not said is found."""
    values = dict(numbers)
    if told.multiple == "":
        return find_way(
            told.text, dictionary(), dialect, closed=closed, setup=told.setup, values=values
        )
    return read_way(told, dictionary(), dialect, closed=closed, values=values)


def _placed(fault: Fault, place: Place, text: str) -> Fault:
    """A fault in a line of the text, at the line of the file that it stands on."""
    line = _LINE.fullmatch(fault.place.key)
    if line is None or place.line is None:
        return Fault(fault.message, place)
    blank = len(text) - len(text.lstrip())
    within = text[:blank].count("\n") + int(line[1]) if "\n" in text.strip() else 0
    return Fault(fault.message, replace(place, line=place.line + within))


def _of_data(
    key: str, own: OwnPattern, closed: bool, values: Mapping[str, int], where: Where
) -> Way:
    name = f"pattern.{key}.{'round' if closed else 'row'}"
    rows = []
    for number, one in enumerate(own.round if closed else own.row, 1):
        try:
            rows.append(_row(one, values, closed=closed))
        except InputError as error:
            raise error.at(where(f"{name}.{number}")) from None
    if own.setup >= len(rows):
        raise InputError(
            f"{own.setup} of its {len(rows)} rows come once; one at least repeats",
            where(f"pattern.{key}.setup"),
        )
    way = Way(closed, 1, 0, tuple(rows), own.setup, own.least)
    try:
        way = _counted(own, way, values)
        for repeats in (way.least, *_REPEATS):
            made = worked(way, way.places(repeats), way.setup + 2 * way.period, dictionary())
            _check_keeps(way, way.places(repeats), [row.count for row in made])
    except InputError as error:
        told = _ROW.match(str(error))
        raise error.at(where(f"{name}.{told[1]}" if told else name)) from None
    return way


def _check_keeps(way: Way, places: int, counts: Sequence[int]) -> None:
    """The rows that come again leave as many places as they met."""
    met, left = (places, *counts)[way.setup], counts[way.setup + way.period - 1]
    if met != left:
        raise InputError(
            f"over {met} places its {way.period} rows leave {left}, so that they do not come again"
        )


def _counted(own: OwnPattern, way: Way, values: Mapping[str, int]) -> Way:
    """The rows with their multiple: as it is said, else found by trying every count."""
    if own.multiple is not None:
        multiple = whole(own.multiple, values)
        if multiple < 1:
            raise InputError(f"a multiple of {multiple} is none; write 1 or more")
        return replace(
            way, multiple=multiple, offset=0 if way.closed else whole(own.offset, values)
        )
    found = multiple_of(multiples(way, dictionary()))
    if found is None:
        for places in range(1, MOST_TRIED):  # the fault of some count that is near to a fit
            worked(way, places, way.setup + 2 * way.period, dictionary())
        raise InputError("its rows come out over no counts that are one step apart")
    multiple, offset, least = found
    return replace(way, multiple=multiple, offset=offset, least=max(least, own.least))


def _row(one: OwnRow, values: Mapping[str, int], *, closed: bool) -> PatternRow:
    known = dictionary()
    before, repeat, after = (
        read_nodes(nodes, values, known) for nodes in (one.before, one.repeat, one.after)
    )
    turn = not closed if one.turn is None else one.turn
    start = Start(one.turning_chain, one.turning_chain_counts and one.turning_chain > 0)
    usual_join = "top of chain" if start.counts else "first stitch"
    at_top = (one.join or usual_join) == "top of chain"
    join = ("chain_top" if at_top else "first_stitch") if closed else "none"
    return PatternRow(start, before, repeat, after, End(join, turn))  # type: ignore[arg-type]
