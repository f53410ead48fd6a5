"""The scale bar of a drawing."""

from __future__ import annotations

from collections.abc import Mapping

from frogless.draw.callouts import SAMPLE_WIDTH, Key
from frogless.draw.drawing import Line
from frogless.units import Units, show_length

BARS: Mapping[Units, tuple[float, ...]] = {
    "cm": (5, 10, 20, 50, 100, 200, 500),
    "in": (6.35, 12.7, 25.4, 50.8, 101.6, 203.2, 508),
}


def scale_key(scale: float, units: Units) -> Key:
    """The longest bar that a line of the legend has room for, with its length.

    Args:
        scale: mm on the sheet for a mm of garment.
    """
    bars = BARS[units]
    bar = max(b for b in bars if b == min(bars) or b * scale <= SAMPLE_WIDTH)
    width = bar * scale
    ends = (Line((x, -0.9), (x, 0.9), "scale") for x in (0.0, width))
    return Key((Line((0, 0), (width, 0), "scale"), *ends), show_length(bar, units))
