"""How many stitches the rows of a shawl have, and where they grow: at edges, at a spine, inside."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from frogless.plan.pieces.disc_rows import Spread, spread_at
from frogless.rows.nodes import Into, Node, Start, Work
from frogless.rows.spread import worked_over

CLEAN = 1.0
"""An edge moves out by row height over stitch width, and this many stitches more, in one row and
lies well (common practice)."""


@dataclass(frozen=True, slots=True)
class Rates:
    """Stitches that a row gains for each that it is high, as a share of height over width.

    Args:
        right, left: at the edges, as seen from the right side.
        spine: on either side of the middle stitch.
        inside: spread evenly over the row.
    """

    right: float = 0.0
    left: float = 0.0
    spine: float = 0.0
    inside: float = 0.0


@dataclass(frozen=True, slots=True)
class Gains:
    """What one row gains, in stitches."""

    right: int
    left: int
    spine: int
    inside: int

    @property
    def total(self) -> int:
        """Of the whole row."""
        return self.right + self.left + 2 * self.spine + self.inside


def triangle(angle: float) -> Rates:
    """Rates of a triangle worked from the middle of its long edge.

    Its rows lie along the two short sides, which meet at `angle` (radians) below. A row at the
    distance d from the middle is d·tan(angle/2) long from the foot of the perpendicular to the long
    edge, and d/tan(angle/2) to the spine.

    Source: geometry.
    """
    slope = math.tan(angle / 2)
    return Rates(right=slope, left=slope, spine=1 / slope)


def crescent(wingspan: float, depth: float) -> Rates:
    """Rates of a segment of a circle, from the middle of its chord; both lengths in mm.

    Its last row is the arc. Rows that turn through the arc's angle φ gain φ·h/w stitches inside to
    lie flat; what the arc is longer than that, its ends gain.

    Source: geometry: radius (c²/4 + s²)/2s and φ = 4·atan(2s/c) of a chord c and a height s.
    """
    angle = 4 * math.atan(2 * depth / wingspan)
    radius = (wingspan**2 / 4 + depth**2) / (2 * depth)
    ends = max(radius * angle / depth - angle, 0.0) / 2
    return Rates(right=ends, left=ends, inside=angle)


def asymmetric(angle: float) -> Rates:
    """Rates of a triangle worked from a point, one edge straight: tan of the angle there."""
    return Rates(left=math.tan(angle))


def gains(rates: Rates, ratios: Sequence[float], seen: float = 0.0) -> tuple[Gains, ...]:
    """What each row gains; over all rows as near to the rates as whole numbers come.

    Where the same whole number in every row is as good as can be seen, it is taken.

    Args:
        ratios: height over width of each row's stitch.
        seen: how far a ratio may be off before that can be seen, as a share of it.
    """
    if len(set(ratios)) == 1:
        rates = Rates(*(_whole(rate, ratios[0], seen) for rate in _each(rates)))
    reached = 0.0
    made: list[Gains] = []
    before = Gains(0, 0, 0, 0)
    for ratio in ratios:
        reached += ratio
        now = Gains(*(math.floor(rate * reached + 0.5 + 1e-9) for rate in _each(rates)))
        made.append(Gains(*(b - a for a, b in zip(_gained(before), _gained(now), strict=True))))
        before = now
    return tuple(made)


def _whole(rate: float, ratio: float, seen: float) -> float:
    """The rate that gains a whole number in each row, when it is hardly another."""
    whole = round(rate * ratio)
    return whole / ratio if abs(whole / ratio - rate) <= seen * rate else rate


def _each(rates: Rates) -> tuple[float, float, float, float]:
    return rates.right, rates.left, rates.spine, rates.inside


def _gained(gain: Gains) -> tuple[int, int, int, int]:
    return gain.right, gain.left, gain.spine, gain.inside


def spread_of(count: int, gain: Gains, turn: int) -> Spread:
    """How many stitches each place of the row below takes, from its right edge to its left.

    Args:
        turn: how many rows grew inside before it: their increases lie between each other.
    """
    spread = [1] * count
    if gain.inside:
        phase = 0.25 if turn % 2 == 0 else 0.75
        spread = list(spread_at(count, gain.inside, phase))
    spread[0] += gain.right
    spread[-1] += gain.left
    spread[count // 2] += 2 * gain.spine
    return tuple(spread)


def worked_row(
    stitch: str, met: Spread, chains: int, *, counts: bool
) -> tuple[Start, tuple[Node, ...]]:
    """How a row starts and its nodes, for a spread in the order met.

    A counted chain stands on the first place; where more is worked there, it shares.
    """
    if not counts:
        return Start(chains), worked_over(stitch, met)
    rest = worked_over(stitch, met[1:])
    if met[0] == 1:
        return Start(chains, counts=True), rest
    shared = Into((Work(stitch, met[0] - 1),))
    return Start(chains, counts=True, shares=True), (shared, *rest)
