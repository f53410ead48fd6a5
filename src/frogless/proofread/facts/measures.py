"""Finished measurements as sentences and lists give them."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from typing import Literal

from frogless.proofread.facts.lengths import lengths_in
from frogless.proofread.facts.lines import Line
from frogless.proofread.facts.model import Lengths, Measurement, Way
from frogless.proofread.facts.ways import name_of, way_of
from frogless.proofread.script.model import Span

_BODY = re.compile(
    r"\b(?:to fit|fits|body (?:measure\w*|size|bust|chest|waist|hips?)|wearer|your|recommended"
    r"|(?:bust|chest|waist|hips?|head) sizes?)\b",
    re.IGNORECASE,
)
_FINISHED = re.compile(r"\b(?:finished|garment|measures|schematic|lies|lying)\b", re.IGNORECASE)
#: Sentences that compare or advise; their lengths are no measurements of the work.
_NO_MEASURE = re.compile(
    r"\b(?:eases?|stretch(?:es|ed|ing)?|passe?s?|at most|wider|narrower|shorter|longer|than|grows?|"
    r"growth|allow|swatch|wanted|estimated|elastic|differ\w*|between|add|hook|ball|yarn|wear|apart|drawcords?|"
    r"drawstrings?)\b",
    re.IGNORECASE,
)
_COUNT = re.compile(
    r"[^.;:()\d]{0,40}\((?P<count>\d{1,4}) (?P<what>sts?|stitches|rows?|rounds?|rnds?)\b"
)
#: Words that follow the length that they name.
_BEHIND = re.compile(
    r"(?:wide|long|high|tall|deep|across|around|down|below|above|from|at|to(?! fit)|"
    r"in (?:diameter|circumference|length|width|height))\b",
    re.IGNORECASE,
)
#: A column of a table with nothing in it: "8.5 cm - 17 rows".
_COLUMNS = re.compile(r"\d (?:cm|in) - \d{1,4} (?:sts|stitches|rows|rounds|rnds)$")
_CLAUSE = re.compile(r"[.;,:()\[\]|\n]|\band\b")
_UNIT_IN_NAME = re.compile(r"\((cm|in|inches|mm)\)|\bin (cm|inches)\b", re.IGNORECASE)


def measures_in(line: Line, finished: bool, heading: str = "") -> Iterator[Measurement]:
    """The measurements of one paragraph.

    Args:
        finished: its heading says that they are of the finished work.
        heading: names what the line itself does not: "FINISHED WIDTH OF FRONT".
    """
    at = 0
    for sentence in re.split(r"(?<=[.!\]])\s+(?=[A-Z*])", line.text):
        start = line.text.find(sentence, at)
        at = start + len(sentence)
        if not _NO_MEASURE.search(sentence):
            yield from _with_counts(_measures(sentence, line.start + start, finished, heading))


def _measures(text: str, offset: int, finished: bool, heading: str) -> Iterator[Measurement]:
    named = _UNIT_IN_NAME.search(text[:80])
    unit = (named[1] or named[2]).lower() if named else ""
    found = list(lengths_in(text, unit="in" if unit.startswith("in") else unit))
    between = (text[a.span.end : b.span.start] for a, b in pairwise(found))
    if not all(each.strip() for each in between) or _COLUMNS.search(text):
        return  # columns of a table, set side by side
    end = 0
    body, piece = False, ""
    for number, lengths in enumerate(found):
        before = text[end : lengths.span.start]
        following = found[number + 1].span.start if number + 1 < len(found) else len(text)
        after = text[lengths.span.end : following]
        count = _COUNT.match(after)
        end = lengths.span.end + (count.end() + 1 if count else 0)
        if "+" in before[-3:] or before.rstrip()[-1:] in ("<", ">"):
            continue
        body = (body or bool(_BODY.search(before))) and not _FINISHED.search(before)
        piece = _piece(before) or piece
        placed = replace(lengths, span=Span(lengths.span.start + offset, lengths.span.end + offset))
        for each in _named(placed, before or heading, after):
            yield replace(_counted(each, count), body=body and not finished, piece=piece)


def _piece(before: str) -> str:
    """ "yoke: neck opening: 56.5 cm": what the first colon follows, where there are two."""
    names = re.split(r"[.\[\]]", before)[-1].split(":")
    return " ".join(names[0].split()).lower()[:40] if len(names) > 2 else ""


def _counted(found: Measurement, count: re.Match[str] | None) -> Measurement:
    if not count:
        return found
    kind: Literal["sts", "rows"] = "sts" if count["what"].startswith("st") else "rows"
    # What is counted in rows goes along, whatever it is called.
    way = "length" if kind == "rows" and found.way in ("girth", "width") else found.way
    return replace(found, count=int(count["count"]), counted=kind, way=way)


def _named(lengths: Lengths, before: str, after: str) -> Iterator[Measurement]:
    if lengths.crossed:
        yield from _crossed(lengths)
        return
    words = ""
    way: Way = ""
    clauses = [each for each in _CLAUSE.split(before) if each.strip()]
    first = re.split(r"[.;,:()\[\]]|\band\b", after.lstrip(" "), maxsplit=1)[0]
    # "90 cm wide" says more than what stands before; "78 cm around at the waist" as well.
    behind = (first[:40],)
    told = (*reversed(clauses[-2:]), before)
    for candidate in (*behind, *told) if _BEHIND.match(first) else (*told, *behind):
        way = way_of(candidate)
        if way:
            words = candidate
            break
    if not way:
        return
    if way == "girth" and name_of(words, "girth") == "circumference":
        words = " ".join((before[-60:], first))  # "around at the waist", "Hip circumference"
    yield Measurement(name_of(words, way), lengths, way)


def _crossed(lengths: Lengths) -> Iterator[Measurement]:
    """ "90 x 60 cm": width and length, each its own."""
    for at, way in ((0, "width"), (1, "length")):
        metric, inches = lengths.metric[at::2], lengths.inches[at::2]
        if len(lengths.metric) in (0, 2) and len(lengths.inches) in (0, 2):
            one = replace(lengths, metric=metric, inches=inches, crossed=False)
            yield Measurement(way, one, "width" if way == "width" else "length")


def _with_counts(found: Iterator[Measurement]) -> Iterator[Measurement]:
    """ "84.5 cm at the high hip, 10 cm down (152 sts)": the stitches belong to the girth."""
    held: Measurement | None = None
    for each in found:
        if held and not held.count and each.way == "length" and each.counted == "sts":
            held = replace(held, count=each.count, counted="sts")
            each = replace(each, count=0, counted="")
        if held:
            yield held
        held = each
    if held:
        yield held
