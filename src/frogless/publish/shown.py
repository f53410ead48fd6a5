"""Amounts of yarn as finely as they are known."""

from __future__ import annotations

from frogless.units import YARD, Units, show_long, show_mass


def about(length: float, units: Units) -> str:
    """Yarn to the nearest 5 m or yd, as no amount of yarn is foretold better."""
    unit = YARD if units == "in" else 1000.0
    step = 5 if length >= 100 * unit else 1
    return show_long(round(length / unit / step) * step * unit, units)


def mass_about(mass: float, units: Units) -> str:
    """As `about`: to the nearest 5 g from 100 g up, else to the gram from 1 g up."""
    if units == "in":
        return show_mass(mass, units)
    step = 5 if mass >= 100 else 1
    return show_mass(round(mass / step) * step if mass >= 1 else mass, units)
