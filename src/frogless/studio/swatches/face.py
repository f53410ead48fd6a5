"""The face of a swatch: as much of it as its gauge is told over, in true proportion."""

from __future__ import annotations

from frogless.draw.cloth import Cloth, posts
from frogless.draw.drawing import Drawing, Point, polyline
from frogless.studio.swatches.gauges import WINDOW, WINDOW_NAME, headline, main_gauge
from frogless.swatch import Swatch
from frogless.units import Units

MARGIN = 3.0
MOST = 60
"""Stitches or rows; finer ones would only be gray."""


def face(swatch: Swatch, units: Units) -> Drawing:
    """A square of the fabric, 10 cm or 4 in each way: whole stitches and rows, as far as they go."""
    window = WINDOW[units]
    main = main_gauge(swatch)
    width = main.width.value if main is not None and main.width is not None else window / 4
    height = main.height.value if main is not None and main.height is not None else window / 4
    if main is not None and main.pattern:
        width /= 4
    stitches = max(1, min(MOST, int(window / width + 0.05)))
    rows = max(1, min(MOST, int(window / height + 0.05)))
    cloth = Cloth(stitches, rows, width, height)

    def at(x: float, y: float) -> Point:
        return MARGIN + x, MARGIN + window - y

    corners = ((0.0, 0.0), (window, 0.0), (window, window), (0.0, window))
    frame = polyline((at(x, y) for x, y in corners), "frame", closed=True)
    side = window + 2 * MARGIN
    line = headline(swatch, units)
    name = f"{WINDOW_NAME[units]} by {WINDOW_NAME[units]} of {swatch.name}"
    return Drawing(side, side, name, line, (*posts(cloth, at), frame))
