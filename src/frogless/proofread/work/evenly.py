"""Stitches spread evenly, and stitches made fewer."""

from __future__ import annotations

from collections.abc import Sequence

from frogless.proofread.words.model import (
    Act,
    Evenly,
)
from frogless.proofread.work.edge import Place
from frogless.proofread.work.extents import PLAIN, stop_for
from frogless.proofread.work.worker import Worker


def evenly(worker: Worker, act: Evenly, tail: Sequence[Act]) -> None:
    """So many more or fewer than there are, or so many in all, up to where the next acts begin."""
    stitch = act.stitch or worker.open_stitch()
    worker.stitch = act.stitch or worker.stitch
    if not worker.hand.known:
        _evenly_over_unknown(worker, act, stitch)
        return
    stop = stop_for(worker, tail)
    if act.over is not None:
        stop = min(stop, worker.hand.at + worker.number(act.over))
    ahead = worker.hand.ahead(worker.test(PLAIN), stop)
    done = not ahead and bool(worker.out)
    if act.total is not None:
        count = worker.number(act.total)
    else:
        count = (0 if done else ahead) + act.sense * worker.number(act.change, 0)
    worker.hand.pass_to(stop)
    if count >= 0:
        worker.put(worker.trade.leaves(stitch) or ((Place("stitch", stitch), 1),), count)
    else:
        _unmake(worker, -count)


def _evenly_over_unknown(worker: Worker, act: Evenly, stitch: str) -> None:
    worker.vague = True
    if act.total is None:
        worker.open = True
    else:
        worker.put(worker.trade.leaves(stitch), worker.number(act.total))


def _unmake(worker: Worker, count: int) -> None:
    """Fewer of what was just worked: "sc in each st around, decreasing 6 evenly"."""
    while count and worker.out:
        place, length = worker.out.pop()
        if length > count:
            worker.out.append((place, length - count))
        count -= min(count, length)
