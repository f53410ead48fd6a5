"""What lies between one shaping and the next: its cost for every gap and round, in one array."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from frogless.plan.rhythm.lattice import NEVER, Bools, Ints, Lattice, Windows


@dataclass(frozen=True, slots=True)
class Links:
    """Every way from shaping j to shaping j + 1, for j = 1 … T − 1, that a limit allows.

    Args:
        limit: the stray that is allowed.
        least: the smallest gap; gap number k is least + k.
        start: (T,) int64: the round that column 0 stands for, for each shaping.
        ends: (T − 1, W) int64: the rounds of the columns of shapings 2 … T, cut off at R.
        source: (T − 1, K, W) intp: the column that shaping j has for shaping j + 1 in this column
            with this gap; W where there is none.
        stray: (T − 1, K, W) int64: greatest distance between the two, NEVER where it is too great.
        lands: (T, W) bool: whether a shaping may fall on the round of a column.
        head, tail: (W,) int64: greatest distance before the first shaping, and from the last on;
            NEVER where that may not be.
    """

    lattice: Lattice
    limit: int
    least: int
    start: Ints
    ends: Ints
    source: Ints
    stray: Ints
    lands: Bools
    head: Ints
    tail: Ints

    @property
    def width(self) -> int:
        """W, columns: rounds that a shaping may fall on."""
        return int(self.head.shape[0])

    @property
    def gaps(self) -> int:
        """K, how many gaps there are to choose from."""
        return int(self.source.shape[1])

    def rounds(self, j: int) -> Ints:
        """(W,) int64: the rounds of the columns of shaping j (counted from 1), cut off at R."""
        columns = self.start[j - 1] + np.arange(self.width)
        rounds: Ints = np.minimum(columns, self.lattice.rounds)
        return rounds

    def per_link(self, table: Ints) -> Ints:
        """(T − 1, K, W) int64: a table of (gap, round) spread over the links by where they end."""
        return table[:, self.ends].transpose(1, 0, 2)


def links(lattice: Lattice, windows: Windows, off: Ints, limit: int) -> Links:
    """The links between windows that are open; those that stray more than the limit cost NEVER."""
    least, most = windows.span(lattice.restarts)
    least, most = max(least, lattice.least_gap), min(most, lattice.most_gap)
    most = max(most, least - 1)
    width = int((windows.last - windows.first).max()) + 1
    column = windows.first[:, None] + np.arange(width)
    lands = (column <= windows.last[:, None]) & np.take_along_axis(
        windows.may, np.minimum(column, lattice.rounds), axis=1
    )
    head, tail = _ends(lattice, off, column)
    source = _sources(windows, least, most, width)
    made = Links(
        lattice=lattice,
        limit=limit,
        least=least,
        start=windows.first,
        ends=np.minimum(column[1:], lattice.rounds),
        source=source,
        stray=np.zeros(source.shape, np.int64),
        lands=lands,
        head=np.where(lands[0] & (head <= limit), head, NEVER),
        tail=np.where(lands[-1] & (tail <= limit), tail, NEVER),
    )
    if most < least:
        return made
    level = lattice.levels[1:-1, None, None]
    stray = lattice.strays_over(level, least, most, made.per_link)
    stray[(stray > limit) | ~lands[1:, None, :]] = NEVER
    return replace(made, stray=stray)


def _sources(windows: Windows, least: int, most: int, width: int) -> Ints:
    """The column that each link comes from; `width` where that lies outside the window."""
    gap = np.arange(least, most + 1)[None, :, None]
    moved = (windows.first[1:] - windows.first[:-1])[:, None, None]
    column = np.arange(width)[None, None, :] + moved - gap
    return np.where((column >= 0) & (column < width), column, width)


def _ends(lattice: Lattice, off: Ints, column: Ints) -> tuple[Ints, Ints]:
    """Greatest distance before the first shaping, by its column, and from the last on."""
    first = np.minimum(column[0], lattice.rounds)
    last = np.minimum(column[-1], lattice.rounds)
    before = np.maximum.accumulate(off[0])[np.maximum(first - 1, 0)]
    after = np.maximum.accumulate(off[-1][::-1])[::-1][last]
    return before, after
