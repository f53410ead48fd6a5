"""Whether a colour in a yarn of its own can be worked together with the others."""

from __future__ import annotations

import math
from collections.abc import Iterator

from frogless.plan.basis import Basis
from frogless.plan.model import Plan, Remark
from frogless.rows.colours import colours_of
from frogless.swatch import Gauge, Swatch, gauge, has_gauge
from frogless.units import Measured

# Two gauges are taken to differ when they are further apart than twice what either was counted to.
APART = 2.0


def yarn_remarks(basis: Basis, plan: Plan) -> Iterator[Remark]:
    """What is to be known of swatches that are of one colour: used at all, of the same gauge."""
    used = colours_of(plan.program)
    stitch = basis.design.work.stitch
    for swatch in basis.swatches:
        if swatch.colour and swatch.colour not in used:
            told = (
                f'swatch "{swatch.name}" is of colour {swatch.colour}, and no row is worked in that'
            )
            yield Remark("colour_swatch", told)
        elif swatch.colour:
            yield from _compared(swatch, basis.gauge(stitch, "work.stitch"))


def _compared(swatch: Swatch, main: Gauge) -> Iterator[Remark]:
    letter, stitch = swatch.colour, main.stitch.replace("_", " ")
    if not has_gauge(swatch, main.stitch):
        yield Remark(
            "colour_gauge",
            f'swatch "{swatch.name}" of colour {letter} has no gauge of {stitch}, so nobody knows whether '
            "its rows are as wide as the others; add a reading",
        )
        return
    own = gauge(swatch, main.stitch)
    told = [*_apart("stitches", own.width, main.width), *_apart("rows", own.height, main.height)]
    if told:
        yield Remark(
            "colour_gauge",
            f"colour {letter} has a gauge of its own: {' and '.join(told)} in 10 cm of {stitch}; its stripes "
            "will pull the others out of shape, so swatch it again on another hook",
        )


def _apart(what: str, own: Measured, main: Measured) -> Iterator[str]:
    """ "20 stitches against 18" where two sizes differ by more than they are sure to."""
    if abs(own.value - main.value) > APART * math.hypot(own.uncertainty, main.uncertainty):
        yield f"{100 / own.value:.3g} {what} against {100 / main.value:.3g}"
