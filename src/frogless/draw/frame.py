"""From the garment to the sheet: the skirt folded flat, one scale for widths and heights."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from frogless.draw.drawing import Point
from frogless.draw.outline import Level, girth_at


@dataclass(frozen=True, slots=True)
class Frame:
    """Where the skirt stands on the sheet.

    Args:
        scale: mm on the sheet for a mm of garment.
        middle, top: centre front of the top edge, mm on the sheet.
        shape: the rounds, from `outline.levels`.
    """

    scale: float
    middle: float
    top: float
    shape: Sequence[Level]

    def y(self, depth: float) -> float:
        """Height on the sheet of a depth below the top edge."""
        return self.top + depth * self.scale

    def at(self, across: float, depth: float) -> Point:
        """The spot so many mm to the wearer's left of centre front (to the right on the sheet)."""
        return (self.middle + across * self.scale, self.y(depth))

    def half(self, depth: float) -> float:
        """Half the width of the flat skirt at a depth, mm of garment: a quarter of the girth."""
        return girth_at(self.shape, depth) / 4

    def placed(self, turns: float, depth: float) -> Point:
        """The spot at a part of the round from centre front; what lies behind shows through."""
        girth = girth_at(self.shape, depth)
        seen = turns if abs(turns) <= 0.25 else (0.5 if turns > 0 else -0.5) - turns
        return self.at(seen * girth, depth)

    def edges(self, depth: float) -> tuple[Point, Point]:
        """Both ends of the flat skirt at a depth, the left one on the sheet first."""
        half = self.half(depth)
        return self.at(-half, depth), self.at(half, depth)
