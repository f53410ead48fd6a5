"""The exact search: dynamic programming over shaping × round × gap × clauses.

A state is the shaping that was made last, the round it fell on, the gap before it and the clauses
used so far. The next shaping either goes on with the clause (the same gap, or the other of an
alternation) or begins a new one. The cost of a way is a maximum (the greatest stray) or a sum (of
squares), both of which only grow, so the best way to a state is part of a best way through it.
Time grows with T · W · K · C: shapings, rounds that a shaping may fall on, gaps, clauses. W and K
are small because a way that strays more than the limit is never looked at.
"""

from __future__ import annotations

import numpy as np

from frogless.plan.rhythm.lattice import FARTHEST, NEVER, Ints, Lattice
from frogless.plan.rhythm.links import Links

# What the gap before a shaping is to its clause: the only one, or the shorter or the longer of two
# that alternate.
ONLY, SHORT, LONG = range(3)


def alternates(lattice: Lattice, clauses: int) -> bool:
    """Whether an alternation says more than two clauses would: from three gaps on."""
    return clauses >= 2 and lattice.shapings - len(lattice.restarts) >= 4


def least_strays(links: Links, clauses: int) -> Ints:
    """(C + 1,) int64: the least of the greatest strays with at most so many clauses."""
    lattice, pair = links.lattice, links.lattice.pair
    kinds = 3 if alternates(lattice, clauses) else 1
    width, gaps = links.width, links.gaps
    # row 0 stands for −1 clauses, so that an alternation, which counts two, finds its row too.
    reached = np.full((clauses + 2, width + 1), NEVER, np.int64)
    reached[1, :width] = links.head
    going = np.full((clauses, kinds, gaps, width + 1), NEVER, np.int64)
    flat = links.source + np.arange(gaps)[None, :, None] * (width + 1)
    for j in range(2, lattice.shapings + 1):
        if j in lattice.restarts:
            reached = _afresh(links, reached, j)
            going[:] = NEVER
            continue
        if gaps == 0:
            return np.full(clauses + 1, NEVER, np.int64)
        best = going.reshape(clauses, kinds, -1).take(flat[j - 2], axis=2)
        new = reached.take(links.source[j - 2], axis=1)
        np.minimum(best[:, ONLY], new[1:-1], out=best[:, ONLY])
        if kinds > 1:
            np.minimum(best[:, SHORT:], new[:-2, None], out=best[:, SHORT:])
        np.maximum(best, links.stray[j - 2], out=best)
        reached[1, :] = NEVER
        reached[2:, :width] = best.min(axis=(1, 2))
        go_on(going[..., :width], best, pair)
    total = np.maximum(reached[1:, :width], links.tail).min(axis=1)
    return np.minimum.accumulate(total)


def go_on(going: Ints, best: Ints, pair: int) -> None:
    """Stores each state under the gap that would go on with its clause."""
    going[:, ONLY] = best[:, ONLY]
    if going.shape[1] > 1:
        going[:, SHORT:] = NEVER
        if going.shape[2] > pair:
            going[:, LONG, pair:] = best[:, SHORT, :-pair]
            going[:, SHORT, :-pair] = best[:, LONG, pair:]


def strays_between(links: Links, j: int) -> Ints:
    """(W, W) int64: the stray from shaping j − 1 to a shaping j that begins a rhythm of its own."""
    lattice, level = links.lattice, links.lattice.levels[j - 1]
    held = (level >= lattice.low) & (level <= lattice.high)
    off = np.where(held, np.minimum(np.abs(level - lattice.wanted), FARTHEST), NEVER)
    source, target = links.rounds(j - 1), links.rounds(j)
    stray = np.full((links.width, links.width), NEVER, np.int64)
    for i, a in enumerate(source):
        run = np.maximum.accumulate(off[a:])
        reach = target - a
        fits = (reach >= lattice.least_gap) & links.lands[j - 1]
        stray[i, fits] = run[reach[fits] - 1]
    return stray


def _afresh(links: Links, reached: Ints, j: int) -> Ints:
    """What is reached when shaping j begins a rhythm of its own, at no clause."""
    found = np.full_like(reached, NEVER)
    ways = np.maximum(reached[:, : links.width, None], strays_between(links, j)[None])
    found[:, : links.width] = ways.min(axis=1)
    return found
