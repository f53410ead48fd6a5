"""The planner's rhythm as a general constraint solver finds it: OR-Tools CP-SAT.

The same question in the same order: of all rhythms of at most so many clauses (an alternation counts
as two) that keep rounds, gaps and bounds, and whose greatest stray lies within the indifference of
the least one, the fewest clauses; then the least stray; then the least sum of squares. Each is
searched to the proven optimum, one after the other, the solution found last being the hint for the
next. Values are whole parts of a unit, as CP-SAT knows whole numbers only.

The model: a shaping is done by a round or not, in order (`done`), so a value is a sum and a cell of
round × level a difference of two; every gap begins a clause, goes on with one, or is the first, the
second or a later gap of an alternation. Of the ways tried to write it, this one is solved fastest.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from ortools.sat.python import cp_model

from frogless.plan.rhythm.engine import Task
from frogless.plan.rhythm.lattice import NEVER


@dataclass(frozen=True, slots=True)
class Found:
    """What the solver found: clauses, greatest stray and sum of squares, in parts and parts².

    Args:
        seconds: of solving alone, without stating the model.
    """

    clauses: int
    stray: int
    squares: int
    seconds: float


def solve(task: Task, parts: int = 100) -> Found | None:
    """The best rhythm; None when the solver proves that there is none.

    Args:
        parts: parts of a unit, as few as state the task exactly: fewer are easier for the solver.
    """
    model = _Model(task, parts)
    if not model.search(model.stray):
        return None
    least = model.value(model.stray)
    model.add(model.stray <= least + round(task.indifference * parts))
    model.search(model.clauses)
    model.add(model.clauses == model.value(model.clauses))
    model.search(model.stray)
    model.add(model.stray == model.value(model.stray))
    model.search(model.squares)
    return Found(
        model.value(model.clauses),
        model.value(model.stray),
        model.value(model.squares),
        model.seconds,
    )


class _Model(cp_model.CpModel):
    """Shaping rounds whose gaps follow the trade's wordings."""

    def __init__(self, task: Task, parts: int) -> None:
        super().__init__()
        self.solver = cp_model.CpSolver()
        self.solver.parameters.num_workers = 1  # Frogless uses one core
        self.seconds = 0.0
        self.task, self.last = task, task.rounds
        self.wanted = np.rint(np.asarray(task.wanted) * parts).astype(int).tolist()
        before, step = round(task.before * parts), round(task.step * parts)
        self.levels = [before + step * n for n in range(task.shapings + 1)]
        self.done = [self._done(j) for j in range(task.shapings)]
        for earlier, later in pairwise(self.done):
            for r in range(1, self.last + 1):
                self.add_implication(later[r], earlier[r - 1])
        self.rounds = [sum(1 - d for d in done) for done in self.done]
        self.clauses = self._wording()
        self.stray = self._strays(parts)
        self.squares = self._squares()

    def _done(self, j: int) -> list[cp_model.IntVar]:
        """Whether shaping j is done by each round, from round 0 (never) to the last (always)."""
        done = [self.new_bool_var(f"{j} by {r}") for r in range(self.last + 1)]
        self.add(done[0] == 0)
        self.add(done[-1] == 1)
        may = self.task.may_shape()
        for r, (before, after) in enumerate(pairwise(done), 1):
            self.add_implication(before, after)
            if not may[r]:
                self.add(before == after)
        return done

    def _wording(self) -> cp_model.LinearExprT:
        """Each gap begins a clause, goes on with one, or belongs to an alternation."""
        task, gaps = self.task, []
        least = max(task.least_gap, task.every or 1)
        for j, (a, b) in enumerate(pairwise(self.rounds)):
            gap = self.new_int_var(1, self.last, f"gap {j}")
            self.add(gap == b - a)
            self.add(gap >= least)
            if task.every is not None:
                self.add(gap == task.every)
            gaps.append(gap)
        n, count = len(gaps), []
        new, on, first, second, later = (
            [self.new_bool_var(f"{kind} {j}") for j in range(n)]
            for kind in ("new", "on", "first", "second", "later")
        )
        for j in range(n):
            self.add_exactly_one(new[j], on[j], first[j], second[j], later[j])
            count += [new[j], 2 * first[j]]
            if j == 0:
                self.add(on[0] + second[0] + later[0] == 0)
                continue
            self.add_bool_or(new[j - 1], on[j - 1]).only_enforce_if(on[j])
            self.add(gaps[j] == gaps[j - 1]).only_enforce_if(on[j])
            self.add(second[j] == first[j - 1])
            longer = self.new_bool_var(f"longer {j}")
            for way, literal in ((task.pair, longer), (-task.pair, ~longer)):
                self.add(gaps[j] == gaps[j - 1] + way).only_enforce_if(second[j], literal)
            self.add_bool_or(second[j - 1], later[j - 1]).only_enforce_if(later[j])
            if j >= 2:
                self.add(gaps[j] == gaps[j - 2]).only_enforce_if(later[j])
            else:
                self.add(later[j] == 0)
        if n:
            self.add(first[-1] == 0)
        clauses = self.new_int_var(0, 1 if task.every else task.clauses, "clauses")
        self.add(clauses == sum(count))
        return clauses

    def _strays(self, parts: int) -> cp_model.LinearExprT:
        """The value after each round, its distance from the wanted one, and its bounds."""
        task = self.task
        most = max(abs(v - w) for v in self.levels for w in self.wanted)
        stray = self.new_int_var(0, most, "stray")
        step = self.levels[1] - self.levels[0]
        for r, wanted in enumerate(self.wanted):
            value = self.levels[0] + step * sum(done[r] for done in self.done)
            self.add(stray >= value - wanted)
            self.add(stray >= wanted - value)
            for bound, sign in ((task.floor, 1), (task.ceiling, -1)):
                if bound is not None and abs(np.asarray(bound)[r]) < NEVER:
                    self.add(sign * value >= sign * round(float(np.asarray(bound)[r]) * parts))
        return stray

    def _squares(self) -> cp_model.LinearExprT:
        """The sum of squares: a cell of round × level is a difference of two that are done."""
        terms = []
        for r, wanted in enumerate(self.wanted):
            cost = [(level - wanted) ** 2 for level in self.levels]
            terms.append(cost[0])
            for done, (here, there) in zip(self.done, pairwise(cost), strict=True):
                terms.append((there - here) * done[r])
        return sum(terms)

    def search(self, what: cp_model.LinearExprT) -> bool:
        """Searches to the proven optimum; false when it is proven that there is none."""
        self.minimize(what)
        status = self.solver.solve(self)
        self.seconds += self.solver.wall_time
        if status == cp_model.INFEASIBLE:
            return False
        assert status == cp_model.OPTIMAL, self.solver.status_name(status)
        self.clear_hints()
        for done in self.done:
            for each in done:
                self.add_hint(each, self.solver.value(each))
        return True

    def value(self, what: cp_model.LinearExprT) -> int:
        """A variable in the solution found last."""
        return self.solver.value(what)
