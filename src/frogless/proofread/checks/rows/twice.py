"""The same words twice in a row, where the first time leaves nothing for the second."""

from __future__ import annotations

import re
from collections.abc import Iterator

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.lines import finding, lines_of
from frogless.proofread.findings import Certainty, Finding
from frogless.proofread.script.model import Span

#: A clause and the same again: "sc in each st around, sc in each st around".
_AGAIN = re.compile(
    r"(?<![^\s*(\[:;,.])(?P<clause>[a-z0-9][^,;()\[\]*.:\n]{1,80}?)[,;] ?(?P=clause)(?=\s?[,;.)\]*\n]|$)",
    re.IGNORECASE,
)
#: What goes on to an end, so that nothing is left.
_WHOLE = re.compile(
    r"\b(?:each|every|across|around|to (?:the )?end|to (?:the )?last)\b", re.IGNORECASE
)
#: What one would say in one: "skip 2, skip 2", "in first st, in first st", "3 dc, 3 dc".
_AT_ONCE = re.compile(
    r"^(?:sk|skip|miss)\b|\b(?:first|last|same)\b|\bending\b|^(?:[2-9]|\d\d) [a-z]+$|^ch(?:ain)? \d+$",
    re.IGNORECASE,
)


def said_twice(reading: Reading) -> Iterator[Finding]:
    """A clause that stands twice, one after the other."""
    for line in lines_of(reading):
        span = line.told.span
        if line.told.label is None:
            continue
        for found in _AGAIN.finditer(reading.script.plain, span.start, span.end):
            clause = found["clause"]
            certainty: Certainty
            if _WHOLE.search(clause):
                certainty, why = "likely", "the first time leaves nothing for the second"
            elif _AT_ONCE.search(clause):
                certainty, why = "possible", "it would be said in one"
            else:
                continue
            words = reading.script.words(Span(*found.span("clause")))
            texts = (
                f'"{words}" twice',
                "once",
                f'{line.name} says "{words}" twice, one after the other: {why}.',
            )
            yield finding("said-twice", reading, line, Span(*found.span()), texts, certainty)
