"""Yarn that is carried from where a colour is left to where it is taken up again."""

from __future__ import annotations

from collections.abc import Sequence

from frogless.fabric.colours import Carried, carried
from frogless.fabric.model import Fabric, RowFabric
from frogless.plan.model import Plan
from frogless.rows.colours import threads
from frogless.swatch import Gauge
from frogless.tally.catches import times_made


def carried_length(letter: str, fabric: Fabric, plan: Plan, main: Gauge) -> float:
    """All yarn of a colour that is carried, mm.

    Source: derived. A colour left and taken up at ends of rows runs straight up the edge, as long as
    the rows between are high; one that is left or taken up inside a row is carried along under the
    stitches between, as long as they are wide.
    """
    total = 0.0
    for thread in threads(plan.program):
        rows = tuple(row for piece in thread for row in fabric.pieces[piece.name])
        times = times_made(plan, thread[0].name)
        for run in carried(thread[0].colour, rows):
            if run.letter == letter:
                total += times * _long(run, rows, plan, main)
    return total


def _long(run: Carried, rows: Sequence[RowFabric], plan: Plan, main: Gauge) -> float:
    (first, left), (last, taken) = run.left, run.taken
    gauges = [plan.gauges.get(row.row.section, main) for row in rows[first : last + 1]]
    sizes = [row.stitch.size for row in rows[first : last + 1]]
    if last > first and left == sizes[0] and taken == sizes[-1]:
        return sum(gauge.height.value for gauge in gauges[1:])
    passed = [*sizes[:-1], taken]
    passed[0] -= left
    return sum(n * gauge.width.value for n, gauge in zip(passed, gauges, strict=True))
