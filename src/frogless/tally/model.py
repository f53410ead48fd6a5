"""What to buy and how long it takes."""

from __future__ import annotations

from dataclasses import dataclass

from frogless.because import Because
from frogless.swatch import Swatch
from frogless.units import Measured


@dataclass(frozen=True, slots=True)
class YarnNeed:
    """Yarn of one name and colour: g and mm with 95 % interval, balls with the margin, g by part.

    Args:
        swatch: of its yarn.
        colour: its letter; "" when the garment has one colour only.
        ends: ends of it to weave in that the colours leave; 0 when there is one colour only.
    """

    name: str
    mass: Measured
    length: Measured
    length_low: float
    length_high: float
    margin_percent: float
    balls: int | None
    by_part: tuple[tuple[str, float], ...]
    calibrated: bool
    because: Because
    swatch: Swatch
    colour: str = ""
    ends: int = 0


@dataclass(frozen=True, slots=True)
class Notion:
    """One thing to have ready: a stable key, how many or how long (mm), and what to look for."""

    key: str
    pieces: int | None
    length: float | None
    detail: str


@dataclass(frozen=True, slots=True)
class Tally:
    """Yarn, notions and working time (s, low and high)."""

    yarn: tuple[YarnNeed, ...]
    notions: tuple[Notion, ...]
    stitches: int
    time_low: float
    time_high: float
