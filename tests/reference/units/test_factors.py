"""Our table of factors against a units library that knows nothing of it, and the agreement."""

from __future__ import annotations

import csv
from pathlib import Path

import pint
import pytest

from frogless.units import LENGTH_UNITS, MASS_UNITS, parse_length, parse_mass

CASES = list(csv.DictReader((Path(__file__).parent / "cases.csv").read_text("utf-8").splitlines()))
REGISTRY = pint.UnitRegistry(cache_folder=None)
SIGNS = {'"': "inch", "\u2033": "inch", "\u201d": "inch"} | dict.fromkeys("'\u2032\u2019", "foot")
SPELLED = {"yds": "yard", "lbs": "pound"}


@pytest.mark.parametrize("unit", [*LENGTH_UNITS, *MASS_UNITS])
def test_factor_is_that_of_pint_for_every_spelling(unit: str) -> None:
    """mm or g of one unit, to the last digit of a float."""
    named = SIGNS.get(unit) or SPELLED.get(unit, unit)
    if unit in LENGTH_UNITS:
        assert REGISTRY(f"1 {named}").to("mm").magnitude == pytest.approx(LENGTH_UNITS[unit], 1e-14)
    else:
        assert REGISTRY(f"1 {named}").to("g").magnitude == pytest.approx(MASS_UNITS[unit], 1e-14)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["text"])
def test_text_is_read_as_the_agreement_defines_it(case: dict[str, str]) -> None:
    """The yard and the pound of 1959 are exact, so the tolerance is none."""
    assert case["source"]
    parse = parse_length if case["kind"] == "length" else parse_mass
    assert abs(parse(case["text"]) - float(case["expected"])) <= float(case["tolerance"])
