"""Thickness of yarn."""

from __future__ import annotations

from dataclasses import replace

import pytest

from frogless.swatch import Yarn
from frogless.tally.thickness import (
    diameter,
    fibre_of,
    known_tex,
    tex_of_category,
    tex_of_diameter,
)
from frogless.units import Measured


@pytest.mark.parametrize(
    ("label", "fibre"),
    [
        ("100 % Cotton", "cotton"),
        ("merino", "wool"),
        ("bamboo viscose", "viscose"),
        ("paper", "any other"),
        ("", "any other"),
    ],
)
def test_a_fibre_is_found_when_the_label_names_it(label: str, fibre: str) -> None:
    """By a word in it, else a middle one."""
    assert fibre_of(label).name == fibre


def test_tex_comes_back_when_a_diameter_is_turned_round() -> None:
    """The two formulas are one."""
    cotton = fibre_of("cotton")
    back = tex_of_diameter(diameter(Measured(400.0), cotton), cotton)
    assert back.value == pytest.approx(400.0)


def test_categories_grow_heavier_when_their_number_grows() -> None:
    """From lace to jumbo, each heavier than the one before and each uncertain."""
    found = [tex_of_category(category) for category in range(8)]
    assert [t.value for t in found] == sorted(t.value for t in found)
    assert all(tex.uncertainty > 0 for tex in found)


def test_the_label_is_believed_before_the_category_when_both_are_given(label: Yarn) -> None:
    """Exact from the label, usual from the category, nothing from neither."""
    unweighed = replace(label, ball_mass=None)
    assert known_tex(label) == (Measured(pytest.approx(416.67, abs=0.01)), "label")
    assert known_tex(unweighed) == (tex_of_category(3), "category")
    assert known_tex(replace(unweighed, category=None)) is None
