"""When one stitch at each point is too slow and two are too many: two on some of the rounds.

Every round that may be shaped is, and on a few of them twice as much is added ("every round; on
round 3 and every 4th round after it, with 2 at each"). Which ones is a rhythm like any other: what
is left of the profile when the single shapings are taken off it. As few rounds as will do are
doubled, since two stitches at a point show.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from frogless.plan.rhythm.engine import Solution, Task, solve
from frogless.plan.rhythm.lattice import Bools


@dataclass(frozen=True, slots=True)
class Amounts:
    """Rounds that are shaped, and those of them on which twice as much is added.

    Args:
        rounds: all shaping rounds. doubled: the rhythm of those with 2 at each point; its strays
            are those of the whole.
    """

    rounds: tuple[int, ...]
    doubled: Solution

    def amounts(self) -> dict[int, int]:
        """Round: 1 or 2."""
        twice = set(self.doubled.rhythm.rounds)
        return {r: 2 if r in twice else 1 for r in self.rounds}


def room(may: Bools | Sequence[bool], least_gap: int = 1, every: int | None = None) -> list[int]:
    """How many shapings there is room for in rounds 1 … r, for each r from 0 on.

    >>> room([False, True, True, True, True, True], 2)
    [0, 1, 1, 2, 2, 3]
    """
    most, run, last = [0], [0], 1 - least_gap
    for r in range(1, len(may)):
        if every is not None:
            run.append((run[r - every] if r > every else 0) + 1 if may[r] else 0)
            most.append(max(most[-1], run[-1]))
        elif may[r] and r - last >= least_gap:
            last = r
            most.append(most[-1] + 1)
        else:
            most.append(most[-1])
    return most


def slots(task: Task) -> tuple[int, ...]:
    """As many rounds as can be shaped, the earliest ones."""
    most = room(task.may_shape(), task.least_gap, task.every)
    return tuple(r for r in range(1, task.rounds + 1) if most[r] > most[r - 1])


def solve_amounts(task: Task) -> Amounts | None:
    """Two steps on as few rounds as will do; None when even two on each do not, or one does.

    Thirty-two increases in 26 rounds: six rounds with two.

    >>> found = solve_amounts(Task(np.linspace(0, 32, 27), 0, 1, 32, indifference=1))
    >>> len(found.rounds), found.doubled.rhythm.rounds
    (26, (3, 7, 11, 15, 19, 23))
    """
    rounds = slots(task)
    twice = task.shapings - len(rounds)
    if not 0 < twice <= len(rounds):
        return None
    may = np.zeros(task.rounds + 1, np.bool_)
    may[list(rounds)] = True
    single = task.step * np.cumsum(may)
    left = replace(
        task,
        wanted=np.asarray(task.wanted) - single,
        shapings=twice,
        allowed=may,
        least_gap=1,
        every=None,
        floor=None if task.floor is None else np.asarray(task.floor) - single,
        ceiling=None if task.ceiling is None else np.asarray(task.ceiling) - single,
    )
    doubled = solve(left)
    return None if doubled is None else Amounts(rounds, doubled)
