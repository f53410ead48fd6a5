"""Profiles that rise and fall in one section: increases, then decreases, planned together.

The section is a sequence of stretches that each only widen or only narrow, each with a rhythm of
its own: "on the 2nd round, then every 3rd round 4 more times; decrease on the 20th round, then …".
The profile's turning points say how many stretches there are: those that stand out by half a step or
more, since a level in the middle of anything less strays no more than a quarter from it. At which
level it turns and on which round are left to the search: every level is tried that may lie within
the indifference of the best plan (one that turns farther from the profile strays more), and for
each the rounds of all stretches are found in one search, turns included. So the plan is exact for
that number of stretches; `bound` says how far any plan at all could better it, however often it
turned.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise, product

import numpy as np

from frogless.plan.model import Rhythm
from frogless.plan.rhythm.bound import stays_within
from frogless.plan.rhythm.engine import Search, Task
from frogless.plan.rhythm.lattice import FINE, NEVER, Floats, Ints, Lattice, fine
from frogless.plan.rhythm.squares import Way
from frogless.plan.rhythm.wording import rhythms

AROUND = 2
"""Levels on either side of the nearest one at which a turn is tried first."""

FARTHEST = 12
"""Levels at most: an indifference of more steps than that tells no plan from another (own choice)."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """A part that only widens or only narrows: its rhythm (rounds of the section), and the sign."""

    rhythm: Rhythm
    sign: int


@dataclass(frozen=True, slots=True)
class Turned:
    """The best plan of a section that turns.

    Args:
        stray, worst, worst_round, squares, tightness: as in `engine.Solution`.
        strays: for each number of clauses, those of all stretches together and one more for every
            turn, the least stray; None where there is none, or none that is of use.
        bound: what no plan betters, however often it turns.
    """

    stretches: tuple[Stretch, ...]
    stray: float
    worst: float
    worst_round: int
    squares: float
    tightness: float
    strays: tuple[float | None, ...]
    bound: float

    @property
    def clause_count(self) -> int:
        """Clauses of all stretches, and one more for every turn."""
        return sum(s.rhythm.clause_count for s in self.stretches) + len(self.stretches) - 1

    def changes(self) -> dict[int, int]:
        """Round: 1 or −1."""
        return {r: s.sign for s in self.stretches for r in s.rhythm.rounds}


def solve_turning(task: Task, net: int) -> Turned | None:
    """The best plan of a profile that may turn; None when there is none.

    Args:
        task: as for `solve`; its step is taken as the size of a change in either direction, and
            `shapings` is not looked at.
        net: how many steps higher (or lower) it ends than it begins.

    A hump of three steps in twelve rounds:

    >>> hump = [0, 10, 20, 30, 30, 30, 30, 30, 30, 20, 10, 0, 0]
    >>> found = solve_turning(Task(hump, 0.0, 10.0, 0), 0)
    >>> [(stretch.sign, stretch.rhythm.rounds) for stretch in found.stretches]
    [(1, (1, 2, 3)), (-1, (9, 10, 11))]
    """
    give = round(task.indifference * FINE)
    tried = _searched(task, net, give)
    if not tried:
        return None
    strays = np.minimum.reduce([t.strays for t in tried])
    fewest = int(np.argmax(strays <= strays[-1] + give))
    ways = [(t.path, t.way(fewest)) for t in tried if t.strays[fewest] == strays[fewest]]
    path, way = min(ways, key=lambda each: (each[1].squares, each[1].tightness))
    return _turned(task, path, way, strays)


def _searched(task: Task, net: int, give: int) -> list[_Tried]:
    """The searches of all levels that a plan within `give` of the best may turn at."""
    tried, best, around = list[_Tried](), NEVER, AROUND
    done: set[tuple[int, ...]] = set()
    while True:
        paths = set(_paths(task, net, around)) - done
        for path in sorted(paths, key=lambda p: (sum(map(abs, p)), p)):
            found = _search(task, path, best + give)
            if found is not None:
                tried.append(found)
                best = min(best, int(found.strays[-1]))
        done |= paths
        # A plan whose turn lies farther from the profile's strays more than what is asked.
        needed = around + 1 if best >= NEVER else (best + give) // round(abs(task.step) * FINE) + 1
        if needed <= around or around >= FARTHEST:
            return tried
        around = min(needed, FARTHEST)


@dataclass(frozen=True, slots=True)
class _Tried:
    """A search for one choice of levels to turn at.

    Args:
        path: levels, in steps above the start: both ends, and the turns between them.
        strays: by clauses; a turn counts as one, as it has to be told too.
    """

    path: tuple[int, ...]
    search: Search
    strays: Ints

    def way(self, clauses: int) -> Way:
        return self.search.way(clauses - len(self.path) + 2)


def turning_points(wanted: Sequence[float] | Floats, least: float) -> tuple[int, ...]:
    """Rounds on which a profile turns, those that stand out by `least` or more.

    >>> turning_points([0, 5, 9, 8, 12, 3, 4, 3], 3)
    (4,)
    """
    values = [float(v) for v in wanted]
    turns: list[int] = []
    at, way = 0, 0
    for r, value in enumerate(values):
        ahead = (value - values[at]) * (way or 1)
        if way == 0 and abs(value - values[at]) >= least:
            way, at = (1 if value > values[at] else -1), r
        elif way and ahead >= 0:
            at = r
        elif way and -ahead >= least:
            turns.append(at)
            way, at = -way, r
    return tuple(turns)


def _turns(task: Task) -> tuple[int, ...]:
    return turning_points(np.asarray(task.wanted, dtype=np.float64), abs(task.step) / 2)


def _paths(task: Task, net: int, around: int) -> Iterator[tuple[int, ...]]:
    """Levels, in steps above the start, that a plan may turn at, with both ends."""
    wanted, turns = np.asarray(task.wanted, dtype=np.float64), _turns(task)
    near = [round((float(wanted[r]) - task.before) / abs(task.step)) for r in turns]
    for shifts in product(range(-around, around + 1), repeat=len(near)):
        path = (0, *(n + s for n, s in zip(near, shifts, strict=True)), net)
        signs = [np.sign(b - a) for a, b in pairwise(path)]
        if all(signs) and all(a != b for a, b in pairwise(signs)):
            yield path
    if turns and net:
        yield (0, net)


def _search(task: Task, path: tuple[int, ...], limit: int) -> _Tried | None:
    """The search of a path; None when it is sure to stray more than the limit."""
    steps = [np.arange(a, b, 1 if b > a else -1) for a, b in pairwise(path)]
    levels = np.concatenate([*steps, [path[-1]]]) * abs(task.step) + task.before
    starts = np.cumsum([len(s) for s in steps])[:-1] + 1
    lattice = replace(
        replace(task, shapings=0).lattice(),
        levels=fine(levels),
        restarts=frozenset(int(j) for j in starts),
    )
    off = lattice.off()
    if lattice.shapings > lattice.rounds or not stays_within(lattice, off, limit):
        return None
    turns = len(path) - 2
    clauses = task.clauses + 2 * len(_turns(task)) - turns
    search = Search.of(lattice, off, clauses, round(task.indifference * FINE))
    if search is None:
        return None
    return _Tried(path, search, np.concatenate([np.full(turns, NEVER), search.strays]))


def _turned(task: Task, path: tuple[int, ...], way: Way, strays: Ints) -> Turned:
    signs = [1 if b > a else -1 for a, b in pairwise(path)]
    stretches = tuple(Stretch(r, s) for r, s in zip(rhythms(way), signs, strict=True))
    change = np.zeros(task.rounds + 1)
    for stretch in stretches:
        change[list(stretch.rhythm.rounds)] = stretch.sign
    value = task.before + abs(task.step) * np.cumsum(change)
    off = value - np.asarray(task.wanted, dtype=np.float64)
    at = int(np.abs(np.round(off, 4)).argmax())
    return Turned(
        stretches=stretches,
        stray=float(np.round(np.abs(off[at]), 4)),
        worst=float(off[at]),
        worst_round=at,
        squares=way.squares / FINE**2,
        tightness=way.tightness / FINE,
        strays=tuple(None if s >= NEVER else int(s) / FINE for s in strays),
        bound=turning_bound(task, path[-1]),
    )


def turning_bound(task: Task, net: int) -> float:
    """The least stray of any plan that changes by one step, up or down, on any allowed rounds.

    Round by round over all levels; the least gap and the wording are not asked, so it is a bound.
    """
    lattice = replace(task, shapings=0).lattice()
    reach = range(-task.rounds, task.rounds + 1)
    levels = fine(task.before + abs(task.step) * np.array(reach))
    off = Lattice(levels, lattice.wanted, lattice.low, lattice.high, lattice.allowed).off()
    reached = np.full(len(reach), NEVER, np.int64)
    reached[task.rounds] = off[task.rounds, 0]
    for r in range(1, task.rounds + 1):
        best = reached.copy()
        if lattice.allowed[r]:
            best[1:] = np.minimum(best[1:], reached[:-1])
            best[:-1] = np.minimum(best[:-1], reached[1:])
        reached = np.maximum(best, off[:, r])
    return int(reached[task.rounds + net]) / FINE
