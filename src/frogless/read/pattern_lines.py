"""The lines of a stitch pattern, read over so many places, each with its repeat found."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from frogless.errors import Fault, InputError, Place
from frogless.read.build import BEGIN_COLOUR
from frogless.read.ground import plain
from frogless.read.parse import parse_row
from frogless.read.recover import Heard, as_earlier, check_skipped, rows_of, skipped_count
from frogless.read.spoken import (
    Across,
    Backwards,
    Each,
    Ending,
    Evenly,
    FromHook,
    Item,
    NoTurningChain,
    Older,
    Said,
    SaidAgain,
    SaidChain,
    SaidSame,
    SameStart,
    Starred,
    Unworked,
)
from frogless.read.vocabulary import Vocabulary
from frogless.rows.count import left_for_later, row_consumed
from frogless.rows.nodes import Node, Repeat, Row, Side, Work
from frogless.stitches.load import stands_on
from frogless.stitches.pattern_rows import PatternRow

#: More than a pattern has: what is longer is refused before it is read.
MOST_LINES, MOST_LETTERS = 200, 40_000

#: A last line that says which rows come again, "Rep rows 2 and 3 for pattern."
_AGAIN = re.compile(
    r"rep(?:eat)?\s+(?:rows?|rnds?|rounds?)\s+(?P<first>\d{1,4})"
    r"(?:\s*(?:and|to|[–-])\s*(?P<last>\d{1,4}))?(?:\s+for\s+(?:the\s+)?(?:pattern|patt))?\.?",
    re.IGNORECASE,
)
Told = tuple[tuple[PatternRow, ...], Side]

#: What says how a row starts, and is no node of its body.
_STARTS = (Across, Backwards, FromHook, NoTurningChain, Older, SameStart)


@dataclass(frozen=True, slots=True)
class Line:
    """A line as it was said, with its number in the text."""

    number: int
    said: Said

    @property
    def place(self) -> Place:
        """Where its faults lie."""
        return Place(key=f"line {self.number}")


@dataclass(frozen=True, slots=True)
class Lines:
    """The lines of a pattern, and the colour it begins with.

    Args:
        again: the row from which they were said to come again; None when nobody said.
    """

    lines: tuple[Line, ...]
    closed: bool
    colour: str = ""
    again: int | None = None

    def named(self, number: int) -> str:
        """A row by its number: "Row 2", "Rnd 2"."""
        return f"{'Rnd' if self.closed else 'Row'} {number}"

    def place(self, number: int) -> Place:
        """The line that tells of the row of that number."""
        for line in self.lines:
            if line.said.label.first <= number <= line.said.label.last:
                return line.place
        return Place()


def pattern_lines(text: str, known: Vocabulary, *, closed: bool) -> Lines:
    """The lines of a pattern, those that are blank left out.

    Raises:
        InputError: lines that are not understood, or that no pattern has, all told together.
    """
    if len(text) > MOST_LETTERS or text.count("\n") > MOST_LINES:
        raise InputError(
            f"it is longer than {MOST_LINES} lines or {MOST_LETTERS} letters; write each row that "
            "repeats once"
        )
    colour, found, faults = "", list[Line](), list[Fault]()
    again: int | None = None
    for number, line in enumerate(text.strip().splitlines(), start=1):
        place = Place(key=f"line {number}")
        try:
            if begun := BEGIN_COLOUR.fullmatch(line.strip()):
                colour = begun["letter"].upper()
            elif repeated := _AGAIN.fullmatch(line.strip()):
                again = _comes_again(repeated, found)
            elif line.strip():
                found.append(Line(number, _said(line.strip(), known, found, closed=closed)))
        except InputError as error:
            faults += error.at(place).faults
    if faults:
        raise InputError.of(faults)
    if not found:
        way = "Rnd 1: ..." if closed else "Row 1: ..."
        raise InputError(f'it has no rows; write each on a line of its own, "{way}"')
    first = _from_hook(found[0], known)
    told = _ended((first, *found[1:]), closed=closed)
    return Lines(told, closed, first.said.colour or colour, again)


def lifted(lines: Lines, places: int, known: Vocabulary) -> Told:
    """The rows over so many places, each with its repeat found; and the side of the first.

    Raises:
        InputError: a row leaves something open, or does not use just the places that it meets.
    """
    heard = Heard(plain(places), lines.closed)
    found: list[PatternRow] = []
    for line in lines.lines:
        rows, heard = _read(line, heard, places, lines, known)
        found += rows
    return tuple(found), heard.done[0].row.side


def check_again(lines: Lines, places: int, setup: int, known: Vocabulary) -> None:
    """Whether the rows meet what they say when they come again, and again on the other side.

    Raises:
        InputError: a row meets other places than the first time; its line, row and place are named.
    """
    heard, rows = Heard(plain(places), lines.closed), dict[int, tuple[PatternRow, ...]]()
    for line in lines.lines:
        rows[line.number], heard = _read(line, heard, places, lines, known)
    first = lines.lines[0].said.label.first + setup
    for line in [line for line in lines.lines if line.said.label.last >= first] * 2:
        try:
            again, heard = _read(_later(line, first, heard), heard, places, lines, known)
        except InputError as error:
            name = lines.named(line.said.label.first)
            told = error.faults[0].message.partition(": ")[2] or str(error)
            raise InputError(f"when {name} comes again, {told}", line.place) from error
        if again != rows[line.number][-len(again) :]:
            name = lines.named(line.said.label.first)
            raise InputError(f"{name} is not the same when it comes again", line.place)


def _later(line: Line, first: int, heard: Heard) -> Line:
    """A line as it is said of rows further on, those left out that do not come again."""
    label, number = line.said.label, heard.done[-1].row.number + 1
    begin = max(label.first, first)
    further = replace(label, first=number, last=number + label.last - begin, sides=())
    return replace(line, said=replace(line.said, label=further, colour=""))


def _read(
    line: Line, heard: Heard, places: int, lines: Lines, known: Vocabulary
) -> tuple[tuple[PatternRow, ...], Heard]:
    """The rows of a line, each with its repeat found, and what is known after them."""
    below = _left(heard, places, lines)
    try:
        rows, heard = rows_of(line.said, heard, known)
        _check_filled(rows, below, lines, known)
        return tuple(_lift(row, line.said) for row in rows), heard
    except InputError as error:
        raise _told(line, below, error, lines) from error


# Lines


def _comes_again(told: re.Match[str], found: Sequence[Line]) -> int:
    """From which row on the rows come again, up to the last."""
    first, last = int(told["first"]), int(told["last"] or told["first"])
    numbers = [number for line in found for number in _numbers(line)]
    if not numbers or not numbers[0] <= first <= last == numbers[-1]:
        raise InputError(
            "the rows that come again are the last ones"
            + (f", up to row {numbers[-1]}" if numbers else ", and stand before this line")
        )
    return first


def _numbers(line: Line) -> range:
    return range(line.said.label.first, line.said.label.last + 1)


def _said(text: str, known: Vocabulary, found: Sequence[Line], *, closed: bool) -> Said:
    said = parse_row(text, known)
    if isinstance(said, SaidSame):
        said = as_earlier(said, {n: line.said for line in found for n in _numbers(line)})
    if isinstance(said, SaidAgain):
        raise InputError("write the rows once, without repeating them")
    if said.label.kind == "foundation":
        raise InputError(
            "a pattern begins with the first row worked on it; leave the foundation out"
        )
    if said.label.kind != ("round" if closed else "row"):
        way, word = ("rounds", "Row") if closed else ("rows", "Rnd")
        raise InputError(f'it is worked in {way}, but the line begins "{word} {said.label.first}"')
    if refused := next(_no_pattern_says(said), ""):
        raise InputError(f"the rows of a pattern say nothing of {refused}; leave that out")
    return said


def _no_pattern_says(said: Said) -> Iterator[str]:
    """What rows say that are worked once, and not for any number of repeats."""
    if said.stated is not None:
        yield "counts, which are others over another number of repeats"
    if said.hook is not None:
        yield "hooks"
    if said.marked:
        yield "markers"
    if said.fasten_off or said.rejoined:
        yield "cutting and joining yarn"
    if said.short or any(isinstance(item, Unworked) and item.for_now for item in said.items):
        yield "short rows"
    if any(isinstance(item, Evenly) for item in said.items):
        yield "what is spread evenly"


def _from_hook(line: Line, known: Vocabulary) -> Line:
    """A first row that is told as worked into a foundation chain, from the hook.

    The chains that it skips are its turning chain; those that it stands on are the places.
    """
    items = line.said.items
    if not isinstance(items[0], FromHook):
        return line
    try:
        check_skipped(items[0])
        sense = "counted" if skipped_count(items[0], known) else "not_counted"
    except InputError as error:
        raise error.at(line.place) from error
    start = SaidChain(items[0].skipped, "counted" if sense == "counted" else "not_counted")
    return replace(line, said=replace(line.said, items=(start, *items[1:])))


def _ended(lines: tuple[Line, ...], *, closed: bool) -> tuple[Line, ...]:
    """Where no row says how it ends, rows are turned and rounds joined (common practice)."""
    if any(line.said.endings for line in lines):
        return lines
    ending = Ending("join" if closed else "turn")
    return tuple(replace(line, said=replace(line.said, endings=(ending,))) for line in lines)


# Rows


def _left(heard: Heard, places: int, lines: Lines) -> tuple[int, str]:
    """The places that the next row meets, and whose they are."""
    if heard.row is None:
        return places, f"there are {places} to begin on"
    return heard.row.count, f"{lines.named(heard.row.number)} leaves {heard.row.count}"


def _check_filled(
    rows: tuple[Row, ...], below: tuple[int, str], lines: Lines, known: Vocabulary
) -> None:
    places, leaves = below
    for row in rows:
        took = row_consumed(row, stands_on(known.stitches))
        if left_for_later(row.body):
            raise InputError("a pattern has no short rows; work into all places or skip them")
        if took > places:
            raise InputError(
                f"{lines.named(row.number)} uses {took} places, but {leaves}: from place "
                f"{places + 1} on there is nothing to work into"
            )
        if took < places:
            raise InputError(
                f"{lines.named(row.number)} uses {took} places, but {leaves}: from place "
                f"{took + 1} on they are neither worked into nor skipped"
            )
        places, leaves = row.count, f"{lines.named(row.number)} leaves {row.count}"


def _told(line: Line, below: tuple[int, str], error: InputError, lines: Lines) -> InputError:
    """A fault with its row named, and how many places that meets."""
    name, (_, leaves) = lines.named(line.said.label.first), below
    fault = error.faults[0]
    if fault.message.startswith(lines.named(0)[:4]):
        return InputError(fault.message, line.place)
    meets = f" ({leaves})" if "place" in fault.message else ""
    return InputError(f"{name}: {fault.message}{meets}", line.place)


def _lift(row: Row, said: Said) -> PatternRow:
    """A row with its repeat apart from what frames it."""
    items: list[Item] = [item for item in said.items if not isinstance(item, _STARTS)]
    star = next((i for i, item in enumerate(items) if isinstance(item, Starred | Each)), None)
    if star is None:
        return PatternRow(row.start, row.body, (), (), row.end, row.backwards)
    at = _repeat_at(row.body[: len(row.body) - (len(items) - 1 - star)], items[star])
    return PatternRow(
        row.start,
        row.body[:at],
        _once(row.body[at]),
        row.body[at + 1 :],
        row.end,
        row.backwards,
    )


def _repeat_at(body: tuple[Node, ...], said: Item) -> int:
    """Which node repeats, the last of those of an item; of several kinds it has others around it."""
    if not (isinstance(said, Each) and said.more):
        return len(body) - 1
    found = [index for index, node in enumerate(body) if isinstance(node, Repeat)]
    if not found:
        raise InputError("no part of it repeats over so few places")
    return found[-1]


def _once(node: Node) -> tuple[Node, ...]:
    """What is worked in one repeat."""
    match node:
        case Repeat(body, _):
            return body
        case Work(stitch, _):
            return (Work(stitch),)
    raise TypeError(f"{node!r} does not repeat")
