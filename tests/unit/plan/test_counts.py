"""Counts that work: on either side, near enough, and the round that leads to each."""

from __future__ import annotations

import pytest

from frogless.errors import Impossible, InputError
from frogless.plan.counts import correction, counts_that_work
from frogless.rows.count import consumed, left
from frogless.rows.nodes import Together, Work
from frogless.stitches.load import dictionary, leaves, stands_on


def test_count_that_fits_is_the_only_one() -> None:
    """Nothing has to be done, so nothing else is offered."""
    (only,) = counts_that_work(256, 8, 0, 5.0)
    assert (only.count, only.repeats, only.change, only.off, only.gaps) == (256, 32, 0, 0.0, ())


@pytest.mark.parametrize(("count", "multiple", "offset"), [(205, 8, 0), (91, 6, 2), (31, 10, 3)])
def test_offered_counts_leave_nothing_over_and_lie_on_either_side(
    count: int, multiple: int, offset: int
) -> None:
    """One above and one below, a multiple apart."""
    above, below = counts_that_work(count, multiple, offset)
    assert below.count < count < above.count == below.count + multiple
    assert (above.count - offset) % multiple == 0


@pytest.mark.parametrize("closed", [True, False])
@pytest.mark.parametrize("change", [3, 1, -5])
def test_correction_takes_every_stitch_and_leaves_the_count(change: int, closed: bool) -> None:
    """The row meets what is there, and what it leaves is what it says."""
    row = correction(205, change, closed=closed)
    known = dictionary()
    assert consumed(row.body, stands_on(known)) == 205
    assert left(row.body, leaves(known)) == row.count == 205 + change
    assert (row.end.join == "first_stitch") is closed


def test_decreases_are_two_together() -> None:
    """A stitch at a time."""
    body = correction(20, -1, closed=True).body
    assert Together("single_crochet", 2) in body
    assert body[0] == Work("single_crochet", 9)


def test_gaps_go_once_round() -> None:
    """Those between increases add up to the stitches there are, and differ by one at most."""
    above, _ = counts_that_work(205, 8)
    assert sum(above.gaps) == 205
    assert max(above.gaps) - min(above.gaps) <= 1


def test_large_change_shows() -> None:
    """More than one in fifty."""
    assert [one.shows for one in counts_that_work(205, 8)] == [False, True]


def test_count_too_far_from_any_multiple_is_refused() -> None:
    """A third of the stitches is what one round takes."""
    with pytest.raises(Impossible, match="no multiple of 40 plus 1 is near enough to 20 stitches"):
        counts_that_work(20, 40, 1)


@pytest.mark.parametrize("given", [(0, 8, 0), (200, 0, 0), (200, 8, -1), (10**9, 8, 0)])
def test_number_out_of_range_is_refused(given: tuple[int, int, int]) -> None:
    """With what is accepted."""
    with pytest.raises(InputError, match="a count is 1 to 100000, a multiple 1 or more"):
        counts_that_work(*given)
