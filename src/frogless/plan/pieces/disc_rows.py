"""Where in the rounds of a disc the increases fall, and the nodes that work them.

A round is a *spread*: how many stitches each place of the round below takes. Spreads are reckoned
as seen from the right side, so that turned rounds keep them where they belong.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TypeVar

from frogless.plan.pieces.rounds import Manner
from frogless.rows.nodes import Into, Node, Side, Start, Work
from frogless.rows.spread import even_spread, worked_over

Spread = tuple[int, ...]
T = TypeVar("T")

QUARTER, TRIES = 0.25, 8


@dataclass(frozen=True, slots=True)
class Worked:
    """A round as it is worked: how it starts and its nodes."""

    start: Start
    body: tuple[Node, ...]


def staggered(counts: Sequence[int], number: int, how: Manner) -> Iterator[Spread]:
    """The spread of each round after the first, its increases between those of the round below.

    They begin a quarter of a gap after the join in one round and three quarters in the next, so
    that none lies on the join, and lie half a gap apart. Where two rounds add different numbers,
    the beginning that stacks the fewest is taken.

    Args:
        counts: after each round; only rounds that grow, or stay.
        number: of the first round that is spread.
    """
    above = [False] * counts[0]
    turn = 0
    for r, (before, after) in enumerate(itertools.pairwise(counts), number):
        if after == before:
            spread: Spread = (1,) * before
        else:
            nominal = QUARTER if turn % 2 == 0 else 1 - QUARTER
            spread = _least_stacked(above, after - before, nominal)
            turn += 1
        yield spread
        above = _left(grown(spread), _past_join(spread, r, how))


def _least_stacked(above: Sequence[bool], add: int, nominal: float) -> Spread:
    phases = [(nominal + t / TRIES) % 1 for t in range(TRIES)]
    spreads = [spread_at(len(above), add, phase) for phase in phases]
    return min(spreads, key=lambda s: stacked(above, s))


def spread_at(places: int, add: int, phase: float) -> Spread:
    """`add` more stitches over the places, evenly, begun at that part of a gap after the join.

    Gaps differ by one at most (a rotation of the maximally even set).
    """
    if add > places:
        return even_spread(places + add, places)
    more = [0] * places
    for i in range(add):
        more[int((i + phase) * places / add + 1e-9)] += 1
    return tuple(1 + m for m in more)


def grown(spread: Spread) -> list[bool]:
    """For each stitch of a round whether it shares its place with another."""
    return [many > 1 for many in spread for _ in range(many)]


def stacked(above: Sequence[bool], spread: Spread) -> int:
    """Increases of a round that stand on stitches of an increase."""
    return sum(many > 1 and was_increase for was_increase, many in zip(above, spread, strict=True))


def cornered(counts: Sequence[int], corners: int, number: int, how: Manner) -> Iterator[Spread]:
    """The spread of each round after the first, its increases stacked at so many corners.

    What a corner adds is worked into the middle stitch of the corner below; where there are two
    middle ones, into one and the other by turns.
    """
    at = [int((i + 0.5) * counts[0] / corners) for i in range(corners)]
    for r, (before, after) in enumerate(itertools.pairwise(counts), number):
        more = even_spread(after - before, corners)
        spread = [1] * before
        for place, many in zip(at, more, strict=True):
            spread[place] += many
        yield tuple(spread)
        middles = [p + sum(more[:i]) + (more[i] + r % 2) // 2 for i, p in enumerate(at)]
        order = _left(range(after), _past_join(spread, r, how))
        at = sorted(order.index(middle) for middle in middles)


def _past_join(spread: Sequence[int], number: int, how: Manner) -> int:
    """Stitches beside a counted chain that come to lie on the other side of the join.

    On a wrong-side round they are made after the chain and met, from the right side, before it.
    """
    return spread[0] - 1 if how.chain_counts and how.side(number) == "WS" else 0


def _left(made: Sequence[T], past: int) -> list[T]:
    """What the next round meets with the right side facing."""
    return [made[0], *made[1 + past :], *made[1 : 1 + past]]


def worked(stitch: str, spread: Spread, side: Side, how: Manner, chains: int) -> Worked:
    """The round that works a spread, with what its turning chain stands for.

    A counted chain stands on place 0 in either direction; where more is worked there, it shares.
    """
    met = _as_met(spread, side, how)
    if how.spiral:
        return Worked(Start(), worked_over(stitch, met))
    if not how.chain_counts:
        return Worked(Start(chains), worked_over(stitch, met))
    rest = worked_over(stitch, met[1:])
    if met[0] == 1:
        return Worked(Start(chains, counts=True), rest)
    shared = Into((Work(stitch, met[0] - 1),))
    return Worked(Start(chains, counts=True, shares=True), (shared, *rest))


def first_round(stitch: str, count: int, how: Manner, chains: int) -> Worked:
    """All stitches of the first round into the ring."""
    if how.spiral:
        return Worked(Start(), (Into((Work(stitch, count),)),))
    counted = int(how.chain_counts)
    start = Start(chains, counts=how.chain_counts, shares=how.chain_counts)
    return Worked(start, (Into((Work(stitch, count - counted),)),))


def _as_met(spread: Spread, side: Side, how: Manner) -> Spread:
    if side == "RS":
        return spread
    if how.chain_counts:
        return (spread[0], *reversed(spread[1:]))
    return tuple(reversed(spread))
