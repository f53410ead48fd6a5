"""What the rows of a pattern come to, size by size."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from frogless.proofread.script.model import Label, Span
from frogless.proofread.words.model import Said

#: What can be wrong with a row by its arithmetic alone.
ProblemKind = Literal[
    "too_many",  # it works into more places than there are: `uses` > `has`
    "too_few",  # places are left over that nobody said to leave: `uses` < `has`
    "repeat",  # a repeat does not come out: `each` places a time, `has` to fill
    "no_place",  # the place that is named is not there ("next ch-2 sp")
    "passed",  # slip stitches pass over `uses` stitches that nobody says to skip, or groups are worked
    # into at two places, `says` and `works`
    "count",  # makes another number than it states
    "count_kind",  # the total may hold, but not of this kind (64 dc stated, 60 made)
    "change",  # "(+6 sts)" and the change is another
    "range",  # "Rnds 8-15", but the rows that it says to repeat are not so many
    "again",  # rows to be repeated that are not there, or do not fit onto what they meet
    "brackets",  # a list with another number of numbers than there are sizes
    "too_long",  # more stitches than any garment has: not worked
]
Verdict = Literal["ok", "wrong", "unclear"]


@dataclass(frozen=True, slots=True)
class Told:
    """A row, or a sentence between rows, with what it says.

    Args:
        label: None for a sentence between rows.
        piece: index of the piece, from 0; `piece_name` as the heading says ("" for none).
        begins: the first of its piece; `onto`: it may be worked on the last row of the piece before.
        only: the sizes that work it; empty: all.
        guessed: a sentence that is taken for a remark because little of it was understood.
    """

    said: Said
    span: Span
    label: Label | None = None
    piece: int = 0
    piece_name: str = ""
    begins: bool = False
    onto: bool = False
    guessed: bool = False
    only: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Problem:
    """Something that does not add up in a row, in one size.

    Args:
        span: the words that it lies in (a repeat, the stated count).
        says: the number that the text says, when it says one.
        works: the number that it comes to.
        each: places that one repeat uses; `has`: places there are to fill.
        need: the count of the row below from which the row would come out as stated; None.
        what: kind of stitch or place that is meant, "" for stitches.
    """

    kind: ProblemKind
    span: Span
    says: int | None = None
    works: int | None = None
    each: int | None = None
    has: int | None = None
    uses: int | None = None
    need: int | None = None
    what: str = ""


@dataclass(frozen=True, slots=True)
class Worked:
    """What one row comes to in one size.

    Args:
        told: index of the `Told` that says it.
        number: of the row; None for a row that has only a name, or a sentence.
        size: index.
        stated: the count that it states, all stitches together; None.
        worked: what it makes, counted the way the pattern counts; None when not known.
        consumed, available: places of the row below that it uses, and that there are; None where
            the row below is not known.
        made: stitches by key, and chain spaces by "ch-2 sp"; what a reader would count.
        turning: chains that it begins with, and whether they were counted as a stitch.
        stitch: the key of the stitch that it is mostly of; "".
        repeated: the row came from a line that says to work rows again.
    """

    told: int
    number: int | None
    size: int
    stated: int | None
    worked: int | None
    consumed: int | None
    available: int | None
    verdict: Verdict
    problems: tuple[Problem, ...] = ()
    made: Mapping[str, int] = field(default_factory=dict)
    turning: tuple[int, bool] = (0, False)
    stitch: str = ""
    repeated: bool = False


@dataclass(frozen=True, slots=True)
class Assumption:
    """What the reader took for granted where the text leaves it open, in one sentence.

    Args:
        span: where the text leaves it open, for the first time; None for the pattern as a whole.
    """

    sentence: str
    span: Span | None = None


@dataclass(frozen=True, slots=True)
class Reckoning:
    """All rows in all sizes: in the order of the text, and for each row size by size."""

    rows: tuple[Worked, ...]
    assumptions: tuple[Assumption, ...] = ()
