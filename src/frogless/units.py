"""Lengths and masses: parsed from what people write, shown in the units they use. Inside: mm and g."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Units = Literal["cm", "in"]


@dataclass(frozen=True, slots=True)
class Measured:
    """A value with its standard uncertainty, in one unit."""

    value: float
    uncertainty: float = 0.0

    @property
    def relative(self) -> float:
        """Uncertainty over value."""
        return self.uncertainty / self.value if self.value else 0.0


def parse_length(text: str) -> float:
    """mm from "63.5 cm", "25 1/2 in", "3 mm", "1,5 m", "10 yd"."""
    raise NotImplementedError


def parse_mass(text: str) -> float:
    """g from "50 g", "1.75 oz"."""
    raise NotImplementedError


def show_length(length: float, units: Units) -> str:
    """"57.5 cm" (to 0.5) or "22 3/4 in" (to 1/4)."""
    raise NotImplementedError
