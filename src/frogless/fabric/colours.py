"""The colour of every stitch, and the colours that are carried past others."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from frogless.fabric.model import Ints, RowFabric
from frogless.rows.nodes import Change

Spot = tuple[int, int]
"""A row, as its index, and how many of its stitches are made before."""


@dataclass(frozen=True, slots=True)
class ColouredRow:
    """The colours of one row.

    Args:
        stitch: (n,) int32, for each stitch the colour it is begun in, as an index of the letters.
            The yarn of a stitch is of that colour. Its last loop, which lies on top as half of
            what the next stitch stands under, is of the next stitch's: before a change it looks
            the new colour there.
        after: the colour on the hook when the row is done; what joins the round is worked with it.
    """

    stitch: Ints
    after: int


@dataclass(frozen=True, slots=True)
class Coloured:
    """Rows worked with one end of yarn: their letters in the order met, and each row's colours."""

    letters: tuple[str, ...]
    rows: tuple[ColouredRow, ...]


@dataclass(frozen=True, slots=True)
class Carried:
    """A colour that runs along from where it is left to where it is taken up again."""

    letter: str
    left: Spot
    taken: Spot


def coloured(begun: str, rows: Sequence[RowFabric]) -> Coloured:
    """The colours of rows that are begun in one, row after row.

    Args:
        begun: letter of the colour that the first of them begins with; "" in one colour.
    """
    letters, used, found = [begun], 0, []
    for row in rows:
        stitch = np.full(row.stitch.size, used, np.int32)
        for made, change in row.changes:
            if change.colour not in letters:
                letters.append(change.colour)
            used = letters.index(change.colour)
            stitch[made:] = used
        found.append(ColouredRow(stitch, used))
    return Coloured(tuple(letters), tuple(found))


def carried(begun: str, rows: Sequence[RowFabric]) -> Iterator[Carried]:
    """Every stretch on which a colour is carried, in the order in which they end.

    What is carried and never taken up again is cut where the work ends, and is none.
    """
    used, hanging = begun, dict[str, Spot]()
    for spot, change in _changes(rows):
        if change.carried:
            hanging[used] = spot
        else:
            hanging.pop(used, None)
        used = change.colour
        if used in hanging:
            yield Carried(used, hanging.pop(used), spot)


def _changes(rows: Sequence[RowFabric]) -> Iterator[tuple[Spot, Change]]:
    for index, row in enumerate(rows):
        yield from (((index, made), change) for made, change in row.changes)
