"""A row program expanded to every stitch, with the places that each stands on."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, lru_cache

import numpy as np

from frogless.errors import InputError, Place
from frogless.fabric.blocks import Block, Builder, block_of
from frogless.fabric.model import Fabric, Ints, RowFabric, runs_back
from frogless.fabric.stretches import Stretch, stretch
from frogless.fabric.waiting import NO_PLACES, Waiting, at_next_row, places_of
from frogless.rows.count import CHAIN, SLIP_STITCH
from frogless.rows.nodes import Base, Piece, Program, Row
from frogless.stitches.load import dictionary
from frogless.stitches.model import Stitch

Worked = Mapping[str, tuple[RowFabric, ...]]

KEPT = 256
"""Pieces whose rows are remembered: an edit leaves most of them as they were, and the proof expands
each pattern twice more."""


@dataclass(frozen=True, slots=True)
class Offer:
    """What a row may work into: p places, numbered as `RowFabric` says.

    Args:
        order: (p,) int32, the numbers in the order met.
        origin: (p, 2) int32, by number: the row that made the place (its index in the piece, or
            -1 - the index of the base), and its number there.
        behind: (b, 2) int32, the places behind the loop.
    """

    order: Ints
    origin: Ints
    behind: Ints


def expand(program: Program, stitches: Mapping[str, Stitch]) -> Fabric:
    """Every stitch of a program.

    A row that asks for more places than there are, or leaves some unused, is expanded as far as it
    goes: what is wrong with it stands in `overrun`, `used`, `skipped` and `left`. So is a piece
    begun on a stretch that is longer than its edge.

    Raises:
        InputError: a stitch that `stitches` does not know, a base that is not an earlier piece, or
            a row that it does not have.
    """
    builder = _of_dictionary() if stitches is dictionary() else _builder(stitches)
    done = _all(program.pieces, builder)
    return Fabric(done, {piece.name: piece.colour for piece in program.pieces})


def _builder(stitches: Mapping[str, Stitch]) -> Builder:
    keys = (*stitches, *(key for key in (CHAIN, SLIP_STITCH) if key not in stitches))
    return Builder(stitches, keys, {key: i for i, key in enumerate(keys)})


@cache
def _of_dictionary() -> Builder:
    """The builder of the program's own stitches, which never change."""
    return _builder(dictionary())


def _all(pieces: tuple[Piece, ...], builder: Builder) -> Worked:
    """The rows of some pieces, each of which may stand on those before it."""
    return {
        piece.name: _last(pieces[: index + 1] if piece.bases else (piece,), builder)
        for index, piece in enumerate(pieces)
    }


@lru_cache(maxsize=KEPT)
def _last(pieces: tuple[Piece, ...], builder: Builder) -> tuple[RowFabric, ...]:
    """The rows of the last of some pieces; it may stand on the others."""
    return _piece(pieces[-1], builder, _all(pieces[:-1], builder))


def place_order(row: Row, below: Row, places: int) -> Ints:
    """The places that `below` made, in the order in which `row` meets them, when none are left.

    Returns:
        (places,) int32.
    """
    return at_next_row(Waiting(places_of(0, places), NO_PLACES), row, below, closed=True).ahead[
        :, 1
    ]


def _piece(piece: Piece, builder: Builder, done: Worked) -> tuple[RowFabric, ...]:
    rows: list[RowFabric] = []
    waiting = Waiting(NO_PLACES, NO_PLACES)
    for index, row in enumerate(piece.rows):
        if rows:
            waiting = at_next_row(waiting, row, rows[-1].row, closed=piece.closed)
            offer = _offer(waiting, index - 1, rows[-1].places)
        else:
            offer = _first_offer(piece, row, done)
        try:
            block = block_of(row.start, row.body, builder)
        except InputError as error:
            raise error.at(Place(key=f"{piece.name} row {row.number}")) from error
        rows.append(_laid(row, builder.keys, block, offer))
        waiting = _edge_after(rows[-1], index, offer)
    return tuple(rows)


def _offer(waiting: Waiting, below: int, places: int) -> Offer:
    """The places ahead, numbered: those of the row below as it made them, then the others."""
    of_below = waiting.ahead[:, 0] == below
    order = waiting.ahead[:, 1].copy()
    others = waiting.ahead[~of_below]
    order[~of_below] = places + np.arange(others.shape[0], dtype=np.int32)
    origin = np.concatenate((places_of(below, places), others))
    return Offer(order, origin, waiting.behind)


def _first_offer(piece: Piece, row: Row, done: Worked) -> Offer:
    """The places that a piece begins on: none, or stretches of edges of earlier pieces."""
    orders, origins, reached = [], [], 0
    for index, base in enumerate(piece.bases):
        found = stretch(base, done, piece.name)
        orders.append(reached + _met(found, base, row, done))
        origins.append(places_of(-1 - index, found.size))
        reached += found.size
    if not orders:
        return Offer(np.zeros(0, np.int32), NO_PLACES, NO_PLACES)
    backwards = row.backwards and all(base.edge != "last_row" for base in piece.bases)
    order = np.concatenate(orders)
    return Offer(order[::-1].copy() if backwards else order, np.concatenate(origins), NO_PLACES)


def _met(found: Stretch, base: Base, row: Row, done: Worked) -> Ints:
    """The places of one stretch in the order met; on a last row the sides of the rows decide."""
    below = done[base.piece][-1].row
    if base.edge == "last_row" and not base.first and base.count is None:
        return place_order(row, below, found.size)
    order = np.arange(found.size, dtype=np.int32)
    is_turned = base.edge == "last_row" and runs_back(row) != runs_back(below)
    return order[::-1].copy() if is_turned else order


def _laid(row: Row, keys: tuple[str, ...], block: Block, offer: Offer) -> RowFabric:
    """A block laid on the places offered; what goes beyond them stands on nothing."""
    order, places = offer.order, offer.order.size
    stands = (block.at >= 0) & (block.at < places)
    first = np.full(block.at.size, -1, np.int32)
    first[stands] = order[block.at[stands]]
    taken = np.where(stands, np.minimum(block.taken, places - block.at), 0).astype(np.int32)
    laid = RowFabric(
        row=row,
        keys=keys,
        stitch=block.stitch,
        first=first,
        taken=taken,
        counted=np.bincount(block.made_by, minlength=block.stitch.size).astype(np.int32),
        made_by=block.made_by,
        used=_used(block.at, taken, order),
        skipped=_flagged(block.skipped, order),
        left=_flagged(block.left, order),
        overrun=max(0, block.takes - places),
        order=order,
        from_row=offer.origin[:, 0],
        from_place=offer.origin[:, 1],
        behind=offer.behind.shape[0],
        changes=block.changes,
    )
    for array in laid.arrays:  # what is remembered is nobody's to change
        array.flags.writeable = False
    return laid


def _flagged(met: Ints, order: Ints) -> Ints:
    """1 for each place among those met, as (p,) int32."""
    flags = np.zeros(order.size, np.int32)
    flags[order[met[met < order.size]]] = 1
    return flags


def _edge_after(row: RowFabric, index: int, offer: Offer) -> Waiting:
    """What a row made lies behind the loop, what it left for later still ahead."""
    left = row.order[row.left[row.order] > 0]
    made = places_of(index, row.places)
    return Waiting(np.concatenate((offer.behind, made)), offer.origin[left])


def _used(at: Ints, taken: Ints, order: Ints) -> Ints:
    """Times each place is worked into: every stitch adds one to each place it stands on."""
    starts = np.repeat(at, taken)
    within = np.arange(starts.size) - np.repeat(np.cumsum(taken) - taken, taken)
    return np.bincount(order[starts + within], minlength=order.size).astype(np.int32)
