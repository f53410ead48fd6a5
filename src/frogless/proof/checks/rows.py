"""Checks of rows: places, counts, rounds, turning."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Set
from contextlib import suppress
from itertools import pairwise

import numpy as np

from frogless.errors import InputError
from frogless.fabric.claims import Spot, left_over, spots
from frogless.fabric.model import RowFabric, runs_back
from frogless.fabric.stretches import is_foundation_chain, stretch
from frogless.plan.model import PiecePlan
from frogless.proof.model import Finding, Subject, finding
from frogless.rows.count import left_for_later
from frogless.rows.nodes import Piece, Row


def _rows(subject: Subject) -> Iterator[tuple[str, RowFabric]]:
    for name, rows in subject.fabric.pieces.items():
        for row in rows:
            yield f"{name}, row {row.row.number}", row


def check_places(subject: Subject) -> Finding:
    """Every place is worked into, skipped on purpose or left for later, and what is left is worked.

    What a piece leaves to the end may be the base of another piece, or part of a seam.
    """
    faults, looked_at = [], 0
    for where, row in _rows(subject):
        looked_at += int(row.used.size)
        faults += [f"{where}: {fault}" for fault in _misused(row)]
    named = _named(subject)
    for piece in subject.program.pieces:
        faults += _never_worked(piece, subject, named)
    return finding("places", faults, looked_at, "places")


def _misused(row: RowFabric) -> Iterator[str]:
    """The first place that is not taken in just one way, and the first left between others."""
    ways = (row.used > 0).astype(np.int32) + row.skipped + row.left
    if (ways != 1).any():
        at = int(np.flatnonzero(ways != 1)[0])
        doing = " and ".join(_doing(row, at)) or "is left out"
        yield f"place {at + 1} of the row below {doing}"
    left = row.left[row.order]
    if (np.diff(left) < 0).any():
        at = int(row.order[np.flatnonzero(left)[0]])
        yield f"place {at + 1} of the row below is left for later before others are worked"


def _doing(row: RowFabric, at: int) -> Iterator[str]:
    for flag, doing in (
        (row.used[at], "is worked into"),
        (row.skipped[at], "skipped"),
        (row.left[at], "left for later"),
    ):
        if flag:
            yield doing


def _named(subject: Subject) -> Counter[Spot]:
    """How often bases and seams name each place."""
    bases = [base for piece in subject.program.pieces for base in piece.bases]
    bases += [base for seam in subject.program.seams for base in (*seam.first, *seam.second)]
    named: Counter[Spot] = Counter()
    for base in bases:
        with suppress(InputError):  # a seam along no edge is told of by the check of seams
            named.update(spots(stretch(base, subject.fabric.pieces)))
    return named


def _never_worked(piece: Piece, subject: Subject, named: Counter[Spot]) -> Iterator[str]:
    waiting = []
    for row, place in left_over(subject.fabric.pieces[piece.name]):
        if row >= 0:
            elsewhere = named[(piece.name, "top", row, place)]
        else:
            base = stretch(piece.bases[-1 - row], subject.fabric.pieces)
            elsewhere = named[spots(base)[place]] - 1  # the piece's own base names it too
        if not elsewhere:
            waiting.append((f"row {piece.rows[row].number}" if row >= 0 else "its base", place))
    if waiting:
        made, place = waiting[0]
        yield (
            f"{piece.name}: {len(waiting)} places are left for later and never worked, the first "
            f"of them place {place + 1} of {made}"
        )


def check_repeats(subject: Subject) -> Finding:
    """No row asks for more places than the row below has: repeats fill it exactly."""
    faults, looked_at = [], 0
    for where, row in _rows(subject):
        looked_at += 1
        if row.overrun:
            faults.append(f"{where}: asks for {row.overrun} places more than there are")
    return finding("repeats", faults, looked_at, "rows")


def check_counts(subject: Subject) -> Finding:
    """The count a row states is the count it leaves."""
    faults, looked_at = [], 0
    for where, row in _rows(subject):
        looked_at += 1
        if row.row.count != row.places:
            faults.append(f"{where}: states {row.row.count} and leaves {row.places}")
    return finding("counts", faults, looked_at, "rows")


def check_planned(subject: Subject) -> Finding:
    """Rows, landmarks, and the ends of sections have the stitches that were planned for them."""
    faults, looked_at = [], 0
    for plan in subject.plan.pieces:
        rows = subject.fabric.pieces.get(plan.name, ())
        left = {r.row.number: r.places for r in rows}
        short = {r.row.number for r in rows if left_for_later(r.row.body)}
        planned = tuple(_planned(plan, min(left, default=0), short))
        looked_at += len(planned)
        faults += [
            f"{plan.name}, {what}: planned {count}, row {number} leaves {left.get(number, 0)}"
            for what, number, count in planned
            if left.get(number) != count
        ]
        if plan.counts and len(left) != len(plan.counts):
            faults.append(f"{plan.name}: {len(plan.counts)} rows planned, {len(left)} worked")
    return finding("planned", faults, looked_at, "planned counts")


def _planned(plan: PiecePlan, first: int, short: Set[int]) -> Iterator[tuple[str, int, int]]:
    """What was planned, the number of its row, and its count.

    Short rows above a section leave its count as it was before them. A section whose first round
    corrects the count begins with what that leaves. The places that a stitch pattern leaves are
    others than it stands on; those are held to their rounds in the check of multiples.
    """
    in_pattern = {
        number
        for s in plan.sections
        if s.pattern
        for band in s.pattern.bands
        for number in range(band.first_round, band.last_round + 1)
    }
    for number, count in enumerate(plan.counts, start=first):
        yield f"row {number}", number, count
    for mark in plan.landmarks:
        if mark.rounds not in in_pattern:
            yield mark.key, mark.rounds, mark.count
    for section in plan.sections:
        if section.based:
            yield f"start of {section.name}", section.first_round, section.count_before
        elif section.first_round - 1 in in_pattern:
            pass  # goes on in the pattern of the section above
        elif section.first_round > first:  # begun on edges, a piece has no row before its first
            above = [n for n in range(first, section.first_round) if n not in short]
            before = above[-1] if above else section.first_round - 1
            yield f"start of {section.name}", before, section.count_before
        ends = section.pattern.left if section.pattern else section.count_after
        yield f"end of {section.name}", section.last_round, ends


def check_rounds(subject: Subject) -> Finding:
    """Joined rounds close, the side changes where the work is turned and nowhere else."""
    faults, looked_at = [], 0
    for piece in subject.program.pieces:
        for before, row in pairwise(piece.rows):
            looked_at += 1
            where = f"{piece.name}, row {before.number}"
            if (before.side != row.side) != before.end.turn:
                doing = "is turned" if before.end.turn else "is not turned"
                faults.append(f"{where}: {doing}, but the side says otherwise")
            elif _cannot_go_on(piece, before, row):
                faults.append(
                    f"{where}: is neither turned nor cut, but the next row begins at its far end"
                )
        faults.extend(_open_rounds(piece) if piece.closed else _joined_rows(piece))
    return finding("rounds", faults, looked_at, "pairs of rows")


def _cannot_go_on(piece: Piece, before: Row, row: Row) -> bool:
    """Whether a row of an open piece begins where the yarn is not."""
    return not piece.closed and runs_back(before) == runs_back(row) and not before.end.fasten_off


def _open_rounds(piece: Piece) -> Iterator[str]:
    """Rounds that start with a turning chain but never join, and chains that are no ring yet.

    A short row is turned before it comes round.
    """
    for row in piece.rows:
        is_short = left_for_later(row.body) > 0
        if row.start.chains and row.end.join == "none" and not is_short:
            yield f"{piece.name}, round {row.number}: begins with a chain and is not joined"
        if row.end.join == "chain_top" and not row.start.chains:
            yield f"{piece.name}, round {row.number}: joins to a chain it does not have"
        if row.end.join == "none" and is_foundation_chain(row) and len(piece.rows) > 1:
            yield f"{piece.name}, round {row.number}: is a chain that is not joined into a ring"


def _joined_rows(piece: Piece) -> Iterator[str]:
    """Rows of an open piece that are joined to their own beginning."""
    for row in piece.rows:
        if row.end.join != "none":
            yield f"{piece.name}, row {row.number}: is joined, but the piece is worked in rows"


def check_numbers(subject: Subject) -> Finding:
    """Rows are numbered one after the other."""
    faults, looked_at = [], 0
    for piece in subject.program.pieces:
        numbers = [row.number for row in piece.rows]
        looked_at += len(numbers)
        if numbers != list(range(numbers[0], numbers[0] + len(numbers))):
            faults.append(f"{piece.name}: rows are numbered {numbers}")
    return finding("numbers", faults, looked_at, "rows")
