"""Edgings and trims: what finishes a hem or a waist, and strands that hang from it."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from frogless.design.strict import Formula, Rounds, Strict
from frogless.files import Name
from frogless.units import Hook, Length


class EdgingBeads(Strict):
    """Beads in the repeats of an edging, strung on its yarn before it is begun."""

    bead_diameter: Length
    bead_hole: Length
    per_repeat: Annotated[int, Field(ge=1, le=24)] = 1
    spare_percent: Annotated[float, Field(ge=0, le=100)] = 10
    yarn_per_repeat: Length | None = None
    first_ball: Length | None = None


class EdgingChoice(Strict):
    """The edging at the hem: a pattern of the dictionary, its hook and how wide a repeat lies."""

    pattern: str
    hook: Hook
    parameters: dict[str, int] = Field(default_factory=dict)
    repeat_width: Formula | None = None
    correction_round: Literal["when needed", "never"] = "when needed"
    beads: EdgingBeads | None = None


class CoveredElastic(Strict):
    """Elastic laid along the waist edge and covered with single crochet."""

    kind: Literal["covered elastic"]
    reduce: Formula | None = None
    percent: Annotated[float, Field(gt=50, le=110)] | None = None
    lap: Formula = "2.5 cm"
    width: Length
    elastic: Literal["knitted", "braided", "woven"] = "knitted"
    stitches_in_each: Annotated[int, Field(ge=1, le=3)] = 2
    hook: Hook | None = None


class Drawcord(Strict):
    """A cord through a round of eyelets."""

    kind: Literal["drawcord"]
    eyelet_round: Rounds = 2
    eyelets_about_every: Annotated[int, Field(ge=3, le=400)] = 8
    tie_ends: Formula = "35 cm"
    spare_over_hips: Formula = "15 cm"


class RibbedBand(Strict):
    """A band worked sideways in back-loop single crochet, joined to the waist edge."""

    kind: Literal["ribbed band"]
    height: Formula
    percent: Annotated[float, Field(gt=50, le=110)] = 90
    rows_in_10cm: Annotated[float, Field(gt=0)] | None = None
    hook: Hook | None = None


class BeadedStrand(Strict):
    """A strand of chains and beads that hangs between two points of the waist edge."""

    name: Name = "beaded strand"
    from_side: Formula = Field(alias="from")
    to_side: Formula = Field(alias="to")
    sag: Formula
    chains_between: Annotated[int, Field(ge=1, le=200)] = 20
    bead_diameter: Length
    bead_hole: Length
    hook: Hook
    plies: Annotated[int, Field(ge=1, le=64)] = 2
    tails: Formula = "15 cm"
    sample_repeats: Annotated[int, Field(ge=1, le=1000)] | None = None
    sample_length: Formula | None = None
    spare_beads: Annotated[int, Field(ge=0, le=100)] = 2


WaistChoice = Annotated[CoveredElastic | Drawcord | RibbedBand, Field(discriminator="kind")]
