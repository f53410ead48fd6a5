"""Readings of a swatch pooled into a gauge with its uncertainty, for each state it was read in."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from frogless.units import Measured

State = Literal["as worked", "washed", "hung"]


@dataclass(frozen=True, slots=True)
class Yarn:
    """The yarn on the label: category 0–7, g and mm per ball."""

    name: str
    category: int | None
    fibre: str
    ball_mass: float | None
    ball_length: float | None
    plies: int | None = None

    @property
    def tex(self) -> float | None:
        """g per km, from the label."""
        if not self.ball_mass or not self.ball_length:
            return None
        return self.ball_mass / (self.ball_length / 1e6)


@dataclass(frozen=True, slots=True)
class Gauge:
    """Width and height of one stitch, mm, each with its standard uncertainty."""

    stitch: str
    width: Measured
    height: Measured
    state: State
    estimated: bool = False
    source: str = ""


@dataclass(frozen=True, slots=True)
class Swatch:
    """A swatch file, read."""

    name: str
    stitch: str
    hook: float
    yarn: Yarn
    file: str = ""
