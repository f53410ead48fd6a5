"""How a section in a stitch pattern may grow, weighed: the nearest girth, then the simplest rhythm."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from frogless.plan.layout import Shaped
from frogless.plan.pattern_asked import Asked
from frogless.plan.rhythm.engine import Solution, Task
from frogless.plan.sections import Span, Target

Made = tuple[tuple[Span, ...], tuple[Shaped | None, ...]]
"""The stretches of a section, and for each its shaping as a plain section's; None without one."""


@dataclass(frozen=True, slots=True)
class Grown:
    """One way to grow: where it ends, and the rhythm that leads there.

    Args:
        off: of the girth at the end from the wanted one, mm.
        step: repeats at each border, or stitches in each column.
    """

    end: int
    step: int
    off: float
    solution: Solution | None
    units: int
    task: Task | None = None

    def key(self) -> tuple[int, float, float, int]:
        """Fewest clauses, least stray, least squares, fewest repeats at once."""
        if self.solution is None:
            return (0, 0.0, 0.0, 0)
        return (*self.solution.key()[:3], self.step)


def best_of(found: Sequence[Grown], give: float) -> Grown:
    """The best way to grow: of those as near to the girth as can be, the simplest that strays least.

    Args:
        give: what the tape cannot see, mm.
    """
    off = min(one.off for one in found) + give + 1e-9
    near = [one for one in found if one.off <= off]
    stray = min(one.solution.stray if one.solution else 0.0 for one in near) + give + 1e-9
    return min(
        (one for one in near if (one.solution.stray if one.solution else 0.0) <= stray),
        key=Grown.key,
    )


def aim_of(ask: Asked) -> Target:
    """The girth that a section is shaped to.

    Raises:
        TypeError: it has none; that is checked before.
    """
    if ask.target is None:
        raise TypeError("a section that is not shaped")
    return ask.target


def between(step: float, rest: float, aim: Target, least: int) -> list[int]:
    """Numbers of repeats, or of stitches in each column, whose girth is allowed."""
    first = max(math.ceil((aim.low - rest) / step - 1e-9), least)
    last = math.floor((aim.high - rest) / step + 1e-9)
    return list(range(first, last + 1))
