"""All that a pattern is published from: the drafted garment and how it is to be shown."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from frogless.design.document import PiecesDesign
from frogless.design.work import JoinAt
from frogless.draw.mirror import Hand, join_for
from frogless.fabric.model import Fabric
from frogless.fit.model import Fit
from frogless.plan.basis import Basis
from frogless.plan.model import (
    BandPlan,
    CordPlan,
    ElasticPlan,
    PiecePlan,
    Plan,
    SectionPlan,
    StrandPlan,
)
from frogless.proof.model import Finding
from frogless.stitches.model import Dialect, Stitch
from frogless.tally.model import Tally
from frogless.units import Units
from frogless.write.phrases import Phrases, phrases


@dataclass(frozen=True, slots=True)
class Drafted:
    """A drafted garment with its proof, and what it is published in and for.

    Args:
        dialect, units, language: of its texts.
        hand: that the maker works with. The rows are the same for both; a left-hander works them
            the other way and makes the mirror image.
    """

    basis: Basis
    plan: Plan
    fabric: Fabric
    tally: Tally
    fit: Fit
    findings: tuple[Finding, ...]
    dialect: Dialect
    units: Units
    language: str = "en"
    hand: Hand = "right"

    @property
    def stitches(self) -> Mapping[str, Stitch]:
        """The dictionary it was drafted with."""
        return self.basis.stitches

    @property
    def phrases(self) -> Phrases:
        """The phrases of its language."""
        return phrases(self.language)

    @property
    def of_pieces(self) -> bool:
        """Whether it is a list of pieces, and not one tube from the waist down."""
        return isinstance(self.basis.design, PiecesDesign)

    @property
    def join_at(self) -> JoinAt:
        """Where the rounds begin and end on the wearer, worked with the maker's hand."""
        return join_for(self.basis.design.work.join_at, self.hand)

    def short(self, key: str) -> str:
        """A stitch's abbreviation in the dialect."""
        return self.stitches[key].terms[self.dialect].abbreviation

    def name(self, key: str) -> str:
        """A stitch's name in the dialect."""
        return self.stitches[key].terms[self.dialect].name


def is_closed(drafted: Drafted, name: str) -> bool:
    """Whether a piece is worked in rounds."""
    return any(piece.closed for piece in drafted.plan.program.pieces if piece.name == name)


def piece_of(drafted: Drafted, section: SectionPlan) -> PiecePlan:
    """The piece that a section is of."""
    return next(piece for piece in drafted.plan.pieces if section in piece.sections)


def waist_of(drafted: Drafted) -> ElasticPlan | CordPlan | BandPlan | None:
    """What finishes the waist, whichever piece has it."""
    found = (piece.waist for piece in drafted.plan.pieces if piece.waist is not None)
    return next(found, None)


def strands_of(drafted: Drafted) -> tuple[StrandPlan, ...]:
    """The strands of all pieces."""
    return tuple(strand for piece in drafted.plan.pieces for strand in piece.strands)
