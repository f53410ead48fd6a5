"""What holds for any length that is written or shown."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from frogless.units import INCH, LENGTH_UNITS, Measured, Units, parse_length, show_length

LENGTHS = st.floats(min_value=-1e5, max_value=1e5)
UNITS: st.SearchStrategy[Units] = st.sampled_from(("cm", "in"))


@given(LENGTHS, UNITS)
def test_shown_length_reads_back_within_half_a_step(length: float, units: Units) -> None:
    """Half of 5 mm, or half of a quarter inch; the shown text is one that we accept ourselves."""
    step = 5.0 if units == "cm" else INCH / 4
    assert abs(parse_length(show_length(length, units)) - length) <= step / 2 + 1e-6


@given(LENGTHS, UNITS)
def test_shown_length_is_odd(length: float, units: Units) -> None:
    """A shortfall and a surplus of one size are shown with the same digits."""
    assert show_length(-length, units).removeprefix("-") == show_length(length, units).removeprefix(
        "-"
    )


@given(
    st.integers(0, 999),
    st.integers(0, 31),
    st.integers(1, 32),
    st.sampled_from(sorted(LENGTH_UNITS)),
)
def test_mixed_fraction_is_exact(whole: int, over: int, under: int, unit: str) -> None:
    """The float nearest to the exact value, for every unit that is accepted."""
    exact = (whole + Fraction(over, under)) * Fraction(str(LENGTH_UNITS[unit]))
    assert parse_length(f"{whole} {over}/{under} {unit}") == float(exact)


@given(st.decimals(min_value=0, max_value=9999, places=2))
def test_comma_and_point_are_the_same(number: object) -> None:
    """Two digits after the comma are a decimal."""
    assert parse_length(f"{number} cm") == parse_length(f"{number} cm".replace(".", ","))


SIZES = st.floats(min_value=0.1, max_value=1e4)
# A subnormal uncertainty has too few digits left for a ratio of it to be exact.
UNCERTAINTIES = st.just(0.0) | st.floats(min_value=1e-12, max_value=0.1)
MEASURED = st.builds(Measured, SIZES, UNCERTAINTIES)


@given(MEASURED, MEASURED)
def test_quotient_is_at_least_as_uncertain_as_its_parts(over: Measured, under: Measured) -> None:
    """Dividing never makes a number better known."""
    quotient = over.over(under)
    assert quotient.relative >= max(over.relative, under.relative) * (1 - 1e-9)
