"""Lengths with their rows within the instructions: "until it measures 20 cm (20 rounds)"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from frogless.proofread.facts.lengths import lengths_in
from frogless.proofread.facts.lines import Line
from frogless.proofread.facts.model import Progress
from frogless.proofread.script.model import Span

_ABOUT = r"(?:approx(?:imately)?\.?|about|around|ca\.?|which is|that is|or)?[ ]{0,2}"
_LIST = r"\d{1,4}(?:[ ]?[,;(\[][ ]?\d{1,4}){0,20}[)\]]?"
_AFTER = re.compile(
    rf"[ ]{{0,2}}[(,=/\[-]?[ ]{{0,2}}{_ABOUT}(?P<list>{_LIST})[ ](?:rows?|rounds?|rnds?)\b"
    r"(?![ ](?:more|below|above|from|before|of|in|to)\b)\)?",
    re.IGNORECASE,
)
_BEFORE = re.compile(
    rf"(?<![\d–-])(?P<list>{_LIST})[ ](?:rows?|rounds?|rnds?)[ ]{{0,2}}[(,=/\[][ ]{{0,2}}{_ABOUT}$",
    re.IGNORECASE,
)
_ANY = re.compile(r"\b(?:rows?|rounds?|rnds?)\b", re.IGNORECASE)


def progress_in(line: Line) -> Iterator[Progress]:
    """Every length of a paragraph of instructions that has a number of rows beside it."""
    if not _ANY.search(line.text):
        return
    for lengths in lengths_in(line.text, line.start):
        start, end = lengths.span.start - line.start, lengths.span.end - line.start
        beside = _AFTER.match(line.text, end) or _BEFORE.search(
            line.text[max(0, start - 80) : start]
        )
        if not beside or lengths.ranged or lengths.crossed:
            continue
        rows = tuple(float(number) for number in re.findall(r"\d{1,4}", beside["list"]))
        whole = max(end, beside.end()) if beside.string is line.text else end
        yield Progress(Span(lengths.span.start, line.start + whole), lengths, rows)
