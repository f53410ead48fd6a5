"""Checks of edges: multiples met, seams that match."""

from __future__ import annotations

from frogless.proof.model import Finding, Subject, finding
from frogless.rows.nodes import Base


def check_multiples(subject: Subject) -> Finding:
    """The edging's repeats fill its base, and the row under its pattern leaves just that base."""
    plan = subject.plan.main.edging
    if plan is None:
        return finding("multiples", [], 0, "edgings")
    faults = []
    if (plan.base_count - plan.offset) % plan.multiple:
        faults.append(f"{plan.base_count} is no {plan.multiple} × m + {plan.offset}")
    main = subject.fabric.pieces[subject.program.pieces[0].name]
    under = main[plan.first_round - (0 if plan.correction else 1)].places
    if under != plan.base_count:
        faults.append(f"the edging stands on {under} stitches, {plan.base_count} planned")
    return finding("multiples", faults, 1, "edgings")


def check_seams(subject: Subject) -> Finding:
    """Edges that are joined match: every place of both takes part, as often as the seam says."""
    faults = []
    for seam in subject.program.seams:
        first, second = _places(subject, seam.first[0]), _places(subject, seam.second[0])
        if first != seam.count:
            faults.append(f"{seam.name}: {seam.count} stitches for an edge of {first}")
        if second != len(seam.spread) or second != seam.over:
            faults.append(
                f"{seam.name}: spread over {len(seam.spread)} places, the edge has {second}"
            )
        if sum(seam.spread) != seam.count:
            faults.append(
                f"{seam.name}: the spread adds up to {sum(seam.spread)}, not {seam.count}"
            )
        if seam.spread and max(seam.spread) - min(seam.spread) > 1:
            faults.append(f"{seam.name}: the spread is uneven")
    return finding("seams", faults, len(subject.program.seams), "seams")


def _places(subject: Subject, base: Base) -> int:
    """Places an edge offers: stitches of its foundation or last row, or the ends of its rows."""
    rows = subject.fabric.pieces[base.piece]
    match base.edge:
        case "foundation":
            return rows[0].places
        case "last_row":
            return rows[-1].places
        case "row_ends":
            return sum(1 for row in rows if row.row.number > 0)
