"""Checks of edges: multiples met, pieces begun on edges, seams and joins that match."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from frogless.errors import InputError
from frogless.fabric.claims import Flags, Spot, spots, worked_of_base, worked_within
from frogless.fabric.stretches import Stretch, stretch
from frogless.plan.model import EdgingPlan, PatternPlan, PiecePlan
from frogless.proof.model import Finding, Subject, finding
from frogless.rows.nodes import Base, Piece, Seam


def check_multiples(subject: Subject) -> Finding:
    """Repeats fill what they stand on: the row under an edging or a stitch pattern leaves just that."""
    faults: list[str] = []
    looked_at = 0
    for piece in subject.plan.pieces:
        if piece.edging is not None:
            looked_at += 1
            faults += _unmet(subject, piece, piece.edging)
        for section in piece.sections:
            if section.pattern is not None:
                looked_at += len(section.pattern.bands)
                faults += _unfilled(subject, piece, section.pattern)
    return finding("multiples", faults, looked_at, "edgings and stretches of patterns")


def _unfilled(subject: Subject, piece: PiecePlan, plan: PatternPlan) -> Iterator[str]:
    """Stretches of a stitch pattern that do not stand on whole repeats, and columns between them."""
    rows = {row.row.number: row for row in subject.fabric.pieces.get(piece.name, ())}
    for band in plan.bands:
        repeats = band.base - plan.columns * band.column
        if repeats != plan.multiple * band.repeats + plan.offset:
            yield (f"{plan.key}: {repeats} is not {plan.multiple} × {band.repeats} + {plan.offset}")
        first = rows[band.first_round]
        if first.used.size != band.base and not band.goes_on:
            yield (
                f"{plan.key}, row {band.first_round} stands on {first.used.size} places, "
                f"{band.base} planned"
            )


def _unmet(subject: Subject, piece: PiecePlan, plan: EdgingPlan) -> Iterator[str]:
    if (plan.base_count - plan.offset) % plan.multiple:
        yield f"{plan.base_count} is no {plan.multiple} × m + {plan.offset}"
    left = {row.row.number: row.places for row in subject.fabric.pieces.get(piece.name, ())}
    under = left.get(plan.first_round - (0 if plan.correction else 1), 0)
    if under != plan.base_count:
        yield f"the edging stands on {under} stitches, {plan.base_count} planned"


def check_begins(subject: Subject) -> Finding:
    """A piece begun on edges finds all places it asks for, and takes none that is worked elsewhere."""
    faults: list[str] = []
    looked_at = 0
    takers: dict[Spot, str] = {}
    within = {name: worked_within(rows) for name, rows in subject.fabric.pieces.items()}
    for piece in subject.program.pieces:
        for index, base in enumerate(piece.bases):
            found = stretch(base, subject.fabric.pieces, piece.name)
            looked_at += found.size
            if found.missing:
                faults.append(
                    f"{piece.name}: its base asks for {found.missing} places more than "
                    f"{base.piece} has there"
                )
            rows = subject.fabric.pieces[piece.name]
            taken = worked_of_base(rows, index, found.size)
            faults += _taken_twice(piece, found, taken, takers, within[base.piece])
            takers |= dict.fromkeys(_of(found, taken), piece.name)
    return finding("begins", faults, looked_at, "places")


def _of(found: Stretch, taken: Flags) -> list[Spot]:
    return [spot for spot, is_taken in zip(spots(found), taken, strict=True) if is_taken]


def _taken_twice(
    piece: Piece,
    found: Stretch,
    taken: Flags,
    takers: dict[Spot, str],
    within: tuple[Flags, ...],
) -> Iterator[str]:
    """The first place that another piece, or the piece it belongs to, works into as well."""
    for spot in _of(found, taken):
        name, part, row, place = spot
        other = takers.get(spot) or (name if part == "top" and within[row][place] else "")
        if other:
            what = f"place {place + 1}" if part in ("top", "underside") else "the end"
            yield (
                f"{piece.name}: {what} of the {_nth(row)} row of {name} is worked into by {other} too"
            )
            return


def _nth(index: int) -> str:
    """A row by its place in its piece, the foundation being the 1st."""
    number = index + 1
    tail = {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{'th' if number % 100 in (11, 12, 13) else tail}"


def check_seams(subject: Subject) -> Finding:
    """Edges that are joined match: every place of both takes part, as often as the seam says."""
    faults = [f"{seam.name}: {f}" for seam in subject.program.seams for f in _loose(subject, seam)]
    return finding("seams", faults, len(subject.program.seams), "seams")


def _loose(subject: Subject, seam: Seam) -> Iterator[str]:
    try:
        first, second = _places(subject, seam.first), _places(subject, seam.second)
    except InputError as error:
        yield str(error)
        return
    if first != seam.count:
        yield f"{seam.count} stitches for an edge of {first}"
    if second != len(seam.spread) or second != seam.over:
        yield f"spread over {len(seam.spread)} places, the edge has {second}"
    if sum(seam.spread) != seam.count:
        yield f"the spread adds up to {sum(seam.spread)}, not {seam.count}"
    if seam.spread and max(seam.spread) - min(seam.spread) > 1:
        yield "the spread is uneven"


def _places(subject: Subject, edge: tuple[Base, ...]) -> int:
    """Places an edge offers; what it asks for beyond its end is none."""
    return sum(stretch(base, subject.fabric.pieces).size for base in edge)


def check_joins(subject: Subject) -> Finding:
    """The two edges of each join are as long as each other, within what the join allows."""
    faults = []
    for join in subject.plan.joins:
        lengths = np.asarray([join.first_length.value, join.second_length.value])
        off = float(np.ptp(lengths))
        if off > join.limit + 1e-9:
            faults.append(
                f"{join.name}: {join.first} is {lengths[0] / 10:.1f} cm and {join.second} "
                f"{lengths[1] / 10:.1f} cm, {off / 10:.1f} cm apart where {join.limit / 10:.1f} cm "
                "is allowed"
            )
    return finding("joins", faults, len(subject.plan.joins), "joins")
