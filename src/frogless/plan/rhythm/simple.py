"""Rhythms of one clause, all of them at once: the simplest answer, and the search's first limit."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from frogless.plan.rhythm.lattice import NEVER, Ints, Lattice, over_gaps
from frogless.plan.rhythm.squares import Way


@dataclass(frozen=True, slots=True)
class Simple:
    """Every rhythm "the first on round f, then every q rounds" that fits in.

    Args:
        rounds: (N, T) int64. row: (N, 1) int64: q less the least gap.
        highest: (gaps, R + 1) int64: the highest wanted value of so many rounds before each.
        stray: (N,) int64.
    """

    lattice: Lattice
    rounds: Ints
    row: Ints
    highest: Ints
    stray: Ints

    @property
    def least(self) -> int:
        """The least stray; NEVER when there is no such rhythm."""
        return int(self.stray.min(initial=NEVER))

    def way(self) -> Way:
        """Of those with the least stray the one with the least squares, then the loosest."""
        best = np.flatnonzero(self.stray == self.least)
        rounds, lattice = self.rounds[best], self.lattice
        squares = _squares(lattice, rounds)
        below = self._below(best, rounds)
        i = int(np.lexsort((below, squares))[0])
        taken = tuple(int(r) for r in rounds[i])
        return Way(taken, ((0, 0),) * (len(taken) - 1), int(squares[i]), int(below[i]))

    def _below(self, best: Ints, rounds: Ints) -> Ints:
        """(N,) int64: the greatest distance below what is wanted."""
        wanted, levels = self.lattice.wanted, self.lattice.levels
        first = np.maximum.accumulate(wanted)[rounds[:, 0] - 1] - levels[0]
        last = np.maximum.accumulate(wanted[::-1])[::-1][rounds[:, -1]] - levels[-1]
        below = np.maximum(np.maximum(first, last), 0)
        if rounds.shape[1] > 1:
            inner = self.highest[self.row[best], rounds[:, 1:]] - levels[1:-1]
            below = np.maximum(below, inner.max(axis=1))
        found: Ints = below
        return found


def one_clause(lattice: Lattice, off: Ints) -> Simple:
    """Every f and every q that fits in: R² / 2T pairs, of T look-ups each."""
    last, further = lattice.rounds, lattice.shapings - 1
    least = lattice.least_gap
    most = min(lattice.most_gap, (last - 1) // further) if further else least
    if most < least:
        none = np.zeros((0, 1), np.int64)
        return Simple(lattice, none, none, none, np.zeros(0, np.int64))
    gap, first = np.mgrid[least : most + 1, 1 : last + 1]
    rounds = first[..., None] + gap[..., None] * np.arange(further + 1)
    fits = rounds[..., -1] <= last
    gap, rounds = gap[fits], rounds[fits]
    held = lattice.allowed[rounds].all(axis=1)
    row, rounds = gap[held][:, None] - least, rounds[held]
    stray = np.maximum(
        np.maximum.accumulate(off[0])[rounds[:, 0] - 1],
        np.maximum.accumulate(off[-1][::-1])[::-1][rounds[:, -1]],
    )
    highest = over_gaps(lattice.wanted, least, most, np.maximum, NEVER)
    if further and len(rounds):
        inner = lattice.strays_over(
            lattice.levels[1:-1], least, most, lambda table: table[row, rounds[:, 1:]]
        )
        stray = np.maximum(stray, inner.max(axis=1))
    return Simple(lattice, rounds, row, highest, stray)


def _squares(lattice: Lattice, rounds: Ints) -> Ints:
    """(N,) int64: sums of squares."""
    sums = lattice.squares()
    n, last = rounds.shape[0], lattice.rounds + 1
    begin = np.hstack([np.zeros((n, 1), np.int64), rounds])
    end = np.hstack([rounds, np.full((n, 1), last)])
    level = np.arange(lattice.shapings + 1)
    total: Ints = (sums[level, end] - sums[level, begin]).sum(axis=1)
    return total
