"""A piece worked in rounds, decided: its sections, their counts and their rhythms."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import accumulate

from frogless.plan.basis import Basis
from frogless.plan.layout import Layout, Multiple
from frogless.plan.sections import Span, Target, foundation_height


@dataclass(frozen=True, slots=True)
class Tube:
    """A tube under way: what has been decided so far.

    Args:
        first: wanted girth of the first round.
        counts: stitches after each round, the foundation first.
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
    for i, span in enumerate(spans):
        change = layout.counts[i + 1] - layout.counts[i]
        shaped = layout.shaped[i]
        at = set(shaped.chosen.rhythm.rounds) if shaped else set()
        step = change // len(at) if at else 0
        for r in range(1, span.rounds + 1):
            counts.append(counts[-1] + (step if r in at else 0))
    return tuple(counts)
