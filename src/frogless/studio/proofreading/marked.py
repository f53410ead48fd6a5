"""A text line by line with its findings marked in it: for paper, and where no script runs."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import islice

from frogless.studio.proofreading.looked import Looked

MOST_LINES = 4_000
"""Longer texts are shown without marks beside the findings."""


@dataclass(frozen=True, slots=True)
class Bit:
    """Some letters of a line, and the number of the finding that marks them; 0 for none."""

    text: str
    mark: int = 0


@dataclass(frozen=True, slots=True)
class MarkedLine:
    """A line by its number, and what is found on it."""

    number: int
    bits: tuple[Bit, ...]


def marked(text: str, looked: Looked) -> tuple[MarkedLine, ...]:
    """The lines of a text, marked where something was found."""
    lines = text.split("\n")
    if len(lines) > MOST_LINES:
        return ()
    marks = list(_apart(text, looked))
    found, start, first = [], 0, 0
    for number, line in enumerate(lines, 1):
        end = start + len(line)
        while first < len(marks) and marks[first][1] <= start:
            first += 1
        found.append(MarkedLine(number, tuple(_bits(text, start, end, islice(marks, first, None)))))
        start = end + 1
    return tuple(found)


def _apart(text: str, looked: Looked) -> Iterator[tuple[int, int, int]]:
    """Start, end and number of marks that do not lie on each other; the first one stays."""
    # A browser counts these twice.
    units = [n + k for k, n in enumerate(n for n, letter in enumerate(text) if letter > "\uffff")]
    last = 0
    for one in sorted(looked.found, key=lambda each: each.place.start):
        start, end = (at - bisect_left(units, at) for at in (one.place.start, one.place.end))
        start = max(start, last)
        if end > start:
            yield start, end, one.number
            last = end


def _bits(text: str, start: int, end: int, marks: Iterable[tuple[int, int, int]]) -> Iterator[Bit]:
    for mark_start, mark_end, number in marks:
        if mark_start >= end:
            break
        at = max(start, mark_start)
        if at > start:
            yield Bit(text[start:at])
        start = min(end, mark_end)
        if start > at:
            yield Bit(text[at:start], number)
    if start < end:
        yield Bit(text[start:end])
