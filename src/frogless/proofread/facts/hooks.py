"""Hooks that a text names: by millimetres, or by the letter that the trade gives them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import cache
from typing import Literal

from frogless.proofread.facts.model import Hook
from frogless.proofread.script.model import Span
from frogless.stitches.hooks import sizes
from frogless.units import FINEST_HOOK

#: Thicker than any hook that is sold.
_THICKEST = 30.0
_NEAR = 60
_HOOK = re.compile(r"\bhooks?\b", re.IGNORECASE)
_MM = re.compile(
    r"(?<![\d.,/A-Za-z])(?<![A-Z][-/])"
    r"(\d{1,2}(?:[.,]\d{1,3})?)(?:[ -]?mm\b|(?=[ ]?(?:and|or|,|/)[ ]?\d{1,2}(?:[.,]\d+)?[ -]?mm\b))"
)
_LABEL = re.compile(
    r"(?:\b(?:US|USA)[ ]?(?:size[ ]?)?|\bsize[ ]?)?"
    r"\b(?P<letter>[B-QS])(?:[-/ ]?(?P<number>\d{1,2}(?:[ ]?1/2|½)?))?(?![\w'])"
)
_BARE = re.compile(r"\b(?:US|size)[ ]?(?P<number>7)\b")


def hooks_in(
    text: str, offset: int, place: Literal["materials", "gauge", "rows"]
) -> Iterator[Hook]:
    """The hooks of one line or sentence; none where it has no word of hooks."""
    if not _HOOK.search(text):
        return
    found = False
    for match in _MM.finditer(text):
        size = float(match[1].replace(",", "."))
        if FINEST_HOOK <= size <= _THICKEST and _is_near(text, match.start(), match.end()):
            found = True
            label = _beside(text, match.start(), match.end())
            yield Hook(Span(offset + match.start(), offset + match.end()), size, label, place)
    if not found:
        yield from _lettered(text, offset, place)


def size_of(label: str) -> float:
    """mm of a hook by its letter; 0 where no table has it.

    Source: the labels in the dictionary's table of hooks (published); charts differ by half a
    millimetre.
    """
    return _by_letter().get(label.split("-")[0], 0.0)


@cache
def _by_letter() -> Mapping[str, float]:
    known: dict[str, float] = {}
    for size, label in sizes().items():
        for name in label.replace("/", "-").split("-")[:1]:
            # Steel hooks have numbers of their own; 7 is also a hook of 4.5 mm.
            if name.isalpha() or (name == "7" and size > 4):
                known.setdefault(name, size)
    return known


def _is_near(text: str, start: int, end: int) -> bool:
    before, after = text[max(0, start - _NEAR) : start], text[end : end + _NEAR]
    return bool(_HOOK.search(before) or _HOOK.search(after.split(";")[0]))


def _beside(text: str, start: int, end: int) -> str:
    """The label right beside the millimetres: "5 mm (US H-8)", "H/8 (5 mm)"."""
    after = re.match(r"[ ,/(\[-]{0,3}", text[end : end + 4])
    at = end + (after.end() if after else 0)
    label = _LABEL.match(text, at) or _BARE.match(text, at)
    if label is None:
        before = text[max(0, start - 16) : start].rstrip(" (,[/-")
        label = next(iter(m for m in _LABEL.finditer(before) if m.end() == len(before)), None)
    return _name(label) if label else ""


def _name(label: re.Match[str]) -> str:
    parts = (label.groupdict().get("letter"), label.groupdict().get("number"))
    return "-".join(part for part in parts if part)


def _lettered(
    text: str, offset: int, place: Literal["materials", "gauge", "rows"]
) -> Iterator[Hook]:
    for hook in _HOOK.finditer(text):
        start = max(0, hook.start() - 24)
        around = text[start : hook.end() + 24]
        for match in _LABEL.finditer(around):
            said = match["number"] or re.match(r"(?:US|USA|size)", match[0])
            size = size_of(match["letter"])
            if said and size:
                at = offset + start + match.start()
                yield Hook(Span(at, at + len(match[0])), size, _name(match), place)
                return
