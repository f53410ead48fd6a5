"""Every stitch of a program, as arrays. Row by row, in the order worked."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from frogless.rows.nodes import Row

Ints = npt.NDArray[np.int32]
Floats = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class RowFabric:
    """One row, expanded. n stitches made, p places of the row below, m places left.

    The chains of a turning chain are the first stitches; when it counts, the last of them stands on
    the first place and leaves one. The slip stitch that joins a round is no stitch of the row:
    `row.end.join` alone tells of it.

    Args:
        keys: dictionary keys that `stitch` indexes into.
        stitch: (n,) int32, which stitch.
        first: (n,) int32, first place of the row below it stands on, as that row numbers its places
            (in the order *that* row left them); -1 when it stands on none.
        taken: (n,) int32, how many places of the row below it stands on: the one it is worked into,
            or those worked together, which follow `first` in `order`.
        counted: (n,) int32, places it leaves: 1 for what the written count counts, 0 for what it
            does not. A run of chains is counted on its first chain.
        made_by: (m,) int32, for each place left, the stitch that made it.
        used: (p,) int32, times each place of the row below was worked into.
        skipped: (p,) int32, 1 where it was skipped on purpose.
        overrun: places asked for beyond the end of the row below (0 in sound rows).
        order: (p,) int32, the places of the row below in the order in which the row meets them.
    """

    row: Row
    keys: tuple[str, ...]
    stitch: Ints
    first: Ints
    taken: Ints
    counted: Ints
    made_by: Ints
    used: Ints
    skipped: Ints
    overrun: int
    order: Ints

    @property
    def places(self) -> int:
        """Places left for the next row."""
        return int(self.made_by.shape[0])


@dataclass(frozen=True, slots=True)
class Fabric:
    """All rows of all pieces, by piece name."""

    pieces: Mapping[str, tuple[RowFabric, ...]]
