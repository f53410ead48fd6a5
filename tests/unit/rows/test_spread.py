"""What "spread evenly" means."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from frogless.rows.count import consumed, left
from frogless.rows.nodes import Into, Repeat, Skip, Work
from frogless.rows.spread import apportioned, even_spread, worked_over


@given(st.integers(0, 400), st.integers(1, 200))
def test_spread_adds_up_and_differs_by_one_at_most(count: int, over: int) -> None:
    """Every stitch is somewhere, and no place has two more than another."""
    spread = even_spread(count, over)
    assert len(spread) == over
    assert sum(spread) == count
    assert max(spread) - min(spread) <= 1


@given(st.integers(0, 200), st.integers(1, 60), st.integers(1, 59))
def test_windows_of_equal_length_differ_by_one_at_most(count: int, over: int, window: int) -> None:
    """The larger ones are spread too: the mark of a maximally even set."""
    spread = even_spread(count, over) * 2
    sums = [sum(spread[i : i + min(window, over)]) for i in range(over)]
    assert max(sums) - min(sums) <= 1


@pytest.mark.parametrize(("count", "over", "twos"), [(144, 98, 46), (10, 4, 2)])
def test_spread_takes_as_many_larger_ones_as_are_left_over(
    count: int, over: int, twos: int
) -> None:
    """The remainder of the division, worked by hand."""
    spread = even_spread(count, over)
    assert spread.count(count // over + 1) == twos


@given(st.integers(0, 300), st.lists(st.floats(1, 500), min_size=1, max_size=6))
def test_shares_add_up_and_are_less_than_one_off_when_apportioned(
    count: int, shares: list[float]
) -> None:
    """Each gets the whole number below or above what is due to it."""
    given_ = apportioned(count, shares)
    assert sum(given_) == count
    due = [count * share / sum(shares) for share in shares]
    assert all(abs(got - each) < 1 + 1e-6 for got, each in zip(given_, due, strict=True))


def test_the_two_sides_of_a_neck_get_as_many_when_the_middle_can_take_the_rest() -> None:
    """41 over 100, 210 and 100 mm: 10.0, 21.0, 10.0 are due; the odd one goes to the middle."""
    assert apportioned(41, (100, 210, 100)) == (10, 21, 10)
    assert apportioned(40, (100, 200, 100)) == (10, 20, 10)
    assert apportioned(3, (100, 100)) == (2, 1)


@given(st.integers(0, 200), st.integers(1, 120))
def test_a_spread_is_worked_as_it_says_when_written_as_a_body(count: int, over: int) -> None:
    """Every place is taken, and so many stitches are made."""
    body = worked_over("dc", even_spread(count, over))
    assert consumed(body, {"dc": 1}) == over
    assert left(body, {"dc": 1}) == count


def test_three_to_two_is_one_repeat_when_written_as_a_body() -> None:
    """One in the first row end, two in the next."""
    twice = Into((Work("dc", 2),))
    assert worked_over("dc", even_spread(18, 12)) == (Repeat((Work("dc"), twice), 6),)
    assert worked_over("dc", even_spread(20, 30)) == (Repeat((Skip(), Work("dc", 2)), 10),)
    assert worked_over("dc", even_spread(14, 7)) == (Repeat((twice,), 7),)
