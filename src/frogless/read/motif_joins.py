"""Motifs joined along a side of each, stitch to stitch; a motif with a border round its corners."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from frogless.read.motifs import Motif
from frogless.rows.nodes import Base, Piece, Program
from frogless.stitches.edged import round_corners
from frogless.stitches.joins import Join, seam_of
from frogless.stitches.model import Edging, Stitch

#: A side is told from corner space to corner space.
CORNERS_OF_A_SIDE = 2


def joined(first: Motif, second: Motif, join: Join, sides: tuple[int, int] = (1, 1)) -> Program:
    """Two motifs with a seam along a side of each, from corner space to corner space.

    The second edge is met from its last place to its first: the pieces face each other.

    Args:
        first, second: pieces of different names.
        sides: the side of each, 1 first.

    Raises:
        InputError: sides of unlike counts, motifs without corner spaces, or a join that is no seam.
    """
    count, one = first.side(sides[0])
    over, other = second.side(sides[1])
    name = f"{first.piece.name} to {second.piece.name}"
    seam = seam_of(join, name, one, _reversed(other), (count, over))
    return Program((first.piece, second.piece), (seam,))


def bordered(made: Motif, edging: Edging, stitches: Mapping[str, Stitch]) -> Program:
    """A motif with an edging round it, begun in the first corner space of its last round.

    Raises:
        InputError: corners that are no chain spaces, an edging that goes round no corners, or a side
            that is no multiple of it.
    """
    count, _ = made.side(1)
    rows = round_corners(edging, [count - CORNERS_OF_A_SIDE] * len(made.corners), stitches)
    first, there = made.corners[0], made.counts[-1]
    name = made.piece.name
    runs = [(first, there - first), (0, first)]
    bases = tuple(Base(name, "last_row", first=at, count=n) for at, n in runs if n)
    border = Piece(f"{edging.key} border", closed=True, rows=rows, bases=bases)
    return Program((*made.program.pieces, border))


def _reversed(bases: Sequence[Base]) -> tuple[Base, ...]:
    return tuple(replace(base, reverse=True) for base in reversed(bases))
