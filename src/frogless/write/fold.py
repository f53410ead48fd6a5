"""Lines of a written piece, and rows that say the same folded into one line."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from frogless.rows.nodes import Row, Side
from frogless.write.phrases import Phrases


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
    """A row with its words, before it is folded."""

    row: Row
    text: str
    count: str


def fold(told: Sequence[Told], closed: bool, phrases: Phrases) -> tuple[Line, ...]:
    """One line for each run of rows that differ in number and side alone.

    Shaping rows stay apart, so that each can be ticked off; a run never goes on into another
    section.
    """
    runs: list[list[Told]] = []
    for each in told:
        if runs and _goes_on(runs[-1], each):
            runs[-1].append(each)
        else:
            runs.append([each])
    return tuple(line_of(run, closed, phrases) for run in runs)


def line_of(run: Sequence[Told], closed: bool, phrases: Phrases) -> Line:
    """The line that tells of a run of rows."""
    first, last = run[0].row.number, run[-1].row.number
    label = phrases.say(
        _label(first, last, closed),
        first=first,
        last=last,
        side=_sides([told.row.side for told in run], phrases),
    )
    return Line(first, last, label, run[0].text, run[0].count)


def _goes_on(run: Sequence[Told], told: Told) -> bool:
    before, row = run[-1], told.row
    alike = (before.text, before.count) == (told.text, told.count)
    follows = row.number == before.row.number + 1 > 1 and row.section == before.row.section
    # The sides of a run are all the same or take turns: the second row decides which.
    steady = len(run) == 1 or row.side == run[-2].row.side
    return alike and follows and steady and not row.marks


def _label(first: int, last: int, closed: bool) -> str:
    if last == 0:
        return "foundation"
    return ("round" if closed else "row") + ("s" if last > first else "")


def _sides(sides: Sequence[Side], phrases: Phrases) -> str:
    if len(set(sides)) == 1:
        return sides[0]
    name = "two_sides" if len(sides) == 2 else "sides_in_turn"
    return phrases.say(name, a=sides[0], b=sides[1])
