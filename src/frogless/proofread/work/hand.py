"""Where the work stands on the edge of the row below: what was passed, what lies ahead."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from frogless.proofread.words.model import Target
from frogless.proofread.work.edge import MOST_PLACES, Edge, Place, Run
from frogless.proofread.work.trade import Trade

#: Unlike places in a row that one group may have.
_MOST_OF_GROUP = 12

Test = Callable[[Place], bool]


class TooLongError(Exception):
    """A row with more places than any garment has."""


class Mark(NamedTuple):
    """A state to come back to."""

    run: int
    offset: int
    at: int
    used: int
    over: int
    passed: frozenset[Place]
    last: Place | None


class Hand:
    """The edge with the work somewhere on it.

    Args:
        weigh_spaces: chain spaces are places that are counted; otherwise they are passed over.

    `over` counts places that were asked for beyond the end.
    """

    def __init__(self, edge: Edge, trade: Trade, *, weigh_spaces: bool) -> None:
        self.trade = trade
        self.edge = edge
        self.weigh_spaces = weigh_spaces
        self.runs = edge.runs
        self.total = sum(n for _, n in edge.runs)
        self._all = sum(n * self.weight(p) for p, n in edge.runs)
        self.run = self.offset = self.at = self.used = self.over = 0
        self.passed: frozenset[Place] = frozenset()
        self.last: Place | None = None

    @property
    def known(self) -> bool:
        """Whether the edge's places are known."""
        return self.edge.known

    def weight(self, place: Place) -> int:
        """What a place counts as among those that are there."""
        if place.kind == "turning":
            return 0
        return int(self.weigh_spaces or place.kind != "space")

    def has(self, start: int = 0, stop: int | None = None) -> int:
        """Places that are there from `start` up to `stop`, as they are counted."""
        end = self.total if stop is None else stop
        if start == 0 and end >= self.total:
            return self._all
        total = at = 0
        for place, count in self.runs:
            if at >= end:
                break
            total += self.weight(place) * max(min(at + count, end) - max(at, start), 0)
            at += count
        return total

    def stitches(self, start: int, stop: int) -> int:
        """Stitches that lie between two places."""
        found = at = 0
        for place, count in self.runs:
            if place.kind == "stitch":
                found += max(min(at + count, stop) - max(at, start), 0)
            at += count
        return found

    def in_group(self) -> tuple[int, int] | None:
        """Where the group begins that the last place passed is in, and the number of that place in it."""
        run, length = (self.run, self.offset) if self.offset else (self.run - 1, 0)
        back = 0
        while 0 <= run < len(self.runs) and self.run - run <= _MOST_OF_GROUP:
            place, count = self.runs[run]
            if not place.of:
                return None
            if place.ends & 1:
                back += length or count
                return self.at - back, back
            back += length or count
            run, length = run - 1, 0
        return None

    def mark(self) -> Mark:
        """The state now."""
        return Mark(self.run, self.offset, self.at, self.used, self.over, self.passed, self.last)

    def back(self, mark: Mark) -> None:
        """The state as it was."""
        self.run, self.offset, self.at, self.used, self.over, self.passed, self.last = mark

    def here(self) -> Place | None:
        """The next place; None at the end."""
        return self.runs[self.run][0] if self.run < len(self.runs) else None

    def left_in_run(self) -> int:
        """How many places like the next one follow one another."""
        return self.runs[self.run][1] - self.offset if self.run < len(self.runs) else 0

    def forward(self, count: int) -> None:
        """Pass so many places of the run that the work stands on."""
        place, length = self.runs[self.run]
        self.used += count * self.weight(place)
        self.at += count
        self.offset += count
        if self.offset == length:
            self.run, self.offset = self.run + 1, 0

    def comes_again(self, start: Mark, stop: int) -> int:
        """How often the places since a mark come again in the same order from here on.

        The last time before `stop` is not among them: what is worked may look on to the next place.
        """
        length = self.run - start.run
        if length <= 0 or self.offset != start.offset:
            return 0
        unit, at, times = self.runs[start.run : self.run], self.run, 0
        most = (stop - self.at) // (self.at - start.at)
        while times < most and self.runs[at] == unit[0] and self.runs[at : at + length] == unit:
            times, at = times + 1, at + length
        return max(times - 1, 0)

    def leap(self, start: Mark, times: int) -> None:
        """Pass the places since a mark so often again."""
        self.run += times * (self.run - start.run)
        self.used += times * (self.used - start.used)
        self.at += times * (self.at - start.at)

    def take(self, test: Test, count: int, stop: int) -> list[Run]:
        """The next places that pass the test; others are passed over.

        Where there are not enough, those that lack are counted as `over`, and what lies behind the
        last one found stays ahead.
        """
        if not self.known:
            self.used += count
            self.last = Place("stitch")
            return [(self.last, count)]
        taken: list[Run] = []
        found = self.mark()
        while count and self.at < stop:
            place = self.runs[self.run][0]
            length = min(self.left_in_run(), stop - self.at)
            if test(place):
                length = min(length, count)
                self.forward(length)
                self.last = place
                taken.append((place, length))
                count -= length
                found = self.mark()
            else:
                self.forward(length)
                if place not in self.passed:
                    self.passed |= {place}
        if count:
            self.back(found)
            self.over += count
            if self.over > MOST_PLACES:
                raise TooLongError
        return taken

    def ahead(self, test: Test, stop: int) -> int:
        """How many places up to `stop` pass the test."""
        total, at = 0, self.at - self.offset
        for place, count in self.runs[self.run :]:
            if at >= stop:
                break
            if test(place):
                total += min(at + count, stop) - max(at, self.at)
            at += count
        return total

    def next_at(self, test: Test, stop: int, start: int = 0) -> int | None:
        """Where the next place stands that passes the test, from `start` on."""
        start = max(start, self.at)
        at = self.at - self.offset
        for place, count in self.runs[self.run :]:
            if at >= stop:
                break
            if at + count > start and test(place):
                return max(at, start)
            at += count
        return None

    def from_end(self, test: Test, count: int, stop: int) -> int:
        """Where the last `count` places up to `stop` begin that pass the test."""
        if count <= 0 or not self.known:
            return stop
        at = self.total
        for place, length in reversed(self.runs):
            at -= length
            low, high = max(at, self.at), min(at + length, stop)
            if high <= low or not test(place):
                if at <= self.at:
                    break
                continue
            if count <= high - low:
                return high - count
            count -= high - low
        return self.at

    def pass_to(self, stop: int) -> None:
        """Pass over all up to `stop` without a word."""
        while self.at < stop and self.run < len(self.runs):
            place = self.runs[self.run][0]
            if place not in self.passed:
                self.passed |= {place}
            self.forward(min(self.left_in_run(), stop - self.at))

    def runs_from(self, start: int) -> tuple[Run, ...]:
        """The places from `start` on."""
        found, at = [], 0
        for place, count in self.runs:
            length = min(count, at + count - start)
            if length > 0:
                found.append((place, length))
            at += count
        return tuple(found)


def test_of(target: Target, trade: Trade, *, spaces: bool, chains: int | None) -> Test:
    """Whether a place is one that is meant.

    Args:
        spaces: "st" means a chain space as well.
        chains: of a space that is named; None: whichever.
    """
    own = _one(target, trade, spaces=spaces, chains=chains)
    others = tuple(_one(other, trade, spaces=False, chains=None) for other in target.others)
    if not others:
        return own
    return lambda place: own(place) or any(other(place) for other in others)


def _one(target: Target, trade: Trade, *, spaces: bool, chains: int | None) -> Test:
    of = target.of
    match target.what:
        case "space" | "corner":
            if of:
                return lambda p: p.kind == "space" and _is_of(p, of, trade)
            return lambda p: p.kind == "space" and chains in (None, 0, p.chains)
        case "chain":
            return lambda p: p.kind == "chain"
        case "any":
            return lambda p: p.kind in ("stitch", "chain", "space")
        case "top":
            return lambda p: p.kind == "turning" or (p.kind == "stitch" and p.chains > 0)
        case _ if target.stitch and trade.is_group(target.stitch):
            return lambda p: p.ends & 1 == 1 and _is_of(p, target.stitch, trade)
        case _ if target.stitch:
            return _named(target.stitch, of, trade)
        case _:
            kinds = ("stitch", "chain", "space") if spaces else ("stitch", "chain")
            return lambda p: p.kind in kinds


def _named(stitch: str, of: str, trade: Trade) -> Test:
    plain = trade.base(stitch)
    whichever = plain == stitch

    def test(place: Place) -> bool:
        if place.kind != "stitch" or (of and not _is_of(place, of, trade)):
            return False
        return place.stitch in (stitch, "") or (whichever and trade.base(place.stitch) == plain)

    return test


def _is_of(place: Place, group: str, trade: Trade) -> bool:
    own = trade.own(group)
    return place.of == group or bool(own and own.meaning and place.of == own.meaning)
