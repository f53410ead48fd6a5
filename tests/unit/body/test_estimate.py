"""What was not measured is estimated and marked, or asked for."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from frogless.body.estimate import complete, estimates
from frogless.body.measurements import Body, known_measurements
from frogless.errors import InputError
from frogless.units import Measured

Make = Callable[..., Body]


def test_waist_to_hip_is_estimated_from_stature(make_body: Make) -> None:
    """0.121 × 1650 − 6 = 193.65 ± 17 mm, with the tape's share of 0.6 mm."""
    body = complete(make_body(stature=1650.0), ["waist_to_hip"])
    found = body.measurements["waist_to_hip"]
    assert found.value.value == pytest.approx(193.65)
    assert found.value.uncertainty == pytest.approx(math.hypot(17, 0.121 * 5))
    assert found.estimated
    assert found.source == "estimated from stature"


def test_waist_to_hip_is_the_mean_when_nothing_is_known(make_body: Make) -> None:
    """192 ± 19 mm."""
    found = complete(make_body(waist_girth=720.0), ["waist_to_hip"]).measurements["waist_to_hip"]
    assert (found.value, found.estimated) == (Measured(192.0, 19.0), True)


def test_measured_value_is_kept(make_body: Make) -> None:
    """An estimate never takes the place of a tape."""
    body = make_body(waist_to_hip=215.0, stature=1650.0)
    assert complete(body, ["waist_to_hip"]) == body


def test_hip_and_high_hip_are_asked_for(make_body: Make) -> None:
    """All at once, each with how it is taken."""
    with pytest.raises(InputError) as refused:
        complete(make_body(waist_girth=720.0), ["waist_girth", "high_hip_girth", "hip_girth"])
    assert [fault.place.key for fault in refused.value.faults] == [
        "measurements.high_hip_girth",
        "measurements.hip_girth",
    ]
    assert "measure it level, where the seat is fullest" in str(refused.value)


def test_high_hip_stays_missing_when_it_is_optional(make_body: Make) -> None:
    """What can be estimated of the optional ones is."""
    body = complete(make_body(), ["waist_to_hip"], optional=["high_hip_girth", "waist_to_knee"])
    assert set(body.measurements) == {"waist_to_hip", "waist_to_knee"}


def test_nothing_is_estimated_for_a_child(make_body: Make) -> None:
    """The survey has no children."""
    with pytest.raises(InputError, match="waist_to_hip: is needed and cannot be estimated"):
        complete(make_body(stature=1200.0, age=6), ["waist_to_hip"])


def test_nothing_is_estimated_beyond_the_survey(make_body: Make) -> None:
    """A stature of 2 m is known, so the mean of smaller women would be worse than asking."""
    with pytest.raises(InputError, match="cannot be estimated"):
        complete(make_body(stature=2000.0), ["waist_to_hip"])


def test_unknown_key_is_named_with_its_neighbour(make_body: Make) -> None:
    """A design asked for something that no body file has."""
    with pytest.raises(InputError, match='no body file has "hip_grith"; did you mean "hip_girth"'):
        complete(make_body(), ["hip_grith"])


def test_every_estimate_is_of_a_known_measurement() -> None:
    """And from one."""
    known = {"", *known_measurements()}
    assert {e.key for e in estimates()} | {e.from_key for e in estimates()} <= known
