"""The rhythm of a section as it is told, how good it is, and the ones that could be had instead."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from frogless.plan.landing import GRAIN, SLACK
from frogless.plan.layout import Shaped
from frogless.plan.model import Evidence, Option, RunnerUp
from frogless.plan.rhythm.conflict import asked, without
from frogless.plan.rhythm.engine import Solution, Task, bound, runners, solve
from frogless.plan.sections import Span

SEEN = 5.0
"""mm less that a rhythm has to stray to be worth a choice: lengths are shown to half a cm."""


def chosen_option(span: Span, shaped: Shaped) -> Option:
    """The rhythm taken, with where it strays most."""
    return _option(span, shaped.points, shaped.chosen)


def smoother(span: Span, shaped: Shaped) -> tuple[Option, ...]:
    """Rhythms that stray visibly less than the one taken; at most two.

    With the same points, or with half as many where the design allows them.
    """
    if span.section.every != "auto":
        return ()
    most = shaped.chosen.stray - SEEN
    found = [(shaped.points, one) for one in runners(shaped.asked)]
    half = shaped.points // 2
    if half >= 2 and half % 2 == 0 and allows_points(span, half):
        # Half the points take half the step, twice as often: always to the same count.
        best = solve(halved(shaped.asked))
        found += [] if best is None else [(half, best)]
    options = [_option(span, points, one) for points, one in found if one.stray <= most]
    return tuple(sorted(options, key=lambda o: round(abs(o.stray), GRAIN))[:2])


def halved(task: Task) -> Task:
    """The closest rhythm at half as many points."""
    return replace(task, step=task.step / 2, shapings=task.shapings * 2, indifference=0.0)


def allows_points(span: Span, points: int) -> bool:
    """Whether the design lets a section have so many points."""
    asked = span.section.points
    if isinstance(asked, int):
        return points == asked
    return points % 2 == 0 if asked == "auto" else points in asked


def evidence(span: Span, shaped: Shaped) -> Evidence:
    """How good the rhythm taken is, and what it was weighed against."""
    chosen, task = shaped.chosen, shaped.task
    count = chosen.rhythm.clause_count
    found = runners(task)
    least = found[-1].stray
    return Evidence(
        clauses=count,
        stray=chosen.stray,
        squares=chosen.squares,
        indifference=task.indifference,
        least=least,
        bound=bound(task) or 0.0,
        most_clauses=task.clauses,
        runners_up=tuple(
            _runner_up(span, one, chosen) for one in found if one.rhythm.clause_count != count
        ),
        binding=tuple(_binding(task, chosen.stray, least)),
    )


def _runner_up(span: Span, one: Solution, chosen: Solution) -> RunnerUp:
    return RunnerUp(
        clauses=one.rhythm.clause_count,
        rhythm=one.rhythm,
        stray=one.worst,
        stray_at=float(span.depths()[one.worst_round]),
        cost=one.stray - chosen.stray,
    )


def _binding(task: Task, stray: float, least: float) -> Iterator[str]:
    """What keeps the rhythm from straying less: whatever lets it, when it is left out."""
    if stray > least + SLACK:
        yield "indifference"
    for name in asked(task):
        if name not in ("rounds", "shapings"):
            freed = solve(replace(without(task, name), indifference=0.0))
            if freed is not None and freed.stray < least - SLACK:
                yield name


def _option(span: Span, points: int, one: Solution) -> Option:
    return Option(
        points=points,
        add=span.section.add,
        rhythm=one.rhythm,
        stray=one.worst,
        stray_at=float(span.depths()[one.worst_round]),
    )
