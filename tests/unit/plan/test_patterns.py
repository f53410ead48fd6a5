"""Which stitch patterns can stand beside plain columns."""

from __future__ import annotations

import pytest

from frogless.errors import InputError
from frogless.plan.patterns import NO_LIBRARY, stands_in_columns
from frogless.read.patterns import way_of
from frogless.stitches.load import dictionary


@pytest.mark.parametrize(
    ("key", "able"),
    [
        ("moss", True),  # every repeat on the one below it, turned
        ("single_mesh", True),
        ("square_mesh", True),  # begins with a chain that is the first double of a repeat
        ("fan_arches", False),  # slip stitches lead to the middle of a fan
        ("shells", False),  # each shell stands between two of the row below
        ("v_stitch", False),  # the round begins in the middle of a V
        ("cobble", False),
        ("dots", False),  # in two colours
    ],
)
def test_repeats_that_stand_on_repeats_can_stand_beside_columns(key: str, able: bool) -> None:
    """Looked up by hand in their rounds."""
    assert stands_in_columns(way_of(key, closed=True), dictionary()) is able


def test_rows_are_never_beside_columns() -> None:
    """Columns are for rounds."""
    assert not stands_in_columns(way_of("square_mesh", closed=False), dictionary())


def test_where_no_patterns_are_handed_over_there_are_none() -> None:
    """Said in a sentence."""
    with pytest.raises(InputError, match='there are no stitch patterns here, and so no "moss"'):
        NO_LIBRARY.find("moss", True, {})
