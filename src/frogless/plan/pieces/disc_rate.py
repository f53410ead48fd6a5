"""How many stitches a round from a ring has: what lies flat, and the whole numbers nearest to it."""

from __future__ import annotations

import csv
import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from frogless.swatch import Gauge
from frogless.units import Measured

FRILL = 0.08
"""A crown that grows by so much more or less than what lies flat still blocks out: a hand-worked
crown of 7 % is told as a slight frill that does (derived)."""

FAR = 0.25
"""A flat number so far outside of the trade's usual ones is more likely a slip of the swatch (own
choice: the ratio of height to width varies by about a quarter between hands)."""

MOST_IN_ONE = 1 / 3
"""Increases to places that lie well after the first rounds (common practice)."""


@dataclass(frozen=True, slots=True)
class Usual:
    """The trade's usual increases per round of a flat disc in a stitch."""

    low: int
    typical: int
    high: int


@cache
def usual_discs() -> Mapping[str, Usual]:
    """By stitch; sources in the data file."""
    text = files("frogless.plan").joinpath("data/flat_discs.csv").read_text("utf-8")
    return {
        r["stitch"]: Usual(int(r["low"]), int(r["typical"]), int(r["high"]))
        for r in csv.DictReader(text.splitlines())
    }


def flat_rate(gauge: Gauge, sides: int | None = None) -> Measured:
    """Stitches that each round adds to lie flat: the outline grows by so much per round.

    2π × row height ÷ stitch width for a circle; for a polygon of n sides, worked outwards,
    2n × tan(π/n) in place of 2π.

    Source: geometry (the perimeter of a circle, of a polygon about a circle).
    """
    around = 2 * math.pi if sides is None else 2 * sides * math.tan(math.pi / sides)
    return gauge.height.over(gauge.width).times(around)


@dataclass(frozen=True, slots=True)
class Growth:
    """The counts of a disc.

    Args:
        flat: stitches per round that would lie flat.
        wanted: those times the share asked for.
        per_round: what each round adds, before anything is left over.
        counts: after each round, the first one first.
        even: every round adds the same.
        left_over: the last round takes what is left over.
    """

    flat: Measured
    wanted: float
    per_round: int
    counts: tuple[int, ...]
    even: bool
    left_over: bool = False

    @property
    def rounds(self) -> int:
        """Rounds from the ring."""
        return len(self.counts)

    @property
    def lie(self) -> float:
        """Last count as a share of what would lie flat there; without a round of what is left over."""
        rounds = max(self.rounds - int(self.left_over), 1)
        return self.counts[rounds - 1] / (self.flat.value * rounds)


def to_radius(
    flat: Measured, lie: float, rounds: int, per_round: int | None = None, first: int | None = None
) -> Growth:
    """The counts of so many rounds.

    The same number in each round where the girth at the edge is then as good as the tape can see;
    else the whole numbers nearest to what is wanted, which rise by one of two neighbours.
    """
    wanted = flat.value * lie
    step = per_round or max(round(wanted), 3)
    off = abs(step - wanted) * rounds
    if per_round or first or off <= max(1.0, flat.relative * wanted * rounds):
        begun = first or step
        return Growth(flat, wanted, step, tuple(begun + step * r for r in range(rounds)), True)
    counts = [max(math.floor(wanted * r + 0.5), 3) for r in range(1, rounds + 1)]
    return Growth(flat, wanted, step, tuple(counts), False)


def to_count(
    flat: Measured,
    lie: float,
    exact: float,
    seen: float,
    per_round: int | None = None,
    first: int | None = None,
) -> Growth:
    """The counts of a crown up to a girth.

    Of the steps that lie flat or block out flat the one whose rounds come nearest to it, when that
    is as near as can be seen; of those equally near the flattest. Otherwise the step nearest to flat, and
    the last round takes what is left over.

    Args:
        exact: stitches wanted. seen: stitches that the tape cannot see, one or more.
    """
    wanted = flat.value * lie
    steps = [per_round] if per_round else list(_steps(wanted))
    whole = [_whole(step, first or step, exact) for step in steps]
    nearest = min(
        zip(steps, whole, strict=True),
        key=lambda found: (round(abs(found[1][-1] - exact), 6), abs(found[0] - wanted)),
    )
    if abs(nearest[1][-1] - exact) <= seen:
        return Growth(flat, wanted, nearest[0], nearest[1], True)
    step = min(steps, key=lambda s: abs(s - wanted))
    target = max(math.floor(exact + 0.5), 3)
    full = tuple(c for c in _upto(step, first or step, target) if c < target)
    return Growth(flat, wanted, step, (*full, target), even=False, left_over=True)


def _steps(wanted: float) -> Iterator[int]:
    """Whole numbers within the frill that blocks out, the nearest one at any rate."""
    nearest = max(round(wanted), 3)
    low, high = math.ceil(wanted * (1 - FRILL)), math.floor(wanted * (1 + FRILL))
    yield from sorted({nearest, *(n for n in range(low, high + 1) if n >= 3)})


def _upto(step: int, first: int, target: int) -> Iterator[int]:
    count = first
    while count < target + step:
        yield count
        count += step


def _whole(step: int, first: int, exact: float) -> tuple[int, ...]:
    """Whole rounds to the count nearest to the exact one; one at the least."""
    rounds = max(math.floor((exact - first) / step + 0.5 + 1e-9) + 1, 1)
    return tuple(first + step * r for r in range(rounds))
