"""Girths on whole stitches."""

from __future__ import annotations

import pytest

from frogless.errors import InputError
from frogless.plan.landing import Rise, Stop, exact_count, land, land_together, multiple_note


def test_of_two_counts_equally_near_the_fuller_is_taken_unless_it_lies_close() -> None:
    """105 lies between 100 and 110: positive ease takes 110, negative 100."""
    assert land(1050, 10, 10).count == 110
    assert land(1050, 10, 10, fuller=False).count == 100


def test_because_leads_from_the_girth_to_how_far_off_it_is() -> None:
    """Wanted, gauge, exact, landed, girth, off."""
    steps = land(1160, 100 / 18, 8).because.steps
    assert [s.what for s in steps] == ["wanted", "gauge", "exact", "landed", "girth", "off"]
    assert steps[3].note == "multiple of 8"
    assert steps[-1].value == pytest.approx(208 * 100 / 18 - 1160)


@pytest.mark.parametrize(
    ("multiple", "offset", "note"),
    [(1, 0, ""), (8, 0, "multiple of 8"), (6, 1, "multiple of 6, plus 1")],
)
def test_multiple_is_told_with_what_is_over(multiple: int, offset: int, note: str) -> None:
    """A multiple of one is none."""
    assert multiple_note(multiple, offset) == note


def test_count_is_never_below_the_smallest_that_there_is() -> None:
    """A doll's waist of two stitches on a multiple of eight has eight."""
    assert land(10, 5, 8).count == 8


@pytest.mark.parametrize(("girth", "width"), [(0, 5), (-1, 5), (100, 0)])
def test_nothing_lands_on_no_stitches(girth: float, width: float) -> None:
    """A girth and a stitch above zero are needed."""
    with pytest.raises(InputError, match="cannot be landed on"):
        exact_count(girth, width)


def test_rate_of_shaping_bounds_the_change() -> None:
    """Nine rounds every other one are five shaping rounds of two stitches."""
    rise = Rise(step=2, rounds=9, every=2)
    assert rise.shapings == 5
    assert rise.allows(100, 110)
    assert not rise.allows(100, 112)
    assert not rise.allows(100, 109)
    assert Rise(step=2).allows(100, 400)


def test_straight_section_carries_its_count_on() -> None:
    """And has to be wide enough for what it passes."""
    rise = Rise(step=0, rounds=5, floors=((3, 100),))
    assert rise.allows(100, 100)
    assert not rise.allows(99, 99)
    assert not rise.allows(100, 101)


def test_widening_reaches_a_landmark_as_soon_as_it_can() -> None:
    """Every round from the first: after three of ten rounds three shapings can be done."""
    rise = Rise(step=8, rounds=10, floors=((3, 124),))
    assert rise.most_after(3, 100, 180) == 124
    assert rise.allows(100, 180)
    assert not Rise(step=8, rounds=10, floors=((3, 125),)).allows(100, 180)


def test_narrowing_leaves_a_landmark_as_late_as_it_can() -> None:
    """Three decreases in the last three of ten rounds; after round 8 one of them is done."""
    rise = Rise(step=4, rounds=10, floors=((8, 96),))
    assert rise.most_after(8, 100, 88) == 96
    assert rise.most_after(7, 100, 88) == 100
    assert rise.allows(100, 88)


def test_counts_are_all_inside_what_is_allowed_and_on_the_multiple() -> None:
    """From 40 to 60 mm of 5 mm stitches, 1 over a multiple of 4."""
    assert Stop(50, 40, 60, 5.0, multiple=4, offset=1).counts() == [9]
    assert Stop(50, 40, 60, 5.0).counts() == [8, 9, 10, 11, 12]
    assert Stop(50, 51, 54, 5.0).counts() == []


def test_counts_give_way_to_each_other_when_steps_bind_them() -> None:
    """Steps of eight from 151.2 to 208.8: 152 and 208, not 151 and 209."""
    width = 100 / 18
    stops = [Stop(840, 800, 880, width), Stop(1160, 1120, 1200, width, Rise(8))]
    assert land_together(stops) == (152, 208)


def test_there_are_no_counts_when_a_girth_allows_none() -> None:
    """Nothing is taken outside what is allowed."""
    assert land_together([Stop(100, 101, 104, 5.0)]) is None
    stops = [Stop(100, 100, 100, 5.0), Stop(117, 117, 117, 5.0, Rise(4))]
    assert land_together(stops) is None
