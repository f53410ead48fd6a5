"""A pattern as a sequence of blocks: the one source of page, screen and plain text. Strings carry no markup."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading; level 1 is a part of the pattern (the title is not a block)."""

    text: str
    level: int = 1


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Running text."""

    text: str


@dataclass(frozen=True, slots=True)
class Bullets:
    """A list."""

    items: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Table:
    """A table with a header row; the first cell of each row names it."""

    caption: str
    header: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Terms:
    """Words and what they mean: abbreviations, special stitches."""

    items: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Instruction:
    """One row or several folded ones: label ("Rnd 5 (RS)"), text, count in words ("160 dc")."""

    label: str
    text: str
    count: str


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing by its key in `Document.drawings`."""

    key: str
    alt: str
    caption: str


@dataclass(frozen=True, slots=True)
class Note:
    """Set apart: a caution, a hint or a check to make at this point."""

    kind: str
    text: str


Block = Heading | Paragraph | Bullets | Table | Terms | Instruction | Figure | Note


@dataclass(frozen=True, slots=True)
class Document:
    """A whole pattern, ready for any page. `drawings`: key and SVG."""

    title: str
    subtitle: str
    language: str
    blocks: tuple[Block, ...]
    drawings: tuple[tuple[str, str], ...]
    footer: str
