"""Loops on the hook."""

from __future__ import annotations

from dataclasses import replace

import pytest

from frogless.stitches.load import dictionary
from frogless.stitches.model import Step, Stitch
from frogless.stitches.steps import closes, loops_after


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


def test_chains_are_caught_once_each_when_a_step_makes_several() -> None:
    """Three chains of a picot catch the yarn three times; a bead slid up catches none."""
    assert Step("chain", 3).times == 3
    assert Step("pull_through", 3).times == 1
    assert dictionary()["bead"].catches == 0
