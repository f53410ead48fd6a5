"""Counts that a row's remarks give in words: "You gain 8 dc on every rnd and finish with 246 dc"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import pairwise

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.lines import Line, counted, finding, lines_of, resting
from frogless.proofread.findings import Finding
from frogless.proofread.script.model import Span
from frogless.proofread.work.model import Worked

_STITCHES = r"(?:sts?|stitches|sc|hdc|htr|dc|tr)\b"
_ENDS = re.compile(
    rf"\b(?:finish(?:ing)?|end(?:ing)?(?: up)?|left) with (?P<count>\d{{1,4}}) {_STITCHES}",
    re.IGNORECASE,
)
_CHANGES = re.compile(
    r"\b(?P<verb>gain|add|lose|increase|decrease)(?:s|ing|ed)? (?:by )?"
    rf"(?P<count>\d{{1,3}}) {_STITCHES},? (?:(?:on|in|at) )?(?:each|every|per) (?:row|rnd|round)\b",
    re.IGNORECASE,
)


def said_in_words(reading: Reading) -> Iterator[Finding]:
    """Counts in a row's remarks that are not what the row comes to, in patterns of one size."""
    if len(reading.script.sizes) > 1:
        return
    before: Worked | None = None
    for line in lines_of(reading):
        if line.told.begins:
            before = None
        span = line.told.span
        if line.told.label and line.works and line.index not in resting(reading):
            plain = reading.script.plain
            for found in _CHANGES.finditer(plain, span.start, span.end):
                yield from _change(reading, line, found, before)
            for found in _ENDS.finditer(plain, span.start, span.end):
                yield from _end(reading, line, found)
        before = line.works[-1] if line.works else before


def _change(
    reading: Reading, line: Line, found: re.Match[str], before: Worked | None
) -> Iterator[Finding]:
    says, each = int(found["count"]), _each((*((before,) if before else ()), *line.works))
    if each is None or abs(each) == says:
        return
    more = "more" if each > 0 else "fewer"
    texts = (
        f"{says} in each row",
        f"{abs(each)} {more}",
        f"Each row of {_named(reading, line)} has {counted(abs(each), 'stitch', 'stitches')} {more} "
        f"than the row below, and the words say {says}: one of the two is wrong.",
    )
    yield finding("row-count", reading, line, Span(*found.span()), texts, "likely")


def _each(rows: Sequence[Worked]) -> int | None:
    """By how many stitches each row differs from the one below; None where not all do alike."""
    counts = [row.worked for row in rows]
    known = [count for count in counts if count is not None]
    if len(known) < len(counts) or any(row.problems for row in rows):
        return None
    steps = {b - a for a, b in pairwise(known)}
    return steps.pop() if len(steps) == 1 else None


def _named(reading: Reading, line: Line) -> str:
    """ "Rnds 3-20", as it is written."""
    label = line.told.label
    return reading.script.words(label.span).strip(" .:*_-)") if label else line.name


def _end(reading: Reading, line: Line, found: re.Match[str]) -> Iterator[Finding]:
    last, says = line.works[-1], int(found["count"])
    made = {last.worked, *last.made.values()}
    if last.worked is None or last.problems or last.stated is not None or says in made:
        return
    texts = (
        f"{says} sts",
        f"{last.worked} sts",
        f"{_named(reading, line)} ends with {last.worked} stitches, and the words say {says}: the "
        "count, or how often the row is worked, is wrong.",
    )
    yield finding("row-count", reading, line, Span(*found.span()), texts, "likely")
