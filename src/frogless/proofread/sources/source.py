"""A pattern's text, drawn from whatever it was kept in; and how much of it is read."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Kind = Literal["text", "markdown", "pdf", "docx"]

MOST_BYTES = 20_000_000
"""A file; a pattern full of photographs is smaller."""

MOST_LETTERS = 2_000_000
"""Of text; a book of patterns has fewer."""

MOST_PAGES = 300

ACCEPTED = "text, Markdown, a PDF with text in it, and .docx are read"
"""Said wherever a file is refused for what it is."""


@dataclass(frozen=True, slots=True)
class Source:
    """The text of a file.

    Args:
        text: line ends are "\\n".
        remarks: what somebody should know of how it was drawn, one sentence each.
    """

    text: str
    kind: Kind
    remarks: tuple[str, ...] = ()
