"""What no choice of shaping rounds betters, however it would have to be worded."""

from __future__ import annotations

from bisect import bisect_left

import numpy as np

from frogless.plan.rhythm.lattice import NEVER, Ints, Lattice


def stays_within(lattice: Lattice, off: Ints, limit: int) -> bool:
    """Whether any shaping rounds that keep gap, rounds and bounds stray no more than a limit.

    Exact: round by round, the set of levels that can be held without straying further. A level that
    is taken up on round r was preceded by `least_gap` rounds at the level before it.

    Args:
        off: `lattice.off()`.
    """
    near = _sets(off <= limit)
    # ready: levels after which the next shaping may come at once. young[a]: those that were taken
    # up a rounds ago.
    ready, young = near[0] & 1, [0] * lattice.least_gap
    for here, may in zip(near[1:], lattice.allowed[1:].tolist(), strict=True):
        taken = (ready << 1) & here if may else 0
        young = [taken, *(levels & here for levels in young[:-1])]
        ready = (ready & here) | young[-1]
    for levels in young:
        ready |= levels
    return bool(ready >> lattice.shapings & 1)


def _sets(near: np.typing.NDArray[np.bool_]) -> list[int]:
    """For each round the set of levels, as the bits of a number."""
    packed = np.packbits(near, axis=0, bitorder="little")
    size, data = packed.shape[0], packed.T.tobytes()
    return [int.from_bytes(data[i : i + size], "little") for i in range(0, len(data), size)]


def least_of_any(lattice: Lattice, off: Ints) -> int:
    """The least stray of any shaping rounds that keep gap, rounds and bounds; NEVER if none do."""
    strays = np.unique(off[off < NEVER]).tolist()
    at = bisect_left(strays, True, key=lambda limit: stays_within(lattice, off, limit))
    return int(strays[at]) if at < len(strays) else NEVER
