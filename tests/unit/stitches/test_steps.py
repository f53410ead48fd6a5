"""Loops on the hook."""

from __future__ import annotations

from dataclasses import replace

import pytest

from frogless.stitches.load import dictionary
from frogless.stitches.model import Step, Stitch
from frogless.stitches.steps import closes, held_after, loops_after


def dc() -> Stitch:
    """A double crochet."""
    return dictionary()["double_crochet"]


def test_loops_are_counted_when_a_double_crochet_is_worked() -> None:
    """Two loops after the yarn over, three after the pull up, then one fewer twice."""
    assert loops_after(dc().steps) == [2, 2, 3, 2, 1]


def test_no_loops_when_there_are_no_steps() -> None:
    """A stitch without motions has nothing to count, and does not close."""
    assert loops_after([]) == []
    assert not closes(replace(dc(), steps=()))


@pytest.mark.parametrize(
    "steps",
    [
        (Step("yarn_over"), Step("insert"), Step("pull_up"), Step("pull_through", 2)),
        (Step("insert"), Step("pull_up"), Step("pull_through", 3)),
        (Step("slip_through", 1), Step("yarn_over")),
    ],
    ids=["a loop too many", "drawn through a loop that is not there", "empty hook on the way"],
)
def test_a_stitch_does_not_close_when_loops_are_wrong(steps: tuple[Step, ...]) -> None:
    """It has to end with one loop and may never have had fewer."""
    assert not closes(replace(dc(), steps=steps))


@pytest.mark.parametrize("key", dictionary())
def test_every_stitch_closes_when_worked(key: str) -> None:
    """Each entry of the dictionary ends as it began, with one loop."""
    stitch = dictionary()[key]
    assert closes(stitch)
    assert loops_after(stitch.steps)[-1] == 1


def worked(steps: tuple[Step, ...]) -> tuple[int, int]:
    """Loops left on the hook and loops held, when each loop is moved by hand, one at a time."""
    hook, held = ["first"], [f"held {n}" for n in range(9)]
    for step in steps:
        match step.motion:
            case "yarn_over" | "pull_up":
                hook.append(step.motion)
            case "pull_through" | "chain":
                for _ in range(step.loops if step.motion == "pull_through" else 1):
                    hook.pop()
                hook.append("drawn")
            case "slip_through":
                drawn = hook.pop()
                for _ in range(step.loops):
                    hook.pop()
                hook.append(drawn)
            case "set_aside":
                held += [hook.pop() for _ in range(step.loops)]
            case "take_up":
                hook += [held.pop() for _ in range(step.loops)]
            case "insert" | "slide_bead":
                pass
    return len(hook), len(held) - 9


@pytest.mark.parametrize("key", dictionary())
def test_loops_are_those_left_when_each_is_moved_by_hand(key: str) -> None:
    """Counting agrees with moving every loop from place to place."""
    steps = dictionary()[key].steps
    assert worked(steps) == (loops_after(steps)[-1], held_after(steps))
    for end in range(1, len(steps) + 1):
        assert worked(steps[:end])[0] == loops_after(steps)[end - 1]


def test_loops_are_held_and_taken_up_again_when_set_aside() -> None:
    """A long loop waits on the stick; a group takes up five; a cord holds as many as it takes."""
    held = {key: held_after(dictionary()[key].steps) for key in ("long_loop", "loop_group")}
    assert held == {"long_loop": 1, "loop_group": -5}
    assert held_after(dictionary()["loop_cord"].steps) == 0


@pytest.mark.parametrize("steps", [
    (Step("set_aside", 1), Step("yarn_over")),
    (Step("set_aside", 1), Step("insert")),
    (Step("set_aside", 2), Step("take_up", 2)),
], ids=["yarn over an empty hook", "never taken up", "more than there are"])  # fmt: skip
def test_an_empty_hook_is_no_stitch_unless_its_loop_comes_back(steps: tuple[Step, ...]) -> None:
    """The hook may leave its loop, as in a popcorn, but only to take it up again."""
    assert not closes(replace(dc(), steps=steps))
    assert closes(replace(dc(), steps=(Step("set_aside", 1), Step("insert"), Step("take_up", 1))))


def test_chains_are_caught_once_each_when_a_step_makes_several() -> None:
    """Three chains of a picot catch the yarn three times; a bead slid up catches none."""
    assert Step("chain", 3).times == 3
    assert Step("pull_through", 3).times == 1
    assert dictionary()["bead"].catches == 0
