"""A row worked over an edge, act by act.

Runs of equal places are reckoned with by arithmetic: a group that is repeated over a plain run is
worked once and multiplied.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from frogless.proofread.script.model import Span
from frogless.proofread.words.model import (
    Act,
    Bare,
    Chain,
    Evenly,
    Extent,
    Increase,
    Into,
    Join,
    Leave,
    Met,
    Numbers,
    OwnStitch,
    Repeat,
    Ring,
    Skip,
    Target,
    Together,
    Turn,
    Unclear,
)
from frogless.proofread.work.acts import begins_with_slips, first_stitch, is_slip, together
from frogless.proofread.work.edge import (
    MOST_PLACES,
    RING,
    Edge,
    Place,
    Run,
    merged,
    of_chains,
    with_chains_apart,
)
from frogless.proofread.work.hand import Hand, Mark, Test, TooLongError, test_of
from frogless.proofread.work.model import Problem
from frogless.proofread.work.trade import Trade, tagged
from frogless.proofread.work.ways import RowWay

#: Acts and repeats that one row may take; a row that needs more is not worked.
MOST_STEPS = 60_000
#: A chain that is joined into a ring to be worked into has no more than so many chains (from
#: memory: rings of 4 to 8 are usual); a longer one is the edge of a tube.
RING_CHAINS = 16
#: How deep stitches may be told in terms of other stitches of the pattern.
_DEEPEST = 6

_PLAIN = Target()
#: Under this key several stitches in one place are counted that have no name of their own.
BUNCH = "group"


@dataclass(slots=True)
class State:
    """What a repeat that does not come out is taken back to."""

    hand: Mark
    out: int
    extras: int
    problems: int
    stitch: str
    free: bool


@dataclass(slots=True)
class Worker:
    """A row on its way.

    Args:
        row_stitch: the stitch that an "inc" is made of before any was named.

    `free` is true while the foot of a turning chain that does not count has not been worked into.
    """

    trade: Trade
    way: RowWay
    size: int
    sizes: int
    hand: Hand
    row_stitch: str = ""
    out: list[Run] = field(default_factory=list)
    extras: list[tuple[str, int]] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)
    made: int = 0
    steps: int = 0
    stitch: str = ""
    free: bool = False
    vague: bool = False  # places are used that the row below does not count
    open: bool = False  # how many are made depends on an edge that is not known
    into_ring: bool = False
    lost: bool = False  # turned in the middle: the places are not followed further
    slack: tuple[Run, ...] = ()
    leave: int = 0
    leave_rest: bool = False
    turning: tuple[int, bool] = (0, False)
    laid: int = 0
    tests: dict[Target, Test] = field(default_factory=dict)
    begun: bool = False
    nested: int = 0

    # -- numbers and places

    def number(self, numbers: Numbers | None, default: int = 1) -> int:
        """The number of this size."""
        if numbers is None:
            return default
        found = numbers.of(self.size, self.sizes)
        return default if found is None else found

    def test(self, target: Target) -> Test:
        """Whether a place is meant by a target."""
        if target not in self.tests:
            chains = None if target.chains is None else self.number(target.chains)
            spaces = self.way.spaces == "space"
            named = target
            if target.what == "chain" and not self._has("chain"):
                named, chains = Target("space", which=target.which), None
            if target.what == "corner":
                self.tests[target] = self._corner()
            else:
                self.tests[target] = self._told(
                    test_of(named, self.trade, spaces=spaces, chains=chains)
                )
        return self.tests[target]

    def _told(self, test: Test) -> Test:
        """The test without stitches of which it is not told what they are, where others pass it."""
        untold = Place("stitch").stitch
        if not any(test(p) and p.stitch != untold for p, _ in self.hand.runs if p.kind == "stitch"):
            return test
        return lambda p: test(p) and not (p.kind == "stitch" and p.of and p.stitch == untold)

    def _has(self, kind: str) -> bool:
        return any(place.kind == kind for place, _ in self.hand.runs)

    def _corner(self) -> Test:
        spaces = {place for place, _ in self.hand.runs if place.kind == "space"}
        corners = {p for p in spaces if p.corner}
        longest = max((p.chains for p in spaces), default=0)
        meant = corners or {p for p in spaces if p.chains == longest}
        return lambda place: place in meant

    # -- what is made

    def put(self, runs: Sequence[Run], times: int = 1) -> None:
        """Lay places on the new edge."""
        if times <= 0 or not runs:
            return
        self.made += times * sum(n for _, n in runs)
        if self.made > MOST_PLACES:
            raise TooLongError
        if len(runs) == 1:
            place, count = runs[0]
            if place.ends == 0:
                self.out.append((place, count * times))
                return
        self.out.extend(list(runs) * times)

    def count(self, key: str, times: int) -> None:
        """Count what leaves no place of its own: picots, and groups by their name."""
        if times:
            self.extras.append((key, times))

    def unit(self, stitch: str, depth: int = 0) -> tuple[Run, ...]:
        """The places that one of a stitch leaves."""
        key = stitch or self.open_stitch()
        own = self.trade.body(key)
        if own is not None and depth < _DEEPEST:
            runs = tuple(self.inside(own.body, depth + 1))
            if sum(n for place, n in runs if place.kind == "stitch") == own.leaves:
                return tagged(runs, own.key)
            return tagged(self.trade.leaves(key), own.key)
        if key == "chain":
            return ((Place("space", chains=1), 1),)
        return self.trade.leaves(key)

    def open_stitch(self) -> str:
        """The stitch that is meant where none is named."""
        return self.stitch or self.row_stitch

    def inside(self, body: Sequence[Act], depth: int = 0) -> list[Run]:
        """The places that a body leaves when all of it is worked into one place."""
        found: list[Run] = []
        for index, act in enumerate(body):
            self._step()
            match act:
                case Bare(_, stitch, times, _):
                    n = self.number(times)
                    self._note(stitch, n, depth)
                    found += self._many(self.unit(stitch, depth), n)
                case Chain(_, times, True, counts_as) if not found:
                    n = self.number(times)
                    stitch = counts_as or first_stitch(body, self.trade)
                    found.append((Place("stitch", stitch, chains=n), 1))
                case Chain(_, times):
                    n = self.number(times)
                    if n:
                        corner = 0 < index < len(body) - 1
                        found.append((Place("space", chains=n, corner=corner), 1))
                case Increase(_, stitch, makes):
                    found += self._many(self.unit(stitch, depth), makes)
                case Together(_, stitch, _):
                    found += self.unit(stitch, depth)
                case Into(_, inner, _, extent) if depth < _DEEPEST:
                    n = self.number(extent.times) if extent.kind == "times" else 1
                    found += self._many(self.inside(inner, depth + 1), n)
                case Repeat(_, inner, extent, more, doubtful) if depth < _DEEPEST * 3:
                    n = self._times(extent, more=more, doubtful=doubtful)
                    found += self._many(self.inside(inner, depth + 1), n)
                case _:
                    pass
        return found

    def _many(self, runs: Sequence[Run], times: int) -> Sequence[Run]:
        if times * sum(n for _, n in runs) > MOST_PLACES:
            raise TooLongError
        if len(runs) == 1 and runs[0][0].ends == 0 and runs[0][0].kind != "space":
            return [(runs[0][0], runs[0][1] * times)]
        return list(runs) * times

    def _note(self, stitch: str, times: int, depth: int) -> None:
        key = stitch or self.open_stitch()
        if stitch and depth == 0:
            self.stitch = stitch
        if self.trade.is_group(key) or not self.trade.leaves(key):
            self.count(key, times)

    def _step(self) -> None:
        self.steps += 1
        if self.steps > MOST_STEPS:
            raise TooLongError

    # -- the beginning

    def begin(self, acts: Sequence[Act], lift: Chain | None) -> int:
        """Work the foundation, the slip stitches and the chain that a row begins with.

        Returns:
            int: the index of the first act that is left.
        """
        slips = lift is None and begins_with_slips(acts, self.trade)
        if lift is not None and not _begins_with_chain(acts):
            self.turn_up(lift, acts, slipped=False)
        slipped = False
        for index, act in enumerate(acts):
            if isinstance(act, Turn | Unclear) or not self._quiet(act):
                if isinstance(act, Turn | Unclear):
                    continue
                if isinstance(act, Ring):
                    self._lay(RING, 0)
                elif isinstance(act, Chain) and self.hand.edge.begun == "nothing":
                    count = self.number(act.times)
                    self._lay(of_chains(count), count)
                elif isinstance(act, Chain):
                    self.turn_up(act, acts[index + 1 :], slipped=slipped)
                    return index + 1
                elif slips and is_slip(act, self.trade):
                    self._travel(act)
                    slipped = True
                else:
                    return index
            elif isinstance(act, Join) and act.to == "ring" and 0 < self.laid <= RING_CHAINS:
                self.hand.edge = self.hand.edge._replace(begun="ring")
        return len(acts)

    def _travel(self, act: Act) -> None:
        """Slip stitches that only move the work; the space that they end in is still to be worked."""
        before, mark = (len(self.out), len(self.extras)), self.hand.mark()
        self.do(act, ())
        del self.out[before[0] :], self.extras[before[1] :]
        self.begun = False
        last = self.hand.last
        if last is not None and last.kind == "space":
            self.hand.back(mark)
            self.hand.pass_to(self.hand.next_at(lambda p: p == last, self.hand.total) or 0)
            self.hand.last = last
            self.free = True

    def _quiet(self, act: Act) -> bool:
        return not isinstance(
            act,
            Bare | Into | Met | Increase | Together | Chain | Skip | Leave | Repeat | Evenly | Ring,
        )

    def _lay(self, edge: Edge, chains: int) -> None:
        if chains > MOST_PLACES:
            raise TooLongError
        self.hand = Hand(edge, self.trade, weigh_spaces=self.hand.weigh_spaces)
        self.laid = chains

    def turn_up(self, chain: Chain, rest: Sequence[Act], *, slipped: bool) -> None:
        """The chain that a row begins with."""
        count = self.number(chain.times)
        if _works_from_hook(rest):
            # Chains added at the edge: they are worked back along like a foundation.
            edge = self.hand.edge
            runs = merged([(Place("chain"), count), *edge.runs])
            self._lay(edge._replace(runs=runs, begun="chain"), count)
            return
        stitch = chain.counts_as or first_stitch(rest, self.trade) or self.row_stitch
        counts = self._counts(chain, (count, self.trade.base(stitch)))
        self.turning = (count, counts != "no")
        if counts == "no":
            self.out.append((Place("turning", chains=count), 1))
            self.free = self.free or not slipped
            return
        self.put([(Place("stitch", stitch, chains=count), 1)])
        if counts == "space":
            space = chain.space or max(count - self.trade.turning_chain(stitch), 1)
            self.put([(Place("space", chains=space), 1)])
        self._stand(slipped=slipped)

    def _counts(self, chain: Chain, key: tuple[int, str]) -> str:
        if chain.counts is None:
            return "space" if chain.space else self.way.count_of(key)
        return "space" if chain.counts and chain.space else "yes" if chain.counts else "no"

    def _stand(self, *, slipped: bool) -> None:
        """A chain that counts stands on the first place, or on that of the last slip stitch."""
        if slipped and self.free:
            self.hand.forward(1)  # the chain stands in the space that the work was moved to
            self.free = False
            return
        if slipped and not self.way.next_foot:
            return
        if self.hand.edge.begun == "ring" or (self.hand.known and not self.hand.runs):
            return
        first = next((p for p, _ in self.hand.runs[self.hand.run :] if self.hand.weight(p)), None)
        self.hand.take(lambda p: p == first, 1, self.hand.total)

    # -- act by act

    def work(self, acts: Sequence[Act]) -> None:
        """All acts of a row in their order."""
        acts = together(acts)
        for index, act in enumerate(acts):
            self.do(act, acts[index + 1 :])

    def do(self, act: Act, tail: Sequence[Act]) -> None:
        """One act; `tail` is what comes after it in the same body."""
        self._step()
        match act:
            case Bare():
                self._bare(act, tail)
            case Into():
                self._into(act, tail)
            case Met():
                self._met(act, tail)
            case Increase(span, stitch, makes, extent, target):
                key = stitch or self.open_stitch()
                self.stitch = stitch or self.stitch
                self.spread(span, target, extent, self._many(self.unit(key), makes), 1, tail)
            case Together(span, stitch, places, extent, target):
                key = self.trade.base(stitch) if stitch else self.open_stitch()
                self.stitch = key or self.stitch
                runs = ((Place("stitch", key), 1),)
                self.spread(span, target, extent, runs, max(places, 1), tail)
            case Chain(_, times):
                count = self.number(times)
                if count:
                    self.put([(Place("space", chains=count), 1)])
            case Skip(span, target, times):
                self._skip(span, target, self.number(times), tail)
            case Leave(_, times):
                self.leave_rest = self.leave_rest or times is None
                self.leave += self.number(times, 0)
            case Repeat():
                self._repeat(act, tail)
            case Evenly():
                self._evenly(act, tail)
            case Turn(_, turned):
                self.lost = self.lost or (turned and self.begun and _takes_places(tail))
            case _:
                pass
        self.begun = self.begun or not self._quiet(act)

    def _bare(self, act: Bare, tail: Sequence[Act]) -> None:
        count = self.number(act.times)
        key = act.stitch or self.open_stitch()
        self.stitch = act.stitch or self.stitch
        takes = self.trade.takes(key)
        own = self.trade.body(key)
        if own is not None and takes > 1:
            self._over_several(own, count)
            return
        unit = self.unit(key)
        if not takes:
            self.count(key, 0 if unit else count)
            self.put(unit, count)
            return
        grouped = self.trade.is_group(key)
        if count > 1 and self.way.one and not act.written_after and not grouped and act.times:
            self.spread(act.span, _PLAIN, _ONCE, self._many(unit, count), takes, tail)
            return
        self.count(key, count if grouped else 0)
        self.spread(act.span, _PLAIN, _times(count), unit, takes, tail)

    def _over_several(self, own: OwnStitch, times: int) -> None:
        """A group of the pattern's own that is told over several places: its acts in their order."""
        if self.nested < _DEEPEST:
            self.nested += 1
            self.count(own.key, times)
            self._so_often(own.body, times)
            self.nested -= 1

    def _into(self, act: Into, tail: Sequence[Act]) -> None:
        extras = len(self.extras)
        runs = self.inside(act.body)
        takes = max(
            (self.trade.takes(a.stitch) for a in act.body if isinstance(a, Bare)), default=1
        )
        if sum(n for p, n in runs if p.kind == "stitch") > 1 and len(self.extras) == extras:
            self.count(BUNCH, 1)
        each = self.extras[extras:]
        times = self.spread(act.span, act.target, act.extent, runs, max(takes, 1), tail)
        if each and times != 1:
            self.extras[extras:] = [(key, n * times) for key, n in each]

    def _met(self, act: Met, tail: Sequence[Act]) -> None:
        """Each place up to the end as the part says that it fits; of two the later."""
        self.free = False
        if not self.hand.known:
            self.open = True
            return
        parts = [(self.test(p.target), self.inside(p.body), p.target) for p in act.parts]
        stop = self._stop(act.span, act.extent, tail)
        for test, _, target in parts:
            if self._is_named(target) and self.hand.next_at(test, self.hand.total) is None:
                self._no_place(act.span, target)
        while self.hand.at < stop and (here := self.hand.here()) is not None:
            self._step()
            count = min(self.hand.left_in_run(), stop - self.hand.at)
            runs = next((runs for test, runs, _ in reversed(parts) if test(here)), None)
            if runs is None:
                self.hand.pass_to(self.hand.at + count)
            else:
                self.hand.forward(count)
                self.hand.last = here
                self.put(runs, count)

    def spread(
        self,
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
        once = self._special(span, target, extent, runs, takes, tail)
        if once is not None:
            return once
        test = self.test(target)
        if not self.hand.known:
            return self._over_unknown(extent, runs, takes)
        if extent.kind in ("times", "unsaid"):
            count = self.number(extent.times) if extent.kind == "times" else 1
            places = count * takes
            if target.what == "chain" and not self._has("chain"):
                places = self._spaces_for(test, places)
            self._take(span, target, test, places, self.stop_for(()))
            self.put(runs, count)
            return count
        if extent.kind == "until" and extent.target and extent.target.what == "marked":
            if takes == 1 and not self.slack:
                self.slack = tuple(runs)
            return 0
        self._leave_last(extent, tail)
        stop = self._stop(span, extent, tail)
        many = self.hand.ahead(test, stop)
        if not many and self._is_named(target) and not self.hand.next_at(test, self.hand.total):
            self._no_place(span, target)
        count, rest = divmod(many, takes)
        self.hand.take(test, count * takes, stop)
        self.put(runs, count)
        if rest:
            self._repeat_problem(span, takes, many)
        elif self._is_named(target):
            self.hand.pass_to(stop)
        return count

    def _spaces_for(self, test: Test, chains: int) -> int:
        """Spaces that so many chains lie in, of a row that works into spaces by name as well."""
        at = self.hand.next_at(test, self.hand.total)
        space = next(iter(self.hand.runs_from(at)), None) if at is not None else None
        return -(-chains // max(space[0].chains, 1)) if space else chains

    def _special(
        self,
        span: Span,
        target: Target,
        extent: Extent,
        runs: Sequence[Run],
        takes: int,
        tail: Sequence[Act],
    ) -> int | None:
        """Places that are not simply the next; None for those that are."""
        count = self.number(extent.times) if extent.kind == "times" else 1
        if target.what == "from_hook":
            return self._from_hook(span, target, extent, runs, takes, tail)
        if target.what == "space" and self.hand.edge.begun == "ring" and not self._has("space"):
            target = Target("ring")  # "12 dc in loop"
        chainless = self.hand.edge.begun == "ring" and not self._has("chain")
        if target.what == "ring" or (chainless and target == _PLAIN):
            self.into_ring = True
            self.hand.pass_to(self.hand.total)
            self.put(runs, count)
            return count
        if target.what == "same" or target.which == "same":
            if self._is_picot(runs):
                self._close_picot()
                return 1
            last = self.hand.last
            if self.free and last is not None:
                self.hand.take(lambda p: p == last, 1, self.hand.total)
            elif self.free:
                self._take(span, _PLAIN, self.test(_PLAIN), 1, self.hand.total)
            self.free = False
            self.put(runs, count)
            return count
        if target.which == "first" and target.what == "stitch":
            return self._first(span, target, runs, count, takes)
        self.free = False
        if target.what == "skipped":
            self.put(runs, count)
            return count
        if target.what == "between" and extent.kind == "end" and self.hand.known:
            return self.spread(span, _PLAIN, extent, runs, takes, tail)
        if target.what in ("row_end", "between"):
            self.vague = True
            self.open = self.open or extent.kind in ("end", "but_last", "until")
            self.put(runs, count)
            return count
        if target.which == "last" and self._is_picot(runs):
            self._close_picot()
            return 1
        if target.which == "last" and (self._is_named(target) or target.what == "top"):
            return self._last(span, target, runs, count)
        if target.what == "marked":
            self._take(span, _PLAIN, self.test(_PLAIN), count, self.hand.total)
            self.put(runs, count)
            return count
        return None

    def _is_picot(self, runs: Sequence[Run]) -> bool:
        """Whether a slip stitch closes the chains just made into the place they rose from."""
        slip = bool(runs) and runs[0][0].stitch in self.trade.slips
        return slip and self.begun and bool(self.out) and self.out[-1][0].kind == "space"

    def _first(
        self, span: Span, target: Target, runs: Sequence[Run], count: int, takes: int
    ) -> int:
        standing = self.turning[1] or (self.hand.at > 0 and self.begun)
        fresh = count * takes - int(standing and self.hand.at > 0)
        self.free = False
        if fresh > 0:
            self._take(span, target, self.test(target), fresh, self.hand.total)
        self.put(runs, count)
        return count

    def _close_picot(self) -> None:
        """Chains that are closed into a loop are no space, and the stitch that closes is none."""
        place, count = self.out.pop()
        if count > 1:
            self.out.append((place, count - 1))
        self.made -= 1
        self.count("picot", 1)

    def _last(self, span: Span, target: Target, runs: Sequence[Run], count: int) -> int:
        test = self.test(target)
        at = self.hand.from_end(test, count, self.hand.total)
        if self.hand.ahead(test, self.hand.total):
            self.hand.pass_to(at)
        self._take(span, target, test, count, self.hand.total)
        self.put(runs, count)
        return count

    def _from_hook(
        self,
        span: Span,
        target: Target,
        extent: Extent,
        runs: Sequence[Run],
        takes: int,
        tail: Sequence[Act],
    ) -> int:
        skipped = max(target.nth - 1, 0)
        if self.out and self.out[-1][0].kind == "space":
            self._close_picot()
            return 1
        test = self.test(Target("chain"))
        if not self.hand.at and skipped:
            stitch = target.counts_as or (runs[0][0].stitch if runs else "")
            counts = self.way.count_of((skipped, self.trade.base(stitch)))
            if target.counts is not None:
                counts = "yes" if target.counts else "no"
            self.turning = (skipped, counts != "no")
            if counts == "no":
                self.out.append((Place("turning", chains=skipped), 1))
            else:
                self.put([(Place("stitch", stitch, chains=skipped), 1)])
            if counts == "space":
                # As many of the chains lie under the space as over it ("dc in 8th ch": 3 + 2 + 2).
                space = max((skipped - self.trade.turning_chain(stitch)) // 2, 1)
                self.put([(Place("space", chains=space), 1)])
        self._take(span, target, test, skipped, self.hand.total)
        return self.spread(span, Target("chain"), extent, runs, takes, tail)

    def _over_unknown(self, extent: Extent, runs: Sequence[Run], takes: int) -> int:
        if extent.kind == "times":
            count = self.number(extent.times)
            self.hand.used += count * takes
            self.put(runs, count)
            return count
        self.open = True
        return 0

    def _take(self, span: Span, target: Target, test: Test, count: int, stop: int) -> None:
        self.free = False
        if count <= 0:
            return
        if not self._is_named(target):
            self.hand.take(test, count, stop)
            return
        if self.trade.is_group(target.stitch) and target.what == "stitch":
            self._take_groups(span, target, test, count, stop)
            return
        taken = sum(n for _, n in self.hand.take(test, count, stop))
        if taken < count and self.hand.known and not any(test(p) for p, _ in self.hand.runs):
            self._no_place(span, target)

    def _take_groups(self, span: Span, target: Target, test: Test, count: int, stop: int) -> None:
        for _ in range(min(count, MOST_PLACES)):
            self._step()
            if not self.hand.take(test, 1, stop) and self.hand.known:
                self._no_place(span, target)
                return
            last = self.hand.last
            while last and not last.ends & 2 and (here := self.hand.here()) and here.of == last.of:
                self.hand.forward(1)
                last = here

    def _is_named(self, target: Target) -> bool:
        return bool(target.stitch) or target.what in ("space", "corner", "top")

    def _no_place(self, span: Span, target: Target) -> None:
        if target.what == "corner" and not self._has("space"):
            self.vague = self.open = True  # of a piece's outline: where it lies is not told
            return
        self.problems.append(Problem("no_place", span, what=_named(target, self)))

    def _repeat_problem(self, span: Span, each: int, has: int) -> None:
        self.problems.append(Problem("repeat", span, each=each, has=has))

    def _skip(self, span: Span, target: Target, count: int, tail: Sequence[Act]) -> None:
        self.free = False
        if target.what == "chain" and not self._has("chain"):
            here = self.hand.next_at(self.test(target), self.hand.total)
            count = count if here is None else 1
        if target.what in ("same", "ring", "row_end", "between", "from_hook"):
            return
        if target.which == "first" and self.turning[1] and self.hand.used <= 1 and not self.begun:
            count -= 1  # "ch 3, skip first st": the chain stands on it already
        if not self.hand.known:
            return
        self._take(span, target, self.test(target), count, self.hand.total)

    # -- how far

    def stop_for(self, tail: Sequence[Act]) -> int:
        """Where the places begin that the acts in the tail need."""
        need = sum(self.needs(act) for act in tail)
        need += self.leave
        return self.hand.from_end(self.test(_PLAIN), need, self.hand.total)

    def needs(self, act: Act) -> int:
        """Places that an act takes by its words alone."""
        match act:
            case Bare(_, stitch, times, _):
                return self.number(times) * self.trade.takes(stitch or self.open_stitch())
            case Into(_, body, target, extent):
                takes = max(
                    (self.trade.takes(a.stitch) for a in body if isinstance(a, Bare)), default=1
                )
                return self._needs(target, extent) * max(takes, 1)
            case Increase(_, _, _, extent, target):
                return self._needs(target, extent)
            case Together(_, _, places, extent, target):
                return self._needs(target, extent) * places
            case Skip(_, target, times):
                return 0 if self._is_named(target) else self.number(times)
            case Leave(_, times):
                return self.number(times, 0)
            case Repeat(_, body, extent, more, doubtful) if extent.kind == "times":
                return self._times(extent, more=more, doubtful=doubtful) * sum(
                    self.needs(a) for a in body
                )
            case _:
                return 0

    def _needs(self, target: Target, extent: Extent) -> int:
        if extent.kind != "times" or target.what in ("same", "ring", "between", "row_end"):
            return 0
        if target.which in ("same", "first"):
            return 0
        if target.what == "top":
            last = self.hand.runs[-1][0] if self.hand.runs else None
            return int(last is not None and last.kind == "stitch" and last.chains > 0)
        if target.what in ("space", "corner"):
            return int(self.way.spaces == "space") * self.number(extent.times)
        return self.number(extent.times)

    def _stop(self, span: Span, extent: Extent, tail: Sequence[Act]) -> int:
        target = extent.target or _PLAIN
        if extent.kind == "but_last":
            count = self.number(extent.times)
            end = self.stop_for([act for act in tail if isinstance(act, Leave)])
            return self.hand.from_end(self.test(target), count, end)
        if extent.kind == "until":
            at = self.hand.next_at(self.test(target), self.hand.total)
            if at is None:
                self._no_place(span, target)
            return self.hand.total if at is None else at
        return self.stop_for(tail)

    # -- repeats

    def _times(self, extent: Extent, *, more: bool, doubtful: bool) -> int:
        if extent.kind != "times":
            return 1
        count = self.number(extent.times)
        if doubtful:
            return count if self.way.all_told else count + 1
        return count + int(more)

    def _state(self) -> State:
        return State(
            self.hand.mark(),
            len(self.out),
            len(self.extras),
            len(self.problems),
            self.stitch,
            self.free,
        )

    def _back(self, state: State) -> None:
        self.hand.back(state.hand)
        self.made -= sum(n for _, n in self.out[state.out :])
        del self.out[state.out :], self.extras[state.extras :], self.problems[state.problems :]
        self.stitch, self.free = state.stitch, state.free

    def _repeat(self, act: Repeat, tail: Sequence[Act]) -> None:
        body: tuple[Act, ...] = act.body
        if act.in_place and self.way.in_one:
            body = (Into(act.span, act.body, _PLAIN, _ONCE),)
        if not body:
            return
        if act.extent.kind == "times":
            self._so_often(body, self._times(act.extent, more=act.more, doubtful=act.doubtful))
        elif not self.hand.known:
            self.open = True
        elif act.extent.kind == "until" and _is_marked(act.extent):
            self.lost = True
        else:
            self._leave_last(act.extent, tail)
            self._as_far(act, body, self._stop(act.span, act.extent, tail))

    def _leave_last(self, extent: Extent, tail: Sequence[Act]) -> None:
        """ "To last 6 sts, turn": what nothing works after that is left on purpose."""
        turns = any(isinstance(act, Turn) and act.turned for act in tail)
        if extent.kind == "but_last" and turns and all(self._quiet(act) for act in tail):
            self.leave_rest = True

    def _so_often(self, body: tuple[Act, ...], times: int) -> None:
        done = 0
        while done < times:
            before = self._state()
            run = self.hand.run
            self.work(body)
            done += 1
            if len(self.problems) > before.problems:
                # What is not there once is not there again: it is told once.
                del self.problems[before.problems + 1 :]
            moved = self.hand.at - before.hand.at
            over = self.hand.over - before.hand.over
            more = times - done
            if moved and over:
                continue
            if moved:
                if self.hand.run != run or self.hand.passed != before.hand.passed or self.vague:
                    continue
                more = min(more, self.hand.left_in_run() // moved)
            elif not over and len(self.out) == before.out and len(self.extras) == before.extras:
                return
            self._multiply(before, moved, over, more)
            done += more

    def _multiply(self, before: State, moved: int, over: int, more: int) -> None:
        """What was just worked once, worked so often again."""
        if more <= 0:
            return
        if moved:
            self.hand.forward(moved * more)
        self.hand.over += over * more
        if self.hand.over > MOST_PLACES:
            raise TooLongError
        runs = merged(self.out[before.out :])
        del self.out[before.out :]
        self.made -= sum(n for _, n in runs)
        self.put(runs, more + 1)
        self.extras += [(key, n * more) for key, n in self.extras[before.extras :]]

    def _as_far(self, act: Repeat, body: tuple[Act, ...], stop: int) -> None:
        """A group worked again as long as it fits before `stop`."""
        start = self.hand.at
        times = each = 0
        while self.hand.at < stop:
            before = self._state()
            run = self.hand.run
            self.work(body)
            moved = self.hand.at - before.hand.at
            failed = self.hand.over > before.hand.over or len(self.problems) > before.problems
            if failed or self.hand.at > stop or not moved:
                stuck = [p for p in self.problems[before.problems :] if p.kind == "no_place"]
                if not moved and not failed:
                    return  # nothing is taken: worked once
                self._back(before)
                if stuck and not times:
                    self.problems.append(stuck[0])
                else:
                    self._does_not_fill(act, each or self._each(body), start, stop, times)
                return
            times, each = times + 1, self.hand.used - before.hand.used
            if self.hand.run == run and self.hand.passed == before.hand.passed and not self.vague:
                ahead = min(self.hand.left_in_run(), stop - self.hand.at)
                self._multiply(before, moved, 0, ahead // moved)
                times += ahead // moved

    def _each(self, body: tuple[Act, ...]) -> int:
        return sum(self.needs(act) for act in body)

    def _does_not_fill(self, act: Repeat, each: int, start: int, stop: int, times: int) -> None:
        rest = self.hand.has(self.hand.at, stop)
        remaining = {p for p, _ in _between(self.hand, self.hand.at, stop) if self.hand.weight(p)}
        passed = {_alike(p) for p in self.hand.passed}
        if not rest or (times and {_alike(p) for p in remaining} <= passed):
            self.hand.pass_to(stop)
            return
        self._repeat_problem(act.span, each, self.hand.has(start, stop))

    # -- evenly

    def _evenly(self, act: Evenly, tail: Sequence[Act]) -> None:
        stitch = act.stitch or self.open_stitch()
        self.stitch = act.stitch or self.stitch
        if not self.hand.known:
            self._evenly_over_unknown(act, stitch)
            return
        stop = self.stop_for(tail)
        if act.over is not None:
            stop = min(stop, self.hand.at + self.number(act.over))
        ahead = self.hand.ahead(self.test(_PLAIN), stop)
        done = not ahead and bool(self.out)
        if act.total is not None:
            count = self.number(act.total)
        else:
            count = (0 if done else ahead) + act.sense * self.number(act.change, 0)
        self.hand.pass_to(stop)
        if count >= 0:
            self.put(self.trade.leaves(stitch) or ((Place("stitch", stitch), 1),), count)
        else:
            self._unmake(-count)

    def _evenly_over_unknown(self, act: Evenly, stitch: str) -> None:
        self.vague = True
        if act.total is None:
            self.open = True
        else:
            self.put(self.trade.leaves(stitch), self.number(act.total))

    def _unmake(self, count: int) -> None:
        """Fewer of what was just worked: "sc in each st around, decreasing 6 evenly"."""
        while count and self.out:
            place, length = self.out.pop()
            if length > count:
                self.out.append((place, length - count))
            count -= min(count, length)

    # -- the end

    def finish(self) -> None:
        """Work what stands before markers: where these are is not known, how many there are is."""
        if self.slack and self.hand.known:
            rest = self.hand.ahead(self.test(_PLAIN), self.stop_for(()))
            self.hand.take(self.test(_PLAIN), rest, self.hand.total)
            self.put(self.slack, rest)


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


_ONCE = Extent("times")


def _times(count: int) -> Extent:
    return Extent("times", Numbers((count,), Span(0, 0)))


def _is_marked(extent: Extent) -> bool:
    return extent.target is not None and extent.target.what == "marked"


def _begins_with_chain(acts: Sequence[Act]) -> bool:
    for act in acts:
        if isinstance(act, Chain):
            return True
        if isinstance(act, Bare | Into | Increase | Together | Repeat | Skip | Evenly):
            return False
    return False


def _works_from_hook(acts: Sequence[Act]) -> bool:
    for act in acts:
        target = getattr(act, "target", None)
        if target is not None:
            return bool(target.what == "from_hook")
    return False


def _takes_places(acts: Sequence[Act]) -> bool:
    return any(isinstance(act, Bare | Into | Increase | Together | Repeat | Evenly) for act in acts)


def _named(target: Target, worker: Worker) -> str:
    if target.what == "stitch":
        return target.stitch
    if target.what in ("space", "corner"):
        chains = worker.number(target.chains, 0)
        return f"ch-{chains} sp" if chains else "ch sp"
    return target.what


def hand_over(edge: Edge, trade: Trade, way: RowWay, *, spaces_named: bool) -> Hand:
    """The edge taken in hand, its spaces read as the way says."""
    met = with_chains_apart(edge) if way.spaces == "each" else edge
    return Hand(met, trade, weigh_spaces=spaces_named or way.spaces == "space")
