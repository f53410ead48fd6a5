"""How far a measurement may stray from what the gauge gives before it is told."""

from __future__ import annotations

import math

from frogless.proofread.facts.model import Gauge, Lengths

#: Tape, mm.
_TAPE = 1.0


def of_width(gauge: Gauge) -> float:
    """Relative limits of a width by this gauge.

    Half a stitch and 1 mm over the width that it was counted over, unless the text says how sure
    it is; what 10 cm and 4 in differ comes on top. Source: limits of a count and of a tape,
    added in quadrature (JCGM 100:2008, 5.1.6).
    """
    counted = math.hypot(0.5 / gauge.stitches, _TAPE / gauge.width)
    return max(gauge.sure, counted) + gauge.slack


def of_height(gauge: Gauge) -> float:
    """The same of a length by its rows."""
    counted = math.hypot(0.5 / gauge.rows, _TAPE / gauge.height)
    return max(gauge.sure, counted) + gauge.slack


def of_rounding(lengths: Lengths) -> float:
    """Half the step that a length is written in, at least 2.5 mm: the trade rounds to 0.5 cm."""
    return max(2.5, lengths.rounding)
