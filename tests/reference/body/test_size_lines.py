"""Estimates from the bust are the lines through the trade's size table, and no surer than people."""

from __future__ import annotations

import numpy as np
import pytest

from frogless.body.estimate import estimates
from frogless.body.size_tables import sizes

LINES = ("cross_back", "armhole_depth", "back_waist_length", "neck_to_wrist", "arm_length")


@pytest.mark.parametrize("key", LINES)
def test_estimate_is_the_line_through_the_sizes(key: str) -> None:
    """Least squares over XS to 5X, the middle of each range; least squares are numpy's."""
    table = [size.measurements for size in sizes("women")]
    busts, values = (
        np.array([size[name].value.value for size in table]) for name in ("bust_girth", key)
    )
    slope, intercept = np.polyfit(busts, values, 1)
    (estimate,) = [one for one in estimates() if one.key == key]
    assert estimate.from_key == "bust_girth"
    assert estimate.slope == pytest.approx(slope, abs=1e-4)
    assert estimate.intercept == pytest.approx(intercept, abs=0.1)
    about = np.std(values - slope * busts - intercept, ddof=2)
    assert estimate.uncertainty > about
