"""A pattern as a sequence of blocks: the one source of page, screen and plain text.

Strings carry no markup.
"""

from __future__ import annotations

from dataclasses import dataclass

from frogless.errors import InputError


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
    """Set apart: a caution, a hint or a check to make at this point.

    Args:
        kind: "caution", "hint", "check" or another word: how it looks, and what is shown above
            the text when there is no `title`.
        title: what is shown above the text, in the document's language.
    """

    kind: str
    text: str
    title: str = ""


Block = Heading | Paragraph | Bullets | Table | Terms | Instruction | Figure | Note


@dataclass(frozen=True, slots=True)
class Words:
    """The few words that a page adds of its own, in the document's language."""

    contents: str = "Contents"
    skip: str = "Skip to the pattern"
    picture: str = "Picture"


@dataclass(frozen=True, slots=True)
class Document:
    """A whole pattern, ready for any page.

    Raises:
        InputError: no title; no page can be found again without one (WCAG 2.4.2, PDF/UA-1).

    Args:
        language: BCP 47 tag ("en", "en-GB", "pt-BR").
        drawings: key and SVG.
        footer: one line at the foot of every page.
        author: who answers for the pattern; kept in the properties of the file.
    """

    title: str
    subtitle: str
    language: str
    blocks: tuple[Block, ...]
    drawings: tuple[tuple[str, str], ...]
    footer: str
    author: str = ""
    words: Words = Words()

    def __post_init__(self) -> None:
        if not self.title.strip():
            raise InputError("the pattern has no title; give it one")
