"""Two motifs joined along a side of each, stitch to stitch."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from frogless.read.motifs import Motif
from frogless.rows.nodes import Base, Program
from frogless.stitches.joins import Join, seam_of


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


def _reversed(bases: Sequence[Base]) -> tuple[Base, ...]:
    return tuple(replace(base, reverse=True) for base in reversed(bases))
