"""A piece worked in rounds, decided: its sections, their counts and their rhythms."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import accumulate

from frogless.because import Step
from frogless.plan.basis import Basis
from frogless.plan.landing import because_landed
from frogless.plan.layout import Layout, Multiple, Shaped
from frogless.plan.sections import Span, Target, foundation_height
from frogless.units import Measured


@dataclass(frozen=True, slots=True)
class Tube:
    """A tube under way: what has been decided so far.

    Args:
        first: wanted girth of the first round.
        counts: stitches after each round, the foundation first; in a stitch pattern those that the
            round stands on, as its girth is counted in them.
    """

    basis: Basis
    first: Target
    spans: tuple[Span, ...]
    layout: Layout
    multiple: Multiple
    counts: tuple[int, ...]

    @property
    def rounds(self) -> int:
        """Rounds of all sections."""
        return len(self.counts) - 1

    def section_of(self, round_: int) -> int:
        """Index of the section that a round belongs to, the foundation to the first."""
        ends = accumulate(s.rounds for s in self.spans)
        return next(i for i, end in enumerate(ends) if round_ <= end)

    def wanted_before(self, i: int) -> float:
        """Wanted girth where section i begins, mm."""
        above = [s.target.wanted for s in self.spans[:i] if s.target]
        return above[-1] if above else self.first.wanted

    def girth(self, round_: int) -> Measured:
        """What a round measures, mm; 0 is the foundation, or where the tube begins."""
        span = self.spans[self.section_of(max(round_, 1))]
        if span.worked is not None:
            state = span.worked.after(round_ - span.rounds_above)
            return span.worked.girth(span.gauge.width, state)
        return span.gauge.width.times(self.counts[round_])

    def because_landed(self, round_: int, wanted: float, note: str = "") -> tuple[Step, ...]:
        """The steps from a wanted girth to the count of a round.

        Panels and the columns between them have a gauge each, so that no one gauge leads to the
        count.
        """
        span, count = self.spans[self.section_of(max(round_, 1))], self.counts[round_]
        if span.worked is None or not span.worked.columns:
            return because_landed(wanted, span.width, count, note)
        girth = self.girth(round_).value
        landed = Step("landed", count, "stitches", note)
        return (Step("wanted", wanted), landed, Step("girth", girth), Step("off", girth - wanted))

    def depths(self) -> tuple[float, ...]:
        """Worn depth after each round, the foundation first, mm."""
        depths = [foundation_height(self.basis)]
        for span in self.spans:
            depths.extend(float(d) for d in span.depths()[1:])
        return tuple(depths)


def tube(
    basis: Basis, first: Target, spans: tuple[Span, ...], layout: Layout, multiple: Multiple
) -> Tube:
    """The tube that a layout gives, with the stitches after each round."""
    return Tube(basis, first, spans, layout, multiple, _counts(spans, layout))


def _counts(spans: tuple[Span, ...], layout: Layout) -> tuple[int, ...]:
    counts = [layout.counts[0]]
    for span, shaped in zip(spans, layout.shaped, strict=True):
        counts += counts_of(span, shaped, counts[-1])
    return tuple(counts)


def counts_of(span: Span, shaped: Shaped | None, before: int) -> Iterator[int]:
    """Stitches after each round of a section that begins with so many."""
    at = set(shaped.chosen.rhythm.rounds) if shaped else set()
    step = shaped.points * shaped.add * (1 if shaped.task.step > 0 else -1) if shaped else 0
    count = before
    for r in range(1, span.rounds + 1):
        count += step if r in at else 0
        yield count
