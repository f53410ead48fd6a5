"""What is told of a row that was worked, and where the pattern stands after it."""

from __future__ import annotations

from dataclasses import replace

from frogless.proofread.work.acts import says, turns_last, works
from frogless.proofread.work.again import Todo
from frogless.proofread.work.counts import Verdict
from frogless.proofread.work.edge import UNKNOWN, Edge
from frogless.proofread.work.model import Problem, Worked
from frogless.proofread.work.row import Outcome
from frogless.proofread.work.standing import Standing, Trail, weight


def next_standing(
    standing: Standing,
    outcome: Outcome,
    verdict: Verdict,
    todo: Todo,
    size: int,
    extra: float,
) -> Standing:
    """Where the pattern stands after a row, by the edge that the row makes.

    Args:
        extra: what it costs that the row is not read in the first way that is meant.
    """
    problems = _as_told(verdict.problems, todo, standing)
    worked = _worked(outcome, verdict, problems, todo, standing, size)
    edge = outcome.edge
    block = standing.edge if todo.block_begins else standing.block
    if todo.unknown_times and block is not None and block.runs != edge.runs:
        edge = UNKNOWN  # it grows, and nobody says how often
    below = worked.worked if worked.worked is not None else worked.stated
    if outcome.stitches is not None and verdict.total is None:
        below = outcome.stitches
    return Standing(
        edge,
        below if edge.known else None,
        standing.left or standing.rest,
        Edge(outcome.rest) if outcome.rest else None,
        turns_last(todo.acts) if todo.acts else standing.turn,
        standing.cost + weight(verdict.problems) + extra,
        Trail(worked, standing.trail),
        block,
        back=says(todo.acts, "back"),
    )


def _worked(
    outcome: Outcome,
    verdict: Verdict,
    problems: tuple[Problem, ...],
    todo: Todo,
    standing: Standing,
    size: int,
) -> Worked:
    unsure = outcome.unclear and (not outcome.outside or bool(problems) or outcome.stitches is None)
    worked = verdict.worked
    if unsure and worked != verdict.stated:
        worked = None
    elif worked is None and not unsure and verdict.stated is not None:
        worked = verdict.stated  # an edge that nobody counts: taken as it is stated
    before = standing.trail.row.verdict if standing.trail else "ok"
    if worked is None and before == "unclear" and not standing.edge.known:
        unsure = True  # what it is worked over was not clear, so nothing of it can be checked
    if todo.number is not None and todo.stated and todo.acts and not works(todo.acts):
        unsure, worked = True, None  # its squares are told, say, and no stitch
    surely = ("brackets", "too_long")
    shown = tuple(p for p in problems if not unsure or p.kind in surely or p in todo.problems)
    return Worked(
        told=todo.told,
        number=todo.number,
        size=size,
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
