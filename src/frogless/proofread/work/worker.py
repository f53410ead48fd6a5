"""A row on its way: where the hook stands, what was made, and what was found to be wrong.

Runs of equal places are reckoned with by arithmetic: a group that is repeated over a plain run is
worked once and multiplied.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace

from frogless.proofread.script.model import Span
from frogless.proofread.words.model import Act, Extent, Numbers, Target
from frogless.proofread.work.edge import MOST_PLACES, MOST_RUNS, Edge, Place, Run, with_chains_apart
from frogless.proofread.work.hand import Hand, Mark, Test, TooLongError, test_of
from frogless.proofread.work.model import Problem
from frogless.proofread.work.trade import Trade
from frogless.proofread.work.ways import RowWay

#: Acts and repeats that one row may take; a row that needs more is not worked.
MOST_STEPS = 20_000
#: Runs that are laid before like neighbors are counted together.
_MOST_UNMERGED = 4 * MOST_RUNS
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
        working: works acts one after the other; handed in, as repeats and groups hold acts.
        row_stitch: the stitch that an "inc" is made of before any was named.

    `free` is true while the foot of a turning chain that does not count has not been worked into.
    """

    trade: Trade
    way: RowWay
    size: int
    sizes: int
    hand: Hand
    working: Callable[[Worker, Sequence[Act]], None]
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
    stands_for: str = ""  # the stitch that the turning chain is said to count as
    laid: int = 0
    travelled: int = 0  # places that slip stitches passed at the beginning of a round
    skipped_to: int = -1  # where the work stands that skipped to a place, which is not worked yet
    entered: dict[int, list[int]] = field(default_factory=dict)  # by where a group begins
    tests: dict[Target, Test] = field(default_factory=dict)
    begun: bool = False
    nested: int = 0

    def work(self, acts: Sequence[Act]) -> None:
        """All acts in their order."""
        self.working(self, acts)

    def number(self, numbers: Numbers | None, default: int = 1) -> int:
        """The number of this size."""
        if numbers is None:
            return default
        found = numbers.of(self.size, self.sizes)
        return default if found is None else found

    def times(self, extent: Extent, *, more: bool, doubtful: bool) -> int:
        """How often a group is worked in all."""
        if extent.kind != "times":
            return 1
        count = self.number(extent.times)
        if doubtful:
            return count if self.way.all_told else count + 1
        return count + int(more)

    def test(self, target: Target) -> Test:
        """Whether a place is meant by a target."""
        if target not in self.tests:
            chains = None if target.chains is None else self.number(target.chains)
            spaces = self.way.spaces == "space"
            named = target
            if target.what == "chain" and not self.has_kind("chain"):
                named, chains = Target("space", which=target.which), None
            if target.what == "space" and target.which == "last" and chains:
                chains = self._chains_of(chains)
            space = target.what == "space"
            if target.of and (target.nth or space) and not self.has_of(target.of):
                self.vague = self.vague or target.of == BUNCH
                named = replace(target, of="")  # "4th dc of next shell", which is 7 dc in one place
            if target.what == "corner":
                self.tests[target] = self._corner()
            else:
                self.tests[target] = self._told(
                    test_of(named, self.trade, spaces=spaces, chains=chains)
                )
        return self.tests[target]

    def _chains_of(self, chains: int) -> int:
        """The chains of a space that is named by the turning chain that it is a part of.

        "V-st in last ch-4 sp" where the ch 4 counts as dc and ch 1.
        """
        places = [place for place, _ in self.hand.runs]
        if any(p.kind == "space" and p.chains == chains for p in places):
            return chains
        begun = (p.stitch for p in places if p.kind == "stitch" and p.chains == chains)
        spaces = (chains - self.trade.turning_chain(stitch) for stitch in begun)
        return next((space for space in spaces if 0 < space < chains), chains)

    def _told(self, test: Test) -> Test:
        """The test without stitches of which it is not told what they are, where others pass it."""
        untold = Place("stitch").stitch
        if not any(test(p) and p.stitch != untold for p, _ in self.hand.runs if p.kind == "stitch"):
            return test
        return lambda p: test(p) and not (p.kind == "stitch" and p.of and p.stitch == untold)

    def has_of(self, group: str) -> bool:
        """Whether the edge has places that belong to a group of that name."""
        return any(place.of == group for place, _ in self.hand.runs)

    def has_kind(self, kind: str) -> bool:
        """Whether the edge has a place of that kind."""
        return any(place.kind == kind for place, _ in self.hand.runs)

    def _corner(self) -> Test:
        spaces = {place for place, _ in self.hand.runs if place.kind == "space"}
        corners = {p for p in spaces if p.corner}
        longest = max((p.chains for p in spaces), default=0)
        meant = corners or {p for p in spaces if p.chains == longest}
        return lambda place: place in meant

    def put(self, runs: Sequence[Run], times: int = 1) -> None:
        """Lay places on the new edge."""
        if times <= 0 or not runs:
            return
        self.made += times * sum(n for _, n in runs)
        if self.made > MOST_PLACES or len(self.out) + len(runs) * times > _MOST_UNMERGED:
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

    def open_stitch(self) -> str:
        """The stitch that is meant where none is named."""
        return self.stitch or self.row_stitch

    def step(self) -> None:
        """One more act; a row that takes too many is not worked."""
        self.steps += 1
        if self.steps > MOST_STEPS:
            raise TooLongError

    def mark(self) -> State:
        """The state now, to come back to."""
        return State(
            self.hand.mark(),
            len(self.out),
            len(self.extras),
            len(self.problems),
            self.stitch,
            self.free,
        )

    def back(self, state: State) -> None:
        """The state as it was."""
        self.hand.back(state.hand)
        self.made -= sum(n for _, n in self.out[state.out :])
        del self.out[state.out :], self.extras[state.extras :], self.problems[state.problems :]
        self.stitch, self.free = state.stitch, state.free

    def no_place(self, span: Span, target: Target) -> None:
        """Tell that places are not there which are named."""
        if self.laid and target.what == "space" and self.hand.edge.begun == "chain":
            # a tie: "ch 100, sl st in each ch back, sl st in ch-2 sp" of the piece
            self.vague = self.open = True
            return
        if target.what == "corner" and not self.has_kind("space"):
            self.vague = self.open = True  # of a piece's outline: where it lies is not told
            return
        self.problems.append(Problem("no_place", span, what=_named(target, self)))

    def repeat_problem(self, span: Span, each: int, has: int) -> None:
        """Tell that a repeat does not come out."""
        self.problems.append(Problem("repeat", span, each=each, has=has))


def is_named(target: Target) -> bool:
    """Whether places of one kind are meant, and no others."""
    return bool(target.stitch) or target.what in ("space", "corner", "top")


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
