"""The design document: what a designer writes, as checked data. Formulas stay text here.

A design is either a list of pieces with the joins between them, or, in short, one tube whose tables
stand at the top of the file.
`docs/design-format.md` describes every key for people; a test holds the two together.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property
from typing import Annotated, Literal

from pydantic import Field

from frogless.design.colours import Colours
from frogless.design.lengths import Lengths
from frogless.design.patterns import OwnPattern
from frogless.design.pieces.border import BorderChoice
from frogless.design.pieces.cord import CordChoice
from frogless.design.pieces.disc import DiscChoice
from frogless.design.pieces.panel import PanelChoice
from frogless.design.pieces.raglan import RaglanChoice
from frogless.design.pieces.round_yoke import RoundYokeChoice
from frogless.design.pieces.shawl import ShawlChoice
from frogless.design.pieces.tube import PieceSection, PieceStart, Section, Start, TubeChoice
from frogless.design.strict import FEW, MANY, SEVERAL, Formula, Strict, formulas_of
from frogless.design.trims import BeadedStrand, EdgingChoice, WaistChoice
from frogless.design.work import DesignerGauge, Work
from frogless.files import Line, Name, Prose

Kind = Literal["skirt", "top", "dress", "cardigan", "hat", "shawl", "bag"]

PieceChoice = Annotated[
    TubeChoice
    | PanelChoice
    | DiscChoice
    | RaglanChoice
    | RoundYokeChoice
    | ShawlChoice
    | BorderChoice
    | CordChoice,
    Field(discriminator="construction"),
]


class Garment(Strict):
    """What is made, how long, and for whom it is meant."""

    kind: Kind
    length: Formula = "0 cm"
    for_children: bool = False


class JoinChoice(Strict):
    """Two edges of pieces joined ("front.left side" to "back.left side").

    An edge may be made of several, one after the other. `limit` is how far their lengths may
    differ; the longer is eased in.
    """

    name: Name
    first: Annotated[tuple[str, ...], Field(min_length=1), SEVERAL]
    second: Annotated[tuple[str, ...], Field(min_length=1), SEVERAL]
    stitch: str = "slip_stitch"
    limit: Formula = "1.5 cm"


class Design(Strict):
    """What every design document has."""

    format: Literal["frogless-design/1"]
    title: Name
    summary: Prose = ""
    version: Name = "1"
    author: Line = ""
    garment: Garment
    gauge: DesignerGauge | None = None
    lengths: Lengths = Field(default_factory=dict)
    pattern: dict[str, OwnPattern] = Field(default_factory=dict)
    work: Work
    colours: Colours | None = None
    notes: Annotated[tuple[Prose, ...], SEVERAL] = ()


class TubeGarment(Garment):
    """A garment of one tube, whose length is that of the garment."""

    length: Formula


class TubeDesign(Design):
    """A garment of one tube from the waist down, its tables at the top of the file."""

    garment: TubeGarment
    start: Start
    section: Annotated[tuple[Section, ...], Field(min_length=1), SEVERAL]
    edging: EdgingChoice | None = None
    waist: WaistChoice | None = None
    strand: Annotated[tuple[BeadedStrand, ...], FEW] = ()

    @cached_property
    def tube(self) -> TubeChoice:
        """The one piece. What was checked as the tables of the design is not checked again."""
        return TubeChoice.model_construct(
            construction="tube",
            name=self.garment.kind,
            work=self.work,
            length=self.garment.length,
            start=PieceStart.model_construct(self.start.model_fields_set, **dict(self.start)),
            section=tuple(
                PieceSection.model_construct(s.model_fields_set, **dict(s)) for s in self.section
            ),
            edging=self.edging,
            waist=self.waist,
            strand=self.strand,
        )


class PiecesDesign(Design):
    """A garment of several pieces, in the order worked, and how they are joined."""

    piece: Annotated[tuple[PieceChoice, ...], Field(min_length=1), SEVERAL]
    join: Annotated[tuple[JoinChoice, ...], MANY] = ()


def tubes(design: Design) -> tuple[TubeChoice, ...]:
    """The tubes of a design, in order."""
    if isinstance(design, TubeDesign):
        return (design.tube,)
    if isinstance(design, PiecesDesign):
        return tuple(piece for piece in design.piece if isinstance(piece, TubeChoice))
    return ()


def named_formulas(design: Design) -> Iterator[tuple[str, str]]:
    """Every formula of a design with its key ("section.2.girth", counted from 1), lengths first."""
    yield from ((f"lengths.{name}", text) for name, text in design.lengths.items())
    yield from formulas_of(design)
