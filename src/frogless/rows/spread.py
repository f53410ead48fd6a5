"""Spreading evenly: what `spread evenly` means, wherever it is planned, written or read."""

from __future__ import annotations

import itertools


def even_spread(count: int, over: int) -> tuple[int, ...]:
    """How many of `count` each of `over` places takes; they differ by one at most.

    Source: ⌊n/k⌋ and ⌈n/k⌉, the larger ones spread too (Toussaint, The Euclidean algorithm
    generates traditional musical rhythms, BRIDGES 2005; common practice).

    >>> even_spread(10, 4)
    (2, 3, 2, 3)
    """
    ends = [i * count // over for i in range(over + 1)]
    return tuple(b - a for a, b in itertools.pairwise(ends))
