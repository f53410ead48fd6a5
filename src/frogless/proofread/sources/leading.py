"""Blank lines where a page leaves more room between two lines than it does within a paragraph."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

WIDER = 1.3
"""Times the room within a paragraph from which on it is the room between two. Typst sets 1.4,
a word processor 1.5, unless it is told otherwise: from memory."""

FARTHEST = 4.0
"""Times the size of the letters; lines farther apart are in another column, or far below."""


@dataclass(frozen=True, slots=True)
class SetLine:
    """A line as it was set.

    Args:
        height: of its foot above the foot of the page; `size` of its letters, the same units.
    """

    text: str
    height: float
    size: float


def lines_of(pieces: Sequence[tuple[str, float, float]]) -> list[SetLine]:
    """Lines of pieces of text, each with its height and size; a line stands where it begins."""
    lines: list[SetLine] = []
    text, height, size = "", 0.0, 0.0
    for piece, at, large in pieces:
        *ended, rest = piece.split("\n")
        for one in ended:
            if one.strip() and not text.strip():
                height, size = at, large
            lines.append(SetLine(text + one, height, size))
            text = ""
        if rest.strip() and not text.strip():
            height, size = at, large
        text += rest
    return [*lines, SetLine(text, height, size)]


def spaced(pages: Sequence[Sequence[SetLine]]) -> list[str]:
    """The text of each page, with blank lines between its paragraphs."""
    filled = [[line for line in page if line.text.strip()] for page in pages]
    rooms = sorted(room for page in filled for room in _rooms(page) if 0.5 < room < FARTHEST)
    # Most lines follow on one another; where all are paragraphs of one line, nothing is wider.
    usual = rooms[len(rooms) // 4] if rooms else FARTHEST
    return ["\n".join(_with_blanks(page, usual)) for page in filled]


def _rooms(page: Sequence[SetLine]) -> Iterator[float]:
    for above, below in pairwise(page):
        yield (above.height - below.height) / max(above.size, below.size, 0.1)


def _with_blanks(page: Sequence[SetLine], usual: float) -> Iterator[str]:
    rooms = (0.0, *_rooms(page))
    for line, room in zip(page, rooms, strict=False):
        if usual * WIDER < room:
            yield ""
        yield line.text
