"""A tube worked in rounds: where it begins, its sections, what finishes it."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from frogless.design.strict import FEW, SEVERAL, Formula, Multiple, Points, Rounds, Strict
from frogless.design.trims import BeadedStrand, EdgingChoice, WaistChoice
from frogless.design.work import Work
from frogless.files import Name
from frogless.units import Hook

ShapeBy = Literal["repeats", "columns", "grades", "hook"]


class Seat(Strict):
    """Where short rows make a skirt longer below its waist edge, on the wearer, and by how much."""

    extra: Formula
    at: Literal["back", "right side", "front", "left side"] = "back"


class Start(Strict):
    """The first round: what it is made of and the girth it has."""

    made_of: str = Field(alias="with")
    girth: Formula = "waist_girth"
    ease: Formula = "0 cm"
    ease_allowed: tuple[Formula, Formula] | None = None
    above_waist: Formula = "0 cm"
    seat: Seat | None = None


class PieceStart(Strict):
    """The first round of a tube that is one piece of several.

    It has a foundation of its own, or is begun on closed edges of earlier pieces; then its girth is
    theirs, or `gather` times as much (a tier, a flounce). `body` names the measurement that the
    girth is for, so that its ease is told.
    """

    made_of: str | None = Field(default=None, alias="with")
    on: Annotated[tuple[str, ...], SEVERAL] = ()
    girth: Formula | None = None
    ease: Formula = "0 cm"
    ease_allowed: tuple[Formula, Formula] | None = None
    above_waist: Formula = "0 cm"
    seat: Seat | None = None
    body: str | None = None
    gather: Annotated[float, Field(gt=0.2, le=4)] = 1.0
    multiple: Multiple = 1


class Plain(Strict):
    """A stretch of a section that is left unshaped: a placket, a pocket, a motif."""

    from_depth: Formula = Field(alias="from")
    to_depth: Formula = Field(alias="to")


class Through(Strict):
    """A girth that a section is wanted to have on its way, ease included."""

    at: Formula
    girth: Formula


class Section(Strict):
    """One stretch of the piece: where it ends and how it is shaped on the way.

    `flare` widens it by a share of a circle or as a square, `gores` on both sides of so many gores.
    In a stitch pattern it is shaped as `shape_by` says: by whole repeats, by plain columns between
    them, by repeats that grow from stretch to stretch, or by hooks.
    """

    name: Name
    shape: Literal["straight", "shaped"] = "straight"
    to: Literal["high hip", "hip", "hem"] | None = None
    length: Formula | None = None
    girth: Formula | None = None
    ease: Formula = "0 cm"
    ease_allowed: tuple[Formula, Formula] | None = None
    points: (
        Points | Annotated[tuple[Points, ...], Field(min_length=1, max_length=48)] | Literal["auto"]
    ) = "auto"
    add: Literal[1, 2, 3, 4] = 1
    every: Rounds | Literal["auto"] = "auto"
    clauses: Annotated[int, Field(ge=1, le=6)] = 3
    shape_on: Literal["any", "right side"] = "any"
    least_gap: Rounds = 1
    plain: Annotated[tuple[Plain, ...], SEVERAL] = ()
    through: Annotated[tuple[Through, ...], SEVERAL] = ()
    indifference: Formula | None = None
    stitch: str | None = None
    hook: Hook | None = None
    turning_chain: Annotated[int, Field(ge=0, le=6)] | None = None
    flare: Literal["full circle", "half circle", "quarter circle", "square"] | None = None
    gores: Annotated[int, Field(ge=2, le=24)] | None = None
    stagger: bool | None = None
    pattern: Name | None = None
    parameters: dict[str, int] = Field(default_factory=dict)
    base_stitch: str = "single_crochet"
    shape_by: ShapeBy | None = None
    columns: Annotated[int, Field(ge=2, le=24)] | None = None
    column_stitch: str | None = None
    grades: Annotated[tuple[dict[str, int], ...], FEW] = ()
    hooks: Annotated[tuple[Hook, ...], FEW] = ()


class PieceSection(Section):
    """A section of a tube that is one piece of several.

    `body` names the measurement that its girth is for, so that its ease is told.
    """

    body: str | None = None


class TubeChoice(Strict):
    """A tube: begun on a foundation or on edges of earlier pieces, worked section by section."""

    construction: Literal["tube"]
    name: Name
    direction: Literal["down", "up"] = "down"
    work: Work | None = None
    length: Formula | None = None
    start: PieceStart
    section: Annotated[tuple[PieceSection, ...], Field(min_length=1), SEVERAL]
    edging: EdgingChoice | None = None
    waist: WaistChoice | None = None
    strand: Annotated[tuple[BeadedStrand, ...], FEW] = ()
