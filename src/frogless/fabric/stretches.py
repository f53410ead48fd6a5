"""Stretches of edges: the places that a base names, whatever is worked or joined there."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from frogless.errors import InputError, Place, near_names
from frogless.fabric.model import Ints, RowFabric, runs_back
from frogless.rows import nodes
from frogless.rows.nodes import Base, Chain, Row

Part = Literal["top", "underside", "right_end", "left_end", "end"]
Worked = Mapping[str, Sequence[RowFabric]]


@dataclass(frozen=True, slots=True)
class Stretch:
    """The places of one stretch, in the order met with the right side facing.

    Args:
        part: which part of a row they are: its top, its underside, or an end of it.
        rows: (q,) int32, the row of each, as its index in the piece.
        places: (q,) int32, its number in that row; 0 for row ends.
        missing: places asked for beyond the end of the edge (0 in sound stretches).
    """

    piece: str
    part: Part
    rows: Ints
    places: Ints
    missing: int = 0

    @property
    def size(self) -> int:
        """Places of the stretch."""
        return int(self.rows.size)


def stretch(base: Base, worked: Worked, name: str = "") -> Stretch:
    """The places that a base names.

    Args:
        worked: the rows of the pieces it may name.
        name: of whoever is worked there, for the refusal.

    Raises:
        InputError: no such piece before it, or no such row in that piece.
    """
    rows = worked.get(base.piece)
    if not rows:
        raise InputError(
            f'it is worked onto "{base.piece}", which is no piece before it'
            f"{near_names(base.piece, worked)}",
            Place(key=name),
        )
    part, of_row, places = _EDGES[base.edge](base, rows, name)
    asked = of_row.size - base.first if base.count is None else base.count
    run = slice(base.first, base.first + max(asked, 0))
    step = -1 if base.reverse and base.edge != "last_row" else 1
    found = Stretch(base.piece, part, of_row[run][::step], places[run][::step])
    missing = max(asked, 0) - found.size if asked >= 0 else -asked
    return Stretch(found.piece, part, found.rows, found.places, missing)


def is_foundation_chain(row: Row) -> bool:
    """Whether a row is the chain that a piece begins on, or its ring."""
    return row.number == 0 and all(isinstance(node, Chain) for node in row.body)


_Found = tuple[Part, Ints, Ints]


def _of_row(index: int, part: Part, rows: Sequence[RowFabric]) -> _Found:
    count = rows[index].places
    at = index % len(rows)
    return part, np.full(count, at, np.int32), np.arange(count, dtype=np.int32)


def _named(base: Base, rows: Sequence[RowFabric], name: str) -> int:
    for index, row in enumerate(rows):
        if row.row.number == base.row:
            return index
    raise InputError(
        f'it is worked onto row {base.row} of "{base.piece}", which has rows '
        f"{rows[0].row.number} to {rows[-1].row.number}",
        Place(key=name),
    )


def _ends(part: Part, rows: Sequence[RowFabric]) -> _Found:
    at = [
        index
        for index, row in enumerate(rows)
        if not is_foundation_chain(row.row) and (part == "end" or _reaches(part, row))
    ]
    return part, np.asarray(at, np.int32), np.zeros(len(at), np.int32)


def _reaches(part: Part, row: RowFabric) -> bool:
    """Whether a row has an end at that edge: a short row turns before it, or begins inside."""
    begins_there = (part == "right_end") != runs_back(row.row)
    return not row.behind if begins_there else not row.left.any()


_EDGES: Mapping[nodes.Edge, Callable[[Base, Sequence[RowFabric], str], _Found]] = {
    "foundation": lambda _base, rows, _name: _of_row(0, "underside", rows),
    "last_row": lambda _base, rows, _name: _of_row(-1, "top", rows),
    "row": lambda base, rows, name: _of_row(_named(base, rows, name), "top", rows),
    "underside": lambda base, rows, name: _of_row(_named(base, rows, name), "underside", rows),
    "row_ends": lambda _base, rows, _name: _ends("end", rows),
    "right_edge": lambda _base, rows, _name: _ends("right_end", rows),
    "left_edge": lambda _base, rows, _name: _ends("left_end", rows),
}
