"""Shares of surveyed bodies."""

from __future__ import annotations

import pytest

from frogless.fit.survey import share_passing, share_reached


@pytest.mark.parametrize(("stretch", "share"), [(-1.0, 0.0), (5.0, 1.0)])
def test_share_ends_at_nobody_and_everybody_when_outside_the_table(
    stretch: float, share: float
) -> None:
    """Below the least body nobody, above the most everybody."""
    assert share_passing(stretch) == share
    assert share_reached(stretch) == share


def test_share_never_falls_when_the_stretch_grows() -> None:
    """More stretch never suits fewer bodies."""
    shares = [share_passing(step / 200) for step in range(-30, 150)]
    assert shares == sorted(shares)


def test_share_is_that_of_the_table_when_on_one_of_its_rows() -> None:
    """The last row is everybody and the least needed stretch is somebody."""
    assert share_passing(0.1943) == pytest.approx(0.5, abs=0.005)
