"""On which rounds a section is shaped: the exact best rhythm of at most two clauses.

For a section of R rounds with a count that changes by the same step in each of T shaping rounds,
every rhythm of the trade's wording is looked at: the first shaping round, then "every q rounds"
(one clause), two such stretches one after the other (two clauses), or "alternately every q and
q + 1 rounds" (read as two). Each is measured by its greatest distance from the wanted profile and,
after that, by its sum of squares. The order in which they are compared is `choose`.

The general planner (any number of clauses) takes this module's place: `candidates` is its door.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from frogless.plan.model import Clause, Rhythm

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.int64]

# Distances are compared after rounding to a ten-thousandth of a millimetre, so that two rhythms
# that are equal on paper are not told apart by the last bit of a float.
GRAIN = 4
SLACK = 10.0**-GRAIN


@dataclass(frozen=True, slots=True)
class Stretch:
    """What a rhythm has to follow.

    Args:
        wanted: (R + 1,) float64, wanted girth after each round, mm; index 0 is before the first
            round.
        before: girth of the count at the start, mm.
        step: change of girth in one shaping round, mm, negative for decreases.
        shapings: T, shaping rounds.
        floor: (R + 1,) float64, least girth after each round, mm, hard (−inf where nothing is
            asked).
    """

    wanted: Floats
    before: float
    step: float
    shapings: int
    floor: Floats | None = None

    @property
    def rounds(self) -> int:
        """R."""
        return int(self.wanted.shape[0]) - 1

    def levels(self) -> Floats:
        """(T + 1,) float64: girth after each number of shapings, mm."""
        girth: Floats = self.before + self.step * np.arange(self.shapings + 1, dtype=np.float64)
        return girth


@dataclass(frozen=True, slots=True)
class Candidate:
    """A rhythm and its distance from the wanted profile (mm, mm²).

    Args:
        tightness: greatest distance below the wanted girth, mm; 0 when it is nowhere below.
    """

    rhythm: Rhythm
    stray: float
    squares: float
    tightness: float

    def key(self) -> tuple[int, float, float, float]:
        """Fewest clauses, least stray, least squares; of equals the one that binds least."""
        return (self.rhythm.clause_count, self.stray, self.squares, self.tightness)


def candidates(stretch: Stretch, every: int | None = None) -> list[Candidate]:
    """The best rhythm of each kind that nothing with fewer clauses betters.

    Kinds: each number of shapings before the second clause begins, and each way to alternate.
    Empty when none fits in or keeps the floor.

    Args:
        every: only "every `every` rounds", when the author asks for it.
    """
    if stretch.shapings == 0 or stretch.shapings > stretch.rounds:
        return []
    tables = _Tables.of(stretch)
    simple = _best(_one_clause(stretch, every), tables)
    found = [] if simple is None else [simple]
    if every is None and stretch.shapings > 2:
        # What strays no less than the best of one clause is never taken before it nor offered.
        limit = np.inf if simple is None else simple.stray - SLACK
        windows = _Windows.of(stretch, limit)
        others = (_best(pattern, tables) for pattern in _two_clauses(stretch, windows))
        found += [c for c in others if c is not None and c.stray <= limit]
    return _least(found)


def choose(found: Sequence[Candidate], indifference: float) -> Candidate:
    """The best within `indifference` (mm) of the least stray: fewest clauses, then least stray."""
    least = min(c.stray for c in found)
    return min((c for c in found if c.stray <= least + indifference + 1e-9), key=Candidate.key)


def girths(stretch: Stretch, rounds: Iterable[int]) -> Floats:
    """(R + 1,) float64: girth after each round when shaped on `rounds`, mm."""
    marks = np.zeros(stretch.rounds + 1)
    marks[list(rounds)] = 1
    girth: Floats = stretch.before + stretch.step * np.cumsum(marks)
    return girth


def _least(found: Iterable[Candidate]) -> list[Candidate]:
    """One candidate per set of rounds, the one with the fewest clauses."""
    kept: dict[tuple[int, ...], Candidate] = {}
    for candidate in found:
        rounds = candidate.rhythm.rounds
        if rounds not in kept or candidate.key() < kept[rounds].key():
            kept[rounds] = candidate
    return sorted(kept.values(), key=Candidate.key)


@dataclass(frozen=True, slots=True)
class _Windows:
    """Between which rounds each shaping has to fall for a rhythm to stray no more than a limit.

    first, last: (T,) int64. A shaping before its window makes a girth that is too far ahead of
    every wanted girth still to come, one after it leaves too late a girth that was wanted before.
    """

    first: Ints
    last: Ints

    @classmethod
    def of(cls, stretch: Stretch, limit: float) -> _Windows:
        rounds, shapings = stretch.rounds, stretch.shapings
        if np.isinf(limit):
            return cls(np.ones(shapings, np.int64), np.full(shapings, rounds, np.int64))
        near = np.abs(stretch.levels()[:, None] - stretch.wanted[None, :]) <= limit + SLACK
        earliest = np.where(near.any(axis=1), near.argmax(axis=1), rounds + 1)
        latest = np.where(near.any(axis=1), rounds - near[:, ::-1].argmax(axis=1), -1)
        first = np.maximum(earliest[1:], 1).astype(np.int64)
        return cls(first, np.minimum(latest[:-1] + 1, rounds).astype(np.int64))

    def hold(self, shaping: int, rounds: Ints) -> npt.NDArray[np.bool_]:
        """Whether each of `rounds` lies in the window of that shaping (0 first)."""
        held: npt.NDArray[np.bool_] = (rounds >= self.first[shaping]) & (
            rounds <= self.last[shaping]
        )
        return held

    def firsts(self) -> Ints:
        """The rounds on which the first shaping may fall."""
        return np.arange(self.first[0], self.last[0] + 1, dtype=np.int64)

    def gaps(self, start: int, times: int) -> Ints:
        """Gaps that can lead, `times` over, from that shaping's window to the window they end in."""
        end = start + times
        least = -((self.last[start] - self.first[end]) // times)
        most = (self.last[end] - self.first[start]) // times
        return np.arange(max(least, 1), most + 1, dtype=np.int64)


@dataclass(frozen=True, slots=True)
class _Pattern:
    """Rhythms of one kind: shaping rounds, (N, T) int64, and how to name row i's clauses."""

    rounds: Ints
    params: Ints
    times: tuple[int, ...]
    alternating: bool = False

    def rhythm(self, i: int) -> Rhythm:
        rounds = tuple(int(r) for r in self.rounds[i])
        every = [int(q) for q in self.params[i]]
        if self.alternating:
            clauses: tuple[Clause, ...] = (Clause((every[0], every[1]), self.times[0]),)
        else:
            clauses = tuple(Clause((q,), t) for q, t in zip(every, self.times, strict=True))
        return Rhythm(rounds[0], clauses, rounds)


def _one_clause(stretch: Stretch, every: int | None) -> _Pattern:
    last, further = stretch.rounds, stretch.shapings - 1
    firsts = np.arange(1, last + 1, dtype=np.int64)
    if further == 0:
        return _Pattern(firsts[:, None], np.zeros((last, 0), np.int64), ())
    gaps = np.arange(1, last // further + 1) if every is None else np.array([every])
    first, gap = (g.ravel() for g in np.meshgrid(firsts, gaps, indexing="ij"))
    keep = first + gap * further <= last
    first, gap = first[keep], gap[keep]
    return _Pattern(
        first[:, None] + gap[:, None] * np.arange(further + 1), gap[:, None], (further,)
    )


def _two_clauses(stretch: Stretch, windows: _Windows) -> Iterator[_Pattern]:
    further = stretch.shapings - 1
    for early in range(1, further):
        yield _sequence(stretch.rounds, (early, further - early), windows)
    if further > 2:
        yield _alternation(stretch.rounds, further, windows, shorter_first=True)
        yield _alternation(stretch.rounds, further, windows, shorter_first=False)


def _sequence(last: int, times: tuple[int, int], windows: _Windows) -> _Pattern:
    """Every choice of first round and two gaps whose shapings fall into their windows."""
    axes = (windows.firsts(), windows.gaps(0, times[0]), windows.gaps(times[0], times[1]))
    first, one, two = (g.ravel() for g in np.meshgrid(*axes, indexing="ij"))
    middle = first + one * times[0]
    end = middle + two * times[1]
    keep = (end <= last) & (one != two) & windows.hold(times[0], middle) & windows.hold(-1, end)
    first, one, two = first[keep], one[keep], two[keep]
    steps = [np.repeat(g[:, None], t, axis=1) for g, t in zip((one, two), times, strict=True)]
    rounds = np.cumsum(np.hstack([first[:, None], *steps]), axis=1)
    return _Pattern(rounds, np.stack([one, two], axis=1), times)


def _alternation(last: int, further: int, windows: _Windows, *, shorter_first: bool) -> _Pattern:
    shorts = np.arange(1, last // further + 2)
    first, short = (g.ravel() for g in np.meshgrid(windows.firsts(), shorts, indexing="ij"))
    one, two = (short, short + 1) if shorter_first else (short + 1, short)
    end = first + one * ((further + 1) // 2) + two * (further // 2)
    keep = (end <= last) & windows.hold(-1, end)
    first, one, two = first[keep], one[keep], two[keep]
    gaps = [one if j % 2 == 0 else two for j in range(further)]
    rounds = np.cumsum(np.stack([first, *gaps], axis=1), axis=1)
    return _Pattern(rounds, np.stack([one, two], axis=1), (further,), alternating=True)


@dataclass(frozen=True, slots=True)
class _Tables:
    """Extremes and sums of the wanted profile over every run of rounds.

    With them a rhythm costs T look-ups. lowest, highest, floor: (R + 2, R + 2) float64, over rounds
    a .. b − 1. sums, squares: (R + 2,) prefix sums.
    """

    stretch: Stretch
    lowest: Floats
    highest: Floats
    floor: Floats
    sums: Floats
    squares: Floats

    @classmethod
    def of(cls, stretch: Stretch) -> _Tables:
        wanted = stretch.wanted
        floor = np.full(wanted.shape, -np.inf) if stretch.floor is None else stretch.floor
        sums = np.concatenate([[0.0], np.cumsum(wanted)])
        squares = np.concatenate([[0.0], np.cumsum(wanted**2)])
        highest = _highest(wanted)
        return cls(stretch, -_highest(-wanted), highest, _highest(floor), sums, squares)


def _highest(values: Floats) -> Floats:
    """(n + 1, n + 1) float64: the highest of values[a:b]; −inf where that is empty."""
    n = values.shape[0]
    highest = np.full((n + 1, n + 1), -np.inf)
    for a in range(n):
        highest[a, a + 1 :] = np.maximum.accumulate(values[a:])
    return highest


def _best(pattern: _Pattern, tables: _Tables) -> Candidate | None:
    """The rhythm of this kind with the least stray that keeps the floor."""
    n = pattern.rounds.shape[0]
    if n == 0:
        return None
    girth = tables.stretch.levels()
    starts = np.hstack([np.zeros((n, 1), np.int64), pattern.rounds])
    ends = np.hstack([pattern.rounds, np.full((n, 1), tables.stretch.rounds + 1)])
    keeps = (girth >= tables.floor[starts, ends] - 1e-6).all(axis=1)
    if not keeps.any():
        return None
    above = (girth - tables.lowest[starts, ends]).max(axis=1)
    below = (tables.highest[starts, ends] - girth).max(axis=1)
    stray = np.round(np.maximum(above, below), GRAIN)
    tightness = np.round(np.maximum(below, 0.0), GRAIN)
    misfit = np.round(_squares(girth, starts, ends, tables), GRAIN)
    i = int(np.lexsort((tightness, misfit, stray, ~keeps))[0])
    return Candidate(pattern.rhythm(i), float(stray[i]), float(misfit[i]), float(tightness[i]))


def _squares(girth: Floats, starts: Ints, ends: Ints, tables: _Tables) -> Floats:
    """(N,) float64: sum of squares of the distance from the wanted girth over all rounds, mm²."""
    sums = tables.sums[ends] - tables.sums[starts]
    squares = tables.squares[ends] - tables.squares[starts]
    total: Floats = ((ends - starts) * girth**2 - 2 * girth * sums + squares).sum(axis=1)
    return total
