"""Rows worked and remembered, and the count of the row below from which a row would come out."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from frogless.proofread.words.model import Act, Chain, Numbers
from frogless.proofread.work.acts import numbers_in, shape, without_last_chain
from frogless.proofread.work.counts import Verdict
from frogless.proofread.work.edge import UNKNOWN, Edge, Run, is_plain
from frogless.proofread.work.model import Problem
from frogless.proofread.work.row import Outcome, Row, first_way, work_row
from frogless.proofread.work.trade import Trade
from frogless.proofread.work.ways import RowWay, Ways

#: Acts that are worked of a pattern in all sizes and readings, and so many more for each line. Half
#: of it may go into other readings (measured: some 40,000 to the second).
EFFORT, EFFORT_OF_LINE = 30_000, 100
#: Rows that do not come out for which it is looked for what would mend them.
MOST_NEEDS = 100
_MENDED_BELOW = frozenset({"repeat", "too_many", "too_few", "count"})


class Bench:
    """Rows worked, each remembered: one that is worked over an equal edge is worked once."""

    def __init__(self, trade: Trade, lines: int) -> None:
        self.trade = trade
        self._most = EFFORT + EFFORT_OF_LINE * lines
        self._done = 0
        # The row is kept with what it came to, so that its identity stays its own.
        self._known: dict[tuple[object, ...], tuple[Outcome, Row]] = {}
        self._wrong: dict[tuple[object, ...], tuple[Outcome, Row]] = {}
        self._numbered: dict[object, int] = {}
        self._shapes: dict[int, tuple[int, object]] = {}
        self._ways: dict[tuple[object, ...], tuple[RowWay, Row]] = {}
        self._sized: dict[int, tuple[tuple[Numbers, ...], Row]] = {}
        self._needs: dict[tuple[object, ...], int | None] = {}
        self._parted: dict[
            tuple[int, bool], tuple[tuple[tuple[Act, ...], Chain | None], object]
        ] = {}

    def work(self, row: Row, edge: Edge, way: RowWay) -> Outcome:
        """What the row comes to."""
        alike = self._shape(row.acts), self._shape(row.lift)
        key = (*alike, self._size(row), row.closed, row.partial, row.afresh, edge, way)
        known = self._known.get(key)
        if known is None:
            # What is wrong is told where it stands, so a row like it is worked anew.
            known = self._wrong.get((id(row.acts), *key))
        if known is not None:
            return known[0]
        if self.is_spent:
            return Outcome(UNKNOWN, unclear=True)
        found = self._broken(row) or self._worked(row, edge, way)
        if found.problems:
            self._wrong[id(row.acts), *key] = found, row
        else:
            self._known[key] = found, row
        return found

    def _worked(self, row: Row, edge: Edge, way: RowWay) -> Outcome:
        found = work_row(row, edge, self.trade, way)
        self._done += found.effort
        return found

    @property
    def is_tired(self) -> bool:
        """Whether so much was worked that no row is read in another way any more."""
        return self._done > self._most // 2

    @property
    def is_spent(self) -> bool:
        """Whether so much was worked that no row is worked any more."""
        return self._done > self._most

    def _shape(self, said: tuple[Act, ...] | Chain | None) -> int:
        if id(said) not in self._shapes:
            number = self._numbered.setdefault(shape(said), len(self._numbered))
            self._shapes[id(said)] = number, said
        return self._shapes[id(said)][0]

    def _size(self, row: Row) -> int:
        """The size, where the row has a number for each; rows equal in all sizes are worked once."""
        return row.size if self._lists(row) else -1

    def _lists(self, row: Row) -> tuple[Numbers, ...]:
        if id(row.acts) not in self._sized:
            lists = tuple(numbers for numbers in numbers_in(row.acts) if len(numbers.values) > 1)
            self._sized[id(row.acts)] = lists, row
        return self._sized[id(row.acts)][0]

    def _broken(self, row: Row) -> Outcome | None:
        for numbers in self._lists(row):
            if numbers.of(row.size, row.sizes) is None:
                says = len(numbers.values)
                problem = Problem("brackets", numbers.span, says=says, works=row.sizes)
                return Outcome(UNKNOWN, problems=(problem,), unclear=True)
        return None

    def parted(self, acts: tuple[Act, ...], *, flat: bool) -> tuple[tuple[Act, ...], Chain | None]:
        """The acts of a row without the chain at their end that lifts the work, and that chain."""
        key = (id(acts), flat)
        if key not in self._parted:
            self._parted[key] = without_last_chain(acts, flat=flat), acts
        return self._parted[key][0]

    def way(self, row: Row, ways: Ways) -> RowWay:
        """The way in which a row is read first."""
        alike = self._shape(row.acts), self._shape(row.lift)
        key = (*alike, self._size(row), row.told_counts, ways)
        if key not in self._ways:
            self._ways[key] = first_way(row, self.trade, ways), row
        return self._ways[key][0]

    def with_need(self, verdict: Verdict, row: Row, edge: Edge, way: RowWay) -> Verdict:
        """What is wrong, with the count of the row below from which the row would come out."""
        if not any(problem.kind in _MENDED_BELOW for problem in verdict.problems):
            return verdict
        key = (
            self._shape(row.acts),
            self._shape(row.lift),
            self._size(row),
            edge,
            way,
            verdict.total,
        )
        if key not in self._needs:
            if len(self._needs) >= MOST_NEEDS or self.is_tired:
                return verdict
            self._needs[key] = self.need(row, edge, way, verdict.total)
        need = self._needs[key]
        if need is None:
            return verdict
        mended = (replace(p, need=need) if p.kind in _MENDED_BELOW else p for p in verdict.problems)
        return verdict._replace(problems=tuple(mended))

    def need(self, row: Row, edge: Edge, way: RowWay, stated: int | None) -> int | None:
        """The count of the row below, nearest to what it is, from which the row comes out.

        Only where the edge is plain: how lace would have to change is not a number.
        """
        if not is_plain(edge) or edge.begun == "ring":
            return None
        return nearest(lambda count: self._fits(row, edge, way, count), _count(edge), stated)

    def _fits(self, row: Row, edge: Edge, way: RowWay, count: int) -> int | None:
        runs = _plain_like(edge, count)
        if self.is_tired:
            return None
        found = self._worked(row, replace_runs(edge, runs), way)
        return None if found.problems else found.stitches


def replace_runs(edge: Edge, runs: tuple[Run, ...]) -> Edge:
    """The edge with other places."""
    return edge._replace(runs=runs)


def _count(edge: Edge) -> int:
    return sum(n for p, n in edge.runs if p.kind != "turning")


def _plain_like(edge: Edge, count: int) -> tuple[Run, ...]:
    """The edge's places made more or fewer in its longest run."""
    change = count - _count(edge)
    longest = max(range(len(edge.runs)), key=lambda i: edge.runs[i][1], default=None)
    if longest is None:
        return ()
    place, length = edge.runs[longest]
    if length + change < 1:
        return ((place, count),)
    return (*edge.runs[:longest], (place, length + change), *edge.runs[longest + 1 :])


#: How far from what there is a count is looked for; past that the two nearest tell the rest.
_REACH = 48
#: Counts that come out, of which the rest is told.
_TOLD_BY = 3
#: Stitches of a row below that is not there.
_MOST_BELOW = 10_000


def nearest(fits: Callable[[int], int | None], has: int, stated: int | None) -> int | None:
    """The count nearest to `has` from which a row comes out, with `stated` stitches if it states any.

    What comes out of a row grows evenly with what it is worked over, so two counts tell the rest.
    """
    met: dict[int, int] = {}
    for step in range(1, _REACH + 1):
        for count in (has - step, has + step):
            made = fits(count) if count > 0 else None
            if made is None:
                continue
            if stated is None or made == stated:
                return count
            met[count] = made
        if len(met) > _TOLD_BY:
            break
    if stated is None or len(met) < 2:
        return None
    (a, made_a), (b, made_b) = sorted(met.items())[0], sorted(met.items())[-1]
    if made_a == made_b:
        return None
    steps, rest = divmod((stated - made_a) * (b - a), made_b - made_a)
    count = a + steps
    return count if not rest and 0 < count <= _MOST_BELOW and fits(count) == stated else None
