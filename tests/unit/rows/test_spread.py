"""What "spread evenly" means."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from frogless.rows.spread import even_spread


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
