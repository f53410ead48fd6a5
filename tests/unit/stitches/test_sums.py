"""Small sums over parameters."""

from __future__ import annotations

import pytest

from frogless.errors import InputError
from frogless.stitches.sums import whole

GIVEN = {"picots": 3, "between": 0}


@pytest.mark.parametrize(
    ("written", "value"),
    [(5, 5), ("picots", 3), ("picots * (1 - between)", 3), ("2*picots-1", 5), ("between", 0)],
)
def test_a_sum_gives_a_whole_number_when_written_in_names(written: int | str, value: int) -> None:
    """Names, whole numbers, + - * and brackets are understood."""
    assert whole(written, GIVEN) == value


@pytest.mark.parametrize(
    "written",
    ["picots / 2", "2 ** 9", "1.5", "True", "-picots", "min(1, 2)", "picots.real", "picots +", ""],
)
def test_a_sum_is_refused_when_it_holds_anything_else(written: str) -> None:
    """The sentence says what is accepted."""
    with pytest.raises(InputError, match="write whole numbers, parameters"):
        whole(written, GIVEN)


def test_a_near_name_is_offered_when_a_parameter_is_unknown() -> None:
    """A slip of the pen is answered with the name that was meant."""
    with pytest.raises(InputError, match='did you mean "picots"'):
        whole("picot + 1", GIVEN)


def test_a_sum_is_refused_when_it_falls_below_zero() -> None:
    """No stitch is worked fewer than 0 times."""
    with pytest.raises(InputError, match="gives -2; a number of stitches is 0 or more"):
        whole("1 - picots", GIVEN)
