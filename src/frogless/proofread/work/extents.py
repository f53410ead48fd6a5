"""How far acts go along an edge, and the places that acts after them need."""

from __future__ import annotations

from collections.abc import Sequence

from frogless.proofread.script.model import Span
from frogless.proofread.words.model import (
    Act,
    Bare,
    Extent,
    Increase,
    Into,
    Leave,
    Repeat,
    Skip,
    Target,
    Together,
    Turn,
)
from frogless.proofread.work.acts import (
    is_quiet,
)
from frogless.proofread.work.worker import Worker, is_named

PLAIN = Target()


def stop_for(worker: Worker, tail: Sequence[Act]) -> int:
    """Where the places begin that the acts in the tail need."""
    need = sum(needs(worker, act) for act in tail)
    need += worker.leave
    return worker.hand.from_end(worker.test(PLAIN), need, worker.hand.total)


def needs(worker: Worker, act: Act) -> int:
    """Places that an act takes by its words alone."""
    match act:
        case Bare(_, stitch, times, _):
            return worker.number(times) * worker.trade.takes(stitch or worker.open_stitch())
        case Into(_, body, target, extent):
            takes = max(
                (worker.trade.takes(a.stitch) for a in body if isinstance(a, Bare)), default=1
            )
            return _needs_of(worker, target, extent) * max(takes, 1)
        case Increase(_, _, _, extent, target):
            return _needs_of(worker, target, extent)
        case Together(_, _, places, extent, target):
            return _needs_of(worker, target, extent) * places
        case Skip(_, target, times):
            return 0 if is_named(target) else worker.number(times)
        case Leave(_, times):
            return worker.number(times, 0)
        case Repeat(_, body, extent, more, doubtful) if extent.kind == "times":
            return worker.times(extent, more=more, doubtful=doubtful) * sum(
                needs(worker, a) for a in body
            )
        case _:
            return 0


def _needs_of(worker: Worker, target: Target, extent: Extent) -> int:
    if extent.kind != "times" or target.what in ("same", "ring", "between", "row_end"):
        return 0
    if target.which in ("same", "first"):
        return 0
    if target.what == "top":
        last = worker.hand.runs[-1][0] if worker.hand.runs else None
        return int(last is not None and last.kind == "stitch" and last.chains > 0)
    if target.what in ("space", "corner"):
        return int(worker.way.spaces == "space") * worker.number(extent.times)
    return worker.number(extent.times)


def stop_of(worker: Worker, span: Span, extent: Extent, tail: Sequence[Act]) -> int:
    """Where an act stops that goes as far as the extent says."""
    target = extent.target or PLAIN
    if extent.kind == "but_last":
        if worker.trade.is_group(target.stitch) and not worker.has_of(target.stitch):
            return _before_last_group(worker, tail)
        count = worker.number(extent.times)
        end = stop_for(worker, [act for act in tail if isinstance(act, Leave)])
        return worker.hand.from_end(worker.test(target), count, end)
    if extent.kind == "until":
        # "Skip to next ch-2 sp, dc in each dc to next ch-2 sp": the one after that is meant.
        start = worker.hand.at + int(worker.skipped_to == worker.hand.at)
        at = worker.hand.next_at(worker.test(target), worker.hand.total, start)
        if at is None and target.what == "corner" and worker.has_kind("space"):
            return stop_for(worker, tail)  # along the last side of a round
        if at is None:
            worker.no_place(span, target)
        if at is None:
            return worker.hand.total
        return worker.hand.from_end(worker.test(PLAIN), worker.number(extent.times, 0), at)
    return stop_for(worker, tail)


def _before_last_group(worker: Worker, tail: Sequence[Act]) -> int:
    """ "Rep to last shell, sk 2 dc, sc in next dc, …", where shells have no name: as the tail needs."""
    need = sum(
        worker.number(act.times) if isinstance(act, Skip) else needs(worker, act) for act in tail
    )
    return worker.hand.from_end(worker.test(PLAIN), need, worker.hand.total)


def leave_last(worker: Worker, extent: Extent, tail: Sequence[Act]) -> None:
    """ "To last 6 sts, turn": what nothing works after that is left on purpose."""
    turns = any(isinstance(act, Turn) and act.turned for act in tail)
    if extent.kind == "but_last" and turns and all(is_quiet(act) for act in tail):
        worker.leave_rest = True
