"""What the edges of a flat piece do, row by row: steps at once, single stitches, and how long they get.

Rows are numbered from 1 where the piece begins, odd ones on the right side. Left and right are as
seen with the right side up.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Literal

from frogless.plan.model import Rhythm
from frogless.plan.rhythm.engine import Solution, Task, solve
from frogless.plan.rhythm.spread import edge_task
from frogless.rows.spread import even_spread
from frogless.units import Measured

Hand = Literal["right", "left"]
HANDS: tuple[Hand, Hand] = ("right", "left")
MOST_IN_A_ROW = 2
"""Stitches that one edge loses or gains in one row; more are worked at once, as a step."""


HALF_A_STITCH = 0.5
"""An edge is seen as well as measured: of two lines so near each other the shorter text is taken
(own choice)."""


@dataclass(frozen=True, slots=True)
class Change:
    """What one edge does in one row.

    Args:
        once: stitches it leaves unworked for good.
        by: stitches it gains by increases, or loses by decreases (negative).
    """

    once: int = 0
    by: int = 0


STILL = Change()


@dataclass(frozen=True, slots=True)
class Leg:
    """Rows over which an edge runs straight and gains or loses so many stitches."""

    first: int
    last: int
    stitches: int


@dataclass(slots=True)
class Line:
    """An edge while it is being planned.

    Args:
        rows: what it does, by row.
        legs: its sloping parts.
    """

    rows: dict[int, Change] = field(default_factory=dict)
    legs: list[Leg] = field(default_factory=list)

    def step(self, row: int, stitches: int) -> None:
        """Leaves stitches unworked for good in a row."""
        if stitches:
            before = self.rows.get(row, STILL)
            self.rows[row] = Change(before.once + stitches, before.by)

    def slope(self, run: Run) -> None:
        """Changes stitch by stitch."""
        for row, by in run.amounts.items():
            before = self.rows.get(row, STILL)
            self.rows[row] = Change(before.once, before.by + by)
        self.legs.extend(run.legs)


@dataclass(frozen=True, slots=True)
class Run:
    """Stitches spread over rows: how many in which row, and the sloping part they make.

    Args:
        solution: the rhythm with its stray, in stitches; None when it is one after the other.
    """

    amounts: Mapping[int, int]
    legs: tuple[Leg, ...] = ()
    solution: Solution | None = None
    short: int = 0

    @property
    def rhythm(self) -> Rhythm | None:
        """Of its shaping rows."""
        return None if self.solution is None else self.solution.rhythm


def shaped_rows(first: int, last: int, which: str, shapings: int) -> tuple[int, ...]:
    """The rows that may be shaped: those on the right side, unless they are too few for "auto".

    >>> shaped_rows(2, 7, "auto", 3), shaped_rows(2, 7, "auto", 4)
    ((3, 5, 7), (2, 3, 4, 5, 6, 7))
    """
    every = tuple(range(first, last + 1))
    right_side = tuple(row for row in every if row % 2)
    if which == "any" or (which == "auto" and shapings > len(right_side)):
        return every
    return right_side


def spread_run(first: int, last: int, stitches: int, rate: str, which: str) -> Run:
    """So many stitches at one edge over rows, at most two in a row.

    Args:
        stitches: gained; below zero those that are lost.
        rate: "even" runs straight from the first row to the last, "steep" is done as soon as can be.

    Returns:
        the run; `short` says how many stitches found no row.
    """
    sign, many = (1 if stitches > 0 else -1), abs(stitches)
    if not many:
        return Run({})
    may = shaped_rows(first, last, which, many)
    room = len(may) * MOST_IN_A_ROW
    if many > room:
        return Run({}, short=many - room)
    if many >= len(may):
        each = zip(may, even_spread(many, len(may)), strict=True)
        return Run({row: sign * by for row, by in each if by}, (Leg(first, may[-1], stitches),))
    if rate == "steep":
        taken = may[:many]
        return Run(dict.fromkeys(taken, sign), (Leg(first, taken[-1], stitches),))
    found = solve(_task(first, last, many, is_every=len(may) == last - first + 1))
    if found is None:
        taken = tuple(may[i * len(may) // many] for i in range(many))
        return Run(dict.fromkeys(taken, sign), (Leg(first, last, stitches),))
    rows = tuple(first - 1 + r for r in found.rhythm.rounds)
    return Run(dict.fromkeys(rows, sign), (Leg(first, last, stitches),), found)


def _task(first: int, last: int, many: int, *, is_every: bool) -> Task:
    return edge_task(
        last - first + 1,
        many,
        right_side_only=not is_every,
        first_right_side=1 if first % 2 else 2,
        indifference=HALF_A_STITCH,
    )


def edge_length(
    line: Line, first: int, last: int, width: Measured, height: Measured, *, steps: bool = True
) -> Measured:
    """Length of an edge over rows, mm: steps flat, slopes as straight lines, the rest upright.

    Source: Pythagoras; common practice for armholes and caps.

    Args:
        steps: whether what is left unworked in these rows belongs to the edge.
    """
    legs = [leg for leg in line.legs if first <= leg.first and leg.last <= last]
    sloping = sum(leg.last - leg.first + 1 for leg in legs)
    flat = sum(c.once for r, c in line.rows.items() if first <= r <= last) if steps else 0
    upright = last - first + 1 - sloping
    return along(
        [(upright, 0), (0, flat), *((_rows(leg), leg.stitches) for leg in legs)], width, height
    )


def _rows(leg: Leg) -> int:
    return leg.last - leg.first + 1


def along(parts: Iterable[tuple[int, int]], width: Measured, height: Measured) -> Measured:
    """Length of a line of parts, each so many rows high and so many stitches wide, mm.

    The armhole of 5 stitches at once, 6 in 6 rows and 13 straight rows, at 18 and 10 in 10 cm:

    >>> round(along([(0, 5), (6, 6), (13, 0)], Measured(100 / 18), Measured(10.0)).value, 1)
    226.4
    """
    total = by_width = by_height = 0.0
    for rows, stitches in parts:
        part = math.hypot(rows * height.value, stitches * width.value)
        if part:
            total += part
            by_width += stitches**2 * width.value / part
            by_height += rows**2 * height.value / part
    off = math.hypot(by_width * width.uncertainty, by_height * height.uncertainty)
    return Measured(total, off)


def steps_of(stitches: int, number: int) -> tuple[int, ...]:
    """A shoulder in steps that differ by one at most, the larger ones at its tip.

    >>> steps_of(20, 3)
    (7, 7, 6)
    """
    return tuple(sorted(even_spread(stitches, number), reverse=True))


def side_of(row: int) -> Literal["RS", "WS"]:
    """The side that a row is worked on."""
    return "RS" if row % 2 else "WS"
