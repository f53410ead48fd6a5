"""Of all ways within a limit the one with the least sum of squares, and of equals the loosest.

The same dynamic programming as `search`, with a pair that is compared in order: the sum of squares
and the greatest distance below what is wanted. A rhythm and its mirror image often have the same
squares; then the one that binds least is taken.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from frogless.plan.rhythm.lattice import NEVER, Bools, Ints, over_gaps
from frogless.plan.rhythm.links import Links
from frogless.plan.rhythm.search import LONG, ONLY, SHORT, alternates, go_on, strays_between


@dataclass(frozen=True, slots=True)
class Way:
    """The best way: the round of each shaping, and which gaps make a clause together.

    Args:
        rounds: for each shaping.
        clauses: for each shaping from the second on, the number of the clause that its gap belongs
            to (counted up along the way), and what the gap is in it; None for a shaping that
            begins a rhythm of its own.
        squares: in parts², tightness: in parts.
    """

    rounds: tuple[int, ...]
    clauses: tuple[tuple[int, int] | None, ...]
    squares: int
    tightness: int


@dataclass(frozen=True, slots=True)
class _Costs:
    """squares, below: (T − 1, K, W) int64 for the links; (W,) for head and tail."""

    squares: Ints
    below: Ints
    head: tuple[Ints, Ints]
    tail: tuple[Ints, Ints]


@dataclass(frozen=True, slots=True)
class _Layer:
    """How the states of one shaping were reached.

    Args:
        fresh: (C, kinds, K, W) bool: by a new clause.
        best: (C + 2, W): the number of the state (kind, gap) that is best; for a shaping that
            begins afresh, the column of the one before.
    """

    fresh: Bools | None
    best: Ints


def least_squares(links: Links, clauses: int) -> Way:
    """The best way with at most so many clauses, of links that hold one at least."""
    lattice, pair = links.lattice, links.lattice.pair
    kinds = 3 if alternates(lattice, clauses) else 1
    width, gaps = links.width, links.gaps
    costs = _costs(links)
    shape = (clauses + 2, width + 1)
    reached = (np.full(shape, NEVER, np.int64), np.full(shape, NEVER, np.int64))
    reached[0][1, :width], reached[1][1, :width] = costs.head
    blank = np.full((clauses, kinds, gaps, width + 1), NEVER, np.int64)
    going = (blank, blank.copy())
    flat = links.source + np.arange(gaps)[None, :, None] * (width + 1)
    layers: list[_Layer] = []
    for j in range(2, lattice.shapings + 1):
        if j in lattice.restarts:
            layers.append(_afresh(links, reached, j))
            for part in going:
                part[:] = NEVER
            continue
        source = links.source[j - 2]
        kept = [part.reshape(clauses, kinds, -1).take(flat[j - 2], axis=2) for part in going]
        new = [part.take(source, axis=1) for part in reached]
        fresh = np.empty(kept[0].shape, np.bool_)
        _take_fresh(kept, new, fresh)
        barred = (links.stray[j - 2] >= NEVER) | (kept[0] >= NEVER)
        squares = np.where(barred, NEVER, kept[0] + costs.squares[j - 2])
        below = np.where(barred, NEVER, np.maximum(kept[1], costs.below[j - 2]))
        layers.append(_Layer(fresh, _reach(reached, squares, below, width)))
        for part, best in zip(going, (squares, below), strict=True):
            go_on(part[..., :width], best, pair)
    return _finish(links, reached, costs, layers)


def _take_fresh(kept: list[Ints], new: list[Ints], fresh: Bools) -> None:
    """Takes a new clause wherever it is better than going on; says where."""
    for rows, part in ((slice(1, -1), slice(ONLY, SHORT)), (slice(0, -2), slice(SHORT, None))):
        if part.start >= fresh.shape[1]:
            continue
        squares, below = new[0][rows, None], new[1][rows, None]
        had, loose = kept[0][:, part], kept[1][:, part]
        better = (squares < had) | ((squares == had) & (below < loose))
        fresh[:, part] = better
        np.copyto(had, squares, where=better)
        np.copyto(loose, below, where=better)


def _reach(reached: tuple[Ints, Ints], squares: Ints, below: Ints, width: int) -> Ints:
    """The best state of each column and number of clauses, stored; and which it is."""
    clauses = squares.shape[0]
    flat, loose = squares.reshape(clauses, -1, width), below.reshape(clauses, -1, width)
    least = flat.min(axis=1)
    ties = np.where(flat == least[:, None], loose, NEVER)
    which = np.full((clauses + 2, width), 0, np.int64)
    which[2:] = ties.argmin(axis=1)
    reached[0][:2], reached[1][:2] = NEVER, NEVER
    reached[0][2:, :width] = least
    reached[1][2:, :width] = ties.min(axis=1)
    return which


def _afresh(links: Links, reached: tuple[Ints, Ints], j: int) -> _Layer:
    """Begins a rhythm of its own with shaping j; `reached` is changed in place."""
    width = links.width
    stray = strays_between(links, j)
    source, target = links.rounds(j - 1), links.rounds(j)
    level, squares = links.lattice.levels[j - 1], links.lattice.squares()[j - 1]
    added = squares[target][None, :] - squares[source][:, None]
    under = np.zeros(stray.shape, np.int64)
    for i, a in enumerate(source):
        run = np.maximum.accumulate(np.maximum(links.lattice.wanted[a:] - level, 0))
        under[i] = run[np.maximum(target - a, 1) - 1]
    limit = links.limit
    barred = (stray > limit)[None] | (reached[0][:, :width, None] >= NEVER)
    total = np.where(barred, NEVER, reached[0][:, :width, None] + added[None])
    loose = np.where(barred, NEVER, np.maximum(reached[1][:, :width, None], under[None]))
    least = total.min(axis=1)
    ties = np.where(total == least[:, None], loose, NEVER)
    reached[0][:, :width], reached[1][:, :width] = least, ties.min(axis=1)
    return _Layer(None, ties.argmin(axis=1))


def _finish(links: Links, reached: tuple[Ints, Ints], costs: _Costs, layers: list[_Layer]) -> Way:
    """The best end, and the way back from it."""
    width = links.width
    had, loose = reached[0][1:, :width], reached[1][1:, :width]
    barred = (links.tail >= NEVER) | (had >= NEVER)
    total = np.where(barred, NEVER, had + costs.tail[0])
    below = np.where(barred, NEVER, np.maximum(loose, costs.tail[1]))
    least = total.min()
    ties = np.where(total == least, below, NEVER)
    clauses, column = divmod(int(ties.argmin()), width)
    rounds, marks = _trace(links, layers, clauses, column)
    return Way(rounds, marks, int(least), int(ties.min()))


def _trace(
    links: Links, layers: list[_Layer], clauses: int, column: int
) -> tuple[tuple[int, ...], tuple[tuple[int, int] | None, ...]]:
    """Rounds and clauses of the way that ends in a state, from the last shaping to the first."""
    pair, gaps = links.lattice.pair, links.gaps
    rounds, marks = [int(links.start[-1]) + column], list[tuple[int, int] | None]()
    state: tuple[int, int] | None = None
    clause = 0
    for j in range(links.lattice.shapings, 1, -1):
        layer = layers[j - 2]
        if layer.fresh is None:
            marks.append(None)
            column, state = int(layer.best[clauses + 1, column]), None
        else:
            if state is None:
                state = divmod(int(layer.best[clauses + 1, column]), gaps)
            kind, gap = state
            marks.append((clause, kind))
            came = int(links.source[j - 2, gap, column])
            if layer.fresh[clauses - 1, kind, gap, column]:
                clauses -= 1 if kind == ONLY else 2
                clause, state = clause + 1, None
            elif kind != ONLY:
                state = (LONG, gap + pair) if kind == SHORT else (SHORT, gap - pair)
            column = came
        rounds.append(int(links.start[j - 2]) + column)
    return tuple(reversed(rounds)), tuple(reversed(marks))


def _costs(links: Links) -> _Costs:
    """Squares and distances below of every link, and of the two ends."""
    lattice, levels, sums = links.lattice, links.lattice.levels, links.lattice.squares()
    first, last = links.rounds(1), links.rounds(lattice.shapings)
    before = np.maximum.accumulate(lattice.wanted) - levels[0]
    after = np.maximum.accumulate(lattice.wanted[::-1])[::-1] - levels[-1]
    barred = links.head >= NEVER
    head = (
        np.where(barred, NEVER, sums[0, first]),
        np.where(barred, NEVER, np.maximum(before[np.maximum(first - 1, 0)], 0)),
    )
    tail = (sums[-1, -1] - sums[-1, last], np.maximum(after[last], 0))
    if links.gaps == 0:
        none = np.zeros(links.source.shape, np.int64)
        return _Costs(none, none, head, tail)
    return _Costs(*_link_costs(links, sums), head, tail)


def _link_costs(links: Links, sums: Ints) -> tuple[Ints, Ints]:
    lattice, most = links.lattice, links.least + links.gaps - 1
    highest = links.per_link(over_gaps(lattice.wanted, links.least, most, np.maximum, -NEVER))
    below = np.maximum(highest - lattice.levels[1:-1, None, None], 0)
    end = links.ends[:, None, :]
    gap = (links.least + np.arange(links.gaps))[None, :, None]
    j = np.arange(1, lattice.shapings)[:, None, None]
    return sums[j, end] - sums[j, np.maximum(end - gap, 0)], below
