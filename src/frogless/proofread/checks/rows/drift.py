"""Edges that drift: a row after row gains or loses the same stitch at its edge."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.lines import Line, finding, lines_of
from frogless.proofread.findings import Finding
from frogless.proofread.work.model import Worked

#: As many rows in a row make a habit of a slip.
FEWEST = 3


@dataclass(frozen=True, slots=True, eq=False)
class Drift:
    """Rows that gain (+) or lose (-) a stitch each, or every second one.

    Args:
        covers: the indices of the rows whose problems this explains.
    """

    first: Line
    last: Line
    step: int
    every_second: bool
    covers: frozenset[int]
    counts: tuple[int, ...]


@lru_cache(maxsize=1)
def drifting(reading: Reading) -> tuple[Drift, ...]:
    """The drifts of all pieces, from the first row that is off to the last."""
    return tuple(drift for run in _runs(reading) for drift in _drift(run))


def _runs(reading: Reading) -> Iterator[list[tuple[Line, int]]]:
    """Rows that follow one another and are off alike, with how much each is off."""
    run: list[tuple[Line, int]] = []
    for line in lines_of(reading):
        if line.told.label is None or not line.works:
            continue
        off = _off(line)
        begins = line.told.begins or (run and line.told.piece != run[-1][0].told.piece)
        if run and (begins or not _goes_on(run, off)):
            yield run
            run = []
        if off or run:
            run.append((line, off))
    yield run


def _goes_on(run: Sequence[tuple[Line, int]], off: int) -> bool:
    """All alike, or alike with one right row between each two."""
    step = run[0][1]
    if len(run) == 1:
        return off in (0, step)
    if run[1][1] == 0:
        return off == (step if len(run) % 2 == 0 else 0)
    return off == step


def _drift(run: list[tuple[Line, int]]) -> Iterator[Drift]:
    off = [line for line, each in run if each]
    # Where every second row is right, two that are not, and a right one after each, are enough.
    if len(off) < FEWEST and not (len(run) >= FEWEST and len(off) > 1):
        return
    counts = tuple(w.stated for line in off for w in line.works[:1] if w.stated is not None)
    every_second = len(run) > 1 and run[1][1] == 0
    covers = frozenset(line.index for line in off)
    yield Drift(off[0], off[-1], run[0][1], every_second, covers, counts)


def _off(line: Line) -> int:
    """By how many stitches, 1 or 2, all rows of a line are off in all sizes; 0 otherwise."""
    offs = {_off_by(worked) for worked in line.works}
    return offs.pop() if len(offs) == 1 else 0


def _off_by(worked: Worked) -> int:
    found = [
        problem.says - problem.works
        if problem.kind == "count" and problem.says is not None and problem.works is not None
        else problem.uses - problem.has
        if problem.kind in ("too_few", "too_many")
        and problem.uses is not None
        and problem.has is not None
        else 0
        for problem in worked.problems
    ]
    return found[0] if found and abs(found[0]) <= 2 else 0


def edge_drift(reading: Reading) -> Iterator[Finding]:
    """Rows that lose or gain the same stitch again and again."""
    for drift in drifting(reading):
        each = "every second row" if drift.every_second else "every row"
        verb = "loses" if drift.step < 0 else "gains"
        amount = "one stitch" if abs(drift.step) == 1 else "two stitches"
        where = _where(drift)
        first, last = drift.first.name, drift.last.name
        counts = ", ".join(map(str, drift.counts[:6]))
        texts = (
            counts or f"{first} to {last}",
            f"{each} {verb} {amount}",
            f"From {first} to {last} {each} {verb} {amount}: {where}",
        )
        yield finding("edge-drift", reading, drift.first, drift.first.told.span, texts, "likely")


def _where(drift: Drift) -> str:
    if drift.every_second:
        return (
            "it happens at one edge only, so look there: its turning chain is handled "
            "otherwise than that of the other."
        )
    if drift.step < 0:
        return "most likely the top of the turning chain is not worked into; both edges lean in."
    return (
        "most likely the first stitch is worked although the turning chain stands for it already."
    )
