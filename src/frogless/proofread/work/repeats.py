"""Groups worked again: so many times, or as far as they fit."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from frogless.proofread.words.model import (
    Act,
    Extent,
    Into,
    Repeat,
)
from frogless.proofread.work.edge import MOST_PLACES, Place, Run, merged
from frogless.proofread.work.extents import PLAIN, leave_last, needs, stop_for, stop_of
from frogless.proofread.work.hand import Hand, TooLongError
from frogless.proofread.work.worker import State, Worker

_ONCE = Extent("times")


def repeat(worker: Worker, act: Repeat, tail: Sequence[Act]) -> None:
    """A group worked again, as often as its extent says."""
    body: tuple[Act, ...] = act.body
    if act.in_place and worker.way.in_one:
        body = (Into(act.span, act.body, PLAIN, _ONCE),)
    if not body:
        return
    if act.extent.kind == "times":
        so_often(worker, body, worker.times(act.extent, more=act.more, doubtful=act.doubtful))
    elif not worker.hand.known:
        worker.open = True
    elif act.extent.kind == "until" and _is_marked(act.extent):
        worker.lost = True
    else:
        leave_last(worker, act.extent, tail)
        _as_far(worker, act, body, stop_of(worker, act.span, act.extent, tail))


def so_often(worker: Worker, body: tuple[Act, ...], times: int) -> None:
    """A group worked so many times; what is alike is multiplied."""
    done = 0
    leaps = _Leaps(worker.mark())
    while done < times:
        before = worker.mark()
        run = worker.hand.run
        worker.work(body)
        done += 1
        if len(worker.problems) > before.problems:
            # What is not there once is not there again: it is told once.
            del worker.problems[before.problems + 1 :]
        moved = worker.hand.at - before.hand.at
        over = worker.hand.over - before.hand.over
        more = times - done
        if moved and over:
            continue
        if moved:
            if worker.hand.run != run or worker.hand.passed != before.hand.passed or worker.vague:
                done += leaps.after(worker, stop_for(worker, ()), more)
                continue
            more = min(more, worker.hand.left_in_run() // moved)
        elif not over and len(worker.out) == before.out and len(worker.extras) == before.extras:
            return
        _multiply(worker, before, moved, over, more)
        leaps.begin(worker)
        done += more


def _multiply(worker: Worker, before: State, moved: int, over: int, more: int) -> None:
    """What was just worked once, worked so often again."""
    if more <= 0:
        return
    if moved:
        worker.hand.forward(moved * more)
    worker.hand.over += over * more
    if worker.hand.over > MOST_PLACES:
        raise TooLongError
    _made_again(worker, before, more)


def _made_again(worker: Worker, before: State, more: int) -> None:
    runs = merged(worker.out[before.out :])
    del worker.out[before.out :]
    worker.made -= sum(n for _, n in runs)
    worker.put(runs, more + 1)
    worker.extras += [(key, n * more) for key, n in worker.extras[before.extras :]]


@dataclass(slots=True)
class _Leaps:
    """Over places that come again and again in the same order, a group is worked by arithmetic.

    The group and the places fall in step after some times of the group; so what was worked since a
    mark is held against what lies ahead, and the mark is set anew after 1, 2, 4 … times.
    """

    start: State
    since: int = 0
    span: int = 1

    def after(self, worker: Worker, stop: int, most: int) -> int:
        """Once the group was worked: how many times more it was worked at one leap."""
        self.since += 1
        times = 0
        if self._is_alike(worker):
            times = min(worker.hand.comes_again(self.start.hand, stop), most // self.since)
        if times > 0:
            worker.hand.leap(self.start.hand, times)
            _made_again(worker, self.start, times)
            times *= self.since
        if times or self.since >= self.span:
            self.begin(worker)
        return times

    def begin(self, worker: Worker) -> None:
        """Set the mark anew, for a longer way."""
        self.start, self.since, self.span = worker.mark(), 0, self.span * 2

    def _is_alike(self, worker: Worker) -> bool:
        now, start = worker.mark(), self.start
        return (
            (now.hand.over, now.hand.passed) == (start.hand.over, start.hand.passed)
            and (now.problems, now.stitch, now.free) == (start.problems, start.stitch, start.free)
            and not worker.vague
        )


def _as_far(worker: Worker, act: Repeat, body: tuple[Act, ...], stop: int) -> None:
    """A group worked again as long as it fits before `stop`."""
    start = worker.hand.at
    times = each = 0
    leaps = _Leaps(worker.mark())
    while worker.hand.at < stop:
        before = worker.mark()
        run = worker.hand.run
        worker.work(body)
        moved = worker.hand.at - before.hand.at
        failed = worker.hand.over > before.hand.over or len(worker.problems) > before.problems
        if failed or worker.hand.at > stop or not moved:
            stuck = [p for p in worker.problems[before.problems :] if p.kind == "no_place"]
            if not moved and not failed:
                return  # nothing is taken: worked once
            worker.back(before)
            if stuck and not times:
                worker.problems.append(stuck[0])
            else:
                _does_not_fill(worker, act, each or _each(worker, body), start, stop, times)
            return
        times, each = times + 1, worker.hand.used - before.hand.used
        if worker.hand.run == run and worker.hand.passed == before.hand.passed and not worker.vague:
            ahead = min(worker.hand.left_in_run(), stop - worker.hand.at)
            _multiply(worker, before, moved, 0, ahead // moved)
            leaps.begin(worker)
            times += ahead // moved
        else:
            times += leaps.after(worker, stop, worker.hand.total)


def _each(worker: Worker, body: tuple[Act, ...]) -> int:
    return sum(needs(worker, act) for act in body)


def _does_not_fill(
    worker: Worker, act: Repeat, each: int, start: int, stop: int, times: int
) -> None:
    rest = worker.hand.has(worker.hand.at, stop)
    remaining = {p for p, _ in _between(worker.hand, worker.hand.at, stop) if worker.hand.weight(p)}
    passed = {_alike(p) for p in worker.hand.passed}
    if not rest or (times and {_alike(p) for p in remaining} <= passed):
        worker.hand.pass_to(stop)
        return
    worker.repeat_problem(act.span, each, worker.hand.has(start, stop))


def _alike(place: Place) -> tuple[str, str, int]:
    """What a place is, wherever it stands."""
    return place.kind, place.stitch, place.chains if place.kind == "space" else 0


def _between(hand: Hand, start: int, stop: int) -> list[Run]:
    found, at = [], 0
    for place, count in hand.runs:
        if at < stop and at + count > start:
            found.append((place, count))
        at += count
    return found


def _is_marked(extent: Extent) -> bool:
    return extent.target is not None and extent.target.what == "marked"
