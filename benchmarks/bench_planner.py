"""How fast is the planner's rhythm? Sections for real bodies, against a general solver.

Each of 300 sections (see `bodies.py`) is planned by Frogless and by OR-Tools CP-SAT (see
`rhythm_cpsat.py`), which searches the same model to proven optimality on one core. Clauses, stray and
squares have to be equal, or the benchmark stops. Frogless's time is the median of several runs of each
section; the solver's is one run, without the time to import it.

Then how the time grows with rounds (50 to 400) and with clauses (1 to 4).

    python benchmarks/bench_planner.py            all of it, a minute or two
    python benchmarks/bench_planner.py --short    thirty sections
"""

from __future__ import annotations

import statistics
import sys
import time
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
import rhythm_cpsat
from bodies import tasks
from forgetting import forget

from frogless.plan.rhythm.engine import Task, runners, solve

ALL, SHORT = 300, 30
RUNS = 5
PARTS = 100  # lengths are whole hundredths of a mm
SEEN_BY_SOLVER = 100
"""Rounds up to which the solver is asked when growth is measured: it takes minutes beyond."""


@dataclass(frozen=True, slots=True)
class Pair:
    """Seconds of both for one section.

    Args:
        theirs: stating the model and solving it. solving: the solver alone.
    """

    kind: str
    rounds: int
    shapings: int
    clauses: int
    ours: float
    theirs: float
    solving: float

    @property
    def ratio(self) -> float:
        """How many times as fast Frogless is."""
        return self.theirs / self.ours


def seconds(work: Callable[[], object], runs: int = RUNS) -> float:
    """The median of several runs after one that is not counted, each of them anew."""
    work()
    taken = []
    for _ in range(runs):
        forget()
        begun = time.perf_counter()
        work()
        taken.append(time.perf_counter() - begun)
    return statistics.median(taken)


def measure(kind: str, task: Task) -> Pair:
    """Both answers, held to each other, and both times."""
    begun = time.perf_counter()
    theirs = rhythm_cpsat.solve(task, PARTS)
    solver = time.perf_counter() - begun
    ours = solve(task)
    answer = ours and (ours.rhythm.clause_count, ours.stray * PARTS, ours.squares * PARTS**2)
    same = theirs and (theirs.clauses, theirs.stray, theirs.squares)
    assert (answer is None) == (same is None), task
    assert answer is None or np.allclose(answer, same, rtol=1e-9, atol=1e-4), (answer, same, task)
    clauses = ours.rhythm.clause_count if ours else 0
    mine = seconds(lambda: solve(task))
    solving = theirs.seconds if theirs else solver
    return Pair(kind, task.rounds, task.shapings, clauses, mine, solver, solving)


def tell(pairs: list[Pair]) -> None:
    """Medians, ratios, and the worst case."""
    by_ratio = sorted(pairs, key=lambda p: p.ratio)
    worst, counted = by_ratio[0], Counter(p.clauses for p in pairs)
    ours, theirs = ([getattr(p, name) for p in pairs] for name in ("ours", "theirs"))
    sizes = [(p.rounds, p.shapings) for p in pairs]
    print(f"{len(pairs)} sections, {min(sizes)[0]} to {max(sizes)[0]} rounds, equal in all of them")
    print(f"  answers of so many clauses: {dict(sorted(counted.items()))}")
    for name, taken in (("Frogless", ours), ("OR-Tools CP-SAT", theirs)):
        low, high = 1000 * min(taken), 1000 * max(taken)
        print(f"  {name:<24}{1000 * statistics.median(taken):9.2f} ms ({low:.2f} to {high:.2f})")
    print("how many times as fast as CP-SAT, section by section")
    print(f"  {'median':<24}{statistics.median(p.ratio for p in pairs):9.0f}")
    print(f"  {'one in twenty below':<24}{by_ratio[len(pairs) // 20].ratio:9.0f}")
    print(
        f"  {'worst':<24}{worst.ratio:9.0f} ({worst.kind}: {worst.shapings} shapings in "
        f"{worst.rounds} rounds, {worst.clauses} clauses)"
    )
    alone = sorted(p.solving / p.ours for p in pairs)
    print(f"  {'its solving alone':<24}{statistics.median(alone):9.0f} (worst {alone[0]:.0f})")
    for clauses in sorted({p.clauses for p in pairs}):
        middle = statistics.median(p.ratio for p in pairs if p.clauses == clauses)
        print(f"  {f'answers of {clauses} clauses':<34}{middle:9.0f}")
    for kind in sorted({p.kind for p in pairs}):
        middle = statistics.median(p.ratio for p in pairs if p.kind == kind)
        print(f"  {kind:<34}{middle:9.0f}")


def flared(rounds: int, clauses: int) -> Task:
    """A flared skirt with a bend at the high hip: as steep whatever the rounds, shaped every 5th."""
    shapings, part = rounds // 5, np.linspace(0, 1, rounds + 1)
    rise = np.where(part < 0.4, part * 1.6, 0.64 + (part - 0.4) * 0.6)
    wanted = np.round(840 + 44.4 * shapings * rise, 2)
    return Task(wanted, 844.4, 44.4, shapings, 5.56, clauses)


def tell_growth(sizes: tuple[int, ...]) -> None:
    """Time by rounds and by clauses: the best rhythm, and all runners-up with it."""
    print(
        "growth: a section with a bend, shaped every 5th round on average; indifference one stitch"
    )
    for rounds in sizes:
        for clauses in (1, 2, 3, 4) if rounds <= SEEN_BY_SOLVER else (3, 4):
            task = flared(rounds, clauses)
            best, every = seconds(lambda t=task: solve(t)), seconds(lambda t=task: runners(t), 3)
            solver = ""
            if rounds <= SEEN_BY_SOLVER // 2 or (rounds <= SEEN_BY_SOLVER and clauses <= 2):
                pair = measure("growth", task)
                solver = f"; CP-SAT {1000 * pair.theirs:8.0f} ms, {pair.ratio:5.0f} times as long"
            print(
                f"  {rounds:4} rounds, {clauses} clauses: {1000 * best:8.2f} ms, "
                f"with runners-up {1000 * every:8.2f} ms{solver}"
            )


def main() -> None:
    """Prints the ratios and the growth."""
    short = "--short" in sys.argv[1:]
    tell([measure(kind, task) for kind, task in tasks(SHORT if short else ALL)])
    tell_growth((50, 100) if short else (50, 100, 200, 400))


if __name__ == "__main__":
    main()
