"""Loops on the hook, step by step: the proof that a stitch closes."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate

from frogless.stitches.model import Motion, Step, Stitch

#: What a motion adds to the loops on the hook, before the loops it draws through are taken off.
GAINS: dict[Motion, int] = {
    "yarn_over": 1,
    "insert": 0,
    "pull_up": 1,
    "pull_through": 1,
    "slip_through": 0,
    "chain": 0,
    "slide_bead": 0,
}
#: The motions that take `loops` loops off the hook.
DRAWS: frozenset[Motion] = frozenset({"pull_through", "slip_through"})


def loops_after(steps: Sequence[Step]) -> list[int]:
    """Loops on the hook after each step, beginning with one.

    >>> loops_after([Step("insert"), Step("pull_up"), Step("pull_through", 2)])
    [1, 2, 1]
    """
    return list(accumulate((_change(step) for step in steps), initial=1))[1:]


def closes(stitch: Stitch) -> bool:
    """Whether the stitch ends with one loop and never draws through more loops than there are."""
    loops = loops_after(stitch.steps)
    return bool(loops) and loops[-1] == 1 and min(loops) >= 1


def _change(step: Step) -> int:
    return GAINS[step.motion] - (step.loops if step.motion in DRAWS else 0)
