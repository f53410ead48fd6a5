"""The rows of a pattern worked one over the other in one size.

A row that does not come out leaves more than one edge that may be meant: what it makes, and what it
states. The rows above are worked over each of them, and what comes out best is kept. So one slip is
told where it is and not again in every row above it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from frogless.proofread.words.model import (
    Again,
    Aside,
    Chain,
    Evenly,
    Join,
    Numbers,
    Ring,
    Stated,
    Unclear,
)
from frogless.proofread.work.acts import (
    QUIET,
    again_in,
    every,
    is_slip,
    targets,
    turns_first,
    turns_last,
    works,
)
from frogless.proofread.work.again import MOST_ROWS, Plan, Todo
from frogless.proofread.work.bench import Bench
from frogless.proofread.work.counts import Mode, Verdict, judge
from frogless.proofread.work.edge import (
    NOTHING,
    RING,
    UNKNOWN,
    Edge,
    has_spaces,
    merged,
    of_stitches,
    resized,
    turned,
)
from frogless.proofread.work.model import Problem, Told, Worked
from frogless.proofread.work.row import Outcome, Row, other_ways
from frogless.proofread.work.ways import RowWay, Ways

#: Edges that are followed at once.
MOST_EDGES = 4
#: What a second thing that is wrong in the same row weighs, an edge that nobody counts, a reading
#: that is not the custom's.
_MORE, _UNSAID, _OTHER = 0.1, 0.5, 0.01
_NO_COUNT = Verdict(None, None, None)
#: Chains that a sentence lifts the work with; more are a new beginning.
_LIFT = 8
#: Rows that come out are looked at no further; the counts that would mend the others are looked
#: for in so many of them.
MOST_NEEDS = 60


@dataclass(frozen=True, slots=True)
class Trail:
    """The rows that led to an edge, the last one first."""

    row: Worked
    before: Trail | None


@dataclass(frozen=True, slots=True)
class Standing:
    """One edge that the work may have come to.

    Args:
        below: stitches that it counts as; None when not known.
        rest: places that were left for later.
        turn: whether the work was turned after it; None where nothing is said.
        cost: what is wrong on the way there.
    """

    edge: Edge = NOTHING
    below: int | None = None
    rest: Edge | None = None
    turn: bool | None = None
    cost: float = 0.0
    trail: Trail | None = None
    block: Edge | None = None
    assumed: int = 0


@dataclass(slots=True)
class Course:
    """A pattern worked in one size under one set of readings."""

    told: Sequence[Told]
    bench: Bench
    ways: Ways
    mode: Mode
    chains: Sequence[tuple[tuple[int, bool], ...]]
    size: int
    sizes: int
    needs: bool = True
    most: int = MOST_ROWS
    lift: Chain | None = None
    new_yarn: bool = False
    cut: bool = False
    needed: int = 0

    def run(self) -> Standing:
        """The best of all edges that the pattern may have come to, with the rows before it."""
        plan = Plan(self.size, self.sizes, self.most)
        standings = [Standing()]
        piece: int | None = None
        for index, told in enumerate(self.told):
            if told.begins or told.piece != piece:
                standings, piece = self._begin(standings, onto=_goes_on(told)), told.piece
                plan.begin_piece()
            if told.label is None and self._is_remark(index, standings, plan):
                continue
            for todo in plan.rows(index, told):
                standings = self._row(standings, todo)
        self.cut = plan.cut
        return min(standings, key=lambda each: each.cost)

    def _begin(self, standings: list[Standing], *, onto: bool) -> list[Standing]:
        best = min(standings, key=lambda each: each.cost)
        self.lift, self.new_yarn = None, False
        if onto:
            anew = Standing(UNKNOWN, cost=best.cost + 1 + _MORE, trail=best.trail)
            return [*standings[: MOST_EDGES - 1], anew]
        return [Standing(cost=best.cost, trail=best.trail)]

    def _is_remark(self, index: int, standings: list[Standing], plan: Plan) -> bool:
        """Whether a sentence between rows works nothing; what it says beside that is taken in."""
        told = self.told[index]
        acts = told.said.acts
        kinds = {act.kind for act in acts if isinstance(act, Aside)}
        self.new_yarn = self.new_yarn or bool(kinds & {"join_yarn", "fasten_off"})
        if any(isinstance(act, Unclear) for act in every(acts)):
            return True
        if not works(acts):
            self._take_in(told, standings)
            again = again_in(acts)
            if again is not None and again.name == "piece":
                standings[:] = [replace(each, edge=UNKNOWN, below=None) for each in standings]
                return True
            return again is None or self._is_told_after(index, again, plan)
        if all(isinstance(act, (*QUIET, Ring)) for act in acts):
            standings[:] = [replace(each, edge=RING) for each in standings]
            return True
        chains = [act for act in acts if isinstance(act, Chain)]
        if all(isinstance(act, QUIET) or is_slip(act, self.bench.trade) for act in acts):
            return True  # "Sl st in first st.": the end of a spiral
        alone = all(isinstance(act, (*QUIET, Chain)) for act in acts)
        begun = any(s.edge.begun != "nothing" for s in standings)
        if alone and len(chains) == 1 and begun and not self.new_yarn:
            self.lift = chains[0]
            self._take_in(told, standings)
            return True
        return False

    def _is_told_after(self, index: int, again: Again, plan: Plan) -> bool:
        """Whether "9 rows without shaping" is only said of rows that are told after it.

        If it said to work them, the next row's number would go on after them.
        """
        label = next((t.label for t in self.told[index + 1 :] if t.label is not None), None)
        if again.rows is None or label is None or not label.numbers:
            return False
        done = next((t.number for t in reversed(plan.done) if t.number is not None), 0)
        return label.numbers[0] == done + 1

    def _take_in(self, told: Told, standings: list[Standing]) -> None:
        acts = told.said.acts
        turn = turns_last(acts)
        ring = any(isinstance(act, Join) and act.to == "ring" for act in acts)
        for i, each in enumerate(standings):
            edge = each.edge
            if ring and edge.begun == "chain" and sum(n for _, n in edge.runs) <= 16:
                edge = edge._replace(begun="ring")
            standings[i] = replace(each, edge=edge, turn=each.turn if turn is None else turn)

    # -- one row

    def _row(self, standings: list[Standing], todo: Todo) -> list[Standing]:
        acts, lift = self.bench.parted(todo.acts, flat=todo.kind == "row")
        row = Row(
            acts,
            todo.span,
            self.size,
            self.sizes,
            self.lift,
            self.chains[todo.source],
            closed=todo.kind == "round",
        )
        if self._is_foundation(row, todo):
            best = min(standings, key=lambda each: each.cost)
            standings = [Standing(cost=best.cost, trail=best.trail)]
        found: list[Standing] = []
        for standing in standings:
            found += self._over(standing, row, todo)
        if acts or not todo.problems:
            self.lift = lift
            self.new_yarn = any(
                isinstance(a, Aside) and a.kind in ("fasten_off", "join_yarn") for a in todo.acts
            )
        return _fewest(found)

    def _is_foundation(self, row: Row, todo: Todo) -> bool:
        """Whether a row is nothing but a chain that is begun with, under whatever heading."""
        label = self.told[todo.told].label
        works_on = [act for act in row.acts if not isinstance(act, QUIET)]
        named = label is not None and label.name == "foundation"
        return named and len(works_on) == 1 and isinstance(works_on[0], Chain | Ring)

    def _over(self, standing: Standing, row: Row, todo: Todo) -> Iterator[Standing]:
        """The row worked over one edge, in the readings that come out best."""
        edge = self._met(standing, row, todo)
        if todo.problems and not row.acts:
            yield self._next(standing, Outcome(UNKNOWN), _NO_COUNT, row, todo, edge, 1.0)
            return
        tried = [
            (
                self._try(edge, row, self.bench.way(row, self.ways), standing, todo),
                edge,
                0.0,
            )
        ]
        verdict = tried[0][0][1]
        if verdict.problems or (has_spaces(edge) and verdict.stated is None):
            tried += self._others(edge, row, standing, todo, wrong=bool(verdict.problems))
        weights = [_weight(v.problems) + extra + _unlike(v, todo) for (_, v), _, extra in tried]
        most = min(weights) + (_OTHER * 3 if min(weights) < _OTHER else 0)
        best = [each for each, weight in zip(tried, weights, strict=True) if weight <= most]
        for (outcome, verdict), over, extra in best[:3]:
            yield from self._leads(standing, outcome, verdict, row, todo, over, extra)

    def _met(self, standing: Standing, row: Row, todo: Todo) -> Edge:
        said = standing.turn
        first = turns_first(row.acts)
        turns = first if said is None else said
        if said is False and first:
            turns = True
        if turns is None:
            turns = todo.kind == "row"
        return turned(standing.edge) if turns else standing.edge

    def _try(
        self, edge: Edge, row: Row, way: RowWay, standing: Standing, todo: Todo
    ) -> tuple[Outcome, Verdict]:
        outcome = self.bench.work(row, edge, way)
        stated = todo.stated
        verdict = self._judge(outcome, stated, standing)
        if todo.steady and outcome.stitches is not None:
            as_stated = self._judge(outcome, todo.steady, standing)
            if not as_stated.problems or outcome.stitches == standing.below:
                verdict = as_stated
        kinds = {problem.kind for problem in outcome.problems}
        problems = verdict.problems
        if kinds & {"repeat", "no_place", "too_long", "brackets"}:
            problems = tuple(p for p in problems if p.kind == "brackets")
        return outcome, verdict._replace(problems=(*outcome.problems, *problems))

    def _judge(self, outcome: Outcome, stated: Sequence[Stated], standing: Standing) -> Verdict:
        below = standing.below
        return judge(outcome, stated, below, self.bench.trade, self.size, self.sizes, self.mode)

    def _others(
        self, edge: Edge, row: Row, standing: Standing, todo: Todo, *, wrong: bool
    ) -> list[tuple[tuple[Outcome, Verdict], Edge, float]]:
        """The row read in other ways, and over other edges where it may lie."""
        trade = self.bench.trade
        way = self.bench.way(row, self.ways)
        found: list[tuple[tuple[Outcome, Verdict], Edge, float]] = []
        for i, other in enumerate(other_ways(row, edge, trade, way)):
            found.append((self._try(edge, row, other, standing, todo), edge, _OTHER * (i + 1)))
        if not wrong:
            return found
        if todo.grows and (grown := self._grown(standing, row, todo)) is not None:
            found.append((self._try(edge, grown, way, standing, todo), edge, _OTHER))
        for over, extra in self._other_edges(standing, edge):
            found.append((self._try(over, row, way, standing, todo), over, extra))
        return found

    def _grown(self, standing: Standing, row: Row, todo: Todo) -> Row | None:
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

    def _other_edges(self, standing: Standing, edge: Edge) -> Iterator[tuple[Edge, float]]:
        if len(edge.runs) > 1 and has_spaces(edge):
            # Told as the row below was worked, though it is met from its other end.
            yield turned(edge), _OTHER * 4
        if standing.rest is not None:
            yield edge._replace(runs=merged((*edge.runs, *standing.rest.runs))), _OTHER
            if self.new_yarn:
                yield standing.rest, _OTHER
        if self.new_yarn and standing.edge.begun != "nothing":
            yield UNKNOWN, _UNSAID if standing.rest is not None else _UNSAID + 1

    def _leads(
        self,
        standing: Standing,
        outcome: Outcome,
        verdict: Verdict,
        row: Row,
        todo: Todo,
        over: Edge,
        extra: float,
    ) -> Iterator[Standing]:
        """The edges that the row may leave."""
        if verdict.problems and self.needs and self.needed < MOST_NEEDS:
            verdict = self._with_need(verdict, row, over, outcome, todo)
        first = self._next(standing, outcome, verdict, row, todo, over, extra)
        edges = list(dict.fromkeys(self._edges(outcome, verdict, row, over)))
        for edge in edges:
            below = verdict.total if edge is not outcome.edge else first.below
            if not edge.known:
                below = verdict.total
            yield replace(first, edge=edge, below=below if below is not None else first.below)

    def _edges(self, outcome: Outcome, verdict: Verdict, row: Row, over: Edge) -> Iterator[Edge]:
        total, edge = verdict.total, outcome.edge
        unsure = outcome.unclear and not outcome.outside
        if not edge.known:
            yield of_stitches(outcome.stitch, total) if total is not None else UNKNOWN
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

    def _with_need(
        self, verdict: Verdict, row: Row, over: Edge, outcome: Outcome, todo: Todo
    ) -> Verdict:
        kinds = {problem.kind for problem in verdict.problems}
        if not kinds & {"repeat", "too_many", "too_few", "count"} or todo.repeated:
            return verdict
        self.needed += 1
        need = self.bench.need(row, over, outcome.way, verdict.total)
        if need is None:
            return verdict
        mended = tuple(
            replace(p, need=need) if p.kind in ("repeat", "too_many", "too_few", "count") else p
            for p in verdict.problems
        )
        return verdict._replace(problems=mended)

    def _next(
        self,
        standing: Standing,
        outcome: Outcome,
        verdict: Verdict,
        row: Row,
        todo: Todo,
        over: Edge,
        extra: float,
    ) -> Standing:
        problems = _as_told(verdict.problems, todo, standing)
        worked = self._worked(outcome, verdict, problems, todo, standing)
        edge = outcome.edge
        block = standing.edge if todo.block_begins else standing.block
        if todo.unknown_times and block is not None and block.runs != edge.runs:
            edge = UNKNOWN  # it grows, and nobody says how often
        below = worked.worked if worked.worked is not None else worked.stated
        if outcome.stitches is not None and verdict.total is None:
            below = outcome.stitches
        rest = Edge(outcome.rest) if outcome.rest else standing.rest
        return Standing(
            edge,
            below if edge.known else None,
            rest,
            turns_last(todo.acts) if todo.acts else standing.turn,
            standing.cost + _weight(verdict.problems) + extra,
            Trail(worked, standing.trail),
            block,
        )

    def _worked(
        self,
        outcome: Outcome,
        verdict: Verdict,
        problems: tuple[Problem, ...],
        todo: Todo,
        standing: Standing,
    ) -> Worked:
        unsure = outcome.unclear and (
            not outcome.outside or bool(problems) or outcome.stitches is None
        )
        worked = verdict.worked
        if unsure and worked != verdict.stated:
            worked = None
        elif worked is None and not unsure and verdict.stated is not None:
            worked = verdict.stated  # an edge that nobody counts: taken as it is stated
        before = standing.trail.row.verdict if standing.trail else "ok"
        if worked is None and before == "unclear" and not standing.edge.known:
            unsure = True  # what it is worked over was not clear, so nothing of it can be checked
        shown = tuple(
            p for p in problems if not unsure or p.kind in ("brackets", "too_long", "again")
        )
        return Worked(
            told=todo.told,
            number=todo.number,
            size=self.size,
            stated=verdict.stated,
            worked=worked,
            consumed=outcome.uses,
            available=outcome.has,
            verdict="wrong" if shown else "unclear" if unsure else "ok",
            problems=shown,
            made=outcome.made,
            turning=outcome.turning,
            stitch=outcome.stitch,
            repeated=todo.repeated,
        )


def _goes_on(told: Told) -> bool:
    """Whether a piece may begin on the last row of the one before."""
    return told.onto or (told.label is not None and told.label.name == "next")


def _as_told(problems: tuple[Problem, ...], todo: Todo, standing: Standing) -> tuple[Problem, ...]:
    """Of rows worked again, what is wrong is told once, and of the line that says to work them."""
    if not todo.repeated:
        return (*todo.problems, *problems)
    before = standing.trail
    if before is not None and before.row.told == todo.told and before.row.verdict == "wrong":
        return todo.problems
    found = []
    for problem in problems:
        if problem.kind in ("too_many", "too_few", "repeat", "no_place"):
            found.append(replace(problem, kind="again", span=todo.span))
        else:
            found.append(problem)
    return (*todo.problems, *found[:1])


def _unlike(verdict: Verdict, todo: Todo) -> float:
    """Of several rows that one line says, a reading that meets what it states comes first."""
    return _OTHER * 5 if todo.steady and verdict.stated is None else 0.0


def _weight(problems: Sequence[Problem]) -> float:
    return 1.0 + _MORE * (len(problems) - 1) if problems else 0.0


def _fewest(standings: list[Standing]) -> list[Standing]:
    """The best few, each edge once."""
    best: dict[tuple[Edge, bool | None], Standing] = {}
    for each in sorted(standings, key=lambda one: one.cost):
        best.setdefault((each.edge, each.turn), each)
    return list(best.values())[:MOST_EDGES]


def rows_of(standing: Standing) -> list[Worked]:
    """The rows that led to an edge, in the order worked."""
    found: list[Worked] = []
    trail = standing.trail
    while trail is not None:
        found.append(trail.row)
        trail = trail.before
    return found[::-1]


def chains_told(
    told: Sequence[Told], general: Mapping[int, bool]
) -> list[tuple[tuple[int, bool], ...]]:
    """What is known of turning chains at each line: said in general, and by the rows up to it.

    Once a row has said it of a chain of a length, it holds until another row says otherwise. What
    the first such row says holds for those before it too, when nothing else was said of it.
    """
    first: dict[int, bool] = {}
    said_at: list[dict[int, bool]] = []
    for each in told:
        here: dict[int, bool] = {}
        for act in each.said.acts:
            if isinstance(act, Chain) and act.counts is not None and len(act.times.values) == 1:
                here[act.times.values[0]] = act.counts
                break
        for target in targets(each.said.acts):
            if target.what == "from_hook" and target.counts is not None:
                here.setdefault(target.nth - 1, target.counts)
        for chains, counts in here.items():
            first.setdefault(chains, counts)
        said_at.append(here)
    now = {**first, **general}
    found = []
    for here in said_at:
        now = {**now, **here}
        found.append(tuple(sorted(now.items())))
    return found
