"""Stitches worked into the places that are meant."""

from __future__ import annotations

from collections.abc import Sequence

from frogless.proofread.script.model import Span
from frogless.proofread.words.model import (
    Act,
    Extent,
    Target,
)
from frogless.proofread.work.edge import MOST_PLACES, Place, Run
from frogless.proofread.work.extents import PLAIN, leave_last, stop_for, stop_of
from frogless.proofread.work.hand import Test
from frogless.proofread.work.model import Problem
from frogless.proofread.work.trade import TALL
from frogless.proofread.work.worker import Worker, is_named

#: So many stitches are not passed over by a word like "last".
_MANY_LEFT = 3
#: Stitches of one kind that a group may have in a row.
_MOST_OF_PETAL = 16


def spread(
    worker: Worker,
    span: Span,
    target: Target,
    extent: Extent,
    runs: Sequence[Run],
    takes: int,
    tail: Sequence[Act],
) -> int:
    """Work `runs` into the places that are meant, as far as the extent says.

    Returns:
        int: how many times it was worked.
    """
    once = _special(worker, span, target, extent, runs, takes, tail)
    if once is not None:
        return once
    test = worker.test(target)
    if not worker.hand.known:
        return _over_unknown(worker, extent, runs, takes)
    if extent.kind in ("times", "unsaid"):
        count = worker.number(extent.times) if extent.kind == "times" else 1
        places = count * takes
        if target.what == "chain" and not worker.has_kind("chain"):
            places = _spaces_for(worker, test, places)
        take(worker, span, target, test, places, stop_for(worker, ()))
        told_which = target.nth or target.of or worker.trade.is_group(target.stitch)
        if places == 1 and target.stitch and not told_which:
            note_group(worker)
        worker.put(runs, count)
        return count
    if extent.kind == "until" and extent.target and extent.target.what == "marked":
        if takes == 1 and not worker.slack:
            worker.slack = tuple(runs)
        return 0
    leave_last(worker, extent, tail)
    stop = stop_of(worker, span, extent, tail)
    many = worker.hand.ahead(test, stop)
    if not many and is_named(target) and not worker.hand.next_at(test, worker.hand.total):
        worker.no_place(span, target)
    count, rest = divmod(many, takes)
    worker.hand.take(test, count * takes, stop)
    worker.put(runs, count)
    if rest:
        worker.repeat_problem(span, takes, many)
    elif is_named(target):
        worker.hand.pass_to(stop)
    return count


def _spaces_for(worker: Worker, test: Test, chains: int) -> int:
    """Spaces that so many chains lie in, of a row that works into spaces by name as well."""
    at = worker.hand.next_at(test, worker.hand.total)
    space = next(iter(worker.hand.runs_from(at)), None) if at is not None else None
    return -(-chains // max(space[0].chains, 1)) if space else chains


def _special(
    worker: Worker,
    span: Span,
    target: Target,
    extent: Extent,
    runs: Sequence[Run],
    takes: int,
    tail: Sequence[Act],
) -> int | None:
    """Places that are not simply the next; None for those that are."""
    count = worker.number(extent.times) if extent.kind == "times" else 1
    if target.what == "from_hook":
        return from_hook(worker, span, target, extent, runs, takes, tail)
    if target.what == "space" and worker.hand.edge.begun == "ring" and not worker.has_kind("space"):
        target = Target("ring")  # "12 dc in loop"
    chainless = worker.hand.edge.begun == "ring" and not worker.has_kind("chain")
    if target.what == "ring" or (chainless and target == PLAIN):
        worker.into_ring = True
        worker.hand.pass_to(worker.hand.total)
        worker.put(runs, count)
        return count
    if target.what == "same" or target.which == "same":
        if _is_picot(worker, runs):
            close_picot(worker)
            return 1
        last = worker.hand.last
        if worker.free and last is not None:
            worker.hand.take(lambda p: p == last, 1, worker.hand.total)
        elif worker.free:
            take(worker, span, PLAIN, worker.test(PLAIN), 1, worker.hand.total)
        worker.free = False
        worker.put(runs, count)
        return count
    if target.which == "first" and target.what == "stitch":
        return _first(worker, span, target, runs, count, takes)
    worker.free = False
    if target.what == "skipped":
        worker.put(runs, count)
        return count
    if target.what == "between" and extent.kind == "end" and worker.hand.known:
        return spread(worker, span, PLAIN, extent, runs, takes, tail)
    if target.what in ("row_end", "between"):
        worker.vague = True
        worker.open = worker.open or extent.kind in ("end", "but_last", "until")
        worker.put(runs, count)
        return count
    if target.which == "last" and _is_picot(worker, runs):
        close_picot(worker)
        return 1
    if target.which == "last" and (is_named(target) or target.what == "top"):
        return _last(worker, span, target, runs, count)
    if target.what == "marked":
        take(worker, span, PLAIN, worker.test(PLAIN), count, worker.hand.total)
        worker.put(runs, count)
        return count
    return None


def _is_picot(worker: Worker, runs: Sequence[Run]) -> bool:
    """Whether a slip stitch closes the chains just made into the place they rose from."""
    slip = bool(runs) and all(place.stitch in worker.trade.slips for place, _ in runs)
    return slip and worker.begun and bool(worker.out) and worker.out[-1][0].kind == "space"


def _first(
    worker: Worker, span: Span, target: Target, runs: Sequence[Run], count: int, takes: int
) -> int:
    standing = worker.turning[1] or (worker.hand.at > 0 and worker.begun)
    fresh = count * takes - int(standing and worker.hand.at > 0)
    worker.free = False
    if fresh > 0:
        take(worker, span, target, worker.test(target), fresh, worker.hand.total)
    worker.put(runs, count)
    return count


def close_picot(worker: Worker) -> None:
    """Chains that are closed into a loop are no space, and the stitch that closes is none."""
    place, count = worker.out.pop()
    if count > 1:
        worker.out.append((place, count - 1))
    worker.made -= 1
    worker.count("picot", 1)


def _last(worker: Worker, span: Span, target: Target, runs: Sequence[Run], count: int) -> int:
    test = worker.test(target)
    at = worker.hand.from_end(test, count, worker.hand.total)
    if worker.hand.ahead(test, worker.hand.total):
        _tell_left(worker, span, target, at)
        worker.hand.pass_to(at)
    take(worker, span, target, test, count, worker.hand.total)
    worker.put(runs, count)
    return count


def _tell_left(worker: Worker, span: Span, target: Target, at: int) -> None:
    """ "[Ch 3, sc in next dc] 47 times, sc in last dc": half of the stitches are left between.

    Under a chain, or where the row works into nothing but spaces, they are passed over on purpose.
    """
    hand = worker.hand
    left = hand.stitches(hand.at, at)
    bridged = not worker.out or worker.out[-1][0].kind != "stitch"
    if target.what != "stitch" or bridged or left < _MANY_LEFT or not hand.known:
        return
    worker.problems.append(Problem("too_few", span, uses=hand.has() - left, has=hand.has()))


def from_hook(
    worker: Worker,
    span: Span,
    target: Target,
    extent: Extent,
    runs: Sequence[Run],
    takes: int,
    tail: Sequence[Act],
) -> int:
    """Into a foundation chain; the chains passed over may stand for a stitch."""
    skipped = max(target.nth - 1, 0)
    if worker.out and worker.out[-1][0].kind == "space":
        close_picot(worker)
        return 1
    test = worker.test(Target("chain"))
    if not worker.hand.at and skipped:
        stitch = target.counts_as or (runs[0][0].stitch if runs else "")
        counts = worker.way.count_of((skipped, worker.trade.base(stitch)))
        if target.counts is not None:
            tall = worker.trade.turning_chain(stitch)
            counts = "yes" if target.counts else "no"
            if target.counts and tall >= TALL and skipped > tall + 1:
                counts = "space"  # "dc in 9th ch from hook (counts as dc, ch 2)"
        worker.turning = (skipped, counts != "no")
        if counts == "no":
            worker.out.append((Place("turning", chains=skipped), 1))
        else:
            worker.put([(Place("stitch", stitch, chains=skipped), 1)])
        if counts == "space":
            # As many of the chains lie under the space as over it ("dc in 8th ch": 3 + 2 + 2).
            space = max((skipped - worker.trade.turning_chain(stitch)) // 2, 1)
            worker.put([(Place("space", chains=space), 1)])
    take(worker, span, target, test, skipped, worker.hand.total)
    return spread(worker, span, Target("chain"), extent, runs, takes, tail)


def _over_unknown(worker: Worker, extent: Extent, runs: Sequence[Run], takes: int) -> int:
    if extent.kind == "times":
        count = worker.number(extent.times)
        worker.hand.used += count * takes
        worker.put(runs, count)
        return count
    worker.open = True
    return 0


def take(worker: Worker, span: Span, target: Target, test: Test, count: int, stop: int) -> None:
    """Take places that are meant; of those that are named it is told that there are none."""
    worker.free = False
    if count <= 0:
        return
    if not is_named(target):
        worker.hand.take(test, count, stop)
        return
    if worker.trade.is_group(target.stitch) and target.what == "stitch":
        _take_groups(worker, span, target, test, count, stop)
        return
    in_runs = target.nth and target.of and not worker.has_of(target.of)
    taken = (
        _take_of_each_run(worker, test, count, stop)
        if in_runs
        else sum(n for _, n in worker.hand.take(test, count, stop))
    )
    if taken < count and worker.hand.known and not any(test(p) for p, _ in worker.hand.runs):
        worker.no_place(span, target)


def note_group(worker: Worker) -> None:
    """Remember which place of a group was worked into."""
    found = worker.hand.in_group()
    if found is not None:
        worker.entered.setdefault(found[0], []).append(found[1])


def _take_of_each_run(worker: Worker, test: Test, count: int, stop: int) -> int:
    """One of each run of a stitch: "center dc of next petal", where petals have no name."""
    taken = 0
    here = worker.hand.here()
    if worker.hand.offset and here and test(here) and worker.hand.left_in_run() < _MOST_OF_PETAL:
        worker.hand.forward(worker.hand.left_in_run())  # slip stitches led into the middle of one
    for _ in range(min(count, MOST_PLACES)):
        worker.step()
        if not worker.hand.take(test, 1, stop):
            break
        taken += 1
        left = worker.hand.left_in_run()
        if worker.hand.offset and left < _MOST_OF_PETAL:
            worker.hand.forward(left)
    return taken


def _take_groups(
    worker: Worker, span: Span, target: Target, test: Test, count: int, stop: int
) -> None:
    for _ in range(min(count, MOST_PLACES)):
        worker.step()
        if not worker.hand.take(test, 1, stop) and worker.hand.known:
            worker.no_place(span, target)
            return
        last = worker.hand.last
        while last and not last.ends & 2 and (here := worker.hand.here()) and here.of == last.of:
            worker.hand.forward(1)
            last = here


def skip_to(worker: Worker, target: Target) -> None:
    """Pass over all places before the one that is meant: "skip to next ch-2 sp".

    Where the work stands before such a place already, it is the one after it: there is nothing else
    to pass over.
    """
    worker.free = False
    hand = worker.hand
    if not hand.known:
        return
    stands = hand.next_at(worker.test(target), hand.total)
    if stands == hand.at:
        stands = hand.next_at(worker.test(target), hand.total, hand.at + 1) or stands
    if stands is not None:
        hand.take(lambda _: True, stands - hand.at, hand.total)
        worker.skipped_to = hand.at


def skip(worker: Worker, span: Span, target: Target, count: int, tail: Sequence[Act]) -> None:
    """Pass over places."""
    worker.free = False
    if target.what == "chain" and not worker.has_kind("chain"):
        here = worker.hand.next_at(worker.test(target), worker.hand.total)
        count = count if here is None else 1
    if target.what in ("same", "ring", "row_end", "between", "from_hook"):
        return
    if target.which == "first" and worker.turning[1] and worker.hand.used <= 1 and not worker.begun:
        count -= 1  # "ch 3, skip first st": the chain stands on it already
    if not worker.hand.known:
        return
    if target.what == "space":
        _tell_before_space(worker, span, target)
    if target.stitch in worker.trade.slips and not worker.hand.ahead(
        worker.test(target), worker.hand.total
    ):
        return  # "sk the 2 sl sts": those that joined the row before to the body
    take(worker, span, target, worker.test(target), count, worker.hand.total)


def _tell_before_space(worker: Worker, span: Span, target: Target) -> None:
    """ "Skip ch-1 sp, next 36 hdc and ch-1 sp" where 38 hdc stand before the second space."""
    hand = worker.hand
    at = hand.next_at(worker.test(target), hand.total)
    last = hand.last
    if at is None or last is None or last.kind != "stitch" or hand.here() != last:
        return
    if between := hand.stitches(hand.at, at):
        worker.problems.append(Problem("too_few", span, uses=hand.has() - between, has=hand.has()))
