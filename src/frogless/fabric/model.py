"""Every stitch of a program, as arrays. Row by row, in the order worked."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np
import numpy.typing as npt

from frogless.rows.nodes import Change, Row

Ints = npt.NDArray[np.int32]
Floats = npt.NDArray[np.float64]


def runs_back(row: Row) -> bool:
    """Whether a row runs against the way the right side is worked."""
    return (row.side == "WS") != row.backwards


@dataclass(frozen=True, slots=True)
class RowFabric:
    """One row, expanded. n stitches made, p places offered to it, m places it makes.

    The places offered are those ahead of the loop when the row begins: those of the row below,
    numbered as *that* row made them, 0 first; after them those that earlier rows left, in the order
    met. In the first row of a piece that is begun on edges they are the places of its bases, one
    stretch after the other, each numbered on as its stretch runs.

    The slip stitches and the chains of a row's start are the first stitches; when the turning chain
    counts, the last of them stands on the first place and leaves one. The slip stitch that joins a
    round is no stitch of the row: `row.end.join` alone tells of it.

    Args:
        keys: dictionary keys that `stitch` indexes into.
        stitch: (n,) int32, which stitch.
        first: (n,) int32, first of the places offered that it stands on; -1 when it stands on none.
        taken: (n,) int32, how many of them it stands on: the one it is worked into, or those worked
            together, which follow `first` in `order`.
        counted: (n,) int32, places it leaves: 1 for what the written count counts, 0 for what it
            does not. A run of chains is counted on its first chain.
        made_by: (m,) int32, for each place it makes, the stitch that made it.
        used: (p,) int32, times each place offered was worked into.
        skipped: (p,) int32, 1 where it was skipped on purpose.
        left: (p,) int32, 1 where it was left for a later row.
        overrun: places asked for beyond those offered (0 in sound rows).
        order: (p,) int32, the places offered in the order in which the row meets them.
        from_row: (p,) int32, for each place offered, the row that made it, as its index in the
            piece; of the places of a base, -1 - the index of the base.
        from_place: (p,) int32, its number in that row; of a base, its number along the stretch.
        behind: places that lie behind the loop when the row begins: left by the row before, on the
            far side of where the work was turned.
        changes: each change of colour with how many stitches of the row are made before it.
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
    left: Ints
    overrun: int
    order: Ints
    from_row: Ints
    from_place: Ints
    behind: int = 0
    changes: tuple[tuple[int, Change], ...] = ()

    @property
    def arrays(self) -> tuple[Ints, ...]:
        """Everything of it that is an array."""
        return (
            self.stitch,
            self.first,
            self.taken,
            self.counted,
            self.made_by,
            self.used,
            self.skipped,
            self.left,
            self.order,
            self.from_row,
            self.from_place,
        )

    @property
    def places(self) -> int:
        """Places it makes for the next row; what it leaves unworked is not among them."""
        return int(self.made_by.shape[0])


@dataclass(frozen=True, slots=True)
class Fabric:
    """All rows of all pieces, by piece name.

    Args:
        colours: the letter that each piece is begun with; "" in one colour.
    """

    pieces: Mapping[str, tuple[RowFabric, ...]]
    colours: Mapping[str, str] = field(default_factory=dict)
