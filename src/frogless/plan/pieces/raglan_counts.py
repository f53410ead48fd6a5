"""How many stitches a raglan yoke has at the neck and where it parts: the best of all there are.

Four lines part body and sleeves. One round adds stitches on the body's side of every line, on the
sleeve's side, or on both; a side that needs more than the other may gain two in a round where the
design allows it. Body and sleeves have to arrive on the same round, which not every choice of
counts can do in the rounds there are. All choices near the wanted girths are looked at:

1. every girth within what is allowed of it, and all increases within the rounds (hard);
2. of those whose girths stray no more than the tape can see beyond the best choice, the fewest
   kinds of rounds;
3. among these the least greatest stray, then the least sum of strays.

A stray is how far a girth is off, in what the tape can see there (a stitch at the least).

Source: front and sleeve = (girth in stitches - underarms), (front - neck front) / 2 rounds: handbook
arithmetic for raglans, common practice; cases in tests/reference/plan/yokes.csv.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from frogless.plan.pieces.disc_rate import flat_rate
from frogless.plan.pieces.yoke import Wanted, Yoke, near

LEAST_SHARE, MOST_SHARE = 1 / 8, 1 / 2
"""Of the front, what a sleeve takes at the neck when the design leaves it open. A quarter is common
practice, others take a third (own limits)."""

FRONTS, SLEEVES = 12, 16
"""Stitches to either side of what is wanted that are looked at, however wide the ease allowed: far
more than a tape would pass over."""

KEPT = 4096
"""Needs whose rounds are remembered: many choices of counts need the same."""

Kind = tuple[int, int]
"""Stitches that a round adds on the body's side of each line, and on the sleeve's."""

FULL: Kind = (1, 1)
BOTH: Kind = (2, 2)


@dataclass(frozen=True, slots=True)
class Counts:
    """Front and sleeve, at the neck and where the yoke parts; the back is as the front."""

    neck_front: int
    neck_sleeve: int
    front: int
    sleeve: int

    @property
    def needs(self) -> Kind:
        """Increases that the body's and the sleeve's side of each line need."""
        return (self.front - self.neck_front) // 2, (self.sleeve - self.neck_sleeve) // 2

    @property
    def neck(self) -> int:
        """Stitches at the neck."""
        return 2 * (self.neck_front + self.neck_sleeve)


@dataclass(frozen=True, slots=True)
class Choice:
    """Counts, the rounds that lead to them, and how far they stray.

    Args:
        mix: kinds of increase rounds, and how many of each.
        stray: the greatest, in what the tape can see; off: the sum of all, mm.
    """

    counts: Counts
    mix: tuple[tuple[Kind, int], ...]
    stray: float
    off: float

    @property
    def rounds(self) -> int:
        """Increase rounds."""
        return sum(times for _, times in self.mix)

    def key(self) -> tuple[float, ...]:
        """Kinds of rounds, greatest stray, sum of strays; then the sleeve nearest to a quarter."""
        share = abs(self.counts.neck_sleeve / self.counts.neck_front - 1 / 4)
        return (len(self.mix), round(self.stray, 6), round(self.off, 4), share)


def choose(choices: list[Choice]) -> Choice:
    """The best of choices that can all be worked."""
    least = min(choice.stray for choice in choices)
    return min((c for c in choices if c.stray <= least + 1 + 1e-9), key=Choice.key)


def choices(yoke: Yoke, sleeve_top: float | None, add: int) -> list[Choice]:
    """Every choice of counts near the wanted girths that its rounds have room for."""
    found = []
    for counts in near_counts(yoke, sleeve_top):
        mix = mixed(counts.needs, yoke.rounds, add)
        if mix is not None and (BOTH not in dict(mix) or is_flat(yoke, counts)):
            found.append(Choice(counts, mix, *strays(yoke, counts, sleeve_top)))
    return found


def near_counts(yoke: Yoke, sleeve_top: float | None) -> Iterator[Counts]:
    """Every choice of counts near the wanted girths, whether there are rounds enough or not."""
    necks = tuple(_necks(yoke, sleeve_top))
    sleeves = tuple(_sleeves(yoke))
    for front in _fronts(yoke):
        for sleeve in sleeves:
            for neck_front, neck_sleeve in necks:
                counts = Counts(neck_front, neck_sleeve, front, sleeve)
                if _grows_evenly(counts):
                    yield counts


def _grows_evenly(counts: Counts) -> bool:
    """Both sides of each part gain alike, and nothing gets narrower."""
    body, sleeve = counts.front - counts.neck_front, counts.sleeve - counts.neck_sleeve
    return body >= 0 and sleeve >= 0 and body % 2 == 0 and sleeve % 2 == 0


def _fronts(yoke: Yoke) -> Iterator[int]:
    exact = yoke.bust.wanted / yoke.width / 2 - yoke.underarm
    return (
        n for n in near(exact, FRONTS) if _fits(yoke.bust, 2 * (n + yoke.underarm) * yoke.width)
    )


def _sleeves(yoke: Yoke) -> Iterator[int]:
    exact = yoke.arm.wanted / yoke.width - yoke.underarm
    return (n for n in near(exact, SLEEVES) if _fits(yoke.arm, (n + yoke.underarm) * yoke.width))


def _fits(wanted: Wanted, girth: float) -> bool:
    return wanted.allows(girth)


def _necks(yoke: Yoke, sleeve_top: float | None) -> Iterator[tuple[int, int]]:
    """Front and sleeve at the neck: each half of the neck within two stitches of what is wanted."""
    for half in near(yoke.neck / yoke.width / 2, 2):
        if sleeve_top is None:
            sleeves: Iterator[int] = (
                n
                for n in range(1, half)
                if LEAST_SHARE * (half - n) <= n <= MOST_SHARE * (half - n)
            )
        else:
            sleeves = near(sleeve_top / yoke.width, 2)
        # A front of four at the least: two lines, and a stitch on either side of the join.
        yield from ((half - n, n) for n in sleeves if half - n >= 4)


@lru_cache(maxsize=KEPT)
def mixed(needs: Kind, rounds: int, add: int) -> tuple[tuple[Kind, int], ...] | None:
    """The fewest kinds of rounds by which both sides get what they need; None without room.

    Where two at once are allowed, both sides gain two only if there is no other way.

    >>> mixed((20, 20), 22, 1)
    (((1, 1), 20),)
    >>> mixed((32, 26), 26, 2)
    (((1, 1), 20), ((2, 1), 6))
    >>> mixed((32, 26), 26, 1) is None
    True
    >>> mixed((24, 22), 20, 2)
    (((1, 1), 16), ((2, 1), 2), ((2, 2), 2))
    """
    for both in range(min(needs) // 2 + 1 if add > 1 else 1):
        left = needs[0] - 2 * both, needs[1] - 2 * both
        if found := _mixes(left, rounds - both, add):
            mix = min(found, key=len)
            return (*mix, (BOTH, both)) if both else mix
    return None


def _mixes(needs: Kind, rounds: int, add: int) -> list[tuple[tuple[Kind, int], ...]]:
    """Full rounds, rounds that add two on the needier side, and rounds for that side alone."""
    more, less = max(needs), min(needs)
    one, two = ((1, 0), (2, 1)) if needs[0] >= needs[1] else ((0, 1), (1, 2))
    found = []
    for doubles in range(less + 1 if add > 1 else 1):
        singles = more - less - doubles
        if singles >= 0 and less + singles <= rounds:
            mix = ((FULL, less - doubles), (two, doubles), (one, singles))
            found.append(tuple((kind, times) for kind, times in mix if times))
    return found


def is_flat(yoke: Yoke, counts: Counts) -> bool:
    """Whether a yoke gains no more in a round, on average, than what lies flat.

    Source: a flat disc gains 2π × height / width stitches in a round: geometry.
    """
    gained = 2 * (counts.front + counts.sleeve) - counts.neck
    return gained <= flat_rate(yoke.gauge).value * yoke.rounds


def strays(yoke: Yoke, counts: Counts, sleeve_top: float | None) -> tuple[float, float]:
    """How far the girths are off: the most in what the tape can see there, and the sum in mm."""
    under, width = yoke.underarm, yoke.width
    pairs = [
        (counts.neck, yoke.neck),
        (2 * (counts.front + under), yoke.bust.wanted),
        (counts.sleeve + under, yoke.arm.wanted),
    ]
    if sleeve_top is not None:
        pairs.append((counts.neck_sleeve, sleeve_top))
    off = [(abs(n * width - wanted), yoke.seen(wanted)) for n, wanted in pairs]
    return max(each / seen for each, seen in off), math.fsum(each for each, _ in off)
