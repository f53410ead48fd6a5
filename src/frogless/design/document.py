"""The design document: what a designer writes, as checked data. Formulas stay text here.

`docs/design-format.md` describes every key for people; a test holds the two together.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field
from pydantic.fields import FieldInfo

from frogless.files import Line, Name, Prose
from frogless.units import Hook, Length

# The mark by which `named_formulas` knows the keys whose text is a formula.
FORMULA = "formula"
Formula = Annotated[str, Field(min_length=1), FORMULA]
Rounds = Literal["joined and turned", "joined", "spiral"]
JoinAt = Literal["centre back", "left side", "right side"]
Points = Annotated[int, Field(ge=1, le=48)]


class Strict(BaseModel):
    """Unknown keys are refused; values are frozen; surplus blanks are cut off."""

    model_config = ConfigDict(
        extra="forbid", frozen=True, str_strip_whitespace=True, allow_inf_nan=False
    )


class DesignerGauge(Strict):
    """The designer's own gauge: what the sample was worked at. Edging sizes are scaled from it."""

    stitch: str
    stitches_in_10cm: Annotated[float, Field(gt=0)]
    rows_in_10cm: Annotated[float, Field(gt=0)]
    hook: Hook
    yarn_category: Annotated[int, Field(ge=0, le=7)] | None = None


class Work(Strict):
    """How rounds are worked, and the turning chain."""

    stitch: str
    rounds: Rounds = "joined and turned"
    join_at: JoinAt = "centre back"
    turning_chain: Annotated[int, Field(ge=0, le=6)]
    turning_chain_counts: bool = False
    join_into: Literal["first stitch", "top of chain"] = "top of chain"


class Start(Strict):
    """The first round: what it is made of and the girth it has."""

    made_of: str = Field(alias="with")
    girth: Formula = "waist_girth"
    ease: Formula = "0 cm"
    ease_allowed: tuple[Formula, Formula] | None = None
    above_waist: Formula = "0 cm"


class Section(Strict):
    """One stretch of the piece: where it ends and how it is shaped on the way."""

    name: Name
    shape: Literal["straight", "shaped"] = "straight"
    to: Literal["high hip", "hip", "hem"] | None = None
    length: Formula | None = None
    girth: Formula | None = None
    ease: Formula = "0 cm"
    ease_allowed: tuple[Formula, Formula] | None = None
    points: Points | Annotated[tuple[Points, ...], Field(min_length=1)] | Literal["auto"] = "auto"
    add: Literal[1, 2] = 1
    every: Annotated[int, Field(ge=1)] | Literal["auto"] = "auto"
    indifference: Formula | None = None
    stitch: str | None = None
    turning_chain: Annotated[int, Field(ge=0, le=6)] | None = None


class EdgingChoice(Strict):
    """The edging at the hem: a pattern of the dictionary, its hook and how wide a repeat lies."""

    pattern: str
    hook: Hook
    parameters: dict[str, int] = {}
    repeat_width: Formula | None = None
    correction_round: Literal["when needed", "never"] = "when needed"


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
    eyelet_round: Annotated[int, Field(ge=1)] = 2
    eyelets_about_every: Annotated[int, Field(ge=3)] = 8
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
    plies: Annotated[int, Field(ge=1)] = 2
    tails: Formula = "15 cm"
    sample_repeats: Annotated[int, Field(ge=1)] | None = None
    sample_length: Formula | None = None
    spare_beads: Annotated[int, Field(ge=0, le=100)] = 2


class Garment(Strict):
    """What is made, how long, and for whom it is meant."""

    kind: Literal["skirt"]
    length: Formula
    for_children: bool = False


class Design(Strict):
    """A whole design document."""

    format: Literal["frogless-design/1"]
    title: Name
    summary: Prose = ""
    version: Name = "1"
    author: Line = ""
    garment: Garment
    gauge: DesignerGauge | None = None
    lengths: dict[str, Formula] = {}
    work: Work
    start: Start
    section: Annotated[tuple[Section, ...], Field(min_length=1)]
    edging: EdgingChoice | None = None
    waist: Annotated[CoveredElastic | Drawcord | RibbedBand, Field(discriminator="kind")] | None = (
        None
    )
    strand: tuple[BeadedStrand, ...] = ()
    notes: tuple[Prose, ...] = ()


def named_formulas(design: Design) -> Iterator[tuple[str, str]]:
    """Every formula of a design with its key ("section.2.girth", counted from 1), lengths first."""
    yield from ((f"lengths.{name}", text) for name, text in design.lengths.items())
    yield "garment.length", design.garment.length
    yield from _formulas(design.start, "start")
    for i, section in enumerate(design.section, 1):
        yield from _formulas(section, f"section.{i}")
    for i, strand in enumerate(design.strand, 1):
        yield from _formulas(strand, f"strand.{i}")
    for part, key in ((design.edging, "edging"), (design.waist, "waist")):
        if part is not None:
            yield from _formulas(part, key)


def _formulas(part: Strict, key: str) -> Iterator[tuple[str, str]]:
    """The formulas of one table; which keys hold one is read off the model."""
    for name, info in type(part).model_fields.items():
        value = getattr(part, name)
        shown = info.alias or name
        if FORMULA not in _metadata(info) or value is None:
            continue
        texts = value if isinstance(value, tuple) else (value,)
        yield from ((f"{key}.{shown}", text) for text in texts)


def _metadata(info: FieldInfo) -> set[object]:
    """What a field is annotated with, also inside a union."""
    found: set[object] = set()
    stack: list[object] = [info.annotation]
    for item in info.metadata:
        found.add(item if isinstance(item, str) else type(item))
    while stack:
        kind = stack.pop()
        found.update(m for m in getattr(kind, "__metadata__", ()) if isinstance(m, str))
        stack.extend(getattr(kind, "__args__", ()))
    return found
