"""Flares told by how they are made: a share of a circle, a square, gores.

A circle laid flat has the girth 2π times its radius: fabric that widens by 2π of its length lies
flat, by half of that it is half a circle (geometry). A square widens by 8 times its length: two at
each end of each side (geometry). Shaping points that stand in lines turn a circle into a polygon,
so those of a circle are staggered: every other shaping round has them between those of the last.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from typing import Literal

from frogless.design.pieces.tube import Section
from frogless.plan.shaping import Round, gored, staggered

RATES = {
    "full circle": 2 * math.pi,
    "half circle": math.pi,
    "quarter circle": math.pi / 2,
    "square": 8.0,
}
"""How much wider a flare gets, over how much longer."""

SQUARE = "square"
CORNERS = 4
MOST_ADDED = 4

Lines = Literal["even", "staggered", "gores"]


def widened(flare: str, before: float, length: float) -> float:
    """The girth at the end of a flare, mm.

    >>> round(widened("full circle", 700, 450)), round(widened("half circle", 700, 450))
    (3527, 2114)
    """
    return before + RATES[flare] * length


def lines(section: Section) -> Lines:
    """How the shaping points of a section stand, one round above the other."""
    if section.gores is not None:
        return "gores"
    stagger = section.stagger
    if stagger is None:
        stagger = section.flare is not None and section.flare != SQUARE
    return "staggered" if stagger else "even"


def worked_out(section: Section, width: float, height: float) -> Section:
    """A section with the shaping points that its gores or its corners ask for.

    Args:
        width, height: of a stitch and of a round, mm.
    """
    if section.gores is not None:
        return section.model_copy(update={"points": 2 * section.gores})
    if section.flare != SQUARE:
        return section
    add = math.ceil(RATES[SQUARE] * height / width / CORNERS - 1e-9)
    asked = section.model_fields_set
    update: dict[str, object] = {} if "points" in asked else {"points": CORNERS}
    if "add" not in asked:
        update["add"] = min(max(add, 1), MOST_ADDED)
    return section.model_copy(update=update)


def multiple(sections: Sequence[Section]) -> int:
    """What every count of a piece has to be a multiple of, for its gores to be alike."""
    return math.lcm(*(section.gores or 1 for section in sections))


def placed(section: Section, round_: Round, index: int) -> Round:
    """A shaping round with its points where the section wants them.

    Args:
        index: how many shaping rounds the section has before it.
    """
    match lines(section):
        case "gores":
            return gored(round_)
        case "staggered":
            return replace(staggered(round_) if index % 2 else round_, loose=True)
        case "even":
            return round_
