"""How the garment will sit: ease by landmark, going on, staying up, hanging, cautions."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Verdict = Literal["ok", "tight", "loose"]


@dataclass(frozen=True, slots=True)
class LandmarkFit:
    """Body and garment girth at one landmark, mm; low and high bound the garment at 95 %.

    Args:
        wanted_ease: mm; ease: garment − body, mm; both None at a hem without a body girth.
    """

    at: str
    depth: float
    body: float | None
    garment: float
    low: float
    high: float
    wanted: float
    ease: float | None
    wanted_ease: float | None
    verdict: Verdict
    estimated: bool


@dataclass(frozen=True, slots=True)
class GoingOn:
    """Whether the narrowest opening, stretched as far as is comfortable, passes the widest part below it.

    Args:
        stretch: comfortable stretch as a ratio (0.2: 20 %); `measured` when it came from the swatch.
        short: mm missing (0 when it passes). needed_stretch: ratio that would be enough.
        needed_opening: mm, and needed_count stitches, that would pass at this stretch.
    """

    opening: float
    stretch: float
    measured: bool
    reach: float
    widest_at: str
    widest: float
    short: float
    needed_stretch: float
    needed_opening: float
    needed_count: int
    verdict: Literal["passes", "uncertain", "does not pass"]
    ways_out: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Hanging:
    """Growth under its own weight: ratio used in the plan, measured or not, and the load for a hang test, g."""

    growth: float
    measured: bool
    load_top: float | None
    load_average: float | None
    sentence: str


@dataclass(frozen=True, slots=True)
class Caution:
    """One plain sentence where work can hurt, with the source of the rule."""

    key: str
    sentence: str
    source: str


@dataclass(frozen=True, slots=True)
class Fit:
    """All of it."""

    landmarks: tuple[LandmarkFit, ...]
    going_on: GoingOn
    staying_up: str
    hanging: Hanging
    cautions: tuple[Caution, ...]
