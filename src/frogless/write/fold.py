"""Lines of a written piece: rows that say the same, or that come again in turn, on one line."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import count, pairwise

from frogless.rows.nodes import Row, Side
from frogless.write.phrases import Phrases

#: Rows that come again in turn are told as such when there are no more of them than this: to work
#: from ten rows further up is to work from another page.
MOST_IN_TURN = 8
#: What is there fewer times than this is written out (common practice).
LEAST_REPEATED = 3


@dataclass(frozen=True, slots=True)
class Line:
    """One row, or several that say the same: "Rnds 2–3 (WS, RS)", its text, its count in words."""

    first_row: int
    last_row: int
    label: str
    text: str
    count: str


@dataclass(frozen=True, slots=True)
class Told:
    """A row with its words, before it is folded.

    Args:
        full: its words as they would be if all had been said before: what tells rows apart.
        colour: what it begins with.
    """

    row: Row
    text: str
    count: str
    full: str = ""
    colour: str = ""

    @property
    def work(self) -> tuple[object, ...]:
        """What it tells of, and where: the same for rows of the same work on the same side."""
        row = self.row
        told = self.full or self.text
        return told, self.count, row.side, row.section, row.hook, self.colour


def fold(told: Sequence[Told], closed: bool, phrases: Phrases) -> tuple[Line, ...]:
    """One line for each run of rows that differ in number and side alone, or that come in turn.

    Shaping rows stay apart, so that each can be ticked off; a run never goes on into another
    section.
    """
    return tuple(_lines(told, closed, phrases))


def line_of(run: Sequence[Told], closed: bool, phrases: Phrases) -> Line:
    """The line that tells of a run of rows."""
    label = _label(run, closed, phrases)
    return Line(run[0].row.number, run[-1].row.number, label, run[0].text, run[0].count)


@dataclass(frozen=True, slots=True)
class _Works:
    """Rows by what they tell of.

    Args:
        kinds: the same number for rows of the same work.
        go_on: whether each is numbered on from the row before, and has no markers.
    """

    kinds: list[int]
    go_on: list[bool]

    def come_again(self, at: int, period: int, times: int) -> bool:
        """Whether the `period` rows before come again from here on, at least so often."""
        end = at + period * times
        again = self.kinds[at:end] == self.kinds[at - period : end - period]
        return end <= len(self.kinds) and again and all(self.go_on[at:end])


def _works(told: Sequence[Told]) -> _Works:
    known: dict[tuple[object, ...], int] = {}
    kinds = [known.setdefault(one.work, len(known)) for one in told]
    numbers = [one.row.number for one in told]
    follows = (after == before + 1 for before, after in pairwise(numbers))
    plain = (not one.row.marks for one in told[1:])
    return _Works(kinds, [False, *(a and b for a, b in zip(follows, plain, strict=True))])


def _lines(told: Sequence[Told], closed: bool, phrases: Phrases) -> Iterator[Line]:
    at, works = 0, _works(told)
    while at < len(told):
        if period := _period(told, works, at):
            times = (
                next(n for n in count(LEAST_REPEATED) if not works.come_again(at, period, n)) - 1
            )
            again = told[at : at + period * times]
            yield _again(told[at - period : at], again, times, closed, phrases)
            at += len(again)
            continue
        run = [told[at]]
        while (after := at + len(run)) < len(told) and _goes_on(run, told[after]):
            if _period(told, works, after):
                break
            run.append(told[after])
        yield line_of(run, closed, phrases)
        at += len(run)


def _goes_on(run: Sequence[Told], told: Told) -> bool:
    before, row = run[-1], told.row
    alike = (before.text, before.count, before.colour) == (told.text, told.count, told.colour)
    follows = row.number == before.row.number + 1 > 1 and row.section == before.row.section
    # The sides of a run are all the same or take turns: the second row decides which.
    steady = len(run) == 1 or row.side == run[-2].row.side
    return alike and follows and steady and not row.marks


def _period(told: Sequence[Told], works: _Works, at: int) -> int:
    """How many of the rows before come again from here on, often enough to be told so; 0: none."""
    for period in range(2, min(MOST_IN_TURN, at) + 1):
        often = works.come_again(at, period, LEAST_REPEATED - 1)
        if often and _can_come_again(told[at - period : at]):
            return period
    return 0


def _can_come_again(block: Sequence[Told]) -> bool:
    """Rows without markers, on one hook and in one section, unlike, their sides steady."""
    rows = [told.row for told in block]
    one = len({(row.section, row.hook) for row in rows}) == 1
    unlike = len({told.full or told.text for told in block}) > 1
    sides = [row.side for row in rows]
    steady = len(set(sides)) == 1 or (
        len(sides) % 2 == 0 and sides == [sides[0], sides[1]] * (len(sides) // 2)
    )
    plain = not any(row.marks for row in rows) and rows[0].number > 0
    return one and unlike and steady and plain


def _again(
    block: Sequence[Told], again: Sequence[Told], times: int, closed: bool, phrases: Phrases
) -> Line:
    name = ("two" if len(block) == 2 else "many") + ("_rounds" if closed else "_rows")
    first, last = block[0].row.number, block[-1].row.number
    text = phrases.count("again", times, rows=phrases.say(name, first=first, last=last))
    label = _label(again, closed, phrases)
    return Line(again[0].row.number, again[-1].row.number, label, text, again[-1].count)


def _label(run: Sequence[Told], closed: bool, phrases: Phrases) -> str:
    first, last = run[0].row.number, run[-1].row.number
    sides = _sides([told.row.side for told in run], phrases)
    return phrases.say(_label_name(first, last, closed), first=first, last=last, side=sides)


def _label_name(first: int, last: int, closed: bool) -> str:
    if last == 0:
        return "foundation"
    return ("round" if closed else "row") + ("s" if last > first else "")


def _sides(sides: Sequence[Side], phrases: Phrases) -> str:
    if len(set(sides)) == 1:
        return sides[0]
    name = "two_sides" if len(sides) == 2 else "sides_in_turn"
    return phrases.say(name, a=sides[0], b=sides[1])
