"""What no choice of shaping rounds betters, however it would have to be worded."""

from __future__ import annotations

import numpy as np

from frogless.plan.rhythm.lattice import NEVER, Ints, Lattice


def least_of_any(lattice: Lattice, off: Ints | None = None) -> int:
    """The least stray of any shaping rounds that keep gap, rounds and bounds; NEVER if none do.

    Exact: round by round, the least stray with which each level can be reached. A level that is
    taken up on round r was preceded by `least_gap` rounds at the level before it.

    Args:
        off: `lattice.off()`, when it is known.
    """
    cells = lattice.off() if off is None else off
    levels = lattice.shapings + 1
    # ready: the next shaping may fall on the next round. young[a]: the last was a rounds ago.
    ready = np.full(levels, NEVER, np.int64)
    ready[0] = cells[0, 0]
    young = np.full((lattice.least_gap, levels), NEVER, np.int64)
    for r in range(1, lattice.rounds + 1):
        here = cells[:, r]
        taken = np.full(levels, NEVER, np.int64)
        if lattice.allowed[r]:
            taken[1:] = np.maximum(ready[:-1], here[1:])
        young[1:] = np.maximum(young[:-1], here)
        young[0] = taken
        ready = np.minimum(np.maximum(ready, here), young[-1])
    return int(min(ready[-1], young[:, -1].min()))
