"""Errors planted in written patterns, as a slip of the pen would make them.

The text alone decides where: nothing here asks the reader under test what it understood, so what it
fails to read is mutated like the rest.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass

#: A row begins with its label.
_LABEL = re.compile(
    r"^[\s>#*_-]*(?:(?:rows?|rounds?|rnds?|r)\b\.?\s*\d[\d\s,–&-]*(?:(?:and|to)\s*\d+)?\s*"
    r"(?:[(\[][^()\[\]\n]*[)\]]\s*)*(?:\*\*)?\s*[:.)–=-]\s"
    r"|(?:[a-z]+[- ])?(?:row|rnd|round)\s*(?:[(\[][^()\[\]\n]*[)\]]\s*)?:"
    r"|\d+(?:st|nd|rd|th)\s+(?:row|rnd|round)\s*[:.]?|\d{1,3}[.):](?=\s))",
    re.IGNORECASE,
)
_NUMBER = re.compile(r"(?<![\w.,/-])\d{1,3}(?![\w./%]|,\d)")
#: Stitches that are easily written for each other.
_STITCHES = {
    "sc": ("hdc", "dc"), "hdc": ("sc", "dc"), "dc": ("hdc", "tr"), "tr": ("dc",), "htr": ("dc", "tr"),
    "inc": ("dec", "sc"), "dec": ("inc",), "sc2tog": ("sc3tog", "sc"), "hdc2tog": ("hdc",),
    "dc2tog": ("dc3tog", "dc"), "sc3tog": ("sc2tog",), "dc3tog": ("dc2tog",), "tr2tog": ("tr",),
    "htr2tog": ("htr",),
}  # fmt: skip
_STITCH = re.compile(
    rf"(?<![\w-])(?:{'|'.join(sorted(_STITCHES, key=len, reverse=True))})(?![\w-])"
)
_TIMES = re.compile(
    r"(?:;|,)?\s*rep(?:eat)?\s+from\s+\*[^;.()\n]{0,40}|\s+(?:\d+\s+times|x\s?\d+|\d+x|twice)\b",
    re.IGNORECASE,
)
#: What counts nothing: stated counts, chains that count or not, markers, hooks, lengths, remarks.
_SPARED = re.compile(
    r"[(\[<][^()\[\]<>]*\d[^()\[\]<>]*[)\]>]\s*\.?\s*$"
    r"|[(\[][^()\[\]]*\b(?:counts?|skipped|as first)\b[^()\[\]]*[)\]]"
    r"|\(\d[^()]*\b(?:sts?|sc|hdc|dc|tr|htr|sps?)\b[^()]*\)\s*(?=$|\n|[A-Z])"
    r"|[-–—=]\s*\d[\d ,()\[\]{}]*\s*(?:sts?|sc|hdc|dc|tr|htr)?[^.;]{0,30}\.?\s*$"
    r"|(?:(?:re)?place|move|remove)[^.]*markers?[^.]*\."
    r"|\d+(?:\.\d+)?\s*(?:mm|cm|in\b|g\b|m\b)"
    r"|\bto (?:the )?(?:top|first)[^;.,(]*"
    r"|\b(?:rows?|rnds?|rounds?)\s+\d+(?:\s*(?:and|to|[-–])\s*\d+)?",
    re.IGNORECASE | re.MULTILINE,
)


@dataclass(frozen=True, slots=True)
class Planted:
    """A text with one error in it.

    Args:
        line: the number of the line that was changed, from 1; `last` the last line of its row.
        how: the kind of slip.
    """

    text: str
    line: int
    last: int
    how: str
    old: str
    new: str


@dataclass(frozen=True, slots=True)
class _Row:
    start: int
    end: int


def planted(text: str, seed: int, most: int) -> tuple[Planted, ...]:
    """At most so many texts with one error each, spread over the kinds of slips and the rows."""
    chance = random.Random(seed)  # noqa: S311 — the same errors in every run
    found = [list(_all(text, how)) for how in _SLIPS]
    for each in found:
        chance.shuffle(each)
    taken: list[Planted] = []
    while len(taken) < most and any(found):
        taken += [each.pop() for each in found if each]
    return tuple(taken[:most])


def rows_of(text: str) -> tuple[_Row, ...]:
    """Where the text of each row stands, its label left out."""
    lines = text.splitlines(keepends=True)
    found: list[_Row] = []
    at, open_row = 0, None
    for line in lines:
        label = _LABEL.match(line)
        if label or not line.strip() or line.lstrip()[:1] in "#|=":
            if open_row is not None:
                found.append(_Row(open_row, at))
            open_row = at + label.end() if label else None
        at += len(line)
    if open_row is not None:
        found.append(_Row(open_row, at))
    return tuple(row for row in found if re.search(r"\w", text[row.start : row.end]))


def _all(text: str, how: str) -> Iterator[Planted]:
    for row in rows_of(text):
        body = text[row.start : row.end].rstrip()
        spared = [match.span() for match in _SPARED.finditer(body)]
        for start, end, new in _SLIPS[how](body):
            if any(start < b and a < end for a, b in spared):
                continue
            at = row.start + start
            changed = text[:at] + new + text[row.start + end :]
            line = text.count("\n", 0, row.start) + 1
            last = text.count("\n", 0, row.start + len(body)) + 1
            yield Planted(changed, line, last, how, body[start:end], new)


Slip = Iterator[tuple[int, int, str]]


def _one_more(body: str) -> Slip:
    for match in _NUMBER.finditer(body):
        yield match.start(), match.end(), str(int(match[0]) + 1)


def _one_less(body: str) -> Slip:
    for match in _NUMBER.finditer(body):
        if int(match[0]) > 1:
            yield match.start(), match.end(), str(int(match[0]) - 1)


def _digits_swapped(body: str) -> Slip:
    for match in _NUMBER.finditer(body):
        if len(match[0]) == 2 and match[0][::-1] != match[0] and match[0][1] != "0":
            yield match.start(), match.end(), match[0][::-1]


def _stitch_swapped(body: str) -> Slip:
    for match in _STITCH.finditer(body):
        for other in _STITCHES[match[0]]:
            yield match.start(), match.end(), other


def _repeat_dropped(body: str) -> Slip:
    for match in _TIMES.finditer(body):
        yield match.start(), match.end(), ""


def _clause_dropped(body: str) -> Slip:
    """A stitch with its place, and the comma after it."""
    for match in re.finditer(r"(?<=[,(\[*;:] )[^,;()\[\]*.\n]{2,40}, ", f"{body}"):
        if _STITCH.search(match[0]) or re.search(r"\b(?:skip|sk|miss|ch)\b", match[0]):
            yield match.start(), match.end(), ""


def _clause_doubled(body: str) -> Slip:
    for match in re.finditer(r"(?<=[,(\[*;] )[^,;()\[\]*.\n]{2,40}, ", body):
        if _STITCH.search(match[0]) and "each st" not in match[0]:
            yield match.start(), match.end(), match[0] * 2


_SLIPS: dict[str, Callable[[str], Slip]] = {
    "one more": _one_more,
    "one less": _one_less,
    "digits swapped": _digits_swapped,
    "stitch swapped": _stitch_swapped,
    "repeat dropped": _repeat_dropped,
    "clause dropped": _clause_dropped,
    "clause doubled": _clause_doubled,
}
