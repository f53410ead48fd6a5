"""Landing girths on whole stitches: one girth on a multiple, or all girths of a piece together."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from frogless.because import Because, Step
from frogless.errors import InputError

# Distances are compared after rounding to a ten-thousandth of a millimetre.
GRAIN = 4
SLACK = 10.0**-GRAIN


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

    Source: even division by a stitch multiple, common practice; cases in
    tests/reference/plan/landing.csv.

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
class Room:
    """How many shapings there is room for, where not every round may be shaped.

    Args:
        by: (R + 1) numbers, in rounds 1 … r. after: (R + 1) numbers, in rounds r + 1 … R.
    """

    by: tuple[int, ...]
    after: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Rise:
    """How a count may follow the count before it, over the rounds of one section.

    Args:
        step: stitches that one shaping round changes the count by; 0: it stays the same.
        rounds: rounds there are, None when the rate of shaping is not to be looked at.
        every: at most every so many rounds is shaped.
        floors: (round, stitches) that there have to be at least after a round; 0 is the start.
        room: in place of `rounds` and `every`, where more is asked of the shaping rounds.
    """

    step: int = 1
    rounds: int | None = None
    every: int = 1
    floors: tuple[tuple[int, int], ...] = ()
    room: Room | None = None

    @property
    def shapings(self) -> float:
        """Shaping rounds that there is room for."""
        if self.room is not None:
            return self.room.by[-1]
        return math.inf if self.rounds is None else -(-self.rounds // self.every)

    def allows(self, before: int, after: int) -> bool:
        """Whether some choice of shaping rounds leads from one count to the other."""
        change = abs(after - before)
        if change == 0 or self.step == 0:
            return change == 0 and all(before >= least for _, least in self.floors)
        if change % self.step or change // self.step > self.shapings:
            return False
        return all(self.most_after(r, before, after) >= least for r, least in self.floors)

    def most_after(self, round_: int, before: int, after: int) -> int:
        """The most stitches there can be after a round.

        Widening is shaped as soon, narrowing as late as it can be.
        """
        needed = abs(after - before) // max(self.step, 1)
        if after >= before:
            done = self.room.by[round_] if self.room else -(-round_ // self.every)
            return before + min(needed, done) * self.step
        left = (self.rounds or 0) - round_
        still = self.room.after[round_] if self.room else -(-left // self.every)
        return after + min(needed, still) * self.step


@dataclass(frozen=True, slots=True)
class Stop:
    """One girth of a piece to be landed on together with the others.

    Args:
        wanted, low, high: mm; the allowed range is hard.
        width: one stitch there, mm.
        rise: how it follows the stop before.
        multiple, offset: the count has to be offset over a multiple.
        fuller: of two equally near, take the larger.
    """

    wanted: float
    low: float
    high: float
    width: float
    rise: Rise = Rise()
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
    """Counts for all stops with the least sum of distances from the wanted girths.

    A stop that only carries the count on (step 0) costs nothing. None when there are no such
    counts.

    Exact: dynamic programming over stop × count.
    """
    best: dict[int, tuple[float, int, tuple[int, ...]]] = {}
    for i, stop in enumerate(stops):
        if i == 0:
            best = {n: (*stop.cost(n), (n,)) for n in stop.counts()}
            continue
        reached: dict[int, tuple[float, int, tuple[int, ...]]] = {}
        for count in stop.counts() if stop.rise.step else list(best):
            ways = [best[c] for c in best if stop.rise.allows(c, count)]
            if ways:
                off, side, path = min(ways)
                more, also = stop.cost(count) if stop.rise.step else (0.0, 0)
                reached[count] = (round(off + more, GRAIN), side + also, (*path, count))
        best = reached
    return min(best.values())[2] if best else None
