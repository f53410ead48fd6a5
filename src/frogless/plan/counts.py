"""Counts that a stitch multiple divides, on either side of the count that is there."""

from __future__ import annotations

from dataclasses import dataclass

from frogless.errors import Impossible, InputError
from frogless.plan import shaping
from frogless.plan.edging import MOST, SHOWS
from frogless.rows.nodes import End, Row, Start

LONGEST_ROUND = 100_000
"""Stitches; a slip of the keyboard beyond."""


@dataclass(frozen=True, slots=True)
class CountThatWorks:
    """A count that leaves no stitch over, and what leads to it.

    Args:
        change: stitches to add to the count that is there, or to take away (negative).
        off: how much wider or narrower (negative) that is, mm; None when the gauge is not known.
        gaps: from each increase or decrease to the next, in stitches of the count that is there;
            the last one leads on to the first.
        shows: whether the change is more than one round hides.
    """

    count: int
    repeats: int
    change: int
    off: float | None = None
    gaps: tuple[int, ...] = ()
    shows: bool = False


def counts_that_work(
    count: int, multiple: int, offset: int = 0, width: float | None = None
) -> tuple[CountThatWorks, ...]:
    """The count itself when it works, else the nearest above and below that one round leads to.

    Args:
        offset: stitches over, which balance the two edges of work in rows; 0 in rounds.
        width: one stitch, mm.

    Raises:
        InputError: a number is too small.
        Impossible: neither is near enough for one round.

    Source: even division by a stitch multiple and even spreading, common practice; cases in
    tests/reference/plan/counts.csv.

    >>> [one.change for one in counts_that_work(205, 8)]
    [3, -5]
    """
    if not (1 <= count <= LONGEST_ROUND and multiple >= 1 and offset >= 0):
        raise InputError(
            f"{count} stitches on a multiple of {multiple} plus {offset}: a count is 1 to "
            f"{LONGEST_ROUND}, a multiple 1 or more, and what is over 0 or more"
        )
    below = (count - offset) // multiple * multiple + offset
    fits = [below] if below == count else [below + multiple, below]
    found = tuple(
        _one(count, target, (target - offset) // multiple, width)
        for target in fits
        if target >= multiple + offset and abs(target - count) <= count * MOST
    )
    if not found:
        raise _too_far(count, multiple, offset)
    return found


def _one(count: int, target: int, repeats: int, width: float | None) -> CountThatWorks:
    change = target - count
    return CountThatWorks(
        count=target,
        repeats=repeats,
        change=change,
        off=None if width is None else change * width,
        gaps=_gaps(count, change),
        shows=abs(change) > count * SHOWS,
    )


def _too_far(count: int, multiple: int, offset: int) -> Impossible:
    over = f" plus {offset}" if offset else ""
    return Impossible(
        f"no multiple of {multiple}{over} is near enough to {count} stitches: one round takes up "
        "a third of them at most",
        ways_out=("a pattern with a smaller multiple", "several rounds of shaping"),
    )


def _round(count: int, change: int) -> shaping.Round:
    return shaping.Round(count, abs(change), 1 if change > 0 else -1)


def _gaps(count: int, change: int) -> tuple[int, ...]:
    if not change:
        return ()
    at = _round(count, change).positions()
    return tuple(b - a for a, b in zip(at, (*at[1:], at[0] + count), strict=True))


def correction(count: int, change: int, stitch: str = "single_crochet", *, closed: bool) -> Row:
    """The row or round that adds or takes away the difference, spread evenly.

    Args:
        change: as in `CountThatWorks`, not 0.
    """
    return Row(
        number=1,
        side="RS",
        section="correction",
        body=shaping.body(stitch, _round(count, change)),
        count=count + change,
        start=Start(1),
        end=End("first_stitch" if closed else "none"),
    )
