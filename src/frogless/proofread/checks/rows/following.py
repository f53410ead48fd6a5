"""Faults that follow from one before them: one slip is told once, at its place."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from functools import lru_cache

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.lines import Line, lines_of
from frogless.proofread.words.model import Again
from frogless.proofread.work.model import Problem, Worked

#: What is wrong with a line itself, whatever the rows are that it repeats.
_OF_THE_LINE = ("range", "too_long", "brackets")
_COUNTS = ("count", "count_kind")


@dataclass(slots=True)
class _Piece:
    """What is wrong so far in a piece, in one size.

    Args:
        before: what is wrong with the row below; None where it comes out.
        stated: the numbers that the row below states.
        lines: whether something is wrong, line by line; `numbers`: with rows of a number.
        follows: the row below follows itself.
    """

    before: Problem | None = None
    stated: frozenset[int] = frozenset()
    follows: bool = False
    lines: list[bool] = field(default_factory=list)
    numbers: set[int] = field(default_factory=set)


@lru_cache(maxsize=1)
def following(reading: Reading) -> frozenset[tuple[int, int]]:
    """Line and size of every fault that follows from one before it."""
    return frozenset(_following(reading))


def _following(reading: Reading) -> Iterator[tuple[int, int]]:
    pieces: dict[int, _Piece] = {}
    for line in lines_of(reading):
        if line.told.begins:
            pieces = {}
        by_size: dict[int, list[Worked]] = {}
        for worked in line.works:
            by_size.setdefault(worked.size, []).append(worked)
        for size, works in by_size.items():
            piece = pieces.setdefault(size, _Piece())
            problem = _foremost(works)
            follows = problem is not None and _follows(line, problem, piece)
            if follows:
                yield line.index, size
            if line.told.label is not None:
                _keep(line, works, problem, piece, follows=follows)


def _foremost(works: Sequence[Worked]) -> Problem | None:
    return next((worked.problems[0] for worked in works if worked.problems), None)


def _keep(
    line: Line, works: Sequence[Worked], problem: Problem | None, piece: _Piece, *, follows: bool
) -> None:
    piece.before, piece.follows = problem, follows
    piece.stated = frozenset(n for s in line.told.said.stated for n in s.count.values)
    piece.lines.append(problem is not None)
    if problem is not None:
        piece.numbers |= {worked.number for worked in works if worked.number is not None}


def _follows(line: Line, problem: Problem, piece: _Piece) -> bool:
    again = next((act for act in line.told.said.acts if isinstance(act, Again)), None)
    if again is not None and problem.kind not in _OF_THE_LINE and _is_faulty(again, piece):
        return True
    before = piece.before
    if before is None or problem.kind not in _COUNTS or not problem.says:
        return False
    if before.kind in _COUNTS and (piece.follows or "count_kind" in (before.kind, problem.kind)):
        says, works = before.says or 0, before.works or 0
        return problem.says * works == (problem.works or 0) * says
    return problem.kind == "count_kind" and problem.says in piece.stated


def _is_faulty(again: Again, piece: _Piece) -> bool:
    """Whether something is wrong with a row that is worked again."""
    if again.first:
        return any(again.first <= n <= max(again.last, again.first) for n in piece.numbers)
    last = max(again.last, 1) if again.name in ("last", "previous", "same", "pattern") else 0
    return any(piece.lines[-last:]) if last else False
