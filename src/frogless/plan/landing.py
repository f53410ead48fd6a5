"""Landing girths on whole stitches: one girth on a multiple, or all landmarks of a piece together."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from frogless.because import Because, Step
from frogless.errors import InputError

GRAIN = 4


@dataclass(frozen=True, slots=True)
class Landing:
    """A count, the girth it makes (mm), and why."""

    count: int
    girth: float
    because: Because


def exact_count(girth: float, width: float) -> float:
    """Stitches that would make a girth exactly.

    Raises:
        InputError: girth or width not above zero.
    """
    if girth <= 0 or width <= 0:
        raise InputError(f"a girth of {girth:g} mm at {width:g} mm a stitch cannot be landed on")
    return girth / width


def land(
    girth: float, width: float, multiple: int = 1, offset: int = 0, *, fuller: bool = True
) -> Landing:
    """The count nearest to a girth that leaves `offset` over a multiple.

    Args:
        girth: wanted, mm, > 0.
        width: one stitch, mm, > 0.
        fuller: of two equally near, take the larger (positive ease) or the smaller (negative).

    Raises:
        InputError: girth or width not above zero.

    Source: even division by a stitch multiple, common practice; cases in tests/reference/plan/landing.csv.

    >>> land(1160, 100 / 18, multiple=8).count
    208
    """
    exact = exact_count(girth, width)
    below = math.floor((exact - offset) / multiple) * multiple + offset
    choices = [n for n in (below, below + multiple) if n > 0]
    count = min(choices, key=lambda n: (round(abs(n * width - girth), GRAIN), -n if fuller else n))
    steps = because_landed(girth, width, count, multiple_note(multiple, offset))
    return Landing(count, count * width, Because(steps))


def multiple_note(multiple: int, offset: int = 0) -> str:
    """ "multiple of 8", "multiple of 6, plus 1"; nothing for a multiple of one."""
    if multiple <= 1:
        return ""
    return f"multiple of {multiple}" + (f", plus {offset}" if offset else "")


def because_landed(girth: float, width: float, count: int, note: str) -> tuple[Step, ...]:
    """The steps from a wanted girth to a count: wanted, gauge, exact, landed, girth, off."""
    return (
        Step("wanted", girth),
        Step("gauge", 100 / width, "stitches per 10 cm"),
        Step("exact", girth / width, "stitches"),
        Step("landed", count, "stitches", note),
        Step("girth", count * width),
        Step("off", count * width - girth),
    )


@dataclass(frozen=True, slots=True)
class Stop:
    """One girth of a piece to be landed on together with the others.

    Args:
        wanted, low, high: mm; the allowed range is hard.
        width: one stitch there, mm.
        step: how the count may differ from the stop before: by multiples of this; 0: not at all.
        most: greatest change from the stop before, in stitches; None: any.
        multiple, offset: the count has to be offset over a multiple.
        fuller: of two equally near, take the larger.
    """

    wanted: float
    low: float
    high: float
    width: float
    step: int = 1
    most: int | None = None
    multiple: int = 1
    offset: int = 0
    fuller: bool = True

    def counts(self) -> list[int]:
        """Every whole count inside the allowed range and on the multiple."""
        first = max(math.ceil(self.low / self.width - 1e-9), 1)
        last = math.floor(self.high / self.width + 1e-9)
        return [n for n in range(first, last + 1) if (n - self.offset) % self.multiple == 0]

    def cost(self, count: int) -> tuple[float, int]:
        """Distance from the wanted girth, then the side that is easier to wear."""
        off = round(abs(count * self.width - self.wanted), GRAIN)
        return (off, -count if self.fuller else count)


def land_together(stops: Sequence[Stop]) -> tuple[int, ...] | None:
    """Counts for all stops with the least sum of distances from the wanted girths; None when there are none.

    Exact: dynamic programming over stop × count.
    """
    best: dict[int, tuple[float, int, tuple[int, ...]]] = {}
    for i, stop in enumerate(stops):
        reached: dict[int, tuple[float, int, tuple[int, ...]]] = {}
        for count in stop.counts() if (i == 0 or stop.step) else list(best):
            if i == 0:
                off, side = stop.cost(count)
                reached[count] = (off, side, (count,))
                continue
            ways = [best[c] for c in best if _may_follow(stop, c, count)]
            if ways:
                off, side, path = min(ways)
                mine = stop.cost(count) if stop.step else (0.0, 0)
                reached[count] = (round(off + mine[0], GRAIN), side + mine[1], (*path, count))
        best = reached
    return min(best.values())[2] if best else None


def _may_follow(stop: Stop, before: int, count: int) -> bool:
    change = abs(count - before)
    if stop.step == 0:
        return change == 0
    return change % stop.step == 0 and (stop.most is None or change <= stop.most)
