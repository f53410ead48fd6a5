"""From shaping rounds to the trade's clauses and back."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby, pairwise

from frogless.plan.model import Clause, Rhythm
from frogless.plan.rhythm.search import ONLY
from frogless.plan.rhythm.squares import Way


def rhythms(way: Way) -> tuple[Rhythm, ...]:
    """A way in words: one rhythm, and one more for each shaping that begins afresh."""
    cuts = [i for i, mark in enumerate(way.clauses, 1) if mark is None]
    bounds = [0, *cuts, len(way.rounds)]
    return tuple(_rhythm(way.rounds[a:b], way.clauses[a : b - 1]) for a, b in pairwise(bounds))


def _rhythm(rounds: Sequence[int], marks: Sequence[tuple[int, int] | None]) -> Rhythm:
    gaps = [b - a for a, b in pairwise(rounds)]
    clauses: list[Clause] = []
    kinds = [mark or (0, ONLY) for mark in marks]
    for _, found in groupby(zip(kinds, gaps, strict=True), key=lambda pair: pair[0][0]):
        steps = list(found)
        alternating = steps[0][0][1] != ONLY
        clauses.extend(_clauses([gap for _, gap in steps], alternating=alternating))
    return Rhythm(int(rounds[0]), _merged(clauses), tuple(rounds))


def _clauses(gaps: list[int], *, alternating: bool) -> list[Clause]:
    """An alternation of one or two gaps is told as so many clauses."""
    if not alternating:
        return [Clause((gaps[0],), len(gaps))]
    if len(gaps) <= 2:
        return [Clause((gap,), 1) for gap in gaps]
    return [Clause((gaps[0], gaps[1]), len(gaps))]


def _merged(clauses: Sequence[Clause]) -> tuple[Clause, ...]:
    """Clauses that follow each other with the same gap are one."""
    merged: list[Clause] = []
    for clause in clauses:
        if merged and len(clause.every) == 1 and merged[-1].every == clause.every:
            merged[-1] = Clause(clause.every, merged[-1].times + clause.times)
        else:
            merged.append(clause)
    return tuple(merged)


def rounds_of(first: int, clauses: Sequence[Clause]) -> tuple[int, ...]:
    """The shaping rounds that a wording says.

    >>> rounds_of(1, [Clause((3,), 2), Clause((1, 2), 3)])
    (1, 4, 7, 8, 10, 11)
    """
    rounds = [first]
    for clause in clauses:
        for i in range(clause.times):
            rounds.append(rounds[-1] + clause.every[i % len(clause.every)])
    return tuple(rounds)
