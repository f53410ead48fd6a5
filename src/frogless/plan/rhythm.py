"""On which rounds a section is shaped: the exact best rhythm of at most two clauses.

For a section of R rounds with a count that changes by the same step in each of T shaping rounds, every
rhythm of the trade's wording is looked at: the first shaping round, then "every q rounds" (one clause),
two such stretches one after the other (two clauses), or "alternately every q and q + 1 rounds" (read as
two). Each is measured by its greatest distance from the wanted profile and, after that, by its sum of
squares. The order in which they are compared is `choose`.

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

# Distances are compared after rounding to a ten-thousandth of a millimetre, so that two rhythms that are
# equal on paper are not told apart by the last bit of a float.
GRAIN = 4


@dataclass(frozen=True, slots=True)
class Stretch:
    """What a rhythm has to follow.

    Args:
        wanted: (R + 1,) float64, wanted girth after each round, mm; index 0 is before the first round.
        before: girth of the count at the start, mm.
        step: change of girth in one shaping round, mm, negative for decreases.
        shapings: T, shaping rounds.
        floor: (R + 1,) float64, least girth after each round, mm, hard (−inf where nothing is asked).
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


@dataclass(frozen=True, slots=True)
class Candidate:
    """A rhythm and its distance from the wanted profile (mm, mm²)."""

    rhythm: Rhythm
    stray: float
    squares: float
    fullness: float

    def key(self) -> tuple[int, float, float, float]:
        """Fewest clauses, least stray, least squares; of equals the fuller one, which is easier to wear."""
        return (self.rhythm.clause_count, self.stray, self.squares, -self.fullness)


def candidates(stretch: Stretch, every: int | None = None) -> list[Candidate]:
    """The best rhythm of each kind: no clause, one, two, alternating. Empty when none fits in or keeps the floor.

    Args:
        every: only "every `every` rounds", when the author asks for it.
    """
    if stretch.shapings == 0:
        return []
    tables = _Tables.of(stretch)
    found = []
    for pattern in _patterns(stretch, every):
        best = _best(pattern, tables)
        if best is not None:
            found.append(best)
    return _least(found)


def choose(found: Sequence[Candidate], indifference: float) -> Candidate:
    """Of all within `indifference` (mm) of the least stray: fewest clauses, least stray, least squares."""
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
class _Pattern:
    """Rhythms of one kind: shaping rounds = first + gaps, (N, T) int64, and how to name row i's clauses."""

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


def _patterns(stretch: Stretch, every: int | None) -> Iterator[_Pattern]:
    last, further = stretch.rounds, stretch.shapings - 1
    if stretch.shapings > last:
        return
    if further == 0:
        firsts = np.arange(1, last + 1, dtype=np.int64).reshape(-1, 1)
        yield _Pattern(firsts, np.zeros((last, 0), np.int64), ())
        return
    yield _sequence(last, (further,), every)
    if every is not None:
        return
    for early in range(1, further):
        yield _sequence(last, (early, further - early), None)
    if further > 2:
        yield _alternation(last, further, shorter_first=True)
        yield _alternation(last, further, shorter_first=False)


def _sequence(last: int, times: tuple[int, ...], every: int | None) -> _Pattern:
    """Every choice of first round and gaps that ends by round `last`."""
    axes = [np.arange(1, last + 1)]
    for t in times:
        widest = max(last // t, 1)
        axes.append(np.array([every]) if every is not None else np.arange(1, widest + 1))
    grid = np.meshgrid(*axes, indexing="ij")
    first, gaps = grid[0].ravel(), [g.ravel() for g in grid[1:]]
    end = first + sum(g * t for g, t in zip(gaps, times, strict=True))
    keep = end <= last
    if len(gaps) == 2:
        keep &= gaps[0] != gaps[1]
    first, gaps = first[keep], [g[keep] for g in gaps]
    steps = [np.repeat(g[:, None], t, axis=1) for g, t in zip(gaps, times, strict=True)]
    rounds = np.cumsum(np.hstack([first[:, None], *steps]), axis=1).astype(np.int64)
    return _Pattern(rounds, np.stack(gaps, axis=1).astype(np.int64), times)


def _alternation(last: int, further: int, *, shorter_first: bool) -> _Pattern:
    firsts, shorts = np.meshgrid(np.arange(1, last + 1), np.arange(1, last + 1), indexing="ij")
    first, short = firsts.ravel(), shorts.ravel()
    one, two = (short, short + 1) if shorter_first else (short + 1, short)
    gaps = np.stack([one if j % 2 == 0 else two for j in range(further)], axis=1)
    keep = first + gaps.sum(axis=1) <= last
    rounds = np.cumsum(np.hstack([first[keep][:, None], gaps[keep]]), axis=1).astype(np.int64)
    params = np.stack([one[keep], two[keep]], axis=1).astype(np.int64)
    return _Pattern(rounds, params, (further,), alternating=True)


@dataclass(frozen=True, slots=True)
class _Tables:
    """Extremes and sums of the wanted profile over every run of rounds, so that a rhythm costs T look-ups.

    lowest, highest, floor: (R + 2, R + 2) float64, over rounds a .. b − 1. sums, squares: (R + 2,) prefix
    sums.
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
        n = wanted.shape[0]
        floor = np.full(n, -np.inf) if stretch.floor is None else stretch.floor
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
    if pattern.rounds.shape[0] == 0:
        return None
    stretch, n = tables.stretch, pattern.rounds.shape[0]
    starts = np.hstack([np.zeros((n, 1), np.int64), pattern.rounds])
    ends = np.hstack([pattern.rounds, np.full((n, 1), stretch.rounds + 1)])
    girth = stretch.before + stretch.step * np.arange(stretch.shapings + 1)
    above = girth - tables.lowest[starts, ends]
    below = tables.highest[starts, ends] - girth
    keeps = (girth >= tables.floor[starts, ends] - 1e-6).all(axis=1)
    if not keeps.any():
        return None
    stray = np.round(np.maximum(above, below).max(axis=1), GRAIN)
    lengths = ends - starts
    sums = tables.sums[ends] - tables.sums[starts]
    squares = tables.squares[ends] - tables.squares[starts]
    misfit = np.round((lengths * girth**2 - 2 * girth * sums + squares).sum(axis=1), GRAIN)
    fullness = np.round((lengths * girth).sum(axis=1), GRAIN)
    i = int(np.lexsort((-fullness, misfit, stray, ~keeps))[0])
    return Candidate(pattern.rhythm(i), float(stray[i]), float(misfit[i]), float(fullness[i]))
