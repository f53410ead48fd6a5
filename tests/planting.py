"""Errors planted in written patterns, as a slip of the pen would make them.

The text alone decides where: nothing here asks the reader under test what it understood, so what it
fails to read is mutated like the rest.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import pairwise

#: A row begins with its label.
_LABEL = re.compile(
    r"^[\s>#*_-]*(?:(?:rows?|rounds?|rnds?|r)\b\.?\s*\d[\d\s,–&-]*(?:(?:and|to)\s*\d+)?\s*"
    r"(?:[(\[][^()\[\]\n]*[)\]]\s*)*(?:\*\*)?\s*[:.)–=-]\s"
    r"|(?:[a-z]+[- ])?(?:row|rnd|round)\s*(?:[(\[][^()\[\]\n]*[)\]]\s*)?:"
    r"|\d+(?:st|nd|rd|th)\s+(?:row|rnd|round)\s*[:.]?|\d{1,3}[.):](?=\s))",
    re.IGNORECASE,
)
#: A line that is no row: "Border: ch 1, …", "Add a loop: ch 10".
_TITLED = re.compile(r"[A-Z][a-z]+(?: [a-z]+){0,3}: ")
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
#: Where one more or less leaves a pattern that is just as right, for nothing else speaks of it:
#: how many rows are worked plain at the end of all shaping, a length, the ring that a piece begins
#: in, stitches in a corner of an edging that is worked evenly.
_FREE = re.compile(
    r"\bwork (?:even (?:in \w+ )?for )?\d[^.;]{0,40}\b(?:rows?|rnds?|rounds?)\b(?: (?:even|straight|plain|of \w+))?"
    r"|\buntil there are \d+ rows[^.;]*"
    r"|\brep(?:eat)? (?:row|rnd|round) \d+ another \d[\d ,()]*times\.(?!\s*(?:row|rnd|round) \d)"
    r"|\b(?:measures?|is|to|for) \d[\d ,()\[\]{}/.½¼¾-]*(?:cm|in\b|inches|\")"
    r"|\bch(?:ain)? \d+,? (?:and )?(?:join|sl st)[^.;]{0,30}\bring\b|\b\d+ ch,? join[^.;]{0,30}\bring\b"
    r"|\b\d+ \w+ in (?:each|every) corner",
    re.IGNORECASE,
)
#: Another first stitch of the row below than the one that a counting chain stands on is none.
_STOOD_ON = re.compile(r"^(?:sk|skip|miss) (?:the )?first \w+, $", re.IGNORECASE)
#: "1 tr into next st, 1 tr into each st to end": without the first, or with two, it is the same.
_TAKEN_UP = re.compile(
    r"(?:(?:and|work) )?(?:\d )?(?P<stitch>[a-z]+) (?:in|into)\b[^,;.]*\b(?:each|every)\b",
    re.IGNORECASE,
)
#: Where the last stitch goes: a repeat ends at the end of the row in any case.
_ENDING = re.compile(r"^(?:ending|with the last|working (?:the )?last)\b", re.IGNORECASE)
#: "sk first ch-2 sp, dc in next dc": the space is passed over in any case.
_SPACE_PASSED = re.compile(
    r"^(?:sk|skip|miss) (?:the )?(?:first|next) (?:ch-\d+ )?(?:sp|lp|loop), $", re.I
)
_STITCH_NEXT = re.compile(
    rf"(?:{'|'.join(_STITCHES)}) in(?:to)? (?:the )?next (?:{'|'.join(_STITCHES)})\b"
)
#: "hdc around, increasing 8 sts evenly": the increases alone say it.
_EVENLY_NEXT = re.compile(r"(?:inc|dec)reasing \d", re.IGNORECASE)
#: A repeat that ends before the last stitches and one that goes to the end are one, where these are
#: named: "rep from * to last 2 sts, sk 1 st, dc in last st".
_REPEATED = re.compile(r"\brep(?:eat)? from \*,? $", re.IGNORECASE)
_LAST_NAMED = re.compile(r"^[^.;*]*\blast\b", re.IGNORECASE)
#: Lines after the last row.
_AFTER_ALL = re.compile(
    r"\s*(?:fasten off|finish(?:ing)?\b|sew\b|weave\b|fold\b|block\b)", re.IGNORECASE
)
#: What counts nothing: stated counts, chains that count or not, markers, hooks, lengths, remarks.
_SPARED = re.compile(
    r"[(\[<][^()\[\]<>]*\d[^()\[\]<>]*[)\]>][_*]{0,3}\s*\.?\s*$"
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
class Row:
    """Where the text of a row stands, its label left out."""

    start: int
    end: int


def planted(text: str, seed: int, most: int) -> tuple[Planted, ...]:
    """At most so many texts with one error each, spread over the kinds of slips and the rows."""
    chance = random.Random(seed)  # noqa: S311 — the same errors in every run
    found = [
        *(list(_all(text, how)) for how in _SLIPS),
        *(
            list(each(text))
            for each in (_counts_changed, _sizes_changed, _labels_changed, _rows_dropped)
        ),
    ]
    for each in found:
        chance.shuffle(each)
    taken: list[Planted] = []
    while len(taken) < most and any(found):
        taken += [each.pop() for each in found if each]
    return tuple(taken[:most])


def rows_of(text: str) -> tuple[Row, ...]:
    """Where the text of each row stands, its label left out."""
    lines = text.splitlines(keepends=True)
    found: list[Row] = []
    at, open_row = 0, None
    for line in lines:
        label = _LABEL.match(line)
        ends = not line.strip() or line.lstrip()[:1] in "#|=" or _TITLED.match(line)
        if label or ends or _AFTER_ALL.match(line):
            if open_row is not None:
                found.append(Row(open_row, at))
            open_row = at + label.end() if label else None
        at += len(line)
    if open_row is not None:
        found.append(Row(open_row, at))
    return tuple(row for row in found if re.search(r"\w", text[row.start : row.end]))


def _all(text: str, how: str) -> Iterator[Planted]:
    for row in rows_of(text):
        body = text[row.start : row.end].rstrip()
        spared = [match.span() for match in _SPARED.finditer(body)]
        if how in ("one more", "one less"):
            spared += [match.span() for match in _FREE.finditer(body)]
            spared += _unnamed_bars(text, body)
        for start, end, new in _SLIPS[how](body):
            if any(start < b and a < end for a, b in spared):
                continue
            at = row.start + start
            changed = text[:at] + new + text[row.start + end :]
            line = text.count("\n", 0, row.start) + 1
            last = text.count("\n", 0, row.start + len(body)) + 1
            yield Planted(changed, line, last, how, body[start:end], new)


def _unnamed_bars(text: str, body: str) -> list[tuple[int, int]]:
    """Chains between stitches whose length nothing in the text names: any length is right."""
    found = []
    for match in re.finditer(r"(?:(?<=, )|(?<=[*(\[])|(?<=[*(\[] ))ch (\d+)(?=[,;.*)\]])", body):
        length = match[1]
        named = rf"\bch-{length}\b|\b{length}[- ]ch\b|\bchain-{length}\b|counts as \w+(?: and|,) ch[ -]{length}\b"
        if not re.search(named, text):
            found.append(match.span())
    return found


def _planted(text: str, row: Row, start: int, end: int, new: str, how: str) -> Planted:
    body = text[row.start : row.end].rstrip()
    line = text.count("\n", 0, row.start) + 1
    last = text.count("\n", 0, row.start + len(body)) + 1
    return Planted(text[:start] + new + text[end:], line, last, how, text[start:end], new)


#: "(24 sc)", "[24]", "- 24 sts" at the end of a row.
_COUNT = re.compile(
    r"(?:[(\[<] ?|[-–—=] ?)(?P<count>\d{1,3})(?= ?(?:sts|sc|hdc|dc|htr|tr)?[)\]>]?\.?\s*$)"
)


def _counts_changed(text: str) -> Iterator[Planted]:
    for row in rows_of(text):
        body = text[row.start : row.end].rstrip()
        first = body.split("\n")[0]
        if (match := _COUNT.search(first)) and len(first) > match.end("count"):
            start, end = row.start + match.start("count"), row.start + match.end("count")
            for new in (int(match["count"]) + 1, int(match["count"]) + 10):
                yield _planted(text, row, start, end, str(new), "count changed")


#: "76 (84, 92, 100)".
_LIST = re.compile(r"\b\d{2,3} \(\d{2,3}(?:, \d{2,3})+\)(?! ?(?:cm|in\b|rows|rnds|times|more))")


def _sizes_changed(text: str) -> Iterator[Planted]:
    """One size only, in a list of stitches."""
    for row in rows_of(text):
        for match in _LIST.finditer(text, row.start, row.end):
            for each in list(re.finditer(r"\d+", match[0]))[1:]:
                start, end = match.start() + each.start(), match.start() + each.end()
                yield _planted(text, row, start, end, str(int(each[0]) + 2), "one size changed")


def _labels_changed(text: str) -> Iterator[Planted]:
    """A row that takes the number after its own, where one with a number follows."""
    rows = rows_of(text)
    for row, after in pairwise(rows):
        label = _PLAIN_LABEL.search(text, text.rfind("\n", 0, row.start) + 1, row.start)
        behind = _PLAIN_LABEL.search(text, text.rfind("\n", 0, after.start) + 1, after.start)
        if label and behind and int(behind[1]) == int(label[1]) + 1:
            start, end = label.span(1)
            yield _planted(text, row, start, end, str(int(label[1]) + 1), "label changed")


_PLAIN_LABEL = re.compile(
    r"(?:row|rnd|round)\.? (\d{1,3})\b(?! ?[-–,&]|\s(?:and|to)\b)", re.IGNORECASE
)


def _rows_dropped(text: str) -> Iterator[Planted]:
    """A row with a number that stands between two others; it is missed at the one after it."""
    rows = rows_of(text)
    for before, row, after in zip(rows, rows[1:], rows[2:], strict=False):
        begins = [text.rfind("\n", 0, each.start) + 1 for each in (before, row, after)]
        labels = [
            _PLAIN_LABEL.search(text, begin, each.start)
            for begin, each in zip(begins, (before, row, after), strict=True)
        ]
        if not all(labels):
            continue
        one, two, three = (int(label[1]) for label in labels if label)
        if (two, three) == (one + 1, one + 2) and row.end <= begins[2]:
            start, end = begins[1], begins[2]
            line = text.count("\n", 0, start) + 1
            yield Planted(
                text[:start] + text[end:], line, line, "row dropped", text[start:end].strip(), ""
            )


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
        if not re.search(r"\brep(?:eat)?$", body[: match.start()]):  # "*...* rep 6x": rep stays
            yield match.start(), match.end(), ""


def _clauses(body: str) -> Iterator[re.Match[str]]:
    """A stitch with its place, and the comma after it; not where the next clause takes it up."""
    for match in re.finditer(r"(?<=[,(\[*;:] )[^,;()\[\]*.\n]{2,40}, ", body):
        after = _TAKEN_UP.match(body, match.end())
        words = match[0].split()
        if not (after and after["stitch"] in words and "next st" in match[0]):
            yield match


def _clause_dropped(body: str) -> Slip:
    for match in _clauses(body):
        after = body[match.end() :]
        if _ENDING.match(match[0]) or (_SPACE_PASSED.match(match[0]) and _STITCH_NEXT.match(after)):
            continue
        if _EVENLY_NEXT.match(after) and "around" in match[0]:
            continue
        if _REPEATED.search(body[: match.start()]) and _LAST_NAMED.match(after):
            continue
        if _STOOD_ON.match(match[0]) and re.search(r"\bcounts?\b|=", body[: match.start()]):
            continue
        if _STITCH.search(match[0]) or re.search(r"\b(?:skip|sk|miss|ch)\b", match[0]):
            yield match.start(), match.end(), ""


def _clause_doubled(body: str) -> Slip:
    for match in _clauses(body):
        if _STITCH.search(match[0]) and "each st" not in match[0]:
            yield match.start(), match.end(), match[0] * 2


_INCREASE = re.compile(
    r"(?<![\w-])(?P<two>2) (?:sc|hdc|dc|tr|htr) in(?:to)? (?:the )?(?:next|first|last|each)\b"
)


def _increase_plain(body: str) -> Slip:
    """An increase that is turned into a plain stitch, or a decrease."""
    for match in re.finditer(
        r"(?<![\w-])(?P<two>2) (?:sc|hdc|dc|tr|htr) in(?:to)? (?:the )?(?:next|first|last|each)\b",
        body,
    ):
        yield match.start("two"), match.end("two"), "1"


def _stops_short(body: str) -> Slip:
    """To the end, or to a place before it."""
    for match in re.finditer(
        r"(?<=\bin )each (?:st|sc|dc|hdc)(?P<far> (?:around|across))(?=[,;.])", body
    ):
        yield match.start("far"), match.end("far"), " to last 2 sts"
    for match in re.finditer(r"\bto last (?P<n>\d) (?:sts|sc|dc|hdc)\b", body):
        if _REPEATED.search(body[: match.start()]) and _LAST_NAMED.match(body[match.end() :]):
            continue
        yield match.start(), match.end(), "to end"


_SLIPS: dict[str, Callable[[str], Slip]] = {
    "one more": _one_more,
    "one less": _one_less,
    "digits swapped": _digits_swapped,
    "stitch swapped": _stitch_swapped,
    "repeat dropped": _repeat_dropped,
    "clause dropped": _clause_dropped,
    "clause doubled": _clause_doubled,
    "increase made plain": _increase_plain,
    "stops elsewhere": _stops_short,
}
