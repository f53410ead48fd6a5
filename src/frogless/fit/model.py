"""How the garment will sit: ease by landmark, going on, staying up, hanging, cautions."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Verdict = Literal["ok", "tight", "loose"]
Passing = Literal["passes", "uncertain", "does not pass"]
Over = Literal["feet", "head", "hand"]


@dataclass(frozen=True, slots=True)
class LandmarkFit:
    """Body and garment girth at one landmark, mm; low and high bound the garment at 95 %.

    Args:
        wanted_ease: mm; ease: garment − body, mm; both None at a hem without a body girth.
        piece: whose landmark it is.
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
    piece: str = ""


@dataclass(frozen=True, slots=True)
class GoingOn:
    """Whether the narrowest opening, comfortably stretched, passes the widest part below it.

    Args:
        stretch: comfortable stretch as a ratio (0.2: 20 %); `measured` when the swatch gave it.
        short: mm missing (0 when it passes). needed_stretch: ratio that would be enough.
        needed_opening: mm, and needed_count stitches, that would pass at this stretch.
        over: pulled on over the feet or over the head, whichever passes or comes nearer; a cuff
            over the hand.
        reasons: what the verdict rests on, one sentence each; the waist's finish among them.
        name, piece: what the opening is called and whose it is; "" for the main piece of a skirt.
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
    verdict: Passing
    ways_out: tuple[str, ...]
    over: Over = "feet"
    reasons: tuple[str, ...] = ()
    name: str = ""
    piece: str = ""


@dataclass(frozen=True, slots=True)
class Hanging:
    """Growth under its own weight: ratio planned with, and the loads for a hang test, g."""

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
    """All of it.

    Args:
        going_on: of all openings the one that passes least surely; `openings`: every one, of a
            garment of several pieces.
        staying_up: "" for what hangs from the shoulders, or is not worn round the body.
        stride: a warning that the hem is too narrow to walk in; "" where it is not.
    """

    landmarks: tuple[LandmarkFit, ...]
    going_on: GoingOn
    staying_up: str
    hanging: Hanging
    cautions: tuple[Caution, ...]
    openings: tuple[GoingOn, ...] = ()
    stride: str = ""
