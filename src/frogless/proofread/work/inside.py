"""What stitches leave: one of a kind, or all of a body that is worked into one place."""

from __future__ import annotations

from collections.abc import Sequence

from frogless.proofread.words.model import (
    Act,
    Bare,
    Chain,
    Increase,
    Into,
    Repeat,
    Together,
)
from frogless.proofread.work.acts import first_stitch
from frogless.proofread.work.edge import MOST_PLACES, Place, Run
from frogless.proofread.work.hand import TooLongError
from frogless.proofread.work.trade import tagged
from frogless.proofread.work.worker import Worker

#: How deep stitches may be told in terms of other stitches of the pattern.
DEEPEST = 6


def unit(worker: Worker, stitch: str, depth: int = 0) -> tuple[Run, ...]:
    """The places that one of a stitch leaves."""
    key = stitch or worker.open_stitch()
    own = worker.trade.body(key)
    if own is not None and depth < DEEPEST:
        runs = tuple(inside(worker, own.body, depth + 1))
        if sum(n for place, n in runs if place.kind == "stitch") == own.leaves:
            return tagged(runs, own.key)
        return tagged(worker.trade.leaves(key), own.key)
    if key == "chain":
        return ((Place("space", chains=1), 1),)
    return worker.trade.leaves(key)


def inside(worker: Worker, body: Sequence[Act], depth: int = 0) -> list[Run]:
    """The places that a body leaves when all of it is worked into one place."""
    found: list[Run] = []
    for index, act in enumerate(body):
        worker.step()
        match act:
            case Bare(_, stitch, times, _):
                n = worker.number(times)
                note(worker, stitch, n, depth)
                found += many(worker, unit(worker, stitch, depth), n)
            case Chain(_, times, True, counts_as) if not found:
                n = worker.number(times)
                stitch = counts_as or first_stitch(body, worker.trade)
                found.append((Place("stitch", stitch, chains=n), 1))
            case Chain(_, times):
                n = worker.number(times)
                if n:
                    corner = 0 < index < len(body) - 1
                    found.append((Place("space", chains=n, corner=corner), 1))
            case Increase(_, stitch, makes):
                found += many(worker, unit(worker, stitch, depth), makes)
            case Together(_, stitch, _):
                found += unit(worker, stitch, depth)
            case Into(_, inner, _, extent) if depth < DEEPEST:
                n = worker.number(extent.times) if extent.kind == "times" else 1
                found += many(worker, inside(worker, inner, depth + 1), n)
            case Repeat(_, inner, extent, more, doubtful) if depth < DEEPEST * 3:
                n = worker.times(extent, more=more, doubtful=doubtful)
                found += many(worker, inside(worker, inner, depth + 1), n)
            case _:
                pass
    return found


def many(worker: Worker, runs: Sequence[Run], times: int) -> Sequence[Run]:
    """The places so often, in as few runs as may be."""
    if times * sum(n for _, n in runs) > MOST_PLACES:
        raise TooLongError
    if len(runs) == 1 and runs[0][0].ends == 0 and runs[0][0].kind != "space":
        return [(runs[0][0], runs[0][1] * times)]
    return list(runs) * times


def note(worker: Worker, stitch: str, times: int, depth: int) -> None:
    """Count a stitch that is known by a name of its own, and remember which stitch came last."""
    key = stitch or worker.open_stitch()
    if stitch and depth == 0:
        worker.stitch = stitch
    if worker.trade.is_group(key) or not worker.trade.leaves(key):
        worker.count(key, times)
