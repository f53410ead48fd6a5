"""Places in a text as a browser counts them: in UTF-16 units, where an emoji is two letters."""

from __future__ import annotations

from bisect import bisect_left
from dataclasses import dataclass

from frogless.proofread.script.model import Script, Span

MOST_WORDS = 90
"""Letters that are shown of the words of a place."""


@dataclass(frozen=True, slots=True)
class Place:
    """From `start` up to `end`, on a line (from 1), and what stands there, shortened."""

    line: int
    start: int
    end: int
    words: str


class Places:
    """The places of one text."""

    def __init__(self, script: Script) -> None:
        self._script = script
        self._wide = [n for n, letter in enumerate(script.text) if letter > "\uffff"]

    def of(self, span: Span) -> Place:
        """Where a span stands, the blanks around it left out."""
        text = self._script.text
        start, end = max(0, span.start), min(span.end, len(text))
        while start < end and text[start].isspace():
            start += 1
        while start < end and text[end - 1].isspace():
            end -= 1
        words = " ".join(text[start : min(end, start + 4 * MOST_WORDS)].split())
        if len(words) > MOST_WORDS:
            words = words[: MOST_WORDS - 2].rstrip() + " …"
        return Place(self._script.line(start), self._units(start), self._units(end), words)

    def _units(self, offset: int) -> int:
        return offset + bisect_left(self._wide, offset)


def put(text: str, start: int, end: int, words: str) -> str:
    """The text with other words at a place that is counted as a browser counts.

    >>> put("🧶 has 96", 7, 9, "98")
    '🧶 has 98'
    """
    units = text.encode("utf-16-le", "surrogatepass")
    new = units[: 2 * start] + words.encode("utf-16-le") + units[2 * end :]
    return new.decode("utf-16-le", "replace")
