"""Our estimates and limits, recomputed from the survey they are taken from."""

from __future__ import annotations

import csv
import math
import statistics
from pathlib import Path

import pytest

from frogless.body.estimate import Estimate, estimates
from frogless.body.measurements import known_measurements
from frogless.body.plausible import proportions

HERE = Path(__file__).parent
WOMEN = list(csv.DictReader((HERE / "survey_women.csv").read_text("utf-8").splitlines()))
SUMMARY = list(csv.DictReader((HERE / "survey_summary.csv").read_text("utf-8").splitlines()))
COLUMNS = {
    "waist_girth": "waistcircumference",
    "hip_girth": "buttockcircumference",
    "bust_girth": "chestcircumference",
    "upper_arm_girth": "bicepscircumferenceflexed",
    "thigh_girth": "thighcircumference",
    "wrist_girth": "wristcircumference",
    "head_girth": "headcircumference",
    "neck_base_girth": "neckcircumferencebase",
    "stature": "stature",
}


def column(name: str) -> list[float]:
    """One dimension of every woman."""
    return [float(row[COLUMNS.get(name, name)]) for row in WOMEN]


def mean(dimension: str, sex: str = "women") -> float:
    """The mean of a dimension in the summary."""
    return next(
        float(row["mean"]) for row in SUMMARY if (row["dimension"], row["sex"]) == (dimension, sex)
    )


def estimate(key: str, from_key: str) -> Estimate:
    """Our row for a key."""
    return next(one for one in estimates() if (one.key, one.from_key) == (key, from_key))


def line(x: list[float], y: list[float]) -> tuple[float, float, float]:
    """Slope, intercept and scatter of the least squares line."""
    fit = statistics.linear_regression(x, y)
    rest = [b - fit.slope * a - fit.intercept for a, b in zip(x, y, strict=True)]
    return fit.slope, fit.intercept, statistics.stdev(rest)


@pytest.mark.parametrize(
    ("key", "from_key"),
    [
        ("thigh_girth", "hip_girth"),
        ("upper_arm_girth", "bust_girth"),
        ("wrist_girth", "bust_girth"),
        ("neck_base_girth", "bust_girth"),
    ],
)
def test_estimate_is_the_regression_of_the_survey(key: str, from_key: str) -> None:
    """To the digits that the table gives."""
    ours = estimate(key, from_key)
    slope, intercept, scatter = line(column(from_key), column(key))
    assert ours.slope == pytest.approx(slope, abs=0.005)
    assert ours.intercept == pytest.approx(intercept, abs=0.5)
    assert ours.uncertainty == pytest.approx(scatter, abs=1)


def test_estimate_of_the_head_is_the_mean_of_the_survey() -> None:
    """561 ± 19 mm."""
    ours = estimate("head_girth", "")
    assert ours.intercept == pytest.approx(statistics.mean(column("head_girth")), abs=0.5)
    assert ours.uncertainty == pytest.approx(statistics.stdev(column("head_girth")), abs=0.5)


def test_waist_to_hip_from_stature_agrees_with_its_mean_and_spread() -> None:
    """At mean stature the line gives the mean; its scatter with that of stature the spread."""
    line_, mean_ = estimate("waist_to_hip", "stature"), estimate("waist_to_hip", "")
    tall = column("stature")
    at_mean = line_.slope * statistics.mean(tall) + line_.intercept
    assert at_mean == pytest.approx(mean_.intercept, abs=1.5)
    spread = math.hypot(line_.uncertainty, line_.slope * statistics.stdev(tall))
    assert spread == pytest.approx(mean_.uncertainty, abs=0.5)


def test_waist_to_hip_is_that_of_the_iso_waist_and_not_of_the_navel() -> None:
    """The ISO waist lies above the hip bone (162 mm above the hip), the navel below it (146 mm)."""
    navel = [
        waist - hip
        for waist, hip in zip(column("waistheightomphalion"), column("buttockheight"), strict=True)
    ]
    hip_bone = mean("iliocristaleheight") - mean("hip_height")
    assert statistics.mean(navel) == pytest.approx(146.4, abs=0.1)
    assert statistics.mean(navel) < hip_bone < estimate("waist_to_hip", "").intercept
    assert hip_bone == pytest.approx(162.0, abs=0.1)


def test_waist_to_knee_is_waist_to_hip_and_hip_to_knee() -> None:
    """192 mm down to the hip, and from there to the middle of the kneecap."""
    hip_to_knee = mean("hip_height") - mean("kneeheightmidpatella")
    total = estimate("waist_to_hip", "").intercept + hip_to_knee
    assert estimate("waist_to_knee", "").intercept == pytest.approx(total, abs=1)


def test_waist_to_floor_is_hip_height_and_waist_to_hip() -> None:
    """Two lines on stature, added."""
    hip = line(column("stature"), column("buttockheight"))
    depth, ours = estimate("waist_to_hip", "stature"), estimate("waist_to_floor", "stature")
    assert ours.slope == pytest.approx(hip[0] + depth.slope, abs=0.001)
    assert ours.intercept == pytest.approx(hip[1] + depth.intercept, abs=0.5)
    assert ours.uncertainty == pytest.approx(math.hypot(hip[2], depth.uncertainty), abs=0.5)


def test_shoulder_girth_is_the_hip_and_the_mean_difference() -> None:
    """Shoulders are 7 mm more than hips in the mean."""
    difference = mean("shouldercircumference") - mean("hip_girth")
    assert estimate("shoulder_girth", "hip_girth").intercept == pytest.approx(difference, abs=0.1)


def test_hip_from_waist_is_too_uncertain_to_be_estimated() -> None:
    """± 45 mm, which is ± 9 cm in 95 of 100 women: the table has no such row."""
    scatter = line(column("waist_girth"), column("hip_girth"))[2]
    assert 1.96 * scatter > 85
    assert not [one for one in estimates() if one.key in {"hip_girth", "high_hip_girth"}]


@pytest.mark.parametrize("key", sorted(COLUMNS))
def test_no_woman_of_the_survey_is_questioned(key: str) -> None:
    """Size tables widen the limits of the survey and never narrow them; CYC begins smaller."""
    known = known_measurements()[key]
    assert known.low <= min(column(key))
    assert max(column(key)) <= known.high


@pytest.mark.parametrize(
    ("key", "dimension"),
    [
        ("waist_girth", "waist_girth_omphalion"),
        ("hip_girth", "hip_girth"),
        ("shoulder_girth", "shouldercircumference"),
        ("neck_girth", "neckcircumference"),
        ("stature", "stature"),
    ],
)
def test_limits_reach_over_men_too(key: str, dimension: str) -> None:
    """A skirt is for anyone."""
    known = known_measurements()[key]
    men = next(r for r in SUMMARY if (r["dimension"], r["sex"]) == (dimension, "men"))
    assert known.low <= float(men["min"])
    assert float(men["max"]) <= known.high


@pytest.mark.parametrize(
    "rule", [r for r in proportions() if "ANSUR" in r.source], ids=lambda r: r.part
)
def test_limits_of_proportion_are_those_of_the_survey(rule: object) -> None:
    """Least and greatest of 1,986 women, rounded outwards; hip over waist from 0.905 to 1.428."""
    low, high = rule.low, rule.high  # type: ignore[attr-defined]
    part, whole = column(rule.part), column(rule.whole)  # type: ignore[attr-defined]
    found = [a / b for a, b in zip(part, whole, strict=True)]
    assert low == pytest.approx(min(found), abs=0.01)
    assert high == pytest.approx(max(found), abs=0.01)
    assert low <= min(found)
    assert max(found) <= high


def test_waist_to_hip_is_questioned_for_hardly_anyone() -> None:
    """11 to 26 cm is four standard deviations down and three and a half up."""
    known, ours = known_measurements()["waist_to_hip"], estimate("waist_to_hip", "")
    assert (known.low, known.high) == (110.0, 260.0)
    assert known.low < ours.intercept - 3 * ours.uncertainty
    assert known.high > ours.intercept + 3 * ours.uncertainty


def test_every_row_has_a_source() -> None:
    """Figures without one are not for use."""
    assert all(row["source"] and row["basis"] for row in (*WOMEN, *SUMMARY))
    assert all(one.source and one.basis for one in estimates())
    assert all(one.source and one.basis for one in known_measurements().values())
