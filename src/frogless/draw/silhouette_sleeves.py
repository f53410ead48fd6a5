"""Sleeves of the small pictures, and what is read from a piece for them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import cos, radians, sin

from frogless.draw.drawing import Point, Shape, polyline
from frogless.draw.sketch import mirrored, rounds, strip
from frogless.plan.model import PiecePlan, Plan

#: How far below level a sleeve hangs, degrees: a long one, and one shorter than so many mm.
HANGS, SHORT_HANGS, SHORT = 63.0, 42.0, 260.0


@dataclass(frozen=True, slots=True)
class Sleeve:
    """A sleeve folded flat: its length and its width at the end, mm."""

    length: float
    cuff: float
    is_edged: bool

    @property
    def hangs(self) -> float:
        """How far below level it hangs, degrees."""
        return HANGS if self.length > SHORT else SHORT_HANGS

    @property
    def along(self) -> Point:
        """The unit vector from the left armhole to the end of the sleeve."""
        return (-cos(radians(self.hangs)), sin(radians(self.hangs)))

    @property
    def out(self) -> Point:
        """The unit vector across it, away from the body."""
        return (-sin(radians(self.hangs)), -cos(radians(self.hangs)))

    def end(self, upper: Point, under: Point) -> tuple[Point, Point]:
        """The outer and the inner corner of its end, by those of its beginning."""
        x, y = (upper[0] + under[0]) / 2, (upper[1] + under[1]) / 2
        x, y = x + self.along[0] * self.length, y + self.along[1] * self.length
        across = (self.out[0] * self.cuff / 2, self.out[1] * self.cuff / 2)
        return (x + across[0], y + across[1]), (x - across[0], y - across[1])


def sleeve_of(plan: Plan) -> Sleeve | None:
    """The sleeve, by the armhole it is joined to or the yoke it hangs from; None without one."""
    joined = {join.first.rsplit(" ", 1)[0] for join in plan.joins if "armhole" in join.second}
    borders = [p.name for p in plan.pieces if p.construction == "border"]
    for piece in plan.pieces:
        if piece.shape is None:
            continue
        ring = piece.shape.outlines[0]
        low, high = max(y for _, y in ring), min(y for _, y in ring)
        ends = [x for x, y in ring if y > low - 1.0]
        width = max(ends) - min(ends)
        if piece.name in joined:
            return Sleeve(low - high, width / 2, any("cuff" in name for name in borders))
        if "sleeve" in piece.name and piece.construction in {"tube", "border"}:
            return Sleeve(low - high, width, piece.name in borders)
    return None


def both_sleeves(
    outline: Sequence[Point], arm: Sequence[Point], sleeve: Sleeve, unit: float
) -> Iterator[Shape]:
    """The left sleeve and its mirror image.

    Args:
        outline: of the whole left sleeve. arm: its part from upper arm to end, four corners, the
            outer and the inner one of its end in the middle.
    """
    for way in (1, -1):
        around = outline if way > 0 else mirrored(outline)
        corners = arm if way > 0 else mirrored(arm)
        yield polyline(around, "cloth", closed=True)
        yield from rounds(corners, unit, angle_deg=way * (90 - sleeve.hangs))
        yield polyline(around, "outline")
        if sleeve.is_edged:
            yield strip(list(reversed(corners[1:3])), unit, deep=1.2)


def measure(piece: PiecePlan, name: str) -> float:
    """A measurement of a piece, mm; 0 when it has none of that name."""
    return next((m.got.value for m in piece.measures if m.name == name), 0.0)
