"""Counts near any hem: nothing over, as near as can be, and a round that leads there."""

from __future__ import annotations

from hypothesis import assume, given
from hypothesis import strategies as st

from frogless.errors import Impossible
from frogless.plan.counts import correction, counts_that_work
from frogless.rows.count import consumed, left
from frogless.stitches.load import dictionary, leaves, stands_on


@given(st.integers(1, 600), st.integers(1, 40), st.integers(0, 8), st.booleans())
def test_every_offered_count_works_and_is_led_to(
    count: int, multiple: int, offset: int, closed: bool
) -> None:
    """Its row takes every stitch there is and leaves the count; none nearer on its side works."""
    try:
        found = counts_that_work(count, multiple, offset)
    except Impossible:
        assume(False)
    for one in found:
        assert (one.count - offset) % multiple == 0
        assert one.count == count + one.change == one.repeats * multiple + offset
        assert abs(one.change) < multiple
        if one.change:
            row = correction(count, one.change, closed=closed)
            assert consumed(row.body, stands_on(dictionary())) == count
            assert left(row.body, leaves(dictionary())) == row.count == one.count
            assert sum(one.gaps) == count
            assert max(one.gaps) - min(one.gaps) <= 1
