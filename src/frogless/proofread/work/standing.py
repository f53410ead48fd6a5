"""Where a pattern stands after a row: the edges that it may have come to, and the way there."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from frogless.proofread.work.edge import NOTHING, OF_PIECE, RING, UNKNOWN, Edge
from frogless.proofread.work.model import Problem, Worked
from frogless.proofread.work.steps import Begin, Lose, MakeRing, TakeIn

#: Edges that are followed at once.
MOST_EDGES = 4
#: What a second thing that is wrong in the same row weighs, an edge that nobody counts, a reading
#: that is not the custom's.
MORE, UNSAID, OTHER = 0.1, 0.5, 0.01
#: A chain that is joined into a ring with no word of what is worked into it has no more chains.
_RING_CHAINS = 16


@dataclass(frozen=True, slots=True)
class Trail:
    """The rows that led to an edge, the last one first."""

    row: Worked
    before: Trail | None


@dataclass(frozen=True, slots=True)
class Standing:
    """One edge that the work may have come to.

    Args:
        below: stitches that it counts as; None when not known.
        rest: places that were left for later and can be reached.
        left: places that the last row left where it turned: the next row goes away from them.
        turn: whether the work was turned after it; None where nothing is said.
        cost: what is wrong on the way there.
        block: the edge at the start of rows of which nobody says how often they are worked.
        back: the last row was worked back along the row below it.
    """

    edge: Edge = NOTHING
    below: int | None = None
    rest: Edge | None = None
    left: Edge | None = None
    turn: bool | None = None
    cost: float = 0.0
    trail: Trail | None = None
    block: Edge | None = None
    back: bool = False


Standings = Sequence[Standing]


def weight(problems: Sequence[Problem]) -> float:
    """What is wrong with one row: much more than one thing being wrong is than two."""
    return 1.0 + MORE * (len(problems) - 1) if problems else 0.0


def best_of(standings: Standings) -> Standing:
    """The one with the least that is wrong on the way there."""
    return min(standings, key=lambda each: each.cost)


def fewest(standings: Standings) -> list[Standing]:
    """The best few, each edge once."""
    if len(standings) == 1:
        return list(standings)
    best: dict[tuple[Edge, bool | None], Standing] = {}
    for each in sorted(standings, key=lambda one: one.cost):
        best.setdefault((each.edge, each.turn), each)
    return list(best.values())[:MOST_EDGES]


def anew(standings: Standings) -> list[Standing]:
    """Nothing is worked yet."""
    best = best_of(standings)
    return [Standing(cost=best.cost, trail=best.trail)]


def after(step: Begin | TakeIn | Lose | MakeRing, standings: Standings) -> list[Standing]:
    """The standings after a step that works no row."""
    match step:
        case Begin(True):
            best = best_of(standings)
            unknown = Standing(UNKNOWN, cost=best.cost + 1 + MORE, trail=best.trail)
            return [*standings[: MOST_EDGES - 1], unknown]
        case Begin(rejoins=True):
            return _on_what_is_left(standings, led=step.led)
        case Begin():
            return anew(standings)
        case Lose(skipped):
            return [_passed(each, skipped) for each in standings]
        case MakeRing():
            return [replace(each, edge=RING) for each in standings]
        case TakeIn(turn, ring):
            return [_taken_in(each, turn, ring=ring) for each in standings]


def _passed(standing: Standing, skipped: int) -> Standing:
    """On the places that were left, so many of them passed over; not known where there are none."""
    left = standing.left or standing.rest
    total = sum(count for _, count in left.runs) if left else 0
    if left is None or not 0 < skipped < total:
        return replace(standing, edge=OF_PIECE, below=None)
    after, at = [], 0
    for place, count in left.runs:
        length = min(count, at + count - skipped)
        after += [(place, length)] if length > 0 else []
        at += count
    return replace(standing, edge=Edge(tuple(after)), below=total - skipped, rest=None, left=None)


def _on_what_is_left(standings: Standings, *, led: bool) -> list[Standing]:
    """Begun on the places that the piece before left; on others only when it does not come out."""
    best = best_of(standings)
    left = best.left or best.rest
    if left is None:
        return anew(standings)
    unknown = Standing(UNKNOWN, cost=best.cost + 1 + UNSAID, trail=best.trail)
    rest = left if led else None
    return [Standing(left, rest=rest, cost=best.cost, trail=best.trail), unknown]


def _taken_in(standing: Standing, turn: bool | None, *, ring: bool) -> Standing:
    edge = standing.edge
    if ring and edge.begun == "chain" and sum(n for _, n in edge.runs) <= _RING_CHAINS:
        edge = edge._replace(begun="ring")
    return replace(standing, edge=edge, turn=standing.turn if turn is None else turn)


def is_alike(some: Standings, others: Standings) -> bool:
    """Whether the next rows come to the same over both, whatever was wrong on the way."""
    return len(some) == len(others) and all(
        _seen(a) == _seen(b) and abs((a.cost - some[0].cost) - (b.cost - others[0].cost)) < _LEAST
        for a, b in zip(some, others, strict=True)
    )


def _seen(standing: Standing) -> tuple[object, ...]:
    """What the next row sees of it."""
    row = standing.trail.row if standing.trail else None
    last = (row.told, row.verdict) if row else None
    return (
        standing.edge,
        standing.below,
        standing.rest,
        standing.left,
        standing.turn,
        standing.back,
        standing.block,
        last,
    )


_LEAST = 1e-6


def rows_of(standing: Standing) -> list[Worked]:
    """The rows that led to an edge, in the order worked."""
    found: list[Worked] = []
    trail = standing.trail
    while trail is not None:
        found.append(trail.row)
        trail = trail.before
    return found[::-1]
