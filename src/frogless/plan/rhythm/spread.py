"""Shapings at the edge of a panel: so many over so many rows, straight or along any curve."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np

from frogless.plan.rhythm.engine import CLAUSES, Task, on_right_side

Curve = Callable[[float], float]
"""The share of the shaping that is done (0 to 1) by the share of the rows that are worked."""

ONE_STITCH = 1.0
"""The tape cannot see less than a stitch at an edge (the same as for girths)."""


def edge_task(
    rows: int,
    shapings: int,
    *,
    curve: Curve | None = None,
    right_side_only: bool = False,
    first_right_side: int = 1,
    least_gap: int = 1,
    forbidden: Sequence[int] = (),
    clauses: int = CLAUSES,
    indifference: float = ONE_STITCH,
) -> Task:
    """What the rhythm of an edge has to follow, in shapings (stitches, when each changes by one).

    `solve` gives the rhythm, rows counted from 1; None when so many shapings do not fit in.

    Args:
        curve: the profile; a straight line when there is none.
        first_right_side: the first row that is a right-side row.
        indifference: in shapings.

    Seven in twenty rows; six on right-side rows of a neck that is steep at first:

    >>> from frogless.plan.rhythm.engine import solve
    >>> solve(edge_task(20, 7)).rhythm.rounds
    (1, 4, 7, 10, 13, 16, 19)
    >>> steep = edge_task(18, 6, curve=lambda t: t**0.5, right_side_only=True, indifference=0)
    >>> solve(steep).rhythm.rounds
    (1, 3, 5, 7, 11, 15)
    """
    share = np.arange(rows + 1) / max(rows, 1)
    done = share if curve is None else np.array([curve(float(part)) for part in share])
    return Task(
        wanted=shapings * done,
        before=0.0,
        step=1.0,
        shapings=shapings,
        indifference=indifference,
        clauses=clauses,
        allowed=on_right_side(rows, first_right_side) if right_side_only else None,
        forbidden=forbidden,
        least_gap=least_gap,
        pair=2 if right_side_only else 1,
    )
