"""What the rooms of a garment show, as plain data: made where it is drafted, set by the page.

Each kind of block has a `kind`, by which the templates know how to set it.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import ClassVar, Literal

SENTENCE_END = re.compile(r"(?<=[.!?]) (?=[A-Z“])")

State = Literal["proven", "pending", "refused"]
"""Whether a draft has passed its proof, waits for it, or was not made."""


@dataclass(frozen=True, slots=True)
class Cell:
    """A text with the key of its because; "" when it has none."""

    text: str
    key: str = ""
    figure: bool = False


@dataclass(frozen=True, slots=True)
class TableBlock:
    """A table; the first cell of each row names it."""

    caption: str
    header: tuple[Cell, ...]
    rows: tuple[tuple[Cell, ...], ...]
    id: str = ""
    kind: ClassVar[str] = "table"


@dataclass(frozen=True, slots=True)
class DrawingBlock:
    """A drawing of the library, as SVG, and a line under it."""

    svg: str
    caption: str = ""
    key: str = ""
    kind: ClassVar[str] = "drawing"


@dataclass(frozen=True, slots=True)
class DrawingsBlock:
    """Drawings that belong side by side."""

    drawings: tuple[DrawingBlock, ...]
    kind: ClassVar[str] = "drawings"


@dataclass(frozen=True, slots=True)
class TitleBlock:
    """A heading; `level` 2 is a part of the page."""

    text: str
    level: int
    id: str
    kind: ClassVar[str] = "title"


@dataclass(frozen=True, slots=True)
class TextBlock:
    """Running text."""

    text: str
    kind: ClassVar[str] = "text"


@dataclass(frozen=True, slots=True)
class ListBlock:
    """A list."""

    items: tuple[Cell, ...]
    kind: ClassVar[str] = "list"


@dataclass(frozen=True, slots=True)
class TermsBlock:
    """Words and what they mean."""

    items: tuple[tuple[str, str], ...]
    short: bool = False
    kind: ClassVar[str] = "terms"


@dataclass(frozen=True, slots=True)
class NoteBlock:
    """Set apart: a caution, a hint, a check to make at this point."""

    title: str
    text: str
    care: bool = False
    kind: ClassVar[str] = "note"


@dataclass(frozen=True, slots=True)
class RowLine:
    """One line of instructions.

    Args:
        id: of the row, or the first of the rows that it stands for; "" for what is no row.
        also: ids of the further rows.
        side: which side faces, in brackets; "" when it is not said.
        held: the text in pieces, and of each whether it must not break.
        key: of the because of its count.
    """

    label: str
    side: str
    held: tuple[tuple[str, bool], ...]
    count: str
    id: str = ""
    also: tuple[str, ...] = ()
    key: str = ""

    @property
    def first(self) -> str:
        """Number of the first row of several that the line stands for; "" for one alone."""
        return self.id.rpartition("-")[2] if self.also else ""


@dataclass(frozen=True, slots=True)
class RowsBlock:
    """Instructions that follow each other."""

    rows: tuple[RowLine, ...]
    kind: ClassVar[str] = "rows"


@dataclass(frozen=True, slots=True)
class Way:
    """Another way to make something: in words, and what to turn for it.

    Args:
        section: that is shaped otherwise; "" for a way out of what cannot be made.
        rhythm: on which rounds, in words.
    """

    sentence: str
    changes: tuple[tuple[str, str], ...] = ()
    section: str = ""
    rhythm: str = ""


@dataclass(frozen=True, slots=True)
class SectionLine:
    """A section with its shaping in words.

    Args:
        piece: whose section it is; "" when there is one piece alone.
        rounds: "rounds 1 to 18"; counts: "156 to 192 stitches".
    """

    name: str
    piece: str
    rounds: Cell
    counts: Cell
    told: str


@dataclass(frozen=True, slots=True)
class SectionsBlock:
    """All sections."""

    sections: tuple[SectionLine, ...]
    kind: ClassVar[str] = "sections"


Part = (
    TableBlock
    | DrawingBlock
    | DrawingsBlock
    | TitleBlock
    | TextBlock
    | ListBlock
    | TermsBlock
    | NoteBlock
    | RowsBlock
    | SectionsBlock
)


@dataclass(frozen=True, slots=True)
class Told:
    """What is wrong: in one sentence, in which document, where.

    Args:
        path: of the knob that it is about; () when it is about none.
    """

    sentence: str
    kind: Literal["design", "body", "swatch"]
    line: int | None = None
    path: tuple[str | int, ...] = ()
    nth: int = 0


@dataclass(frozen=True, slots=True)
class Refusal:
    """Why there is no result, and what would make it possible.

    Args:
        why: "input" when a document has to be mended, "impossible", "proof" when the draft did not
            pass its proof, "work" when it took too long.
    """

    why: Literal["input", "impossible", "proof", "work"]
    told: tuple[Told, ...]
    ways: tuple[Way, ...] = ()


@dataclass(frozen=True, slots=True)
class Shown:
    """What a page shows of a garment in one of its rooms.

    Args:
        sentence: of the proof, or of what stands in its place.
        counts: the sentence without the proof.
        gauge: in one line, for print.
        warnings: what to look at before working.
        contents: parts of the page to jump to, id and title.
    """

    title: str
    state: State
    sentence: str
    summary: str = ""
    gauge: str = ""
    warnings: tuple[str, ...] = ()
    cautions: tuple[NoteBlock, ...] = ()
    parts: tuple[Part, ...] = ()
    contents: tuple[tuple[str, str], ...] = ()
    refusal: Refusal | None = None

    @property
    def first_warning(self) -> str:
        """The first sentence of what to look at before working; "" when there is nothing."""
        if not self.warnings:
            return ""
        return SENTENCE_END.split(self.warnings[0], maxsplit=1)[0]
