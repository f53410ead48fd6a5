"""What surveyed bodies ask of a skirt between waist and hip, to set a garment's figures beside.

The table `women_waist_to_hip.csv` holds percentiles (linear interpolation) over 1,986 women of a
public survey of soldiers (ANSUR II, 2012): aged 17 to 58, fitter than most, few large sizes, waist
taken at the navel. It gives an idea of how many bodies a figure suits; it does not speak for any
one body.
"""

from __future__ import annotations

from bisect import bisect_right
from functools import cache
from typing import Literal

from frogless.fit.tables import rows_of

Column = Literal["needed_stretch", "needed_fullness"]

# mm from the waist of ISO 8559-1 to the greatest buttock girth, mean of the same women (SD 19).
# One depth serves them all, because it hardly goes with the girths (|r| up to 0.18).
WAIST_TO_HIP = 192.0


@cache
def _percentiles(column: Column) -> tuple[tuple[float, float], ...]:
    return tuple(
        (float(row["percent"]), float(row[column])) for row in rows_of("women_waist_to_hip.csv")
    )


def _share_up_to(column: Column, value: float) -> float:
    table = _percentiles(column)
    if value < table[0][1]:
        return 0.0
    above = bisect_right([needed for _, needed in table], value)
    if above == len(table):
        return 1.0
    (low, from_), (high, to) = table[above - 1], table[above]
    return (low + (high - low) * (value - from_) / (to - from_)) / 100


def share_passing(stretch: float) -> float:
    """Share (0–1) of the surveyed women whose hips pass a joined waist that fits theirs exactly.

    Args:
        stretch: as a ratio; a waist passes when hip / waist − 1 is no more than this.

    Source: ANSUR II (Gordon et al., NATICK/TR-15/007, 2014), women; 19 % at the median.

    >>> round(share_passing(0.194), 2)
    0.5
    """
    return _share_up_to("needed_stretch", stretch)


def share_reached(fullness: float) -> float:
    """Share (0–1) of the surveyed women whose hip is reached in time by shaping of this fullness.

    Args:
        fullness: λ = Δn·w / 2πh, steady from waist to hip, without ease.

    Source: ANSUR II, women: (hip − waist) / (2π · 192 mm); with each woman's own depth the shares
    differ by up to 3 points.
    """
    return _share_up_to("needed_fullness", fullness)
