"""A body file becomes a body."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from frogless.body.load import load_body
from frogless.body.measurements import Measurement, known_measurements
from frogless.errors import InputError
from frogless.units import Measured


def test_measurements_are_mm_with_the_uncertainty_of_a_tape(body_file: Callable[..., Path]) -> None:
    """Any unit of length, and what was written is kept for questions."""
    body = load_body(body_file('waist_girth = "28 1/4 in"', 'hip_girth = "101 cm"'))
    assert body.get("waist_girth") == Measurement(
        "waist_girth", Measured(717.55, 5.0), written="28 1/4 in"
    )
    assert body.get("hip_girth").value.value == 1010.0
    assert body.get("high_hip_girth") is None
    assert (body.name, body.file, body.age) == ("Dancer 3", "body.toml", None)


def test_mass_is_g(body_file: Callable[..., Path]) -> None:
    """The one measurement that is no length."""
    body = load_body(body_file('body_mass = "62 kg"'))
    assert body.get("body_mass").value == Measured(62_000.0, 500.0)


def test_mass_is_refused_when_written_as_a_length(body_file: Callable[..., Path]) -> None:
    """And the other way round."""
    with pytest.raises(
        InputError, match=r"measurements\.body_mass: .*accepted are g, kg, oz or lb"
    ):
        load_body(body_file('body_mass = "62 cm"'))


def test_child_is_a_child_by_age(body_file: Callable[..., Path]) -> None:
    """The waist of a child of six is nothing to ask about."""
    body = load_body(body_file('waist_girth = "45 cm"', head="age = 6"))
    assert body.age == 6
    assert body.may_be_child


def test_every_measurement_can_be_given(body_file: Callable[..., Path]) -> None:
    """A row of the table is a key of the file: each in the middle of what is usual."""
    known = known_measurements().values()
    middle = {one.key: (one.low + one.high) / 2 for one in known if one.kind != "mass"}
    body = load_body(body_file(*(f'{key} = "{size} mm"' for key, size in middle.items())))
    assert set(body.measurements) == set(middle)
