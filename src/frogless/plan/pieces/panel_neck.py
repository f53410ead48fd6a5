"""Necklines and shoulders: what the top of a panel leaves free, and in which steps it ends."""

from __future__ import annotations

from dataclasses import dataclass

from frogless.design.pieces.panel import Neck
from frogless.errors import Impossible, Place
from frogless.plan.pieces.panel_edges import Line, Run, shaped_rows, spread_run, steps_of


@dataclass(frozen=True, slots=True)
class NeckShape:
    """A neckline in whole stitches.

    Args:
        count: stitches it takes in all. once: of them left unworked in its first row.
        each: stitches that each shaped edge loses after that.
        first: its first row.
    """

    count: int
    once: int
    each: int
    first: int


USUAL_AT_ONCE = 35.0
"""Per cent of a round neck that is left at once; 30 to 40 are usual (common practice)."""


def plan_neck(neck: Neck, count: int, first: int, last: int) -> NeckShape:
    """A neckline over so many stitches: what is left at once, and what goes stitch by stitch.

    Round: 30 to 40 % at once, the rest one per row; in a shallow neck as much more at once as its
    rows have no room for. V: nothing at once, or the one stitch in the middle of an odd count.
    Square: all at once.

    Source: common practice.

    >>> plan_neck(Neck(width="20 cm", depth="12 cm"), 33, 31, 42)
    NeckShape(count=33, once=11, each=11, first=31)
    >>> plan_neck(Neck(width="20 cm", depth="3 cm"), 33, 40, 42)
    NeckShape(count=33, once=29, each=2, first=40)
    """
    halves = 2 if neck.at == "middle" else 1
    percent = USUAL_AT_ONCE if neck.at_once_percent is None else neck.at_once_percent
    share = {"round": percent / 100, "V": 0.0, "square": 1.0}[neck.shape]
    once = round(count * share)
    if neck.shape == "round" and neck.at_once_percent is None:
        room = len(shaped_rows(first + 1, last, neck.rows, count))
        once = max(once, count - halves * room)
    if (count - once) % halves:
        once += 1 if once < count and (once < count * share or once == 0) else -1
    return NeckShape(count, once, (count - once) // halves, first)


def slope_neck(neck: Neck, shape: NeckShape, last: int, place: Place) -> Run:
    """The stitches that one edge of the neck loses, row by row, up to the last row.

    Raises:
        Impossible: more than two would have to go in a row.
    """
    first = shape.first + (1 if shape.once else 0)
    rate = "even" if neck.shape == "V" else "steep"
    run = spread_run(first, last, -shape.each, rate, neck.rows)
    if run.short:
        raise Impossible(
            f"the neck loses {shape.each} stitches at each edge in {last - first + 1} rows, two in "
            "a row at most",
            place,
            short_stitches=run.short,
            ways_out=("a deeper neck", "more stitches at once", "a narrower neck"),
        )
    return run


def step_shoulder(line: Line, stitches: int, number: int, last: int) -> tuple[int, ...]:
    """The steps of a shoulder from its tip, left one by one in the last rows of an armhole edge.

    Source: depth over row height is the number of short rows, common practice.
    """
    steps = steps_of(stitches, number)
    for i, step in enumerate(steps[:-1], start=1):
        line.step(last - number + 1 + i, step)
    return steps
