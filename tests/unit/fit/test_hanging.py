"""Growth and the load of the hang test."""

from __future__ import annotations

import pytest

from frogless.fit.hanging import hanging, usual_growth


def test_growth_is_told_as_measured_when_the_hang_test_was_made() -> None:
    """8 % from the hang test."""
    found = hanging(growth=0.08, fibre="cotton", grams=500, count=208, swatch_stitches=27)
    assert (found.growth, found.measured) == (0.08, True)
    assert "8 % growth" in found.sentence
    assert "from memory" not in found.sentence


def test_the_fibre_is_only_a_warning_when_nobody_measured() -> None:
    """No growth is planned, and the usual one is told as from memory."""
    found = hanging(growth=None, fibre="100 % cotton", grams=None, count=208, swatch_stitches=27)
    assert (found.growth, found.measured, found.load_top) == (0.0, False, None)
    assert "cotton is said to grow 3 to 8 %" in found.sentence
    assert "from memory" in found.sentence


def test_no_figure_is_given_when_the_fibre_is_unknown() -> None:
    """An unknown fibre has no usual growth."""
    found = hanging(growth=None, fibre="", grams=None, count=208, swatch_stitches=27)
    assert "%" not in found.sentence


@pytest.mark.parametrize(
    ("fibre", "name"),
    [
        ("Merino superwash", "superwash wool"),
        ("merino wool", "wool"),
        ("mercerised cotton", "mercerised cotton"),
        ("bamboo viscose", "viscose"),
        ("50 % cotton, 50 % acrylic", "cotton"),
    ],
)
def test_the_more_particular_fibre_is_found_when_two_names_fit(fibre: str, name: str) -> None:
    """Superwash before wool, mercerised before plain cotton."""
    found = usual_growth(fibre)
    assert found is not None
    assert found[0] == name
