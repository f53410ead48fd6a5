"""Lengths and gauges that something is reckoned from: with as many digits as reckoning it again takes."""

from __future__ import annotations

from frogless.units import INCH, Units, show_length

#: Four inches are what a gauge is counted over where inches are in use; in cm.
FOUR_INCHES = 10.16

#: How far a length may be off as it is shown when something is reckoned from it, mm; and what comes
#: of it, in stitches, rows or repeats: less than what is shown of them.
NEAR = 0.2
UNSEEN = 0.04


def show_near(length: float, units: Units, near: float = NEAR) -> str:
    """A length that something is reckoned from: with as few digits as come within `near` mm of it.

    At least to 0.1 cm; in inches as a quarter where it is one, else at least to 0.01.
    """
    if units == "in" and abs(_nearest_quarter(length) - length) < 0.01:
        return show_length(length, units)
    size, first = (10.0, 1) if units == "cm" else (INCH, 2)
    digits = next((d for d in (1, 2, 3) if d >= first and _astray(length, size, d) <= near), 4)
    return f"{round(length / size, digits):.10g} {units}"


def _nearest_quarter(length: float) -> float:
    return round(length / INCH * 4) / 4 * INCH


def _astray(length: float, size: float, digits: int) -> float:
    return abs(round(length / size, digits) * size - length)


def show_repeat(length: float, units: Units, repeats: float) -> str:
    """A repeat with as many digits as its hem divided by it takes."""
    return show_near(length, units, min(NEAR, UNSEEN * length / max(repeats, 1.0)))


def show_gauge(per_10_cm: float, units: Units, exact: float = 0.0) -> str:
    """Stitches or rows over 10 cm or 4 in, to 0.01, or finer where `exact` stitches take it."""
    value = per_10_cm * (FOUR_INCHES / 10 if units == "in" else 1)
    spans = exact / value if value else 0.0
    digits = next((d for d in (2, 3) if abs(round(value, d) - value) * spans <= UNSEEN), 4)
    return f"{round(value, digits):.10g}"


def show_small(length: float, units: Units) -> str:
    """A length that is multiplied or added up: "2.2 cm" to 0.1, "0.87 in" to 0.01."""
    if units == "cm":
        return f"{round(length / 10, 1):g} cm"
    return f"{round(length / INCH, 2):g} in"
