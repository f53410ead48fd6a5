"""Surveyed women, to try designs on."""

from __future__ import annotations

import pytest

from frogless.body.measurements import Body, known_measurements
from frogless.body.survey import COLUMNS, women
from frogless.errors import InputError


def stature(body: Body) -> float:
    """mm."""
    return body.measurements["stature"].value.value


def test_the_sample_is_of_200_women_by_stature() -> None:
    """Its mean is that of the survey, 162.85 cm, as the summary of 1,986 women has it."""
    statures = [stature(body) for body in women()]
    assert len(statures) == 200
    assert statures == sorted(statures)
    assert sum(statures) / 200 == pytest.approx(1628.5, abs=1)


def test_a_smaller_sample_is_spread_over_the_same_women() -> None:
    """Of four the statures of each quarter's middle; the same each time."""
    names = [body.name for body in women(4)]
    assert names == [f"surveyed woman {n}" for n in (26, 76, 126, 176)]
    assert women(4) is women(4)


@pytest.mark.parametrize("number", [0, -1, 201])
def test_a_sample_that_is_not_there_is_refused(number: int) -> None:
    """By how many there are."""
    with pytest.raises(InputError, match="the sample has 1 to 200 women"):
        women(number)


def test_measurements_have_the_names_that_body_files_give_them() -> None:
    """In mm, the mass in g, with the survey as their source."""
    assert set(COLUMNS) <= set(known_measurements())
    first = women()[0].measurements
    assert first["waist_girth"].value.value == 742.0
    assert first["body_mass"].value.value == pytest.approx(48800.0)
    assert "at the navel" in first["waist_girth"].source
    assert not any(one.estimated for one in first.values())
