"""A line that hangs between two points at one height: its sag, its length, and where it runs.

With the span d and u = d / 2a: sag = d (cosh u − 1) / 2u, length = d sinh u / u,
y = a cosh(x / a). Both grow with u, so halving an interval finds it.

Source: the catenary, any handbook of mechanics; values in tests/reference/draw/catenary.csv.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from frogless.errors import InputError

# Beyond this the line is 10²⁴ times as long as its span.
STEEPEST = 60.0
FLATTEST = 1e-9


@dataclass(frozen=True, slots=True)
class Catenary:
    """A hanging line, mm; `u` is its parameter, 0 when it is taut."""

    span: float
    u: float

    @property
    def length(self) -> float:
        """Length of the line, mm."""
        return self.span * math.sinh(self.u) / self.u if self.u else self.span

    @property
    def sag(self) -> float:
        """How far its middle lies below its ends, mm."""
        return self.span * (math.cosh(self.u) - 1) / (2 * self.u) if self.u else 0.0

    def drop(self, along: float) -> float:
        """How far it lies below its ends at a distance along the span, mm."""
        if not self.u:
            return 0.0
        a = self.span / (2 * self.u)
        return self.sag - a * (math.cosh((along - self.span / 2) / a) - 1)

    def at_length(self, part: float) -> float:
        """The distance along the span at a part (0 to 1) of the line's length, mm."""
        if not self.u:
            return part * self.span
        a = self.span / (2 * self.u)
        return self.span / 2 + a * math.asinh((2 * part - 1) * math.sinh(self.u))


def of_sag(span: float, sag: float) -> Catenary:
    """The line that hangs `sag` below two points `span` apart, mm.

    Raises:
        InputError: span not above zero, or sag below zero.
    """
    _check(span, sag)
    if sag < span * 1e-6:
        return Catenary(span, 0.0)
    return Catenary(span, _bisect(lambda u: (math.cosh(u) - 1) / (2 * u) - sag / span))


def of_length(span: float, length: float) -> Catenary:
    """The line of `length` between two points `span` apart, mm; taut when it is no longer.

    Raises:
        InputError: span not above zero.
    """
    _check(span, 0.0)
    if length <= span * (1 + 1e-12):
        return Catenary(span, 0.0)
    return Catenary(span, _bisect(lambda u: math.sinh(u) / u - length / span))


def _check(span: float, sag: float) -> None:
    if span <= 0 or sag < 0:
        raise InputError("a strand needs two points apart and a sag of zero or more")


def _bisect(f: Callable[[float], float]) -> float:
    """The zero of a rising function of u."""
    low, high = FLATTEST, STEEPEST
    for _ in range(80):
        middle = (low + high) / 2
        low, high = (middle, high) if f(middle) < 0 else (low, middle)
    return (low + high) / 2
