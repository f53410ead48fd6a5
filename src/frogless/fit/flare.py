"""How full a section is, in words and beside surveyed bodies."""

from __future__ import annotations

import math
from typing import Literal

from frogless.fit.survey import share_reached

Fullness = Literal["tube", "cone", "flat", "ruffle"]

# From memory: where a flare begins to be seen, and how far from flat still lies flat, nobody has
# published. One stitch in a round of 200 over 20 rounds is below the first, and blocking takes up
# about a tenth of a circle.
TUBE = 0.01
FLAT = (0.9, 1.1)


def fullness(added_per_row: float, width: float, height: float) -> float:
    """λ = Δn·w / 2πh: 0 a tube, 1 a flat disc, above it a ruffle.

    Args:
        added_per_row: stitches added per row on average (Δn). width, height: of a stitch, mm.

    Source: geometry, from girth = 2π · radius.
    """
    return added_per_row * width / (2 * math.pi * height)


def describe_fullness(lam: float) -> Fullness:
    """Whether a section of fullness λ makes a tube, a cone, lies flat or ruffles.

    A section that narrows is a cone as well (λ below zero).

    >>> describe_fullness(0.25)
    'cone'
    """
    size = abs(lam)
    if size < TUBE:
        return "tube"
    if size < FLAT[0]:
        return "cone"
    return "flat" if size <= FLAT[1] else "ruffle"


def flare_sentence(lam: float) -> str:
    """The fullness in one sentence; for a cone, with the share of surveyed bodies it suits."""
    what = describe_fullness(lam)
    if what == "tube":
        return "A tube: the girth stays the same."
    if what == "flat":
        return "This lies flat, like a full circle."
    if what == "ruffle":
        return f"A ruffle: {360 * (abs(lam) - 1):.0f}° more than lies flat."
    if lam < 0:
        return f"Narrows: {-lam:.2f} of a full circle."
    return (
        f"A cone: {lam:.2f} of a full circle; worked from waist to hip it reaches the hip in time"
        f" for about {100 * share_reached(lam):.0f} % of surveyed women."
    )
