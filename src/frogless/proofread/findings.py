"""What proofreading found: the shape of its report."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from frogless.proofread.script.model import Script, Span
from frogless.proofread.words.model import Terms
from frogless.proofread.work.model import Assumption, Reckoning, Told, Worked

Certainty = Literal["certain", "likely", "possible"]


@dataclass(frozen=True, slots=True)
class Finding:
    """One place that does not add up.

    Args:
        kind: the name of the check.
        span: the words.
        row: "Rnd 7"; "" outside of rows. `number`: 7; None.
        sizes: the names of the sizes that it holds for; empty: all.
        says, works_out_to: one phrase each: "96 sts", "98 sts".
        hint: the likely cause, and what would mend it; one or two sentences.
        piece: "" when there is one.
    """

    kind: str
    span: Span
    says: str
    works_out_to: str
    hint: str
    certainty: Certainty
    row: str = ""
    number: int | None = None
    sizes: tuple[str, ...] = ()
    piece: str = ""


@dataclass(frozen=True, slots=True)
class NotUnderstood:
    """Words that no sense was made of."""

    span: Span
    guess: str = ""
    row: str = ""


@dataclass(frozen=True, slots=True)
class Report:
    """Everything that a reader is told.

    Args:
        findings: in the order of the text.
        understood: share of the letters of all instructions that were understood, 0 to 1.
        silenced: names of checks that were left out.
    """

    script: Script
    terms: Terms
    told: tuple[Told, ...]
    reckoning: Reckoning
    findings: tuple[Finding, ...]
    not_understood: tuple[NotUnderstood, ...]
    understood: float
    assumptions: tuple[Assumption, ...]
    silenced: tuple[str, ...] = ()

    @property
    def open_rows(self) -> tuple[Worked, ...]:
        """Rows that could not be worked out, for each size that it holds for."""
        return tuple(each for each in self.reckoning.rows if each.verdict == "unclear")

    @property
    def proven(self) -> bool:
        """Nothing found, and no row that could not be worked out: such a row is no proof."""
        return not self.findings and not self.open_rows
