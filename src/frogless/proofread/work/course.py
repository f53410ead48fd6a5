"""The rows of a pattern worked one over the other in one size.

A row that does not come out leaves more than one edge that may be meant: what it makes, and what it
states. The rows above are worked over each of them, and what comes out best is kept. So one slip is
told where it is and not again in every row above it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal, NamedTuple

from frogless.proofread.words.model import Evenly, Numbers, Stated
from frogless.proofread.work.acts import makes_spaces, says, turns_first
from frogless.proofread.work.again import Todo
from frogless.proofread.work.bench import Bench
from frogless.proofread.work.counts import Mode, Verdict, judge
from frogless.proofread.work.edge import (
    UNKNOWN,
    Edge,
    has_spaces,
    merged,
    of_stitches,
    resized,
    turned,
)
from frogless.proofread.work.row import Outcome, Row, other_ways
from frogless.proofread.work.shown import next_standing
from frogless.proofread.work.standing import (
    OTHER,
    UNSAID,
    Standing,
    Standings,
    after,
    anew,
    best_of,
    fewest,
    is_alike,
    weight,
)
from frogless.proofread.work.steps import Step, WorkRow
from frogless.proofread.work.ways import RowWay, Ways

_NO_COUNT = Verdict(None, None, None)
_NONE_LEFT = Edge()
#: Readings of a row over an edge that are followed.
_MOST_READINGS = 3
#: Of several rows that one line says, a reading that meets what it states comes first.
_UNLIKE = OTHER * 5


class Tried(NamedTuple):
    """A row worked over an edge in one way.

    Args:
        extra: what it costs that the way or the edge is not the first that is meant.
    """

    outcome: Outcome
    verdict: Verdict
    over: Edge
    extra: float = 0.0


@dataclass(frozen=True, slots=True)
class Run:
    """A pattern worked in one reading: the standings before each step, and those at the end."""

    ways: Ways
    mode: Mode
    before: tuple[list[Standing], ...]

    @property
    def cost(self) -> float:
        """What is wrong in it, all in all."""
        return best_of(self.before[-1]).cost


@dataclass(frozen=True, slots=True)
class Course:
    """A pattern in one size."""

    steps: Sequence[Step]
    bench: Bench
    size: int
    sizes: int

    def run(self, ways: Ways, mode: Mode, stop: int) -> Run:
        """The pattern worked in one reading up to a step, without looking for what would mend it."""
        reader = _Reader(self, ways, mode, needs=False)
        before = [[Standing()]]
        for step in self.steps[:stop]:
            before.append(reader.step(before[-1], step))
        return Run(ways, mode, tuple(before))

    def otherwise(self, run: Run, ways: Ways, mode: Mode, bound: float) -> float:
        """What is wrong when the pattern is read in other ways; no more than that it is over `bound`.

        Only rows that are read differently are worked, and those after them until they lie on the
        same edges again.
        """
        reader = _Reader(self, ways, mode, needs=False)
        end = len(run.before) - 1
        at, offset = 0, 0.0
        while (start := self._next_otherwise(at, end, run, ways, mode)) < end:
            standings = _dearer(run.before[start], offset)
            for at in range(start + 1, end + 1):
                standings = reader.step(standings, self.steps[at - 1])
                cost = best_of(standings).cost
                if cost > bound:
                    return cost
                offset = cost - best_of(run.before[at]).cost
                if is_alike(standings, run.before[at]):
                    break
            else:
                break
        return run.cost + offset

    def _next_otherwise(self, at: int, end: int, run: Run, ways: Ways, mode: Mode) -> int:
        """The next step from `at` on that is read in another way."""
        for index in range(at, end):
            if self._is_read_otherwise(self.steps[index], run, ways, mode):
                return index
        return end

    def _is_read_otherwise(self, step: Step, run: Run, ways: Ways, mode: Mode) -> bool:
        if not isinstance(step, WorkRow):
            return False
        if mode != run.mode and (step.todo.stated or step.todo.steady):
            return True
        return ways != run.ways and self.bench.way(step.row, ways) != self.bench.way(
            step.row, run.ways
        )

    def end(self, run: Run) -> Standing:
        """The best of all edges that the pattern comes to, with the rows before it.

        From the first row on that goes wrong it is worked anew, and it is looked for what would
        mend each; so are steps that the run left out.
        """
        start = next(
            (
                i
                for i, standings in enumerate(run.before[1:])
                if max(s.cost for s in standings) >= 1
            ),
            len(run.before) - 1,
        )
        reader = _Reader(self, run.ways, run.mode, needs=True)
        standings = run.before[start]
        for step in self.steps[start:]:
            standings = reader.step(standings, step)
        return best_of(standings)


def _dearer(standings: Standings, offset: float) -> list[Standing]:
    return [replace(each, cost=each.cost + offset) for each in standings]


@dataclass(slots=True)
class _Reader:
    """Rows read in the ways of a whole pattern, or in others where that comes out better.

    Args:
        needs: it is looked for what would mend a row that does not come out.
    """

    course: Course
    ways: Ways
    mode: Mode
    needs: bool

    @property
    def bench(self) -> Bench:
        return self.course.bench

    def step(self, standings: Standings, step: Step) -> list[Standing]:
        """The standings after a step."""
        if not isinstance(step, WorkRow):
            return after(step, standings)
        if step.foundation:
            standings = anew(standings)
        found: list[Standing] = []
        for standing in standings:
            found += self._over(standing, step)
        return fewest(found)

    def _over(self, standing: Standing, step: WorkRow) -> Iterator[Standing]:
        """The row worked over one edge, in the readings that come out best."""
        row, todo = step.row, step.todo
        edge = _met(standing, row, todo)
        if todo.problems and not row.acts:
            nothing = Tried(Outcome(UNKNOWN), _NO_COUNT, edge, 1.0)
            yield next_standing(standing, nothing.outcome, _NO_COUNT, todo, self.course.size, 1.0)
            return
        first = self._try(edge, row, self.bench.way(row, self.ways), standing, todo)
        tried = [first]
        # Slip stitches that stop short are told as they are: no other reading makes them right.
        wrong = any(p.kind != "passed" or p.says is not None for p in first.verdict.problems)
        open_to = has_spaces(edge) and first.verdict.stated is None and not first.verdict.problems
        doubtful = wrong or open_to
        if doubtful and not self.bench.is_tired:
            tried += self._others(edge, step, standing, wrong=wrong)
            weights = [
                weight(t.verdict.problems) + t.extra + _unlike(t.verdict, todo) for t in tried
            ]
            most = min(weights) + (OTHER * 3 if min(weights) < OTHER else 0)
            tried = [t for t, weighs in zip(tried, weights, strict=True) if weighs <= most]
        for each in tried[:_MOST_READINGS]:
            yield from self._leads(standing, each, row, todo)

    def _try(
        self,
        edge: Edge,
        row: Row,
        way: RowWay,
        standing: Standing,
        todo: Todo,
        extra: float = 0.0,
    ) -> Tried:
        outcome = self.bench.work(row, edge, way)
        verdict = self._judge(outcome, todo.stated, standing)
        if todo.steady and outcome.stitches is not None:
            as_stated = self._judge(outcome, todo.steady, standing)
            if not as_stated.problems or outcome.stitches == standing.below:
                verdict = as_stated
        problems = verdict.problems
        if outcome.problems:
            kinds = {problem.kind for problem in outcome.problems}
            if kinds & {"repeat", "no_place", "too_long", "brackets"}:
                problems = tuple(p for p in problems if p.kind == "brackets")
            verdict = verdict._replace(problems=(*outcome.problems, *problems))
        return Tried(outcome, verdict, edge, extra)

    def _judge(self, outcome: Outcome, stated: Sequence[Stated], standing: Standing) -> Verdict:
        size, sizes = self.course.size, self.course.sizes
        return judge(outcome, stated, standing.below, self.bench.trade, size, sizes, self.mode)

    def _others(
        self, edge: Edge, step: WorkRow, standing: Standing, *, wrong: bool
    ) -> Iterator[Tried]:
        """The row read in other ways, and over other edges where it may lie."""
        row, todo = step.row, step.todo
        way = self.bench.way(row, self.ways)
        for i, other in enumerate(other_ways(row, edge, self.bench.trade, way)):
            yield self._try(edge, row, other, standing, todo, OTHER * (i + 1))
        if not wrong:
            return
        if todo.grows and (grown := _grown(standing, row, todo)) is not None:
            yield self._try(edge, grown, way, standing, todo, OTHER)
        away = todo.kind == "row" and _turns(standing, row, todo)
        for over, extra in _other_edges(standing, edge, new_yarn=step.new_yarn, away=away):
            yield self._try(over, row, way, standing, todo, extra)

    def _leads(self, standing: Standing, tried: Tried, row: Row, todo: Todo) -> Iterator[Standing]:
        """The edges that the row may leave."""
        outcome, verdict, over, extra = tried
        if verdict.problems and self.needs and not todo.repeated:
            verdict = self.bench.with_need(verdict, row, over, outcome.way)
        first = next_standing(standing, outcome, verdict, todo, self.course.size, extra)
        for edge in dict.fromkeys(self._edges(outcome, verdict, row, over)):
            below = verdict.total if edge is not outcome.edge else first.below
            if not edge.known:
                below = verdict.total
            if below is None:
                below = first.below
            if edge is first.edge and below == first.below:
                yield first
            else:
                yield replace(first, edge=edge, below=below)

    def _edges(self, outcome: Outcome, verdict: Verdict, row: Row, over: Edge) -> Iterator[Edge]:
        total, edge = verdict.total, outcome.edge
        unsure = outcome.unclear and not outcome.outside
        if not edge.known:
            plain = total is not None and not makes_spaces(row.acts)
            yield of_stitches(outcome.stitch, total or 0) if plain else UNKNOWN
            return
        if unsure and total is not None:
            yield resized(edge, total)
            return
        if verdict.problems and total is not None and outcome.stitches is not None:
            # What is stated comes first: a row that loses a stitch each time is told so each time.
            yield resized(edge, total)
        yield edge
        if unsure:
            yield UNKNOWN
        if not verdict.problems:
            return
        need = next((p.need for p in verdict.problems if p.need), None)
        if need and total is None:
            yield self.bench.work(row, resized(over, need), outcome.way).edge
        if total is None and (meant := _as_there(outcome)):
            yield resized(edge, meant)


def _as_there(outcome: Outcome) -> int | None:
    """Stitches of a row that uses more or fewer places than there are, had it used those there are."""
    if outcome.stitches is None or outcome.uses is None or outcome.has is None:
        return None
    meant = outcome.stitches - (outcome.uses - outcome.has)
    return meant if meant > 0 and outcome.uses != outcome.has else None


def _met(standing: Standing, row: Row, todo: Todo) -> Edge:
    """The edge as the row meets it."""
    turns = _turns(standing, row, todo) != (standing.back != says(row.acts, "back"))
    edge = turned(standing.edge) if turns else standing.edge
    return _with_left(edge, standing, row, turns=turns) if says(row.acts, "left_over") else edge


def _with_left(edge: Edge, standing: Standing, row: Row, *, turns: bool) -> Edge:
    """The edge with the places that were left for this row.

    In a ring it comes to them first, when it goes the same way as the row that left them, else last.
    In flat work a row that is turned goes away from what the last one left, and comes at its end to
    what was left before that; one that goes on the same way comes to that first.
    """
    left, rest = standing.left or _NONE_LEFT, standing.rest or _NONE_LEFT
    parts: tuple[Edge, ...]
    if row.closed:
        waiting = standing.left or rest
        parts = (edge, turned(waiting)) if turns else (waiting, edge)
    else:
        parts = (edge, standing.rest or left) if turns else (rest, edge, left)
    return edge._replace(runs=merged(run for part in parts for run in part.runs))


def _turns(standing: Standing, row: Row, todo: Todo) -> bool:
    """Whether the work is turned before the row."""
    said = standing.turn
    first = turns_first(row.acts)
    turns = first if said is None else said
    if said is False and first:
        turns = True
    if turns is None:
        turns = todo.kind == "row"
    return turns


def _grown(standing: Standing, row: Row, todo: Todo) -> Row | None:
    """The row with as many stitches more or fewer as when it was told, spread as they come."""
    trail = standing.trail
    while trail is not None and (trail.row.told != todo.source or trail.row.repeated):
        trail = trail.before
    if trail is None or trail.row.worked is None or trail.row.available is None:
        return None
    change = trail.row.worked - trail.row.available
    count = Numbers((abs(change),), todo.span)
    sense: Literal[1, -1] = 1 if change >= 0 else -1
    return replace(row, acts=(Evenly(todo.span, trail.row.stitch, count, sense=sense),))


def _other_edges(
    standing: Standing, edge: Edge, *, new_yarn: bool, away: bool
) -> Iterator[tuple[Edge, float]]:
    """Other edges that the row may lie on, and what they cost.

    Args:
        away: the work was turned, so that what the row below left lies behind it; in a ring it lies
            before it as well.
    """
    if len(edge.runs) > 1 and has_spaces(edge):
        # Told as the row below was worked, though it is met from its other end.
        yield turned(edge), OTHER * 4
    left = standing.left or standing.rest if new_yarn or not away else standing.rest
    if left is not None:
        yield edge._replace(runs=merged((*edge.runs, *left.runs))), OTHER
        if new_yarn:
            yield left, OTHER
    if new_yarn and standing.edge.begun != "nothing":
        yield UNKNOWN, UNSAID if left is not None else UNSAID + 1


def _unlike(verdict: Verdict, todo: Todo) -> float:
    return _UNLIKE if todo.steady and verdict.stated is None else 0.0
