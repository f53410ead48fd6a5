"""Lengths as patterns write them: "84 (94, 104) cm / 33 (37, 41) in", "90 cm x 60 cm", "54-57 cm"."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from frogless.errors import InputError
from frogless.proofread.facts.model import Lengths
from frogless.proofread.script.model import Span
from frogless.units import INCH, parse_length, parse_number

#: A number: "84", "63.5", "63,5", "25 1/2", "25½", "1/2". Fractions of an inch have these five
#: denominators; "12/14" are two sizes.
NUMBER = (
    r"(?:\d{1,5}(?:[.]\d{1,3}|,(?:5|25|75)(?!\d))?"
    r"(?:[ ]?[½¼¾⅛⅜⅝⅞]|[ -]\d{1,2}/(?:2|3|4|8|16)(?![\d/]))?"
    r"|(?<![\d/])\d{1,2}/(?:2|3|4|8|16)(?![\d/])|[½¼¾⅛⅜⅝⅞])"
)
#: "in" is no inch in "work 6 in the ring".
_NO_INCH = (
    r"(?![ ]+(?:the|each|next|all|an?|sts?|this|that|[a-z]{0,3}dc|sc|tr|pattern|same|rows?)\b)"
)
_TOKENS = re.compile(
    rf"(?P<number>{NUMBER})"
    rf"|(?P<unit>(?:centimet(?:re|er)s?|cms?|millimet(?:re|er)s?|mm|inch(?:es)?|ins?{_NO_INCH})"
    r"(?![a-z])|\"|'')"
    r"|(?P<open>[(\[{])|(?P<close>[)\]}])|(?P<list>[,;:])|(?P<slash>/|=|\bor\b)"
    r"|(?P<cross>x(?=[ ]*[\d½¼¾])|×|\*(?=[ ]*\d)|\bby\b)|(?P<dash>-|\bto\b)"
    r"|(?P<space>[ \t.]+|square\b|wide\b(?=[ ]*(?:x|by|/|and)[ ])|long\b(?=[ ]*[/(]))|(?P<other>[^\W\d_]+|\S)",
    re.IGNORECASE,
)
_METRIC = {"cm", "mm", "cms", "centimetre", "centimeter", "millimetre", "millimeter"}
_Between = Literal["", "space", "open", "close", "list", "slash", "cross", "dash"]


@dataclass(frozen=True, slots=True)
class _Item:
    number: str
    start: int
    end: int
    before: frozenset[str]
    depth: int
    unit: str = ""
    ended: int = 0  # where its unit ends


def lengths_in(text: str, offset: int = 0, unit: str = "") -> Iterator[Lengths]:
    """Every length in a line, in its order; places are counted from `offset`.

    Args:
        unit: of numbers that stand without one ("Bust (cm): 84, 94"); "": they are no lengths.
    """
    for run in _runs(text):
        for part in _parted(run):
            yield from _read(part, text, offset, unit)


def _runs(text: str) -> Iterator[list[_Item]]:
    run: list[_Item] = []
    between: set[str] = set()
    depth = 0
    for token in _TOKENS.finditer(text):
        kind = token.lastgroup or ""
        if kind == "number":
            # What stands apart by blanks alone are two columns of a table.
            if run and not between & {"open", "close", "list", "slash", "cross", "dash"}:
                yield run
                run = []
            if not run:
                depth = 0
            item = _Item(token[0], token.start(), token.end(), frozenset(between), depth)
            run.append(item)
            between = set()
        elif kind == "unit":
            if run and not run[-1].unit and between <= {"space", "close", "dash"}:
                run[-1] = replace(run[-1], unit=token[0].lower(), ended=token.end())
        elif kind == "other":
            if run:
                # "10 cm (20 rounds)": the number belongs to the word.
                bare = between <= {"space", "dash"}
                while bare and run and not run[-1].unit:
                    run.pop()
                if run:
                    yield run
            run, between = [], set()
        else:
            depth += (kind == "open") - (kind == "close")
            between.add(kind)
    if run:
        yield run


def _parted(run: list[_Item]) -> Iterator[list[_Item]]:
    """ "6.5 mm; 1 1/4 in": one length in one unit and one in the other, with no bracket or slash."""
    if len(run) > 1 and run[0].unit and run[1].before <= {"list", "space"}:
        unit = next((each.unit for each in run[1:] if each.unit), run[0].unit)
        if _metric(unit) != _metric(run[0].unit):
            yield run[:1]
            run = run[1:]
    yield run


def _read(run: list[_Item], text: str, offset: int, unit: str) -> Iterator[Lengths]:
    items = _with_units(run, unit)
    if not items:
        return
    end = max(max(each.end, each.ended) for each in items)
    end += text[end : end + 1] in tuple(")]}") and items[-1].depth > items[0].depth
    span = Span(offset + items[0].start, offset + end)
    joined = [each.before for each in items[1:]]  # what stands before the first joins nothing
    crossed = any("cross" in each for each in joined)
    metric = tuple(i for i in items if _metric(i.unit))
    inches = tuple(i for i in items if not _metric(i.unit))
    try:
        cm, inch = _mm(metric), _mm(inches)
    except InputError:
        return
    dashes = sum("dash" in each for each in joined)
    most = max(len(metric), len(inches))
    ranged = most == 2 and dashes >= 1 and not crossed
    if dashes and not ranged:
        return  # several ranges: which end a count is to meet is not said
    yield Lengths(
        span, cm, inch, _step(metric), _step(inches), ranged, crossed,
        bracketed=most > 1 and any("open" in each for each in joined),
    )  # fmt: skip


def _with_units(run: list[_Item], unit: str) -> list[_Item]:
    """Each with its unit: the next that is written, else the one before, else `unit`."""
    found: list[_Item] = []
    coming = ""
    for item in reversed(run):
        coming = item.unit or coming
        found.append(replace(item, unit=item.unit or coming))
    found.reverse()
    last = ""
    for at, item in enumerate(found):
        last = item.unit or last
        found[at] = replace(item, unit=item.unit or last or unit)
    return [item for item in found if item.unit]


def _metric(unit: str) -> bool:
    return unit in _METRIC or unit.startswith(("centim", "millim"))


def _mm(items: tuple[_Item, ...]) -> tuple[float, ...]:
    return tuple(abs(parse_length(f"{item.number} {_spelled(item.unit)}")) for item in items)


def _spelled(unit: str) -> str:
    if _metric(unit):
        return "mm" if unit.startswith("m") else "cm"
    return "in"


def _step(items: tuple[_Item, ...]) -> float:
    """How finely numbers are written, mm: as the finest of them is."""
    if not items:
        return 0.0
    inch = not _metric(items[0].unit)
    one = INCH if inch else 10.0 if _spelled(items[0].unit) == "cm" else 1.0
    parts = [parse_number(item.number) for item in items]
    for step in (1.0, 0.5, 0.25):
        if all(abs(part / step - round(part / step)) < 1e-6 for part in parts):
            return one * step
    return one / 10
