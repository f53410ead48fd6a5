"""All that a pattern is published from: the drafted garment and how it is to be shown."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from frogless.fabric.model import Fabric
from frogless.fit.model import Fit
from frogless.plan.basis import Basis
from frogless.plan.model import Plan
from frogless.proof.model import Finding
from frogless.stitches.model import Dialect, Stitch
from frogless.tally.model import Tally
from frogless.units import Units
from frogless.write.phrases import Phrases, phrases


@dataclass(frozen=True, slots=True)
class Drafted:
    """A drafted garment with its proof, and the dialect, units and language it is published in."""

    basis: Basis
    plan: Plan
    fabric: Fabric
    tally: Tally
    fit: Fit
    findings: tuple[Finding, ...]
    dialect: Dialect
    units: Units
    language: str = "en"

    @property
    def stitches(self) -> Mapping[str, Stitch]:
        """The dictionary it was drafted with."""
        return self.basis.stitches

    @property
    def phrases(self) -> Phrases:
        """The phrases of its language."""
        return phrases(self.language)

    def short(self, key: str) -> str:
        """A stitch's abbreviation in the dialect."""
        return self.stitches[key].terms[self.dialect].abbreviation

    def name(self, key: str) -> str:
        """A stitch's name in the dialect."""
        return self.stitches[key].terms[self.dialect].name
