"""What a count is worth, against figures worked out from the guide to uncertainty, and by hand."""

from __future__ import annotations

import csv
import math
from pathlib import Path

import pytest

from frogless.swatch import Reading, Swatch, Yarn, gauge, growth
from frogless.units import Measured

HERE = Path(__file__).parent
CASES = list(csv.DictReader((HERE / "uncertainty.csv").read_text("utf-8").splitlines()))
YARN = Yarn("", None, "", None, None)


def swatch(*readings: Reading) -> Swatch:
    """A swatch of these."""
    return Swatch("x", "double_crochet", 4.0, YARN, readings=readings)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["count"])
def test_gauge_is_as_uncertain_as_the_guide_says(case: dict[str, str]) -> None:
    """One reading: counting and tape."""
    assert case["source"]
    count, window = float(case["count"]), float(case["window_mm"])
    found = gauge(
        swatch(Reading("double_crochet", "washed", 4.0, count, window, count, window)), "dc"
    )
    assert abs(found.width.relative * 100 - float(case["relative_percent"])) <= float(
        case["tolerance"]
    )


def test_seventeen_stitches_over_98_mm_are_good_to_two_percent() -> None:
    """Limits of a quarter stitch and 1 mm combine to ± 1.8 %, ± 1.8 cm on a hip of 100 cm."""
    per_stitch = Measured(98.0, 1.0).over(Measured(17.0, 0.25))
    assert round(per_stitch.relative * 100, 1) == 1.8
    assert round(1000 * per_stitch.relative / 10, 1) == 1.8


def test_swatch_that_grows_by_eight_percent_needs_56_rounds_for_60() -> None:
    """60 cm worn at 10 rows in 10 cm: 60 / 1.08 = 55.6, so 56 rounds, which hang to 60.5 cm."""
    flat = Reading("double_crochet", "washed", 4.0, 18, 100.0, 15, 150.0)
    hung = Reading("double_crochet", "hung", 4.0, rows=15, height=162.0, load=45.0)
    found = growth(swatch(flat, hung), "dc")
    assert found is not None
    rounds = math.ceil(600 / (10 * (1 + found.value)))
    assert rounds == 56
    assert round(rounds * (1 + found.value), 1) == 60.5
