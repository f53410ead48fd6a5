"""On which rounds a count changes: the exact best rhythm of at most so many clauses.

A rhythm is worded as the trade does: the first shaping round, then clauses: "every q rounds, t more
times", or "alternately every q and q + 1 rounds", which counts as two. Of all rhythms whose greatest
stray from the wanted profile lies within the *indifference* of the least one, `solve` gives the one
with the fewest clauses; among these the least stray, then the least sum of squares, then the one
that binds least. It is exact: see `search` for how, `bound` for what no rhythm betters.

Nothing here knows what is shaped: a value that changes by a step on some of R rounds (or rows) has
to follow a profile. Values may be girths or widths in mm, or stitches.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import lru_cache

import numpy as np
import numpy.typing as npt

from frogless.plan.model import Rhythm
from frogless.plan.rhythm import squares
from frogless.plan.rhythm.bound import least_of_any, stays_within
from frogless.plan.rhythm.lattice import (
    FINE,
    NEVER,
    Bools,
    Floats,
    Ints,
    Lattice,
    fine,
    windows,
)
from frogless.plan.rhythm.links import links
from frogless.plan.rhythm.search import least_strays
from frogless.plan.rhythm.simple import one_clause
from frogless.plan.rhythm.wording import rhythms

KEPT = 512
"""Tasks whose answers are remembered: an edit of one section leaves the others what they were."""

CLAUSES = 3
"""Clauses that a rhythm may have unless a design says otherwise: more are hard to keep in mind."""


@dataclass(frozen=True, slots=True)
class Task:
    """What a rhythm has to follow, and what it has to keep.

    Rounds are counted from 1; arrays of R + 1 values have index 0 for the state before round 1.

    Args:
        wanted: (R + 1,) the value wanted after each round.
        before: the value at the start.
        step: what one shaping changes it by; below zero where it narrows.
        shapings: T, how often it is shaped.
        indifference: strays so near to the least one are as good, in the values' unit.
        clauses: the most clauses there may be, 1 or more.
        allowed: (R + 1,) whether a round may be shaped; None for all. For "right side only"
            `on_right_side(R)`.
        forbidden: rounds that may not be shaped on top of this (a seam, a placket, a motif).
        least_gap: rounds from one shaping round to the next, at least.
        every: just so many rounds from one to the next, when an author asks for it.
        floor, ceiling: (R + 1,) hard bounds of the value after each round; ± inf where there is
            none.
        pair: rounds by which the two gaps of an alternation differ; 2 for right-side rows.
    """

    wanted: npt.ArrayLike
    before: float
    step: float
    shapings: int
    indifference: float = 0.0
    clauses: int = CLAUSES
    allowed: npt.ArrayLike | None = None
    forbidden: Sequence[int] = ()
    least_gap: int = 1
    every: int | None = None
    floor: npt.ArrayLike | None = None
    ceiling: npt.ArrayLike | None = None
    pair: int = 1

    @property
    def settled(self) -> Settled:
        """The same in values that can be compared."""
        return Settled(
            (
                *map(_settled, (self.wanted, self.floor, self.ceiling, self.allowed)),
                self.before,
                self.step,
                self.shapings,
                self.indifference,
                self.clauses,
                tuple(self.forbidden),
                self.least_gap,
                self.every,
                self.pair,
            ),
            self,
        )

    @property
    def rounds(self) -> int:
        """R."""
        return int(np.asarray(self.wanted).shape[0]) - 1

    @property
    def most_clauses(self) -> int:
        """Clauses that there may be: one, when it is to be just every so many rounds."""
        return self.clauses if self.every is None else 1

    def values(self, rounds: Sequence[int]) -> Floats:
        """(R + 1,) float64: the value after each round when shaped on `rounds`."""
        marks = np.zeros(self.rounds + 1)
        marks[list(rounds)] = 1
        value: Floats = self.before + self.step * np.cumsum(marks)
        return value

    def may_shape(self) -> Bools:
        """(R + 1,) bool: rounds that may be shaped."""
        n = self.rounds + 1
        may = np.ones(n, np.bool_) if self.allowed is None else np.array(self.allowed, np.bool_)
        may[0] = False
        may[[r for r in self.forbidden if 0 <= r < n]] = False
        return may

    def lattice(self) -> Lattice:
        """The same in whole numbers."""
        n = self.rounds + 1
        levels = self.before + self.step * np.arange(self.shapings + 1, dtype=np.float64)
        return Lattice(
            levels=fine(levels),
            wanted=fine(self.wanted),
            low=fine(np.full(n, -np.inf) if self.floor is None else self.floor),
            high=fine(np.full(n, np.inf) if self.ceiling is None else self.ceiling),
            allowed=self.may_shape(),
            least_gap=self.least_gap if self.every is None else max(self.every, self.least_gap),
            most_gap=self.every or 10**6,
            pair=self.pair,
        )


@dataclass(frozen=True, slots=True)
class Settled:
    """A task that is known by its values, its arrays among them: what answers are remembered by."""

    values: tuple[object, ...]
    task: Task = field(compare=False)


def _settled(values: npt.ArrayLike | None) -> bytes | None:
    return None if values is None else np.asarray(values, np.float64).tobytes()


def on_right_side(rounds: int, first: int = 1) -> Bools:
    """(R + 1,) bool: every other row, from `first` on.

    >>> [int(r) for r in np.flatnonzero(on_right_side(7))]
    [1, 3, 5, 7]
    """
    rows = np.arange(rounds + 1)
    may: Bools = (rows >= first) & ((rows - first) % 2 == 0)
    return may


@dataclass(frozen=True, slots=True)
class Solution:
    """The best rhythm, and how far it strays.

    Args:
        stray: greatest distance from the wanted profile.
        worst: the same with its sign, below zero where there is less than wanted; worst_round:
            after which round that is.
        squares: sum of squares of the distances after each round, the start included.
        tightness: greatest distance below the wanted profile; 0 when it is nowhere below.
    """

    rhythm: Rhythm
    stray: float
    worst: float
    worst_round: int
    squares: float
    tightness: float

    def key(self) -> tuple[int, float, float, float]:
        """Fewest clauses, least stray, least squares; of equals the one that binds least."""
        return (self.rhythm.clause_count, self.stray, self.squares, self.tightness)


def solve(task: Task) -> Solution | None:
    """The best rhythm; None when there is none, and then `conflict.explain` says why.

    84 to 116 cm in 20 rounds, from 152 to 208 stitches of 100 / 18 mm at eight shaping points:

    >>> width = 100 / 18
    >>> task = Task(np.linspace(840, 1160, 21), 152 * width, 8 * width, 7, indifference=20)
    >>> found = solve(task)
    >>> found.rhythm.rounds
    (1, 4, 7, 10, 13, 16, 19)
    >>> [(clause.every, clause.times) for clause in found.rhythm.clauses]
    [((3,), 6)]
    >>> round(found.stray, 1), [round(one.stray, 1) for one in runners(task)]
    (32.9, [32.9, 27.6, 22.2])
    """
    return _solve(task.settled)


@lru_cache(maxsize=KEPT)
def _solve(settled: Settled) -> Solution | None:
    task = settled.task
    if not 0 < task.shapings <= task.rounds:
        return None
    lattice = task.lattice()
    off, give = lattice.off(), round(task.indifference * FINE)
    simple = one_clause(lattice, off)
    if simple.least < NEVER and not _is_bettered(task, lattice, off, simple.least - give - 1):
        return _solution(task, simple.way())
    search = Search.of(lattice, off, task.most_clauses, give, simple.least)
    return None if search is None else _solution(task, search.way(search.fewest))


def _is_bettered(task: Task, lattice: Lattice, off: Ints, limit: int) -> bool:
    """Whether more clauses could be worth it: any shaping rounds at all stay within the limit."""
    return task.most_clauses > 1 and stays_within(lattice, off, limit)


def runners(task: Task) -> tuple[Solution, ...]:
    """The best rhythm of each number of clauses that strays less than all with fewer."""
    return _runners(task.settled)


@lru_cache(maxsize=KEPT)
def _runners(settled: Settled) -> tuple[Solution, ...]:
    task, search = settled.task, search_of(settled.task)
    return () if search is None else tuple(_solution(task, search.way(c)) for c in search.steps())


def bound(task: Task) -> float | None:
    """The least stray of any shaping rounds that keep the same, worded or not: a proven bound."""
    return _bound(task.settled)


@lru_cache(maxsize=KEPT)
def _bound(settled: Settled) -> float | None:
    task = settled.task
    if not 0 < task.shapings <= task.rounds:
        return None
    lattice = task.lattice()
    least = least_of_any(lattice, lattice.off())
    return None if least >= NEVER else least / FINE


def search_of(task: Task) -> Search | None:
    """The search of a task; None when there is nothing to be found."""
    if not 0 < task.shapings <= task.rounds:
        return None
    lattice = task.lattice()
    off = lattice.off()
    simple = one_clause(lattice, off).least
    return Search.of(lattice, off, task.most_clauses, round(task.indifference * FINE), simple)


@dataclass(frozen=True, slots=True)
class Search:
    """A lattice with the least stray of each number of clauses.

    Args:
        off: what `lattice.off()` gives.
        strays: (C + 1,) int64, NEVER where there is no rhythm, or none near enough to be of use.
        fewest: the fewest clauses with which a stray within the indifference of the least is had.
    """

    lattice: Lattice
    off: Ints
    strays: Ints
    fewest: int

    @classmethod
    def of(
        cls, lattice: Lattice, off: Ints, clauses: int, indifference: int, simple: int = NEVER
    ) -> Search | None:
        """None when there is no rhythm of at most so many clauses.

        Args:
            simple: the least stray of one clause, when there is such a rhythm.
        """
        strays = _strays(lattice, off, clauses, indifference, simple)
        if strays[-1] >= NEVER:
            return None
        return cls(lattice, off, strays, _fewest(strays, indifference))

    def steps(self) -> list[int]:
        """Numbers of clauses that stray less than all smaller ones."""
        before = np.concatenate([[NEVER], self.strays[:-1]])
        return [int(c) for c in np.flatnonzero(self.strays < before)]

    def way(self, clauses: int) -> squares.Way:
        """The best way with at most so many clauses."""
        limit = int(self.strays[clauses])
        open_ = windows(self.lattice, self.off, limit)
        return squares.least_squares(links(self.lattice, open_, self.off, limit), clauses)


def _fewest(strays: Ints, indifference: int) -> int:
    return int(np.argmax(strays <= strays[-1] + indifference))


def _strays(lattice: Lattice, off: Ints, clauses: int, indifference: int, simple: int) -> Ints:
    """(C + 1,) int64: the least stray with at most so many clauses, NEVER where none is."""
    if simple < NEVER:
        return _within(lattice, off, simple, clauses)
    # No rhythm of one clause gives a limit: it is doubled until the best one has been found and
    # the one with a clause fewer, or nothing is left out any more.
    greatest = int(off[off < NEVER].max(initial=0))
    limit = max(least_of_any(lattice, off), 1)
    while limit < NEVER:
        limit = min(limit * 2, greatest)
        found = _within(lattice, off, limit, clauses)
        if limit == greatest or _is_enough(found, limit, indifference):
            return found
    return np.full(clauses + 1, NEVER, np.int64)


def _is_enough(found: Ints, limit: int, indifference: int) -> bool:
    if found[-1] + indifference > limit:
        return False
    fewer = _fewest(found, indifference) - 1
    return fewer < 1 or bool(found[fewer] < NEVER)


def _within(lattice: Lattice, off: Ints, limit: int, clauses: int) -> Ints:
    """The strays up to a limit; NEVER where a number of clauses has none."""
    open_ = windows(lattice, off, limit)
    if not open_.are_open:
        return np.full(clauses + 1, NEVER, np.int64)
    return least_strays(links(lattice, open_, off, limit), clauses)


def _solution(task: Task, way: squares.Way) -> Solution:
    (rhythm,) = rhythms(way)
    off = task.values(rhythm.rounds) - np.asarray(task.wanted, dtype=np.float64)
    at = int(np.abs(np.round(off, 4)).argmax())
    return Solution(
        rhythm=rhythm,
        stray=float(np.abs(np.round(off[at], 4))),
        worst=float(off[at]),
        worst_round=at,
        squares=way.squares / FINE**2,
        tightness=way.tightness / FINE,
    )
