"""Who works into which place: rows of the same piece, pieces begun on its edges."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np
import numpy.typing as npt

from frogless.fabric.model import RowFabric
from frogless.fabric.stretches import Part, Stretch

#: A place of the whole pattern: piece, part of the row, index of the row in the piece, number.
Spot = tuple[str, Part, int, int]
Flags = npt.NDArray[np.bool_]


def spots(found: Stretch) -> tuple[Spot, ...]:
    """The places of a stretch, in its order."""
    pairs = zip(found.rows.tolist(), found.places.tolist(), strict=True)
    return tuple((found.piece, found.part, row, place) for row, place in pairs)


def worked_within(rows: Sequence[RowFabric]) -> tuple[Flags, ...]:
    """For each row, (m,) bool: whether the piece itself works into each place that the row made."""
    found = tuple(np.zeros(row.places, np.bool_) for row in rows)
    for row in rows:
        used = row.used > 0
        used[row.order[: row.row.start.across]] = False  # slip stitches are worked over by a border
        for source in np.unique(row.from_row[used]).tolist():
            if source >= 0:
                found[source][row.from_place[used & (row.from_row == source)]] = True
    return found


def worked_of_base(rows: Sequence[RowFabric], base: int, size: int) -> Flags:
    """(size,) bool: whether a piece works into each place of its base number `base`."""
    found = np.zeros(size, np.bool_)
    for row in rows:
        found[row.from_place[(row.used > 0) & (row.from_row == -1 - base)]] = True
    return found


def left_over(rows: Sequence[RowFabric]) -> tuple[tuple[int, int], ...]:
    """Places left for later that no later row of the piece took or skipped.

    Returns:
        the row that made each (its index, or -1 - the index of the base), and its number there.
    """
    waiting: dict[tuple[int, int], None] = {}
    for row in rows:
        if waiting:
            for spot in _pairs(row, (row.used > 0) | (row.skipped > 0)):
                waiting.pop(spot, None)
        waiting |= dict.fromkeys(_pairs(row, row.left > 0))
    return tuple(waiting)


def _pairs(row: RowFabric, at: Flags) -> Iterator[tuple[int, int]]:
    return zip(row.from_row[at].tolist(), row.from_place[at].tolist(), strict=True)
