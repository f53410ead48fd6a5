"""A row worked over an edge, act by act."""

from __future__ import annotations

from collections.abc import Sequence

from frogless.proofread.script.model import Span
from frogless.proofread.words.model import (
    Act,
    Aside,
    Bare,
    Chain,
    Evenly,
    Extent,
    Increase,
    Into,
    Leave,
    Met,
    Numbers,
    OwnStitch,
    Repeat,
    Skip,
    Together,
    Turn,
)
from frogless.proofread.work.acts import (
    every,
    is_quiet,
    together,
)
from frogless.proofread.work.edge import Place
from frogless.proofread.work.evenly import evenly
from frogless.proofread.work.extents import PLAIN, stop_for, stop_of
from frogless.proofread.work.inside import DEEPEST, inside, many, unit
from frogless.proofread.work.places import skip, skip_to, spread
from frogless.proofread.work.repeats import repeat, so_often
from frogless.proofread.work.worker import BUNCH, Worker, is_named

_ONCE = Extent("times")


def work(worker: Worker, acts: Sequence[Act]) -> None:
    """All acts of a row in their order."""
    acts = together(acts)
    for index, act in enumerate(acts):
        do(worker, act, acts[index + 1 :])


def do(worker: Worker, act: Act, tail: Sequence[Act]) -> None:
    """One act; `tail` is what comes after it in the same body."""
    worker.step()
    match act:
        case Bare():
            _bare(worker, act, tail)
        case Into():
            _into(worker, act, tail)
        case Met():
            _met(worker, act, tail)
        case Increase(span, stitch, makes, extent, target):
            key = stitch or worker.open_stitch()
            worker.stitch = stitch or worker.stitch
            spread(worker, span, target, extent, many(worker, unit(worker, key), makes), 1, tail)
        case Together(span, stitch, places, extent, target):
            key = stitch or worker.open_stitch()
            worker.stitch = key or worker.stitch
            runs = ((Place("stitch", key), 1),)
            spread(worker, span, target, extent, runs, max(places, 1), tail)
        case Chain(_, times):
            count = worker.number(times)
            if count:
                worker.put([(Place("space", chains=count), 1)])
        case Skip(_, target, to=True):
            skip_to(worker, target)
        case Skip(span, target, times):
            skip(worker, span, target, worker.number(times), tail)
        case Leave(_, times):
            worker.leave_rest = worker.leave_rest or times is None
            worker.leave += worker.number(times, 0)
        case Repeat():
            repeat(worker, act, tail)
        case Evenly():
            evenly(worker, act, tail)
        case Turn(_, turned):
            worker.lost = worker.lost or (turned and worker.begun and _takes_places(tail))
        case Aside(_, "join_piece"):
            # the places of another piece: what is made is known where all of it is counted
            worker.vague = worker.vague or _is_counted(tail)
            worker.lost = worker.lost or (_takes_places(tail) and not _is_counted(tail))
        case _:
            pass
    worker.begun = worker.begun or not is_quiet(act)


def _bare(worker: Worker, act: Bare, tail: Sequence[Act]) -> None:
    count = worker.number(act.times)
    key = act.stitch or worker.open_stitch()
    worker.stitch = act.stitch or worker.stitch
    takes = worker.trade.takes(key)
    own = worker.trade.body(key)
    if own is not None and takes > 1:
        _over_several(worker, own, count)
        return
    leaves = unit(worker, key)
    if not takes:
        worker.count(key, 0 if leaves else count)
        worker.put(leaves, count)
        return
    grouped = worker.trade.is_group(key)
    if count > 1 and worker.way.one and not act.written_after and not grouped and act.times:
        spread(worker, act.span, PLAIN, _ONCE, many(worker, leaves, count), takes, tail)
        return
    worker.count(key, count if grouped else 0)
    spread(worker, act.span, PLAIN, _times(count), leaves, takes, tail)


def _over_several(worker: Worker, own: OwnStitch, times: int) -> None:
    """A group of the pattern's own that is told over several places: its acts in their order."""
    if worker.nested < DEEPEST:
        worker.nested += 1
        worker.count(own.key, times)
        so_often(worker, own.body, times)
        worker.nested -= 1


def _into(worker: Worker, act: Into, tail: Sequence[Act]) -> None:
    extras = len(worker.extras)
    runs = inside(worker, act.body)
    takes = max((worker.trade.takes(a.stitch) for a in act.body if isinstance(a, Bare)), default=1)
    if sum(n for p, n in runs if p.kind == "stitch") > 1 and len(worker.extras) == extras:
        worker.count(BUNCH, 1)
    each = worker.extras[extras:]
    times = spread(worker, act.span, act.target, act.extent, runs, max(takes, 1), tail)
    if each and times != 1:
        worker.extras[extras:] = [(key, n * times) for key, n in each]


def _met(worker: Worker, act: Met, tail: Sequence[Act]) -> None:
    """Each place up to the end as the part says that it fits; of two the later."""
    worker.free = False
    if not worker.hand.known:
        worker.open = True
        return
    stop = stop_of(worker, act.span, act.extent, tail)
    parts = [
        (worker.test(p.target), inside(worker, p.body), p.target, _stop_of_part(worker, p, stop))
        for p in act.parts
    ]
    for test, _, target, _ in parts:
        if is_named(target) and worker.hand.next_at(test, worker.hand.total) is None:
            worker.no_place(act.span, target)
    while worker.hand.at < stop and (here := worker.hand.here()) is not None:
        worker.step()
        met = [(runs, end) for test, runs, _, end in parts if end > worker.hand.at and test(here)]
        ends = min((end for *_, end in parts if end > worker.hand.at), default=stop)
        count = min(worker.hand.left_in_run(), ends - worker.hand.at)
        runs = met[-1][0] if met else None
        if runs is None:
            worker.hand.pass_to(worker.hand.at + count)
        else:
            worker.hand.forward(count)
            worker.hand.last = here
            worker.put(runs, count)


def _stop_of_part(worker: Worker, part: Into, stop: int) -> int:
    """Where one part stops, "sc in each dc to last 2 sts", though others go on."""
    if part.extent.kind != "but_last":
        return stop
    return min(stop_of(worker, part.span, part.extent, ()), stop)


def finish(worker: Worker) -> None:
    """Work what stands before markers: where these are is not known, how many there are is."""
    if worker.slack and worker.hand.known:
        rest = worker.hand.ahead(worker.test(PLAIN), stop_for(worker, ()))
        worker.hand.take(worker.test(PLAIN), rest, worker.hand.total)
        worker.put(worker.slack, rest)


def _times(count: int) -> Extent:
    return Extent("times", Numbers((count,), Span(0, 0)))


def _is_counted(acts: Sequence[Act]) -> bool:
    extents = (getattr(act, "extent", None) for act in every(acts))
    return all(extent is None or extent.kind == "times" for extent in extents)


def _takes_places(acts: Sequence[Act]) -> bool:
    return any(isinstance(act, Bare | Into | Increase | Together | Repeat | Evenly) for act in acts)
