"""A section worked in a stitch pattern, decided: what each of its rounds is, and what it measures."""

from __future__ import annotations

from dataclasses import dataclass

from frogless.plan.patterns import Pattern
from frogless.swatch import Gauge
from frogless.units import Measured

BASE = -1
"""In place of a row of the pattern: a round of base stitches, which changes the count."""


@dataclass(frozen=True, slots=True)
class PatternRound:
    """One round of the section.

    Args:
        row: which row of the pattern, counted on from 0 through all its row repeats; or `BASE`.
        repeats: there are all round once it is worked.
        column: stitches in each plain column between the panels of repeats.
        count: stitches of a base round that ends the piece, where they are not those that the
            repeats stand on; 0 where they are.
    """

    row: int
    repeats: int
    column: int = 0
    count: int = 0


@dataclass(frozen=True, slots=True)
class Patterned:
    """The rounds of a section in one pattern.

    Args:
        base_stitch: what rounds that change the count are worked in.
        before: repeats and columns that it begins with; its row tells nothing.
        columns: plain columns all round; 0 when the repeats lie side by side.
        column: the gauge of their stitch.
        shape_by: how the section is shaped: "repeats", "columns", "grades", "hook" or "".
    """

    pattern: Pattern
    base_stitch: str
    before: PatternRound
    rounds: tuple[PatternRound, ...]
    columns: int = 0
    column: Gauge | None = None
    shape_by: str = ""

    def base_count(self, one: PatternRound) -> int:
        """The stitches that a round stands on, as its girth is counted in them."""
        return one.count or self.pattern.way.places(one.repeats) + self.columns * one.column

    def girth(self, width: Measured, one: PatternRound) -> Measured:
        """What a round measures, mm.

        Args:
            width: of one base stitch of the pattern.
        """
        repeats = width.times(self.pattern.way.places(one.repeats))
        if self.column is None:
            return repeats
        return repeats.plus(self.column.width.times(self.columns * one.column))

    def after(self, number: int) -> PatternRound:
        """The state after so many of its rounds, 0 where it begins."""
        return self.rounds[number - 1] if number else self.before

    @property
    def is_based(self) -> bool:
        """Whether its first round is one of base stitches."""
        return bool(self.rounds) and self.rounds[0].row == BASE

    @property
    def next_row(self) -> int:
        """The row of the pattern that would follow its last round."""
        return self.rounds[-1].row + 1


def banded(bands: tuple[tuple[int, int], ...], *, based: bool) -> tuple[PatternRound, ...]:
    """Rounds of bands of (repeats, rows), a base round before each band but perhaps the first.

    >>> [r.row for r in banded(((4, 2), (5, 1)), based=False)]
    [0, 1, -1, 0]
    """
    made: list[PatternRound] = []
    for i, (repeats, rows) in enumerate(bands):
        if i or based:
            made.append(PatternRound(BASE, repeats))
        made += [PatternRound(row, repeats) for row in range(rows)]
    return tuple(made)
