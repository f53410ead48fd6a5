"""A written pattern cut into its parts: what stands where, before anything is understood.

Places are offsets into the text. `plain` is the text letter for letter with every typographer's
letter replaced by a plain one (quotes, dashes, no-break spaces, the marks of Markdown), so that one
offset means the same place in both.
"""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass
from typing import Literal

#: Numbers of one label that are kept.
MOST_NUMBERS = 2_000

PartKind = Literal[
    "title",
    "about",  # skill level, the designer's story, how it is constructed
    "sizes",
    "measurements",  # finished measurements, schematic
    "materials",  # yarn, hooks, notions
    "gauge",
    "abbreviations",
    "special",  # special stitches
    "notes",
    "instructions",
    "finishing",
]


@dataclass(frozen=True, slots=True, order=True)
class Span:
    """From `start` up to `end`, offsets into the text."""

    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Label:
    """What a row calls itself: "Rnds 8–15 (RS):", "Row 2 and all even rows:", "Increase rnd:".

    Args:
        kind: "" where it does not say ("Foundation:", "5.").
        numbers: all that it stands for, in order; empty for a row that has only a name. At most
            `MOST_NUMBERS`: of a longer range the first ones and its last.
        name: "foundation", "setup", "next", "increase", "decrease", "edging" or what is written, in
            lower case and without row or rnd; "" for a row that has only numbers.
        sides: those named, in order.
        onward: "" or what the label says of rows further on: "even", "odd", "all".
        rows: how many rows it says it stands for: "Next 4 rows", "Rows 3-6 (4 rows)"; 0 where it
            does not say.
        lasts: its last number for each size, "Rows 2-40 (42, 44):" 40, 42, 44; `numbers` are those
            of the first size then. Empty where all sizes have the same.
        rows_of_sizes: `rows` for each size, "Next 9 (10, 11) rnds"; empty where all sizes have the same.
        firsts: its first number for each size, "Row 5 (7):" 5, 7, "Rows 3-4 (4-6):" 3, 4; empty
            where all sizes have the same.
        repeats: "rep every 3rd rnd" does not stand here; it is an act of the body.
    """

    span: Span
    kind: Literal["row", "round", ""] = ""
    numbers: tuple[int, ...] = ()
    name: str = ""
    sides: tuple[Literal["RS", "WS"], ...] = ()
    onward: Literal["", "even", "odd", "all"] = ""
    rows: int = 0
    lasts: tuple[int, ...] = ()
    firsts: tuple[int, ...] = ()
    rows_of_sizes: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class RowText:
    """A row: its label, and where its text stands (the label and its colon left out).

    Args:
        only: the sizes that work it, by their indices, "Size L only:"; empty: all.
        begins: a piece begins with it, though nothing that is known for a heading stands above it.
    """

    label: Label
    body: Span
    only: tuple[int, ...] = ()
    begins: bool = False


@dataclass(frozen=True, slots=True)
class Heading:
    """Begins a piece ("SLEEVE (make 2)") or a section of one ("Waist to hip").

    Args:
        name: as written.
        piece: that what follows begins anew; else it goes on where the rows before ended.
        make: how often the piece is made.
        onto: of a section: its rows are numbered from the start again, though nothing is fastened
            off before it and nothing is begun in it.
    """

    span: Span
    name: str
    piece: bool = False
    make: int = 1
    onto: bool = False


@dataclass(frozen=True, slots=True)
class Prose:
    """One sentence between rows: an instruction ("Ch 24.", "Fasten off.") or a remark.

    Args:
        remark: its look alone says so: a box beside the text, a line that begins with "Note:".
        only, begins: as of a row.
    """

    span: Span
    remark: bool = False
    only: tuple[int, ...] = ()
    begins: bool = False


Statement = RowText | Heading | Prose


@dataclass(frozen=True, slots=True)
class Part:
    """A part of the document, its heading left out.

    Args:
        statements: of instructions and finishing only, in the order of the text.
    """

    kind: PartKind
    heading: Span
    body: Span
    statements: tuple[Statement, ...] = ()


@dataclass(frozen=True, slots=True)
class Script:
    """A whole pattern.

    Args:
        text: as it was given; line ends are "\\n".
        plain: the same length, see above; case is kept.
        starts: where each line begins.
        sizes: the names of the sizes, smallest first; ("",) when there is one.
        sizes_at: where they are named; None when nobody named them and the brackets tell.
    """

    text: str
    plain: str
    starts: tuple[int, ...]
    parts: tuple[Part, ...] = ()
    sizes: tuple[str, ...] = ("",)
    sizes_at: Span | None = None

    def line(self, offset: int) -> int:
        """The number of the line that an offset stands on, from 1."""
        return bisect_right(self.starts, offset)

    def words(self, span: Span) -> str:
        """What stands there, as it was written, on one line."""
        return " ".join(self.text[span.start : span.end].split())

    def of(self, kind: PartKind) -> tuple[Part, ...]:
        """The parts of a kind."""
        return tuple(part for part in self.parts if part.kind == kind)
