"""Loops on the hook, step by step: the proof that a stitch closes."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate, pairwise

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
    "set_aside": 0,
    "take_up": 0,
}
#: The motions that take `loops` loops off the hook.
DRAWS: frozenset[Motion] = frozenset({"pull_through", "slip_through", "set_aside"})
#: The motions that a hook without a loop on it can make: it goes into the fabric, or takes one up.
EMPTY: frozenset[Motion] = frozenset({"insert", "take_up"})


def loops_after(steps: Sequence[Step]) -> list[int]:
    """Loops on the hook after each step, beginning with one.

    >>> loops_after([Step("insert"), Step("pull_up"), Step("pull_through", 2)])
    [1, 2, 1]
    """
    return list(accumulate((_change(step) for step in steps), initial=1))[1:]


def held_after(steps: Sequence[Step]) -> int:
    """Loops that are set aside more than taken up: held for a later row, or below 0 its own.

    >>> held_after([Step("insert"), Step("pull_up"), Step("set_aside", 1)])
    1
    """
    return sum(_held(step) for step in steps)


def closes(stitch: Stitch) -> bool:
    """Whether the stitch ends with one loop and never draws through more loops than there are.

    The hook may be empty only while its loop is set aside, until that is taken up again (popcorn).
    """
    loops = loops_after(stitch.steps)
    sound = map(_is_sound, pairwise([1, *loops]), stitch.steps)
    return bool(loops) and loops[-1] == 1 and all(sound)


def _is_sound(loops: tuple[int, int], step: Step) -> bool:
    before, after = loops
    if before == 0:
        return step.motion in EMPTY
    return after >= 1 or (after == 0 and step.motion == "set_aside")


def _change(step: Step) -> int:
    drawn = step.loops if step.motion in DRAWS else 0
    taken_up = step.loops if step.motion == "take_up" else 0
    return GAINS[step.motion] - drawn + taken_up


def _held(step: Step) -> int:
    signs: dict[Motion, int] = {"set_aside": 1, "take_up": -1}
    return signs.get(step.motion, 0) * step.loops
