"""Places that a body takes and leaves, counted here on purpose and not with the writer's counter.

The round trip proves little if the reader believes the same arithmetic as the writer.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from frogless.rows.nodes import Chain, Into, Node, Piece, Repeat, Row, Skip, Together, Work
from frogless.stitches.model import Stitch


@dataclass(frozen=True, slots=True)
class Ground:
    """How many places a row is worked into (None: not known), and whether some are chain spaces."""

    places: int | None
    spaces: bool = False


def ground_of(row: Row, stitches: Mapping[str, Stitch]) -> Ground:
    """What a row leaves for the next."""
    made, spaces = _left(row.body, stitches)
    chain = 1 if row.start.counts and row.start.chains else 0
    return Ground(made + chain, spaces > 0)


def edge_of(piece: Piece, edge: str, stitches: Mapping[str, Stitch]) -> Ground:
    """What an edge of a piece offers; a foundation chain has no row end."""
    if edge == "row_ends":
        chains_first = bool(piece.rows) and piece.rows[0].number == 0
        only_chains = chains_first and all(isinstance(n, Chain) for n in piece.rows[0].body)
        return Ground(len(piece.rows) - only_chains)
    if edge == "foundation":
        return Ground(ground_of(piece.rows[0], stitches).places)
    return ground_of(piece.rows[-1], stitches)


def first_made(body: Iterable[Node]) -> str | None:
    """The key of the first stitch that a body makes, chains aside."""
    for node in body:
        if isinstance(node, Work | Together):
            return node.stitch
        if isinstance(node, Into | Repeat) and (found := first_made(node.body)):
            return found
    return None


def _left(body: Iterable[Node], stitches: Mapping[str, Stitch]) -> tuple[int, int]:
    """Places left, and how many of them are chain spaces."""
    places = spaces = 0
    for node in body:
        if isinstance(node, Work):
            places += node.times * stitches[node.stitch].leaves
        elif isinstance(node, Together):
            places += stitches[node.stitch].leaves
        elif isinstance(node, Chain):
            places += node.times if node.each else 1
            spaces += 0 if node.each else 1
        elif isinstance(node, Into | Repeat):
            times = node.times if isinstance(node, Repeat) else 1
            inner, inner_spaces = _left(node.body, stitches)
            places, spaces = places + times * inner, spaces + times * inner_spaces
        elif not isinstance(node, Skip):
            raise TypeError(f"{node!r} is no node")
    return places, spaces
