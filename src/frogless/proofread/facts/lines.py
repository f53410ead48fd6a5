"""The lines of a pattern with the part that each stands in."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from frogless.proofread.script.model import PartKind, Script

#: A line of a pattern is not longer; what is may be a table or a paste without line ends.
LONGEST = 4000
#: Letters of a line that was broken because it was full.
_FULL = 60
#: A length by itself: a figure of a drawing, whose name stands elsewhere.
_FIGURE = re.compile(r"\s{0,20}\d{1,4}(?:[.,]\d{1,2})? ?(?:cm|mm|in|inches|\")\s{0,20}")
_BULLET = re.compile(r"\s{0,8}(?:[*+•-]|\d{1,2}[.)]) ")


@dataclass(frozen=True, slots=True)
class Line:
    """A line of the plain text; several where a sentence runs on, joined by blanks.

    Args:
        start: its place in the text; letters keep their places.
        part: "" outside of all parts.
        written: as it was given, with its bullets and bars; "" of several lines joined.
        heading: of its part, in lower case.
    """

    text: str
    start: int
    part: PartKind | Literal[""] = ""
    written: str = ""
    heading: str = ""


def lines_of(script: Script) -> tuple[Line, ...]:
    """Every line, in order; those of a heading count to its part."""
    bounds = sorted(
        (
            min(part.heading.start, part.body.start),
            part.body.end,
            part.kind,
            script.words(part.heading)[:80].lower(),
        )
        for part in script.parts
    )
    return tuple(_lines(script, bounds))


def _lines(script: Script, bounds: list[tuple[int, int, PartKind, str]]) -> Iterator[Line]:
    at = 0
    ends = (*script.starts[1:], len(script.plain))
    for start, end in zip(script.starts, ends, strict=True):
        while at < len(bounds) and bounds[at][1] <= start:
            at += 1
        inside = at < len(bounds) and bounds[at][0] < max(end, start + 1)
        text = script.plain[start : min(end, start + LONGEST)].rstrip("\n")
        written = script.text[start : start + len(text)]
        if inside:
            yield Line(text, start, bounds[at][2], written, bounds[at][3])
        else:
            yield Line(text, start, "", written)


def joined(lines: tuple[Line, ...]) -> Iterator[Line]:
    """Lines put together where a sentence runs on; in a list each item stays for itself."""
    found: list[Line] = []
    length = 0
    for line in lines:
        if found and not (_goes_on(found[-1], line) and length < LONGEST):
            yield _one(found)
            found, length = [], 0
        if line.text.strip():
            found.append(line)
            length += len(line.text)
    if found:
        yield _one(found)


def _goes_on(before: Line, line: Line) -> bool:
    """Whether a line goes on with the one before: indented, in lower case, or after a full line."""
    text = line.written or line.text
    if line.part != before.part or not text.strip() or _BULLET.match(text):
        return False
    if _FIGURE.fullmatch(before.text):
        return False
    full = len(before.text.rstrip()) >= _FULL
    if "schematic" in line.heading:
        return full  # what stands on a drawing stands by itself
    return text[0].isspace() or text[0].islower() or text[0] == "(" or full


def _one(lines: list[Line]) -> Line:
    text = ""
    for line in lines:
        # Letters keep their places: what stands between two lines becomes blanks.
        text += " " * (line.start - lines[0].start - len(text)) + line.text
    return Line(text, lines[0].start, lines[0].part, "", lines[0].heading)
