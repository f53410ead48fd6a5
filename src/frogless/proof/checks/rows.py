"""Checks of rows: places, counts, rounds, turning."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from frogless.fabric.model import RowFabric
from frogless.proof.model import Finding, Subject, finding
from frogless.rows.nodes import Piece


def _rows(subject: Subject) -> Iterator[tuple[str, RowFabric]]:
    for name, rows in subject.fabric.pieces.items():
        for row in rows:
            yield f"{name}, row {row.row.number}", row


def check_places(subject: Subject) -> Finding:
    """Every place of the row below is worked into or skipped on purpose, and never both."""
    faults, looked_at = [], 0
    for where, row in _rows(subject):
        looked_at += int(row.used.size)
        both = (row.used > 0) == (row.skipped > 0)
        if both.any():
            at = int(np.flatnonzero(both)[0])
            doing = "is worked into and skipped" if row.used[at] else "is left out"
            faults.append(f"{where}: place {at + 1} of the row below {doing}")
    return finding("places", faults, looked_at, "places")


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
    """The stitches at each landmark, and where each section begins and ends, are the planned ones."""
    main = subject.fabric.pieces[subject.program.pieces[0].name]
    left = {row.row.number: row.places for row in main}
    planned = [(mark.key, mark.rounds, mark.count) for mark in subject.plan.main.landmarks]
    for section in subject.plan.main.sections:
        planned.append((f"start of {section.name}", section.first_round - 1, section.count_before))
        planned.append((f"end of {section.name}", section.last_round, section.count_after))
    faults = [
        f"{what}: planned {count}, row {number} leaves {left.get(number, 0)}"
        for what, number, count in planned
        if left.get(number) != count
    ]
    return finding("planned", faults, len(planned), "planned counts")


def check_rounds(subject: Subject) -> Finding:
    """Joined rounds close, the side changes where the work is turned and nowhere else."""
    faults, looked_at = [], 0
    for piece in subject.program.pieces:
        for before, row in zip(piece.rows, piece.rows[1:], strict=False):
            looked_at += 1
            if (before.side != row.side) != before.end.turn:
                doing = "is turned" if before.end.turn else "is not turned"
                faults.append(
                    f"{piece.name}, row {before.number}: {doing}, but the side says otherwise"
                )
        faults.extend(_open_rounds(piece))
    return finding("rounds", faults, looked_at, "pairs of rows")


def _open_rounds(piece: Piece) -> Iterator[str]:
    """Rounds of a closed piece that start with a turning chain but never join."""
    for row in piece.rows if piece.closed else ():
        if row.start.chains and row.end.join == "none":
            yield f"{piece.name}, round {row.number}: begins with a chain and is not joined"
        if row.end.join == "chain_top" and not row.start.chains:
            yield f"{piece.name}, round {row.number}: joins to a chain it does not have"


def check_numbers(subject: Subject) -> Finding:
    """Rows are numbered one after the other."""
    faults, looked_at = [], 0
    for piece in subject.program.pieces:
        numbers = [row.number for row in piece.rows]
        looked_at += len(numbers)
        if numbers != list(range(numbers[0], numbers[0] + len(numbers))):
            faults.append(f"{piece.name}: rows are numbered {numbers}")
    return finding("numbers", faults, looked_at, "rows")
