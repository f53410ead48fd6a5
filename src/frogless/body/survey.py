"""Surveyed women as bodies, to see for how many a design comes out.

The sample is of ANSUR II (Gordon et al., NATICK/TR-15/007, 2014): soldiers of 17 to 58, fitter than
most, few large sizes. `docs/make_survey_sample.py` took it from the public data.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from frogless.body.measurements import Body, Measurement, read_table
from frogless.errors import InputError
from frogless.units import Measured

SAMPLE = 200

# An observer's error in the survey was a few mm, as of a careful tape (from memory).
_OBSERVED = 5.0

COLUMNS: Mapping[str, tuple[str, float, str]] = {
    "waist_girth": (
        "waistcircumference",
        1.0,
        "taken at the navel, lower and wider than the waist",
    ),
    "hip_girth": ("buttockcircumference", 1.0, ""),
    "bust_girth": ("chestcircumference", 1.0, ""),
    "upper_arm_girth": ("bicepscircumferenceflexed", 1.0, "bent and tensed, wider than at rest"),
    "wrist_girth": ("wristcircumference", 1.0, ""),
    "head_girth": ("headcircumference", 1.0, ""),
    "neck_base_girth": ("neckcircumferencebase", 1.0, ""),
    "back_waist_length": ("waistbacklength", 1.0, "down to the navel, longer than to the waist"),
    "thigh_girth": ("thighcircumference", 1.0, ""),
    "stature": ("stature", 1.0, ""),
    "body_mass": ("weightkg", 1000.0, ""),
}
"""By measurement the survey's column, its unit in mm or g, and where it differs.

What has no column here (depth of the hip, lengths of the arm, cross back) was not taken, or in
another way, and is estimated as for any body.
"""


@cache
def women(number: int = SAMPLE) -> tuple[Body, ...]:
    """So many surveyed women by stature, evenly through the sample.

    Raises:
        InputError: fewer than one, or more than there are.
    """
    rows = list(read_table("survey_women.csv"))
    if not 1 <= number <= len(rows):
        raise InputError(f"the sample has 1 to {len(rows)} women, not {number}")
    chosen = ((2 * i + 1) * len(rows) // (2 * number) for i in range(number))
    return tuple(_body(rows[i]) for i in chosen)


def _body(row: Mapping[str, str]) -> Body:
    return Body(
        name=f"surveyed woman {row['number']}",
        measurements={key: _measurement(key, row) for key in COLUMNS},
        age=float(row["age_years"]),
    )


def _measurement(key: str, row: Mapping[str, str]) -> Measurement:
    column, unit, differs = COLUMNS[key]
    source = f"{row['source']}, {differs}" if differs else row["source"]
    spread = _OBSERVED if key != "body_mass" else 500.0
    return Measurement(key, Measured(float(row[column]) * unit, spread), source=source)
