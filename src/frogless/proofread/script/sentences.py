"""Where one sentence ends and the next begins."""

from __future__ import annotations

import re
from collections.abc import Iterator

from frogless.proofread.script.model import Span

_STOP = re.compile(r"[.!?](?=[\s)\]\"']{0,3}(?:\s|$))[)\]\"']{0,2}")
#: "(64 dc)" behind a full stop belongs to what it counts.
_COUNT = re.compile(
    r"[(\[]\s?\d[^()\[\]]{0,60}[)\]]|[(\[]\d{1,5} [(\[][\d,; ]{1,40}[)\]]"
    r"|[=-]{0,2}\s?\d{1,5}(?:(?:\s?/\s?\d{1,5}){1,20}|(?:\s:\s\d{1,5}){1,20})?"
    r"(?:,?\s?[(\[{][\d,; -]{1,60}[)\]}](?:\s\d{1,5}(?=\s?[(\[]))?){0,6}\s?(?:sts?|sc|dc|hdc|tr|htr|stitches)\b(?:\.|$)"
)
_WORD = re.compile(r"([A-Za-z]{1,20})[.]$")
#: Shortened words that a sentence never ends with.
_NEVER = frozenset(
    {
        "approx",
        "no",
        "nos",
        "fig",
        "e",
        "g",
        "i",
        "eg",
        "ie",
        "vs",
        "max",
        "min",
        "ca",
        "circ",
        "incl",
        "dia",
        "mr",
        "mrs",
        "dr",
        "pt",
        "vol",
        "resp",
        "cf",
    }
)
#: Shortened words that may end a sentence; a capital behind them tells.
_SELDOM = frozenset(
    {
        "rep", "reps", "st", "sts", "inc", "dec", "beg", "rem", "foll", "cont", "alt", "cm", "mm", "in", "yd", "yds",
        "tog", "sk", "sl", "ch", "chs", "pm", "rnd", "rnds", "rd", "r", "row", "sc", "dc", "hdc", "tr", "dtr", "htr",
        "sp", "sps", "lp", "lps", "bet", "bk", "ft", "fl", "bl", "blo", "flo", "pat", "patt", "prev", "yo", "yoh", "oz",
        "g", "m", "prm", "sm", "mc", "cc", "rs", "ws", "tch", "t", "ea",
    }
)  # fmt: skip


def sentences(plain: str, start: int, end: int) -> Iterator[Span]:
    """The sentences of one paragraph; those in brackets are no sentences by themselves."""
    words = plain[start:end]
    whole = words.count("(") == words.count(")") and words.count("[") == words.count("]")
    at, depth, counted = start, 0, start
    for stop in _STOP.finditer(plain, start, end):
        piece = plain[counted : stop.start()]
        depth += piece.count("(") + piece.count("[") - piece.count(")") - piece.count("]")
        counted = stop.start()
        if (whole and depth > 0 and stop[0][-1] not in ")]") or not _ends(plain, stop, end):
            continue
        yield from _span(plain, at, stop.end())
        at = stop.end()
    yield from _span(plain, at, end)


def _ends(plain: str, stop: re.Match[str], end: int) -> bool:
    after = plain[stop.end() : min(end, stop.end() + 120)].lstrip()
    if _COUNT.match(after):
        return False
    if not after or stop[0][0] != ".":
        return True
    before = _WORD.search(plain[max(0, stop.start() - 24) : stop.start() + 1])
    word = before[1].lower() if before else ""
    if word in _NEVER or (len(word) == 1 and word not in _SELDOM):
        return False
    if word in _SELDOM:
        return after[0].isupper()
    return True


def _span(plain: str, start: int, end: int) -> Iterator[Span]:
    trimmed = trim(plain, start, end)
    if any(each.isalnum() for each in plain[trimmed.start : trimmed.end]):
        yield trimmed


def trim(plain: str, start: int, end: int) -> Span:
    """The span without the blanks at its ends; an empty one stays where it began."""
    words = plain[start:end]
    left = len(words) - len(words.lstrip())
    if left == len(words):
        return Span(start, start)
    return Span(start + left, start + len(words.rstrip()))
