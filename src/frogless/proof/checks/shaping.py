"""Checks of shaping: increases where they belong, straight lines, markers that lead there."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.fabric.geometry import column_drift, decrease_points, marked_parent, shaping_points
from frogless.plan.model import PiecePlan, Plan, SectionPlan
from frogless.proof.model import Finding, Subject, finding

# The place that covers a line's fraction of the round lies within half a stitch of it, its group of
# stitches within one.
STRAIGHT = 1.0
TUBE = "tube"


def check_shaping_rounds(subject: Subject) -> Finding:
    """Tubes are shaped on the rounds of their rhythm and on no others, at as many points.

    The first round of a tube that is begun on edges may gather them; its count was planned. So may
    a round that corrects the count between two fabrics. In a stitch pattern stitches share places
    without shaping it: there the places of the rounds tell whether it grows.
    """
    faults: list[str] = []
    looked_at = 0
    for piece in _tubes(subject.plan):
        patterned = [s for s in piece.sections if s.pattern is not None]
        others = {r for s in patterned for r in range(s.first_round, s.last_round + 1)}
        others |= {s.first_round for s in piece.sections if s.based}
        for section in patterned:
            faults += _grows_otherwise(subject, piece, section)
        planned = {
            s.first_round - 1 + r: s.chosen.points
            for s in piece.sections
            if s.chosen
            for r in s.chosen.rhythm.rounds
        }
        last = max((s.last_round for s in piece.sections), default=0)
        looked_at += last
        for row in subject.fabric.pieces.get(piece.name, ()):
            if not _first_of(subject, piece) < row.row.number <= last:
                continue
            if row.row.number in others:
                continue
            points = len(shaping_points(row)) + len(decrease_points(row))
            if points != planned.get(row.row.number, 0):
                faults.append(
                    f"row {row.row.number}: {points} shaping points, "
                    f"{planned.get(row.row.number, 0)} planned"
                )
    return finding("shaping_rounds", faults, looked_at, "rounds")


def _grows_otherwise(subject: Subject, piece: PiecePlan, section: SectionPlan) -> Iterator[str]:
    """Rounds of a stitch pattern in which it grows though it should not, or not where it should.

    Its base rounds leave whole repeats, and columns between them. Where columns part the repeats,
    what a round leaves beyond its repeats are the columns, and they grow in their rhythm only.
    """
    plan = section.pattern
    if plan is None:
        return
    left = {r.row.number: r.places for r in subject.fabric.pieces.get(piece.name, ())}
    for number in plan.based:
        columns = next((b.column for b in plan.bands if b.under == number), None)
        if columns is None:  # closes the pattern for an edging
            continue
        if (left[number] - plan.columns * columns - plan.offset) % plan.multiple:
            yield f"row {number} leaves {left[number]}, which are no whole repeats"
    if not plan.columns:
        return
    chosen = section.chosen
    at = {section.first_round - 1 + r for r in chosen.rhythm.rounds} if chosen else set()
    sign = 1 if section.count_after >= section.count_before else -1
    for band in plan.bands:
        column = plan.columns * band.column
        for i, number in enumerate(range(band.first_round, band.last_round + 1)):
            rows = len(plan.repeat_leaves)
            row = i if i < rows else plan.setup + (i - plan.setup) % plan.row_repeat
            found = left[number] - band.repeats * plan.repeat_leaves[row]
            grown = column + (sign * chosen.points * chosen.add if chosen and number in at else 0)
            if found != grown:
                yield f"row {number}: {found} stitches in columns, {grown} planned"
            column = found


def check_lines(subject: Subject) -> Finding:
    """Each shaping point keeps its line, within a stitch, in turned and in unturned rounds.

    Points that are staggered on purpose have no lines; those of gores are held to their markers.
    """
    faults, looked_at = [], 0
    for piece in _tubes(subject.plan):
        others = {_first_of(subject, piece)} | {
            r
            for s in piece.sections
            if s.lines != "even"
            for r in range(s.first_round, s.last_round + 1)
        }
        for drift in column_drift(subject.fabric.pieces.get(piece.name, ())):
            if drift.number in others:
                continue
            looked_at += len(drift.strays)
            if drift.greatest > STRAIGHT + 1e-9:
                faults.append(
                    f"{piece.name}, row {drift.number}: a shaping point lies {drift.greatest:.1f} "
                    "stitches off its line"
                )
    return finding("lines", faults, looked_at, "shaping points")


def _first_of(subject: Subject, piece: PiecePlan) -> int:
    """The round that a tube is begun with: its foundation, or round 1 onto edges."""
    rows = subject.program.piece(piece.name).rows
    return rows[0].number if rows else 0


def _tubes(plan: Plan) -> Iterator[PiecePlan]:
    """The pieces whose shaping points stand evenly round, one straight line above the other.

    The lines of a yoke part sleeves from body, and those of a panel stand where its author wants
    them; they are held to their markers only.
    """
    return (piece for piece in plan.pieces if piece.construction == TUBE)


def check_markers(subject: Subject) -> Finding:
    """Every shaping point is worked into the stitch to which its marker was moved up."""
    faults: list[str] = []
    looked_at = 0
    for name, rows in subject.fabric.pieces.items():
        followed = marked_parent(rows)
        looked_at += followed.looked_at
        faults.extend(f"{name}, {fault}" for fault in followed.faults)
    return finding("markers", faults, looked_at, "shaping points")
