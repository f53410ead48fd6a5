"""Why there is no rhythm: requirements that cannot hold together, and what frees each of them."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from frogless.plan.rhythm.amounts import slots
from frogless.plan.rhythm.engine import Task, bound, search_of
from frogless.plan.rhythm.lattice import FINE, Floats

Name = Literal[
    "shapings",
    "rounds",
    "every",
    "least_gap",
    "allowed",
    "forbidden",
    "floor",
    "ceiling",
    "clauses",
]
"""What a task asks for: so many shapings (a count at the end), in so many rounds; and the rest."""

MOST_CLAUSES = 8
"""More are no rhythm any more."""

FARTHEST_ROUNDS = 4
"""A section is never made more than so many times as long (own choice)."""


@dataclass(frozen=True, slots=True)
class Requirement:
    """One requirement of a conflict.

    Args:
        freed_by: the least change that frees it, all others kept: for shapings, rounds, every,
            least_gap and clauses the number nearest to the one asked for; for floor and ceiling by
            how much it would have to give way, in the task's unit; for allowed and forbidden how
            many of their rounds are in the way. None when no change of it alone is enough.
    """

    name: Name
    freed_by: float | None


@dataclass(frozen=True, slots=True)
class Conflict:
    """Requirements of which none can be left out: any smaller set could be met.

    Args:
        room: shapings for which there is room. missing: those that are too many for it.
        doubled: shaping rounds on which the step would have to be twice as large, so that there
            is room; None when that does not help.
    """

    requirements: tuple[Requirement, ...]
    room: int
    missing: int
    doubled: int | None

    @property
    def names(self) -> tuple[Name, ...]:
        """The names of the requirements."""
        return tuple(r.name for r in self.requirements)

    def freed_by(self, name: Name) -> float | None:
        """The least change of one requirement; None when it is none of these, or is not enough."""
        return next((r.freed_by for r in self.requirements if r.name == name), None)


def explain(task: Task) -> Conflict | None:
    """The requirements that cannot hold together; None when they can.

    A deletion filter: each requirement is left out in turn, and stays out when the rest cannot be
    met without it either. What remains is minimal.

    Twenty-nine shapings every second round, and eighteen rounds: nine fit in.

    >>> conflict = explain(Task(np.linspace(0, 29, 19), 0, 1, 29, every=2))
    >>> conflict.names, conflict.room, conflict.missing
    (('shapings', 'rounds'), 9, 20)
    >>> conflict.freed_by("shapings")
    9.0
    """
    if is_possible(task):
        return None
    dropped: list[Name] = []
    for name in asked(task):
        if not is_possible_without(task, [*dropped, name]):
            dropped.append(name)
    room = len(slots(task))
    missing = max(task.shapings - room, 0)
    kept = [name for name in asked(task) if name not in dropped]
    return Conflict(
        requirements=tuple(Requirement(name, _freed_by(task, name)) for name in reversed(kept)),
        room=room,
        missing=missing,
        doubled=missing if 0 < missing <= room else None,
    )


def is_possible(task: Task) -> bool:
    """Whether there is any rhythm at all."""
    if task.shapings == 0:
        still = np.full(task.rounds + 1, task.before)
        return bool(
            (still >= _floor(task) - _SLACK).all() and (still <= _ceiling(task) + _SLACK).all()
        )
    if bound(task) is None:
        return False
    return (task.clauses >= MOST_CLAUSES and task.every is None) or search_of(task) is not None


def asked(task: Task) -> Iterator[Name]:
    """The requirements that a task has, those first that an author gives up most easily."""
    if task.clauses < MOST_CLAUSES:
        yield "clauses"
    if task.ceiling is not None:
        yield "ceiling"
    if task.floor is not None:
        yield "floor"
    if task.forbidden:
        yield "forbidden"
    if task.least_gap > 1:
        yield "least_gap"
    if task.every is not None:
        yield "every"
    if task.allowed is not None:
        yield "allowed"
    yield "rounds"
    yield "shapings"


def longer(task: Task, rounds: int) -> Task:
    """The task with rounds added at its end, where it goes on as it ended.

    Rounds that may be shaped go on in the rhythm of the last two, as right-side rows do.
    """
    more = rounds - task.rounds
    wanted = np.asarray(task.wanted, dtype=np.float64)
    may = None
    if task.allowed is not None:
        known = list(np.asarray(task.allowed, dtype=np.bool_))
        for _ in range(more):
            known.append(known[-2])
        may = np.array(known)
    return replace(
        task,
        wanted=np.pad(wanted, (0, more), mode="edge"),
        allowed=may,
        floor=None if task.floor is None else np.pad(_floor(task), (0, more), mode="edge"),
        ceiling=None if task.ceiling is None else np.pad(_ceiling(task), (0, more), mode="edge"),
    )


_SLACK = 1e-6


def _floor(task: Task) -> Floats:
    n = task.rounds + 1
    return np.full(n, -np.inf) if task.floor is None else np.asarray(task.floor, np.float64)


def _ceiling(task: Task) -> Floats:
    n = task.rounds + 1
    return np.full(n, np.inf) if task.ceiling is None else np.asarray(task.ceiling, np.float64)


_WITHOUT: Mapping[Name, Callable[[Task], Task]] = {
    "clauses": lambda task: replace(task, clauses=MOST_CLAUSES),
    "ceiling": lambda task: replace(task, ceiling=None),
    "floor": lambda task: replace(task, floor=None),
    "forbidden": lambda task: replace(task, forbidden=()),
    "least_gap": lambda task: replace(task, least_gap=1),
    "every": lambda task: replace(task, every=None),
    "allowed": lambda task: replace(task, allowed=None),
    "rounds": lambda task: longer(task, max(task.rounds, task.shapings) * FARTHEST_ROUNDS),
}


def without(task: Task, name: Name) -> Task:
    """The task without one of its requirements other than its shapings."""
    return _WITHOUT[name](task)


def is_possible_without(task: Task, dropped: Sequence[Name]) -> bool:
    """Whether the task can be met without some of its requirements."""
    relaxed = task
    for name in dropped:
        if name != "shapings":
            relaxed = _WITHOUT[name](relaxed)
    if "shapings" in dropped:
        return any(is_possible(replace(relaxed, shapings=t)) for t in range(task.rounds, -1, -1))
    return is_possible(relaxed)


def _freed_by(task: Task, name: Name) -> float | None:
    """The least change of one requirement with which the whole task can be met."""
    tried: Iterator[tuple[float, Task]]
    match name:
        case "floor" | "ceiling":
            return _give_way(task, name)
        case "allowed" | "forbidden":
            count = max(task.shapings - len(slots(task)), 1)
            tried = iter([(count, _WITHOUT[name](task))])
        case "shapings":
            tried = ((t, replace(task, shapings=t)) for t in _outwards(task.shapings, task.rounds))
        case "rounds":
            most = max(task.rounds, task.shapings) * FARTHEST_ROUNDS
            tried = ((r, longer(task, r)) for r in range(task.rounds + 1, most + 1))
        case "clauses":
            more = range(task.clauses + 1, MOST_CLAUSES)
            tried = ((c, replace(task, clauses=c)) for c in more)
        case "every":
            tried = ((q, replace(task, every=q)) for q in range((task.every or 1) - 1, 0, -1))
        case "least_gap":
            tried = ((g, replace(task, least_gap=g)) for g in range(task.least_gap - 1, 0, -1))
    return next((float(value) for value, changed in tried if is_possible(changed)), None)


def _outwards(shapings: int, rounds: int) -> Iterator[int]:
    """Other numbers of shapings, the nearest first, fewer before more."""
    for away in range(1, max(shapings, rounds) + 1):
        if 0 <= shapings - away <= rounds:
            yield shapings - away
        if shapings + away <= rounds:
            yield shapings + away


def _give_way(task: Task, name: Literal["floor", "ceiling"]) -> float | None:
    """By how much a bound has to give way all along; bisected to a ten-thousandth of a unit."""

    def eased(by: float) -> Task:
        if name == "floor":
            return replace(task, floor=_floor(task) - by)
        return replace(task, ceiling=_ceiling(task) + by)

    bounds = _floor(task) if name == "floor" else _ceiling(task)
    farthest = float(np.abs(bounds[np.isfinite(bounds)] - task.before).max(initial=0.0))
    least, most = 0, round((farthest + abs(task.step) * (task.shapings + 1)) * FINE)
    if not is_possible(eased(most / FINE)):
        return None
    while most - least > 1:
        middle = (least + most) // 2
        least, most = (least, middle) if is_possible(eased(middle / FINE)) else (middle, most)
    return most / FINE
