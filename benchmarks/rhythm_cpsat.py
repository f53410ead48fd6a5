"""The planner's rhythm as a general constraint solver finds it: OR-Tools CP-SAT.

The same question in the same order: of all rhythms of one clause, of two, or alternating, whose
greatest stray from the wanted girth lies within the indifference of the least one, the fewest
clauses, then the least stray. Lengths are whole ten-thousandths of a millimetre, as CP-SAT knows
whole numbers only.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from ortools.sat.python import cp_model

from frogless.plan.rhythm import Stretch

FINE = 10_000  # parts of a mm
_ENOUGH = 10**9  # 100 m: more than any girth


@dataclass(frozen=True, slots=True)
class Found:
    """What the solver found: clauses and greatest stray, mm."""

    clauses: int
    stray: float


def solve(stretch: Stretch, indifference: float) -> Found:
    """The best rhythm: one search for the least stray, one for the simplest text near it."""
    model = _Model(stretch)
    model.search(model.stray)
    least = model.value(model.stray)
    model.add(model.stray <= least + round(indifference * FINE))
    model.search(model.clauses * _ENOUGH + model.stray)
    return Found(model.value(model.clauses), model.value(model.stray) / FINE)


class _Model(cp_model.CpModel):
    """Shaping rounds whose gaps follow one of the trade's wordings."""

    def __init__(self, stretch: Stretch) -> None:
        super().__init__()
        self.solver = cp_model.CpSolver()
        self.solver.parameters.num_workers = 1  # Frogless uses one core
        last = stretch.rounds
        self.rounds = [self.new_int_var(1, last, f"round {j}") for j in range(stretch.shapings)]
        self.stray = self.new_int_var(0, _ENOUGH, "stray")
        self.clauses = self.new_int_var(0, 2, "clauses")
        self._wording(stretch.shapings - 1, last)
        self._strays(stretch)

    def _wording(self, further: int, last: int) -> None:
        """Every q rounds; every q and then every p; or alternately every q and q ± 1."""
        one, other = (self.new_int_var(1, last, name) for name in ("one", "other"))
        alternating, changes = (self.new_bool_var(n) for n in ("alternating", "changes"))
        second = [self.new_bool_var(f"gap {j} is in the second clause") for j in range(further)]
        for before, after in pairwise(second):
            self.add_implication(before, after)
        if second:
            self.add(second[0] == 0)
            self.add(second[-1] == 1).only_enforce_if(changes, ~alternating)
            self.add(second[-1] == 0).only_enforce_if(~changes)
        self.add(one != other).only_enforce_if(changes)
        self.add(one == other).only_enforce_if(~changes)
        self.add_implication(alternating, changes)
        if further < 3:
            self.add(alternating == 0)
        near = self.new_int_var(-1, 1, "alternation")
        self.add(other - one == near).only_enforce_if(alternating)
        self.add(self.clauses == (1 if further else 0) + changes)
        for j in range(further):
            gap = self.rounds[j + 1] - self.rounds[j]
            self.add(gap == one).only_enforce_if(~second[j], ~alternating)
            self.add(gap == other).only_enforce_if(second[j], ~alternating)
            self.add(gap == (one if j % 2 == 0 else other)).only_enforce_if(alternating)

    def _strays(self, stretch: Stretch) -> None:
        """The girth after each round, its distance from the wanted one, and its floor."""
        step, before = round(stretch.step * FINE), round(stretch.before * FINE)
        for r in range(stretch.rounds + 1):
            done = []
            for j, at in enumerate(self.rounds):
                is_done = self.new_bool_var(f"{j} by {r}")
                self.add(at <= r).only_enforce_if(is_done)
                self.add(at > r).only_enforce_if(~is_done)
                done.append(is_done)
            girth = before + step * sum(done)
            wanted = round(float(stretch.wanted[r]) * FINE)
            self.add(self.stray >= girth - wanted)
            self.add(self.stray >= wanted - girth)
            if stretch.floor is not None and stretch.floor[r] > 0:
                self.add(girth >= round(float(stretch.floor[r]) * FINE))

    def search(self, what: cp_model.LinearExprT) -> None:
        """Searches to the proven optimum."""
        self.minimize(what)
        status = self.solver.solve(self)
        assert status == cp_model.OPTIMAL, self.solver.status_name(status)

    def value(self, what: cp_model.LinearExprT) -> int:
        """A variable in the solution found last."""
        return self.solver.value(what)
