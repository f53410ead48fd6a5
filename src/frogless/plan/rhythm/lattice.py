"""Rounds × levels: what a rhythm may do, and what each way costs, as whole numbers.

Everything here is counted in ten-thousandths of a unit (of a millimetre, when a task is in mm), as
int64, so that "equal" means equal, a comparison never hangs on the last bit of a float, and a
constraint solver that knows only whole numbers can be asked the very same question.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.int64]
Bools = npt.NDArray[np.bool_]

FINE = 10_000
"""Parts of a unit."""

NEVER = 2**61
"""The cost of what may not be, and twice as much still fits into an int64."""

FARTHEST = 5 * 10**7
"""All that is further off than this (5 m) is equally far, so that 400 squares can be summed."""


def fine(values: npt.ArrayLike) -> Ints:
    """Values in parts; infinite ones stand at ± NEVER."""
    scaled = np.clip(np.asarray(values, dtype=np.float64) * FINE, -NEVER, NEVER)
    return np.rint(scaled).astype(np.int64)


@dataclass(frozen=True, slots=True)
class Lattice:
    """Levels to be taken one after the other, and the rounds over which this is done.

    Args:
        levels: (T + 1,) int64: the value before the first shaping and after each.
        wanted: (R + 1,) int64: the value wanted after each round; index 0 before the first.
        low, high: (R + 1,) int64: hard bounds of the value after each round.
        allowed: (R + 1,) bool: rounds that may be shaped (0 never is).
        least_gap, most_gap: rounds from one shaping round to the next.
        pair: "alternately every q and q + pair rounds".
        restarts: shapings (counted from 1) that begin a rhythm of their own.
    """

    levels: Ints
    wanted: Ints
    low: Ints
    high: Ints
    allowed: Bools
    least_gap: int = 1
    most_gap: int = 10**6
    pair: int = 1
    restarts: frozenset[int] = field(default=frozenset())

    @property
    def rounds(self) -> int:
        """R."""
        return int(self.wanted.shape[0]) - 1

    @property
    def shapings(self) -> int:
        """T."""
        return int(self.levels.shape[0]) - 1

    def off(self) -> Ints:
        """(T + 1, R + 1) int64: how far each level lies off after each round, NEVER out of bounds."""
        level = self.levels[:, None]
        held = (level >= self.low) & (level <= self.high)
        off = np.minimum(np.abs(level - self.wanted), FARTHEST)
        cells: Ints = np.where(held, off, NEVER)
        return cells

    def squares(self) -> Ints:
        """(T + 1, R + 2) int64: for each level the sum of its squares over the rounds before."""
        off = np.minimum(np.abs(self.levels[:, None] - self.wanted), FARTHEST)
        sums = np.zeros((off.shape[0], off.shape[1] + 1), np.int64)
        np.cumsum(off * off, axis=1, out=sums[:, 1:])
        return sums

    def strays_over(self, level: Ints, least: int, most: int, pick: Callable[[Ints], Ints]) -> Ints:
        """How far a level strays over the rounds of a gap, NEVER out of bounds.

        Args:
            pick: takes what is wanted out of a table of (gap, round), as from `over_gaps`.
        """

        def over(values: Ints, way: np.ufunc, empty: int) -> Ints:
            return pick(over_gaps(values, least, most, way, empty))

        highest = over(self.wanted, np.maximum, NEVER)
        lowest = over(self.wanted, np.minimum, -NEVER)
        stray: Ints = np.maximum(highest - level, level - lowest)
        np.minimum(stray, np.where(stray >= NEVER // 2, NEVER, FARTHEST), out=stray)
        if self.low.max() > -NEVER:
            stray[level < over(self.low, np.maximum, NEVER)] = NEVER
        if self.high.min() < NEVER:
            stray[level > over(self.high, np.minimum, -NEVER)] = NEVER
        return stray


@dataclass(frozen=True, slots=True)
class Windows:
    """Between which rounds each shaping falls in any rhythm that strays no more than a limit.

    Args:
        first, last: (T,) int64.
        may: (T, R + 1) bool: whether it may fall on a round.
    """

    first: Ints
    last: Ints
    may: Bools

    @property
    def are_open(self) -> bool:
        """Whether every shaping has a round to fall on."""
        return bool((self.first <= self.last).all())

    def span(self, skipped: frozenset[int]) -> tuple[int, int]:
        """The least and the greatest gap between two shapings of one rhythm."""
        inside = [j for j in range(1, self.first.shape[0]) if j + 1 not in skipped]
        if not inside:
            return 1, 0
        at = np.array(inside)
        most = (self.last[at] - self.first[at - 1]).max()
        least = (self.first[at] - self.last[at - 1]).min()
        return int(max(least, 1)), int(most)


def windows(lattice: Lattice, off: Ints, limit: int) -> Windows:
    """The windows for a limit: every level is within it from its own shaping to the next.

    A shaping on round r leaves one level after round r − 1 and takes up the next after round r.
    """
    near = off <= limit
    may = np.zeros(near[1:].shape, np.bool_)
    may[:, 1:] = near[1:, 1:] & near[:-1, :-1] & lattice.allowed[1:]
    last = lattice.rounds
    count = np.arange(lattice.shapings) * lattice.least_gap
    earliest = np.where(may.any(axis=1), may.argmax(axis=1), last + 1)
    latest = np.where(may.any(axis=1), last - may[:, ::-1].argmax(axis=1), -1)
    first = np.maximum.accumulate(earliest - count) + count
    final = np.minimum.accumulate((latest - count)[::-1])[::-1] + count
    return Windows(first.astype(np.int64), final.astype(np.int64), may)


def over_gaps(values: Ints, least: int, most: int, over: np.ufunc, empty: int) -> Ints:
    """(most − least + 1, n) int64: `over` of values[r − gap : r] for each gap and r.

    `empty` where r < gap. Values are (R + 1,), and r runs over 0 … R.
    """
    n = values.shape[0]
    table = np.full((most, n), empty, np.int64)
    table[0, 1:] = values[:-1]
    for gap in range(2, min(most, n - 1) + 1):
        over(table[gap - 2, gap:], values[: n - gap], out=table[gap - 1, gap:])
    return table[least - 1 :]
