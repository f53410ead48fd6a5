"""Rhythms of one clause, all of them at once: they give the search its first limit."""

from __future__ import annotations

import numpy as np

from frogless.plan.rhythm.lattice import NEVER, Ints, Lattice, over_gaps


def one_clause(lattice: Lattice, off: Ints) -> int:
    """The least stray of "the first on round f, then every q rounds"; NEVER if there is none.

    Every f and every q that fits in is looked at: R² / 2T pairs of T look-ups each.
    """
    last, further = lattice.rounds, lattice.shapings - 1
    before = np.maximum.accumulate(off[0])
    after = np.maximum.accumulate(off[-1][::-1])[::-1]
    if further == 0:
        ends = np.maximum(before[:-1], after[1:])
        return int(np.where(lattice.allowed[1:], ends, NEVER).min(initial=NEVER))
    least = lattice.least_gap
    most = min(lattice.most_gap, (last - 1) // further)
    if most < least:
        return NEVER
    gap, first = np.meshgrid(np.arange(least, most + 1), np.arange(1, last + 1), indexing="ij")
    fits = first + gap * further <= last
    gap, first = gap[fits], first[fits]
    rounds = first[:, None] + gap[:, None] * np.arange(further + 1)
    held = lattice.allowed[rounds].all(axis=1)
    gap, rounds = gap[held], rounds[held]
    stray = np.maximum(before[rounds[:, 0] - 1], after[rounds[:, -1]])
    inner = _inner(lattice, (least, most), gap[:, None] - least, rounds[:, 1:])
    return int(np.maximum(stray, inner.max(axis=1)).min(initial=NEVER))


def _inner(lattice: Lattice, gaps: tuple[int, int], row: Ints, ends: Ints) -> Ints:
    """(N, T − 1) int64: how far the levels between the first and the last shaping stray."""
    level = lattice.levels[1:-1]
    highest = over_gaps(lattice.wanted, *gaps, np.maximum, NEVER)[row, ends]
    lowest = over_gaps(lattice.wanted, *gaps, np.minimum, -NEVER)[row, ends]
    stray: Ints = np.maximum(highest - level, level - lowest)
    if (lattice.low > -NEVER).any():
        floor = over_gaps(lattice.low, *gaps, np.maximum, NEVER)[row, ends]
        stray[level < floor] = NEVER
    if (lattice.high < NEVER).any():
        ceiling = over_gaps(lattice.high, *gaps, np.minimum, -NEVER)[row, ends]
        stray[level > ceiling] = NEVER
    return stray
