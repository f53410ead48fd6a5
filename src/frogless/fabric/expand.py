"""A row program expanded to every stitch, with the places of the row below that each stands on."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from frogless.errors import InputError, Place, near_names
from frogless.fabric.blocks import Block, Builder, laid_end_to_end
from frogless.fabric.model import Fabric, Ints, RowFabric
from frogless.rows.count import CHAIN
from frogless.rows.nodes import Base, Chain, Piece, Program, Row
from frogless.stitches.model import Stitch


def expand(program: Program, stitches: Mapping[str, Stitch]) -> Fabric:
    """Every stitch of a program.

    A row that asks for more places than there are, or leaves some unused, is expanded as far as it
    goes: what is wrong with it stands in `overrun`, `used` and `skipped`.

    Raises:
        InputError: a stitch that `stitches` does not know, or a base that is not an earlier piece.
    """
    keys = tuple(stitches) if CHAIN in stitches else (*stitches, CHAIN)
    builder = Builder(stitches, {key: i for i, key in enumerate(keys)}, {})
    done: dict[str, tuple[RowFabric, ...]] = {}
    for piece in program.pieces:
        done[piece.name] = _piece(piece, builder, keys, done)
    return Fabric(done)


def place_order(row: Row, below: Row, places: int) -> Ints:
    """The places that `below` left, in the order in which `row` meets them.

    Turned work, and work that goes backwards, meets them in reverse; both together in order.
    In a turned round that was joined into its place 0 the loop already sits on that place, so a new
    round that is opened there takes it first and the others in reverse after it.

    Returns:
        (places,) int32.

    Source: common practice.
    """
    order = np.arange(places, dtype=np.int32)
    if (row.side != below.side) == row.backwards:
        return order
    backwards = order[::-1].copy()
    return np.roll(backwards, 1) if _opened_on_place_0(row, below) else backwards


def row_ends(rows: tuple[RowFabric, ...]) -> int:
    """Row ends along one side edge: one for each row; a foundation chain has none."""
    return sum(not _is_foundation_chain(row.row) for row in rows)


def _opened_on_place_0(row: Row, below: Row) -> bool:
    """Whether the loop sits on place 0 when a turned round begins, and the round uses it."""
    if below.end.join == "chain_top":
        return below.start.counts and below.start.chains > 0
    return below.end.join == "first_stitch" and row.start.counts and row.start.chains > 0


def _is_foundation_chain(row: Row) -> bool:
    return row.number == 0 and all(isinstance(node, Chain) for node in row.body)


def _piece(
    piece: Piece,
    builder: Builder,
    keys: tuple[str, ...],
    done: Mapping[str, tuple[RowFabric, ...]],
) -> tuple[RowFabric, ...]:
    rows: list[RowFabric] = []
    for row in piece.rows:
        if rows:
            order = place_order(row, rows[-1].row, rows[-1].places)
        else:
            order = _first_order(piece, row, done)
        try:
            block = laid_end_to_end([builder.start(row.start), builder.body(row.body)])
        except InputError as error:
            raise error.at(Place(key=f"{piece.name} row {row.number}")) from error
        rows.append(_laid(row, keys, block, order))
    return tuple(rows)


def _first_order(piece: Piece, row: Row, done: Mapping[str, tuple[RowFabric, ...]]) -> Ints:
    """The places that a piece begins on, in the order met: none, or an edge of an earlier piece."""
    if not piece.bases:
        return np.zeros(0, np.int32)
    below = _base_rows(piece.bases[0], piece.name, done)
    if piece.bases[0].edge == "last_row":
        return place_order(row, below[-1].row, below[-1].places)
    places = below[0].places if piece.bases[0].edge == "foundation" else row_ends(below)
    order = np.arange(places, dtype=np.int32)
    return order[::-1].copy() if row.backwards else order


def _base_rows(
    base: Base, name: str, done: Mapping[str, tuple[RowFabric, ...]]
) -> tuple[RowFabric, ...]:
    if not done.get(base.piece):
        raise InputError(
            f'it is worked onto "{base.piece}", which is no piece before it'
            f"{near_names(base.piece, done)}",
            Place(key=name),
        )
    return done[base.piece]


def _laid(row: Row, keys: tuple[str, ...], block: Block, order: Ints) -> RowFabric:
    """A block laid on the places of the row below; what goes beyond them stands on nothing."""
    places = order.size
    stands = (block.at >= 0) & (block.at < places)
    first = np.full(block.at.size, -1, np.int32)
    first[stands] = order[block.at[stands]]
    taken = np.where(stands, np.minimum(block.taken, places - block.at), 0).astype(np.int32)
    skipped = np.zeros(places, np.int32)
    skipped[order[block.skipped[block.skipped < places]]] = 1
    return RowFabric(
        row=row,
        keys=keys,
        stitch=block.stitch,
        first=first,
        taken=taken,
        counted=np.bincount(block.made_by, minlength=block.stitch.size).astype(np.int32),
        made_by=block.made_by,
        used=_used(block.at, taken, order),
        skipped=skipped,
        overrun=max(0, block.takes - places),
        order=order,
    )


def _used(at: Ints, taken: Ints, order: Ints) -> Ints:
    """Times each place is worked into: every stitch adds one to each place it stands on."""
    starts = np.repeat(at, taken)
    within = np.arange(starts.size) - np.repeat(np.cumsum(taken) - taken, taken)
    return np.bincount(order[starts + within], minlength=order.size).astype(np.int32)
