"""Bodies of rows as arrays, counted from their own start: what `expand` lays on the row below.

A block is built once for a body and laid wherever it is worked; a repeat is tiled, not walked.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from frogless.fabric.model import Ints
from frogless.rows.count import CHAIN, SLIP_STITCH
from frogless.rows.nodes import (
    Chain,
    Change,
    Into,
    Leave,
    Node,
    Repeat,
    Skip,
    Start,
    Together,
    Work,
)
from frogless.stitches.load import stitch_named
from frogless.stitches.model import Stitch

_NONE: Ints = np.zeros(0, np.int32)

KEPT = 1024
"""Blocks that are remembered: bodies often recur, within a piece and from one edit to the next."""


@dataclass(frozen=True, slots=True)
class Block:
    """n stitches in the order worked, with places counted in the order they are met, from 0.

    Args:
        stitch: (n,) int32, index of the dictionary key.
        at: (n,) int32, first place it stands on, -1 for none.
        taken: (n,) int32, places it stands on.
        made_by: (m,) int32, for each place left, the stitch that made it.
        skipped: (s,) int32, places passed over on purpose.
        left: (l,) int32, places left for a later row.
        takes: places accounted for in all.
        changes: each change of colour with how many stitches are made before it.
    """

    stitch: Ints
    at: Ints
    taken: Ints
    made_by: Ints
    skipped: Ints
    left: Ints
    takes: int
    changes: tuple[tuple[int, Change], ...] = ()


NOTHING = Block(_NONE, _NONE, _NONE, _NONE, _NONE, _NONE, 0)


@dataclass(frozen=True, slots=True, eq=False)
class Builder:
    """Builds blocks of the stitches of one dictionary; alike only to itself.

    Args:
        keys: of the stitches, in the order of the numbers that blocks know them by.
        index: the number of each.
    """

    stitches: Mapping[str, Stitch]
    keys: tuple[str, ...]
    index: Mapping[str, int]

    def start(self, start: Start) -> Block:
        """The block of the slip stitches and the turning chain that a row begins with.

        A chain that shares its place takes none: the body's first stitch meets the same one.
        """
        return laid_end_to_end([self._across(start.across), self._turning_chain(start)])

    def _across(self, times: int) -> Block:
        if not times:
            return NOTHING
        slip, one = _filled(times, self.index[SLIP_STITCH]), _filled(times, 1)
        at = np.arange(times, dtype=np.int32)
        return Block(slip, at, one, _NONE, _NONE, _NONE, times)

    def _turning_chain(self, start: Start) -> Block:
        if not start.chains:
            return NOTHING
        at, taken = _filled(start.chains, -1), _filled(start.chains, 0)
        made_by = _NONE
        if start.counts:
            at[-1], taken[-1] = 0, 1
            made_by = _filled(1, start.chains - 1)
        chain = _filled(start.chains, self.index[CHAIN])
        takes = int(start.counts and not start.shares)
        return Block(chain, at, taken, made_by, _NONE, _NONE, takes)


@lru_cache(maxsize=KEPT)
def block_of(start: Start, body: tuple[Node, ...], builder: Builder) -> Block:
    """The block of a row: how it starts, and its body.

    Raises:
        InputError: a stitch that the dictionary does not know.
    """
    return laid_end_to_end([builder.start(start), _body(body, builder)])


@lru_cache(maxsize=KEPT)
def _body(body: tuple[Node, ...], builder: Builder) -> Block:
    return laid_end_to_end([_node(builder, node) for node in body])


def laid_end_to_end(blocks: Iterable[Block]) -> Block:
    """Blocks one after the other as one block."""
    parts = [block for block in blocks if block.stitch.size or block.takes or block.changes]
    if len(parts) < 2:
        return parts[0] if parts else NOTHING
    made, takes = 0, 0
    at, made_by, skipped, left = [], [], [], []
    changes: list[tuple[int, Change]] = []
    for block in parts:
        at.append(np.where(block.at < 0, -1, block.at + takes))
        made_by.append(block.made_by + made)
        skipped.append(block.skipped + takes)
        left.append(block.left + takes)
        changes += ((made + after, change) for after, change in block.changes)
        made += block.stitch.size
        takes += block.takes
    return Block(
        np.concatenate([block.stitch for block in parts]),
        np.concatenate(at).astype(np.int32, copy=False),
        np.concatenate([block.taken for block in parts]),
        np.concatenate(made_by).astype(np.int32, copy=False),
        np.concatenate(skipped).astype(np.int32, copy=False),
        np.concatenate(left).astype(np.int32, copy=False),
        takes,
        tuple(changes),
    )


def _node(builder: Builder, node: Node) -> Block:
    match node:
        case Work():
            return _work(builder, node)
        case Into():
            return _into(builder, node)
        case Together():
            return _together(builder, node)
        case Skip():
            places = np.arange(node.times, dtype=np.int32)
            return Block(_NONE, _NONE, _NONE, _NONE, places, _NONE, node.times)
        case Leave():
            places = np.arange(node.times, dtype=np.int32)
            return Block(_NONE, _NONE, _NONE, _NONE, _NONE, places, node.times)
        case Chain():
            return _chain(builder, node)
        case Repeat():
            return _repeat(builder, node)
        case Change():
            return Block(_NONE, _NONE, _NONE, _NONE, _NONE, _NONE, 0, ((0, node),))


def _work(builder: Builder, node: Work) -> Block:
    stitch = stitch_named(node.stitch, builder.stitches)
    count = np.arange(node.times, dtype=np.int32)
    return Block(
        _filled(node.times, builder.index[node.stitch]),
        count * stitch.stands_on if stitch.stands_on else _filled(node.times, -1),
        _filled(node.times, stitch.stands_on),
        np.repeat(count, stitch.leaves),
        _NONE,
        _NONE,
        node.times * stitch.stands_on,
    )


def _into(builder: Builder, node: Into) -> Block:
    inner = _body(node.body, builder)
    stands = (inner.taken > 0).astype(np.int32)
    return Block(inner.stitch, stands - 1, stands, inner.made_by, _NONE, _NONE, 1, inner.changes)


def _together(builder: Builder, node: Together) -> Block:
    stitch = stitch_named(node.stitch, builder.stitches)
    return Block(
        _filled(1, builder.index[node.stitch]),
        _filled(1, 0 if node.places else -1),
        _filled(1, node.places),
        _filled(stitch.leaves, 0),
        _NONE,
        _NONE,
        node.places,
    )


def _chain(builder: Builder, node: Chain) -> Block:
    every = np.arange(node.times, dtype=np.int32)
    return Block(
        _filled(node.times, builder.index[CHAIN]),
        _filled(node.times, -1),
        _filled(node.times, 0),
        every if node.each else every[:1],
        _NONE,
        _NONE,
        0,
    )


def _repeat(builder: Builder, node: Repeat) -> Block:
    inner = _body(node.body, builder)
    turn = np.arange(node.times, dtype=np.int32)[:, None]
    return Block(
        np.tile(inner.stitch, node.times),
        np.where(inner.at < 0, np.int32(-1), inner.at + turn * inner.takes).ravel(),
        np.tile(inner.taken, node.times),
        (inner.made_by + turn * inner.stitch.size).ravel(),
        (inner.skipped + turn * inner.takes).ravel(),
        (inner.left + turn * inner.takes).ravel(),
        node.times * inner.takes,
        tuple(
            (again * inner.stitch.size + after, change)
            for again in range(node.times)
            for after, change in inner.changes
        ),
    )


def _filled(size: int, value: int) -> Ints:
    return np.full(size, value, np.int32)
