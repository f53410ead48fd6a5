"""Stitches worked together into one."""

from __future__ import annotations

import pytest

from frogless.errors import InputError
from frogless.stitches.load import dictionary
from frogless.stitches.model import CATCHES, Dialect, Term
from frogless.stitches.steps import loops_after
from frogless.stitches.together import (
    can_close_together,
    decreases,
    together_steps,
    together_term,
)

#: The stitches that fabrics are made of, one in each place.
FABRIC = [
    key
    for key, s in dictionary().items()
    if s.kind == "stitch" and s.turning_chain and s.stands_on == s.leaves == 1
]
#: Closed by a loop drawn through the top, not by a draw through loops.
CLOSED_OTHERWISE = {"popcorn", "back_popcorn", "half_double_slip_stitch"}


@pytest.mark.parametrize("places", [2, 3, 4])
@pytest.mark.parametrize("key", [key for key in FABRIC if key not in CLOSED_OTHERWISE])
def test_every_fabric_stitch_closes_when_worked_together(key: str, places: int) -> None:
    """One loop is left, and never fewer on the way; each but one leaves its last catch out."""
    stitch = dictionary()[key]
    steps = together_steps(stitch, places)
    loops = loops_after(steps)
    assert (loops[-1], min(loops)) == (1, 1)
    caught = sum(CATCHES[step.motion] * step.times for step in steps)
    assert caught == places * (stitch.catches - 1) + 1


@pytest.mark.parametrize(
    ("key", "places", "loops"),
    [("single_crochet", 2, 3), ("half_double_crochet", 2, 5), ("double_crochet", 3, 4)],
)
def test_the_last_draw_takes_all_loops_when_closed(key: str, places: int, loops: int) -> None:
    """Three for sc2tog, five for hdc2tog, four for dc3tog, as they are taught."""
    last = together_steps(dictionary()[key], places)[-1]
    assert (last.motion, last.loops) == ("pull_through", loops)


@pytest.mark.parametrize(
    ("key", "places", "dialect", "short"),
    [
        ("single_crochet", 2, "us", "sc2tog"),
        ("half_double_crochet", 2, "us", "hdc2tog"),
        ("double_crochet", 2, "us", "dc2tog"),
        ("treble", 2, "us", "tr2tog"),
        ("double_crochet", 3, "us", "dc3tog"),
        ("double_crochet", 3, "uk", "tr3tog"),
    ],
)
def test_stitches_together_are_named_as_they_are_written(
    key: str, places: int, dialect: Dialect, short: str
) -> None:
    """The number stands between the stitch and "tog"."""
    assert together_term(dictionary()[key], places, dialect).abbreviation == short


@pytest.mark.parametrize(
    "key",
    [
        *("slip_stitch", "chain", "picot", "bead", "adjustable_ring", "shell", "star", "y_stitch"),
        *sorted(CLOSED_OTHERWISE),
    ],
)
def test_what_nothing_closes_is_refused_when_worked_together(key: str) -> None:
    """A slip stitch has no open loops to leave on the hook."""
    assert not can_close_together(dictionary()[key])
    with pytest.raises(InputError, match="cannot be worked together"):
        together_steps(dictionary()[key], 2)


def test_fewer_than_two_are_refused_when_worked_together() -> None:
    """One stitch is no decrease."""
    with pytest.raises(InputError, match="2 or more"):
        together_steps(dictionary()["single_crochet"], 1)


def test_a_ring_leaves_one_place_when_begun() -> None:
    """It stands on nothing, closes with one loop and begins on no chains."""
    ring = dictionary()["adjustable_ring"]
    assert (ring.kind, ring.stands_on, ring.leaves, ring.begins_on) == ("foundation", 0, 1, 0)
    assert loops_after(ring.steps)[-1] == 1


def test_the_plain_decreases_are_those_of_the_basic_stitches_when_listed() -> None:
    """Each basic stitch over two places and over three; families and ornaments need none."""
    found = {one.terms["us"].abbreviation: one for one in decreases(dictionary())}
    basic = ["sc", "hdc", "dc", "tr", "dtr", "trtr", "quadtr", "esc", "ehdc", "edc", "etr"]
    assert list(found) == [f"{short}{n}tog" for short in basic for n in (2, 3)]
    assert found["sc2tog"].terms["uk"] == Term("2 double crochet together", "dc2tog")
    assert all(loops_after(one.steps)[-1] == 1 for one in found.values())
    assert found["dc3tog"].steps == together_steps(dictionary()["double_crochet"], 3)
