"""How much work there is in each part: stitches, and how often each catches the yarn.

A stitch takes yarn in proportion to the times it catches it, and to its width: rows of one length
took 1 : 2.08 : 3.08 : 4.00 as chain, single, half double and double crochet (one maker's
measurement).
So the *work* of a stitch is catches · width, in mm, and yarn is in proportion to work.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

import numpy as np

from frogless.fabric.model import Fabric, Ints, RowFabric
from frogless.plan.model import Plan
from frogless.rows.nodes import Seam
from frogless.stitches.model import Stitch
from frogless.swatch import Gauge, Swatch, gauge, has_gauge

SLIP_STITCH = "slip_stitch"


@dataclass(frozen=True, slots=True)
class PartWork:
    """The work of one part, mm, and the gauge its width is from.

    Args:
        weighed: relative standard uncertainty of its own stitch's mass; None when that stitch was
            not weighed.
    """

    name: str
    work: float
    gauge: Gauge
    weighed: float | None = None


def catches_of_row(row: RowFabric, stitches: Mapping[str, Stitch]) -> int:
    """Times the yarn is caught in a row, turning chain and joining slip stitch included.

    Of stitches closed together each but one leaves its last catch to the others.
    """
    catches = _by_key(row, {key: catches_of(key, stitches) for key in row.keys})
    alone = _by_key(row, {key: max(1, _stands_on(key, stitches)) for key in row.keys})
    others = np.maximum(row.taken - alone, 0)
    joining = 0 if row.row.end.join == "none" else catches_of(SLIP_STITCH, stitches)
    return int(np.sum(catches + others * np.maximum(catches - 1, 0))) + joining


def catches_of(key: str, stitches: Mapping[str, Stitch]) -> int:
    """Catches of one stitch; a chain and a slip stitch catch once, whether listed or not."""
    if key in stitches:
        return stitches[key].catches
    return 1


def stitches_worked(row: RowFabric, stitches: Mapping[str, Stitch]) -> int:
    """Stitches of a row as a maker counts work: chains, slip stitches and beads left out."""
    catches = _by_key(row, {key: catches_of(key, stitches) for key in row.keys})
    return int(np.sum(catches > 1))


def main_gauge(plan: Plan, swatch: Swatch) -> Gauge:
    """The gauge of the swatch's own stitch; where it was not read, the plan's first."""
    if has_gauge(swatch, swatch.stitch):
        return gauge(swatch, swatch.stitch)
    return next(iter(plan.gauges.values()))


def works(
    fabric: Fabric, plan: Plan, stitches: Mapping[str, Stitch], main: Gauge
) -> tuple[PartWork, ...]:
    """The work of every section of every piece, and of the seams, in the order worked."""
    found: dict[str, PartWork] = {}
    for part in (*_rows(fabric, plan, stitches, main), *_seams(plan, stitches, main)):
        before = found[part.name].work if part.name in found else 0.0
        found[part.name] = PartWork(part.name, before + part.work, part.gauge)
    return tuple(found.values())


def crocheted(fabric: Fabric, plan: Plan) -> Iterator[tuple[str, tuple[RowFabric, ...]]]:
    """The pieces worked at a gauge: all but the strands, whose yarn the plan has worked out."""
    strands = {strand.name for piece in plan.pieces for strand in piece.strands}
    return ((name, rows) for name, rows in fabric.pieces.items() if name not in strands)


def times_made(plan: Plan, piece: str) -> int:
    """How many of a piece are made; one of what was not planned row by row."""
    planned = plan.piece(piece)
    return planned.number_made if planned else 1


def times_seamed(plan: Plan, seam: Seam) -> int:
    """How often a seam is worked: one that closes a piece on itself as often as it is made."""
    names = {base.piece for base in (*seam.first, *seam.second)}
    return times_made(plan, names.pop()) if len(names) == 1 else 1


def part_name(piece: str, section: str) -> str:
    """ "skirt: hip"; the piece alone when the section has the same name."""
    return piece if piece == section else f"{piece}: {section}"


def _rows(
    fabric: Fabric, plan: Plan, stitches: Mapping[str, Stitch], main: Gauge
) -> Iterator[PartWork]:
    for piece, rows in crocheted(fabric, plan):
        for row in rows:
            own = plan.gauges.get(row.row.section, main)
            work = catches_of_row(row, stitches) * own.width.value * times_made(plan, piece)
            yield PartWork(part_name(piece, row.row.section), work, own)


def _seams(plan: Plan, stitches: Mapping[str, Stitch], main: Gauge) -> Iterator[PartWork]:
    for seam in plan.program.seams:
        catches = seam.count * catches_of(seam.stitch, stitches) * times_seamed(plan, seam)
        work = catches * main.width.value
        yield PartWork("seams", work, main)


def _stands_on(key: str, stitches: Mapping[str, Stitch]) -> int:
    return stitches[key].stands_on if key in stitches else 0


def _by_key(row: RowFabric, values: Mapping[str, int]) -> Ints:
    """One value for each stitch of the row: (n,) int32."""
    return np.array([values[key] for key in row.keys], dtype=np.int32)[row.stitch]
