"""Lengths and masses: parsed from what people write, shown in the units they use. Inside: mm and g.

The factors are exact by definition: the international yard and pound agreement of 1959
(1 yd = 0.9144 m, 1 lb = 0.45359237 kg), so the table needs no library at run time, and none to
import. The tests hold it against Pint.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, Literal

from pydantic import AfterValidator, BeforeValidator
from pydantic_core import PydanticCustomError

from frogless.errors import InputError

Units = Literal["cm", "in"]

INCH = 25.4
FOOT = 304.8
YARD = 914.4
POUND = 453.59237
OUNCE = 28.349523125

# What people write for each unit; the first spelling of a factor is the one that messages name.
LENGTH_UNITS: Mapping[str, float] = {
    "cm": 10.0,
    "mm": 1.0,
    "m": 1000.0,
    "in": INCH,
    "yd": YARD,
    "ft": FOOT,
    "inch": INCH,
    "inches": INCH,
    '"': INCH,
    "\u2033": INCH,
    "\u201d": INCH,
    "yard": YARD,
    "yards": YARD,
    "yds": YARD,
    "foot": FOOT,
    "feet": FOOT,
    "'": FOOT,
    "\u2032": FOOT,
    "\u2019": FOOT,
    "metre": 1000.0,
    "metres": 1000.0,
    "meter": 1000.0,
    "meters": 1000.0,
}
MASS_UNITS: Mapping[str, float] = {
    "g": 1.0,
    "kg": 1000.0,
    "oz": OUNCE,
    "lb": POUND,
    "lbs": POUND,
    "gram": 1.0,
    "grams": 1.0,
    "ounce": OUNCE,
    "ounces": OUNCE,
    "pound": POUND,
    "pounds": POUND,
}
_LENGTHS = "cm, mm, m, in or yd"
_MASSES = "g, kg, oz or lb"
_FRACTIONS = {
    "½": " 1/2",
    "¼": " 1/4",
    "¾": " 3/4",
    "⅛": " 1/8",
    "⅜": " 3/8",
    "⅝": " 5/8",
    "⅞": " 7/8",
}
_QUANTITY = re.compile(
    r"(?P<sign>[+\-\u2212]?)\s*"
    r"(?:(?P<whole>\d+)(?:\s+|\s*-\s*))?(?P<over>\d+)\s*/\s*(?P<under>\d+)\s*(?P<unit>[^\W\d_]*|\S)"
    r"|(?P<sign2>[+\-\u2212]?)\s*(?P<number>\d+(?:[.,]\d+)?|[.,]\d+)\s*(?P<unit2>[^\W\d_]*|\S)"
)
_FEET_AND_INCHES = re.compile(r"\s*(\d+)\s*(ft|feet|foot|['\u2032\u2019])\s*(\S.*)", re.IGNORECASE)
_LONGEST = 40
_THOUSANDS = re.compile(r"[1-9]\d{0,2},\d{3}(?!\d)")


@dataclass(frozen=True, slots=True)
class Measured:
    """A value with its standard uncertainty, in one unit."""

    value: float
    uncertainty: float = 0.0

    @property
    def relative(self) -> float:
        """Uncertainty over value, as a fraction of 1."""
        return abs(self.uncertainty / self.value) if self.value else 0.0

    def interval(self, k: float = 1.96) -> tuple[float, float]:
        """Value ± k uncertainties; k = 1.96 covers 95 % of a normal distribution."""
        return self.value - k * self.uncertainty, self.value + k * self.uncertainty

    def times(self, factor: float) -> Measured:
        """This, multiplied by an exact number."""
        return Measured(self.value * factor, abs(self.uncertainty * factor))

    def plus(self, other: Measured) -> Measured:
        """The sum of two independent quantities: uncertainties add in quadrature
        (JCGM 100:2008, 5.1.2)."""
        return Measured(self.value + other.value, math.hypot(self.uncertainty, other.uncertainty))

    def over(self, other: Measured) -> Measured:
        """The quotient of two independent quantities: relative uncertainties add in quadrature
        (JCGM 100:2008, 5.1.6)."""
        quotient = self.value / other.value
        return Measured(quotient, abs(quotient) * math.hypot(self.relative, other.relative))


def parse_length(text: str) -> float:
    """mm from "63.5 cm", "63,5 cm", "25 1/2 in", "25.5\\"", "1 ft 3 in", "2 yd"; with its sign.

    Raises:
        InputError: no number, no unit, or a unit that is not a length.
    """
    feet = _FEET_AND_INCHES.fullmatch(text)
    if feet:
        inches = _parse(feet[3], LENGTH_UNITS, _LENGTHS, "a length")
        return math.fsum((int(feet[1]) * FOOT, inches))
    return _parse(text, LENGTH_UNITS, _LENGTHS, "a length")


def parse_mass(text: str) -> float:
    """g from "50 g", "1.75 oz", "62 kg", "136 lb"; the sign is kept.

    Raises:
        InputError: no number, no unit, or a unit that is not a mass.
    """
    return _parse(text, MASS_UNITS, _MASSES, "a mass")


def parse_number(text: str) -> float:
    """A plain number from "27", "27.5", "27,5", "27 1/2", "27½"; with its sign.

    Raises:
        InputError: it is no number, or it has a unit.
    """
    found = _QUANTITY.fullmatch(_spelled(text).strip()) if len(text) <= _LONGEST else None
    if not found or found["unit"] or found["unit2"] or _THOUSANDS.match(text.strip()):
        raise InputError(f'"{text[:_LONGEST]}" is not a number')
    return float(_number(found, text))


def _spelled(text: str) -> str:
    """The same with fractions in figures."""
    for sign, fraction in _FRACTIONS.items():
        text = text.replace(sign, fraction)
    return text


def _parse(text: str, units: Mapping[str, float], accepted: str, what: str) -> float:
    if len(text) > _LONGEST:
        raise InputError(
            f'"{text[:_LONGEST]}…" is not {what}; write a number and a unit: {accepted}'
        )
    plain = _spelled(text.strip())
    if _THOUSANDS.match(plain):
        raise InputError(
            f'"{text}" can be thousands or a decimal; write it without the comma or with a point'
        )
    found = _QUANTITY.fullmatch(plain.strip())
    if not found:
        raise InputError(f'"{text}" is not {what}; write a number and a unit: {accepted}')
    unit = found["unit"] or found["unit2"]
    if not unit:
        raise InputError(f'"{text}" has no unit; write a unit: {accepted}')
    factor = units.get(unit) or units.get(unit.lower())
    if factor is None:
        raise InputError(f'"{text}": "{unit}" is no unit for {what}; accepted are {accepted}')
    # In whole fractions 25 1/2 in is 647.7 mm; in floats it would be 647.6999999999999.
    return float(_number(found, text) * Fraction(str(factor)))


def _number(found: re.Match[str], text: str) -> Fraction:
    negative = (found["sign"] or found["sign2"] or "+") != "+"
    if found["number"]:
        size = Fraction(found["number"].replace(",", "."))
    elif int(found["under"]) == 0:
        raise InputError(f'"{text}" divides by zero')
    else:
        size = int(found["whole"] or 0) + Fraction(int(found["over"]), int(found["under"]))
    return -size if negative else size


def show_length(length: float, units: Units) -> str:
    """ "57.5 cm" (to 0.5) or "22 3/4 in" (to 1/4), halves away from zero."""
    if units == "cm":
        return f"{_plain(_nearest(length / 10, 0.5))} cm"
    quarters = round(_nearest(length / INCH, 0.25) * 4)
    whole, rest = divmod(abs(quarters), 4)
    parts = [str(whole)] if whole or not rest else []
    parts += [str(Fraction(rest, 4))] if rest else []
    return f"{'-' if quarters < 0 else ''}{' '.join(parts)} in"


def show_signed(length: float, units: Units) -> str:
    """ "+2.5 cm", "−1/2 in", and "0 cm" without a sign."""
    shown = show_length(abs(length), units)
    if not any(digit in shown for digit in "123456789"):
        return shown
    return ("+" if length > 0 else "−") + shown


def as_shown(length: float, units: Units) -> float:
    """A length, mm, as `show_length` rounds it, so that shown columns add up."""
    step = 5.0 if units == "cm" else INCH / 4
    return _nearest(length, step)


def show_fine(length: float, units: Units) -> str:
    """ "3.5 mm", "2.25 mm": hooks, needles, beads and elastic are sold in mm under both systems.

    From 2 cm up a length is shown as any other.
    """
    if abs(length) >= 20:
        return show_length(length, units)
    return f"{_plain(_nearest(length, 0.01))} mm"


def show_long(length: float, units: Units) -> str:
    """Yarn and cord: "145 m" or "159 yd", whole."""
    return (
        f"{_nearest(length / 1000, 1):.0f} m"
        if units == "cm"
        else f"{_nearest(length / YARD, 1):.0f} yd"
    )


def show_mass(mass: float, units: Units) -> str:
    """ "145 g" or "5.1 oz"; one more digit below 10 g and below 1 oz."""
    if units == "cm":
        return f"{_plain(_nearest(mass, 0.1 if abs(mass) < 10 else 1))} g"
    ounces = mass / OUNCE
    return f"{_plain(_nearest(ounces, 0.01 if abs(ounces) < 1 else 0.1))} oz"


def _nearest(value: float, step: float) -> float:
    # round() goes to even on a half, so that 57.25 and 57.75 cm would be treated differently. The
    # small addition keeps 1.15 / 0.1 = 11.499999999999998 a half.
    steps = math.floor(abs(value) / step + 0.5 + 1e-9)
    return math.copysign(steps * step, value) if steps else 0.0


def _plain(value: float) -> str:
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return text or "0"


def _reader(parse: Callable[[str], float], accepted: str) -> BeforeValidator:
    def read(given: object) -> float:
        if not isinstance(given, str):
            raise PydanticCustomError(
                "quantity",
                "{given} has no unit; write it in quotes with a unit: {accepted}",
                {"given": repr(given), "accepted": accepted},
            )
        try:
            size = parse(given)
        except InputError as error:
            raise PydanticCustomError("quantity", "{why}", {"why": str(error)}) from None
        if size <= 0:
            raise PydanticCustomError(
                "quantity", '"{given}" must be more than zero', {"given": given}
            )
        return size

    return BeforeValidator(read)


Length = Annotated[float, _reader(parse_length, _LENGTHS)]
"""A pydantic field: text with a length unit becomes mm, more than zero."""

FINEST_HOOK, WIDEST_HOOK = 0.3, 60.0
"""mm; wider than any range of hooks that is sold (own choice), so that only a slip lies outside."""


def _hook(size: float) -> float:
    if not FINEST_HOOK <= size <= WIDEST_HOOK:
        told = f"must be a hook of {FINEST_HOOK:g} mm to {WIDEST_HOOK:g} mm, not {size:g} mm"
        raise PydanticCustomError("quantity", "{told}", {"told": told})
    return size


def _parse_hook(text: str) -> float:
    try:
        return parse_length(text)
    except InputError:
        # Letters and numbers of hooks differ between makers; millimetres do not.
        raise InputError(
            f'"{text[:_LONGEST]}" is not the size of a hook; write the millimetres printed on the '
            'hook, such as "5 mm"'
        ) from None


Hook = Annotated[float, _reader(_parse_hook, _LENGTHS), AfterValidator(_hook)]
"""A pydantic field: the size of a hook, mm."""

Mass = Annotated[float, _reader(parse_mass, _MASSES)]
"""A pydantic field: text with a unit of mass becomes g, more than zero."""
