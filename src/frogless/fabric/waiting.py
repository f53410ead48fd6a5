"""The places of a piece that wait to be worked into: ahead of the loop on the hook and behind it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from frogless.fabric.model import Ints, runs_back
from frogless.rows.nodes import Row

#: No places: (0, 2) int32.
NO_PLACES: Ints = np.zeros((0, 2), np.int32)


@dataclass(frozen=True, slots=True)
class Waiting:
    """Places as (p, 2) int32: the row that made each (its index in the piece) and its number there.

    Both runs are in the way the last row was worked: what is next stands first in `ahead`, what was
    made last stands last in `behind`.
    """

    behind: Ints
    ahead: Ints


def places_of(index: int, count: int) -> Ints:
    """All places of one row in the order made, (count, 2) int32."""
    made = np.full((count, 2), index, np.int32)
    made[:, 1] = np.arange(count, dtype=np.int32)
    return made


def at_next_row(waiting: Waiting, row: Row, below: Row, *, closed: bool) -> Waiting:
    """The places as the next row meets them.

    Turned work has before it what it had behind it. In a piece that is closed the two ends are one,
    so all places lie ahead: turned, what was left is met from its far end; worked on in the same
    way, what was left comes first. Rows of an open piece that are not turned begin at its far end.

    In a turned round that was joined into its place 0 the loop already sits on that place, so a new
    round that is opened there takes it first and the others in reverse after it.

    Source: common practice.
    """
    if runs_back(row) == runs_back(below):
        runs = (waiting.ahead, waiting.behind) if closed else (waiting.behind, waiting.ahead)
        return Waiting(NO_PLACES, np.concatenate(runs))
    back, left = waiting.behind[::-1], waiting.ahead[::-1]
    if _opened_on_place_0(row, below):
        back = np.concatenate((waiting.behind[:1], back[:-1]))
    return Waiting(NO_PLACES, np.concatenate((back, left))) if closed else Waiting(left, back)


def _opened_on_place_0(row: Row, below: Row) -> bool:
    """Whether the loop sits on place 0 when a turned round begins, and the round uses it."""
    if below.end.join == "chain_top":
        return below.start.counts and below.start.chains > 0
    return below.end.join == "first_stitch" and row.start.counts and row.start.chains > 0
