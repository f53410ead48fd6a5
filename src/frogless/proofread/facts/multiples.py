"""What a text claims about the number of stitches: "multiple of 8 + 1", "6 sts plus 2"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from frogless.proofread.facts.lines import Line
from frogless.proofread.facts.model import Multiple
from frogless.proofread.script.model import Span

_MULTIPLE = re.compile(
    r"\bmultiples?(?: of| is|:)[ ]{1,4}(?P<multiple>\d{1,3})(?:[ ](?:sts?|stitches|ch(?:s|ains?)?))?"
    r"(?:,?[ ]{0,3}(?:\+|plus|and)[ ]{0,3}(?P<over>\d{1,2})(?![ ]?(?:for|ch)))?"
    r"(?P<rest>[^.\n]{0,60})",
    re.IGNORECASE,
)
#: "a multiple of 6 + 2 chains": of the foundation, and not of the stitches.
_CHAINS = re.compile(r"[ ]{0,3}(?:\+|plus|and)[ ]{0,3}(?P<chain>\d{1,2})[ ]?ch(?:s|ains?)?\b", re.I)
_OF_CHAINS = re.compile(r"\bch(?:ain)? (?:any|a|in|your) *$", re.I)
_CHAIN = re.compile(
    r"(?:\+|plus|add|and)[ ]{0,3}(?P<chain>\d)(?:[ ](?:more|extra|chs?|chains?|sts?)){0,2}[ ]"
    r"(?:for|as)[ ](?:the |your |a )?(?:\w+[ ]){0,2}?(?:base|foundation|turning|starting|beginning|ch)",
    re.IGNORECASE,
)


def multiples_in(line: Line) -> Iterator[Multiple]:
    """Every multiple that a paragraph claims."""
    if "ultiple" not in line.text and "ULTIPLE" not in line.text:
        return
    for match in _MULTIPLE.finditer(line.text):
        size = int(match["multiple"])
        if size < 2:
            continue
        over = int(match["over"] or 0)
        chain = _CHAIN.search(line.text[match.start() : match.end() + 40])
        chain = chain or _CHAINS.match(match["rest"])
        extra = int(chain["chain"]) if chain else None
        if extra is None and _OF_CHAINS.search(line.text[: match.start()][-30:]):
            over, extra = 0, over
        end = match.start("rest")
        span = Span(line.start + match.start(), line.start + end)
        yield Multiple(span, size, over % size, extra, line.text.lower())
