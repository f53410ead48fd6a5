"""Checks of shaping: increases where they belong, straight lines, markers that lead there."""

from __future__ import annotations

from frogless.fabric.geometry import column_drift, decrease_points, marked_parent, shaping_points
from frogless.proof.model import Finding, Subject, finding

# The place that covers a line's fraction of the round lies within half a stitch of it, its group of
# stitches within one.
STRAIGHT = 1.0


def check_shaping_rounds(subject: Subject) -> Finding:
    """The main piece is shaped on the rounds of its rhythm and on no others, at as many points."""
    main = subject.fabric.pieces[subject.program.pieces[0].name]
    planned = {
        s.first_round - 1 + r: s.chosen.points
        for s in subject.plan.main.sections
        if s.chosen
        for r in s.chosen.rhythm.rounds
    }
    last = subject.plan.main.sections[-1].last_round
    faults = []
    for row in main[1 : last + 1]:
        points = len(shaping_points(row)) + len(decrease_points(row))
        if points != planned.get(row.row.number, 0):
            faults.append(
                f"row {row.row.number}: {points} shaping points, "
                f"{planned.get(row.row.number, 0)} planned"
            )
    return finding("shaping_rounds", faults, last, "rounds")


def check_lines(subject: Subject) -> Finding:
    """Each shaping point keeps its line, within a stitch, in turned and in unturned rounds."""
    faults, looked_at = [], 0
    for name, rows in subject.fabric.pieces.items():
        for drift in column_drift(rows):
            looked_at += len(drift.strays)
            if drift.greatest > STRAIGHT + 1e-9:
                faults.append(
                    f"{name}, row {drift.number}: a shaping point lies {drift.greatest:.1f} "
                    "stitches off its line"
                )
    return finding("lines", faults, looked_at, "shaping points")


def check_markers(subject: Subject) -> Finding:
    """Every shaping point is worked into the stitch to which its marker was moved up."""
    faults: list[str] = []
    looked_at = 0
    for name, rows in subject.fabric.pieces.items():
        followed = marked_parent(rows)
        looked_at += followed.looked_at
        faults.extend(f"{name}, {fault}" for fault in followed.faults)
    return finding("markers", faults, looked_at, "shaping points")
