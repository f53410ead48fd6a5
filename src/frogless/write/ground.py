"""What a row is worked into, as far as its words depend on it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from frogless.rows.count import row_left
from frogless.rows.nodes import Base, Chain, Piece, Program, Row
from frogless.rows.walk import nodes
from frogless.write.words import Words

Noun = Literal["st", "ch", "end"]

#: What the places of an edge are called.
EDGE_NOUNS: dict[str, Noun] = {"foundation": "st", "last_row": "st", "row_ends": "end"}


@dataclass(frozen=True, slots=True)
class Ground:
    """What the row below leaves.

    Args:
        places: how many places; None when the piece stands on an edge that is not at hand.
        noun: what a place is called.
        spaces: whether some of the places are chain spaces.
    """

    places: int | None
    noun: Noun = "st"
    spaces: bool = False


NOTHING = Ground(0)


def ground_above(row: Row, words: Words) -> Ground:
    """What a row leaves for the next one."""
    chains = [node for node, _ in nodes(row.body) if isinstance(node, Chain)]
    only_chain = len(row.body) == 1 and bool(chains) and chains[0].each
    return Ground(
        places=row_left(row, words.leaves),
        noun="ch" if only_chain else "st",
        spaces=any(not chain.each for chain in chains),
    )


def base_ground(program: Program, base: Base, words: Words) -> Ground:
    """What an edge of another piece offers.

    A foundation is worked into from below, one place for each of its stitches.
    """
    piece = program.piece(base.piece)
    if base.edge == "last_row":
        return ground_above(piece.rows[-1], words)
    if base.edge == "foundation":
        return Ground(ground_above(piece.rows[0], words).places)
    return Ground(row_ends(piece), "end")


def row_ends(piece: Piece) -> int:
    """Row ends along one side: one for each row; a foundation chain has none."""
    return sum(not _is_foundation_chain(row) for row in piece.rows)


def _is_foundation_chain(row: Row) -> bool:
    return row.number == 0 and all(isinstance(node, Chain) for node in row.body)
