"""What people write becomes mm and g, and mm and g become what people read."""

from __future__ import annotations

import re

import pytest
from pydantic import TypeAdapter, ValidationError

from frogless.errors import InputError
from frogless.units import (
    Hook,
    Length,
    Mass,
    Measured,
    parse_length,
    parse_mass,
    parse_number,
    show_fine,
    show_length,
    show_long,
    show_mass,
)


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("63.5 cm", 635.0),
        ("63,5 cm", 635.0),
        ("635mm", 635.0),
        ("0.6 m", 600.0),
        ("  72 cm ", 720.0),
        ("72 CM", 720.0),
        (".5 cm", 5.0),
        ("25 1/2 in", 647.7),
        ("25-1/2 in", 647.7),
        ("25½ in", 647.7),
        ("25 1/2 inches", 647.7),
        ('25.5"', 647.7),
        ("25.5\u2033", 647.7),
        ("3/4 in", 19.05),
        ("1 ft 3 in", 381.0),
        ("5' 4\"", 1625.6),
        ("2 yd", 1828.8),
        ("-3 cm", -30.0),
        ("\u22123 cm", -30.0),
        ("-1 1/2 in", -38.1),
        ("0 cm", 0.0),
    ],
)
def test_length_is_read_exactly_when_written_as_people_write_it(text: str, mm: float) -> None:
    """Decimals with point or comma, fractions, signs and the usual spellings of units."""
    assert parse_length(text) == mm


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("72", "has no unit; write a unit: cm, mm, m, in or yd"),
        ("1/2", "has no unit"),
        ("21 cn", '"cn" is no unit for a length; accepted are cm, mm, m, in or yd'),
        ("5 kg", '"kg" is no unit for a length'),
        ("wide", "is not a length; write a number and a unit"),
        ("", "is not a length"),
        ("cm 5", "is not a length"),
        ("1.2.3 cm", "is not a length"),
        ("1/0 in", "divides by zero"),
        ("1,250 m", "can be thousands or a decimal"),
        ("nan cm", "is not a length"),
        ("1e3 mm", "is not a length"),
        ("9" * 5000 + " cm", "is not a length"),
    ],
)
def test_length_is_refused_when_number_or_unit_is_unclear(text: str, says: str) -> None:
    """The sentence quotes the text and names what is accepted."""
    with pytest.raises(InputError, match=re.escape(says)) as refused:
        parse_length(text)
    assert len(str(refused.value)) < 150


@pytest.mark.parametrize(
    ("text", "g"),
    [("50 g", 50.0), ("1.75 oz", 49.61), ("62 kg", 62000.0), ("136 lb", 61688.56), ("9,6 g", 9.6)],
)
def test_mass_is_read_when_written_with_its_unit(text: str, g: float) -> None:
    """Labels give grams and ounces, scales kilograms and pounds."""
    assert parse_mass(text) == pytest.approx(g, abs=0.005)


def test_mass_is_refused_when_its_unit_is_a_length() -> None:
    """The units of masses are named."""
    with pytest.raises(InputError, match="accepted are g, kg, oz or lb"):
        parse_mass("50 cm")


@pytest.mark.parametrize(
    ("mm", "cm", "inches"),
    [
        (575.0, "57.5 cm", "22 3/4 in"),
        (1120.0, "112 cm", "44 in"),
        (572.5, "57.5 cm", "22 1/2 in"),
        (577.4, "57.5 cm", "22 3/4 in"),
        (12.7, "1.5 cm", "1/2 in"),
        (-19.05, "-2 cm", "-3/4 in"),
        (0.0, "0 cm", "0 in"),
        (-1.0, "0 cm", "0 in"),
    ],
)
def test_length_is_shown_to_half_cm_and_quarter_inch(mm: float, cm: str, inches: str) -> None:
    """No digit is shown that a tape does not have; nothing is shown as minus zero."""
    assert (show_length(mm, "cm"), show_length(mm, "in")) == (cm, inches)


@pytest.mark.parametrize(
    ("mm", "shown"),
    [(3.5, "3.5 mm"), (2.25, "2.25 mm"), (0.6, "0.6 mm"), (6.0, "6 mm"), (25.0, "2.5 cm")],
)
def test_fine_length_is_shown_in_mm_until_it_is_no_longer_small(mm: float, shown: str) -> None:
    """Hooks and beads go by the millimetre, a wide elastic does not."""
    assert show_fine(mm, "cm") == shown


def test_fine_length_is_in_mm_for_inches_too() -> None:
    """A hook of 3.5 mm is a hook of 3.5 mm everywhere."""
    assert show_fine(3.5, "in") == "3.5 mm"
    assert show_fine(25.4, "in") == "1 in"


def test_yarn_is_shown_in_whole_metres_or_yards() -> None:
    """145 m are 159 yd."""
    assert (show_long(145_000, "cm"), show_long(145_000, "in")) == ("145 m", "159 yd")


@pytest.mark.parametrize(
    ("g", "grams", "ounces"),
    [(145.4, "145 g", "5.1 oz"), (9.64, "9.6 g", "0.34 oz"), (0.0, "0 g", "0 oz")],
)
def test_mass_is_shown_with_the_digits_of_a_scale(g: float, grams: str, ounces: str) -> None:
    """Small masses keep one digit more."""
    assert (show_mass(g, "cm"), show_mass(g, "in")) == (grams, ounces)


@pytest.mark.parametrize("given", [72, 72.5, True, None, ["72 cm"]])
def test_field_is_refused_when_it_has_no_unit(given: object) -> None:
    """A bare number in a document is asked for its unit."""
    with pytest.raises(
        ValidationError, match="write it in quotes with a unit: cm, mm, m, in or yd"
    ):
        TypeAdapter(Length).validate_python(given)


@pytest.mark.parametrize("given", ["0 cm", "-3 cm"])
def test_field_is_refused_when_not_above_zero(given: str) -> None:
    """A length of a body or a swatch is more than nothing."""
    with pytest.raises(ValidationError, match="must be more than zero"):
        TypeAdapter(Length).validate_python(given)


def test_fields_give_mm_and_g() -> None:
    """The types for documents hold plain numbers."""
    assert TypeAdapter(Length).validate_python("3.5 mm") == 3.5
    assert TypeAdapter(Mass).validate_python("50 g") == 50.0


def test_interval_is_symmetric() -> None:
    """95 % of a normal distribution lie within 1.96 standard deviations."""
    assert Measured(100.0, 10.0).interval() == pytest.approx((80.4, 119.6))
    assert Measured(100.0, 10.0).interval(1) == (90.0, 110.0)


def test_multiple_keeps_the_relative_uncertainty() -> None:
    """A girth of 208 stitches is as uncertain, in percent, as one stitch."""
    girth = Measured(5.0, 0.1).times(208)
    assert (girth.value, girth.relative) == (1040.0, pytest.approx(0.02))


def test_sum_and_quotient_add_in_quadrature() -> None:
    """3 and 4 make 5, of the uncertainties in a sum and of the relative ones in a quotient."""
    assert Measured(10.0, 3.0).plus(Measured(20.0, 4.0)) == Measured(30.0, 5.0)
    ratio = Measured(200.0, 6.0).over(Measured(100.0, 4.0))
    assert (ratio.value, ratio.relative) == (2.0, pytest.approx(0.05))


def test_relative_uncertainty_of_zero_is_zero() -> None:
    """A count of nothing divides nothing."""
    assert Measured(0.0, 1.0).relative == 0.0


@pytest.mark.parametrize("written", ["27.5", "27,5", "27 1/2", "27½", " 55/2 "])
def test_number_is_read_as_people_write_it(written: str) -> None:
    """Halves of a stitch."""
    assert parse_number(written) == 27.5


@pytest.mark.parametrize("written", ["", "27 cm", "1,500", "nan", "1e5", "9" * 99, "x"])
def test_what_is_no_plain_number_is_refused(written: str) -> None:
    """Thousands could be a decimal."""
    with pytest.raises(InputError, match="is not a number"):
        parse_number(written)


@pytest.mark.parametrize("written", ["H-8", "US H/8", "5"])
def test_hook_by_letter_or_without_a_unit_is_refused_with_what_to_write(written: str) -> None:
    """Letters differ between makers."""
    with pytest.raises(ValidationError, match="write the millimetres printed on the hook, such as"):
        TypeAdapter(Hook).validate_python(written)


def test_hook_in_millimetres_is_taken() -> None:
    """As it is printed on it."""
    assert TypeAdapter(Hook).validate_python("5 mm") == 5.0
