"""Numbers that are given for each size: 100 (108, 116) [124, 132] {140}, or 100/108/116.

What is such a list is decided here and nowhere else:

* A number and at least two numbers in brackets that hold numbers only is a list, whatever the
  sizes are; one with too few or too many is for the checks to tell.
* A number and one number in brackets, "5 (6)", is a list in patterns of two sizes only; elsewhere
  it is a number and a count.
* Slashed numbers are a list when there are three or more of them, or as many as there are sizes;
  "1/2" is a fraction elsewhere.
* With a number before another bracket, a comma before the first one, or colons or dashes between
  them, "11 (13, 15) 17 (19, 21)", "12, (14, 16)", "11 : 13 : 15", "11-13-15", they are a list where
  they are as many as there are sizes.
* Numbers between commas right behind an opening bracket are a list when they are as many as there
  are sizes: "(96, 104, 112 sts)". Elsewhere they are one where there are three sizes or more, none
  smaller than the one before it, and no rows are numbered so: "ch 85, 93, 99".
* A dash among them is 0, nothing for that size.

Source: how graded patterns are set, common practice.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise
from typing import TypeVar

#: What a greater number is cut to: more than any row has.
TOO_MANY = 100_000

#: Numbers of one list that are read.
MOST = 40

_WHOLE = r"(?:\d{1,20}(?![\d.]*\d)|-(?!\d))"
_PARTS = "½⅓⅔¼¾⅛⅜⅝⅞"
# Atomic: "1 1/2" is one number wherever it stands, however long the list is that it stands in.
_DECIMAL = (
    rf"(?>\d{{1,20}}(?:[.]\d{{1,6}}|[ -]?[{_PARTS}]|[ -]\d{{1,2}}/\d{{1,2}}(?!\d))?(?!\d)"
    rf"|[{_PARTS}]|-(?!\d))"
)
_UNIT = r"(?>[ ]?(?:cm|mm|in(?:ch(?:es)?)?|\"|''|yds?|yards?|m|g|balls?|skeins?)(?![A-Za-z]))?"
_VALUE = {
    "½": 1 / 2, "⅓": 1 / 3, "⅔": 2 / 3, "¼": 1 / 4, "¾": 3 / 4, "⅛": 1 / 8, "⅜": 3 / 8, "⅝": 5 / 8, "⅞": 7 / 8,
}  # fmt: skip

Number = TypeVar("Number", int, float)


class _Shape:
    """The forms of a list whose numbers look as `item` says."""

    def __init__(self, item: str, unit: str = "") -> None:
        # what parts two numbers is read in one way only, else a long list would be read in too many
        inside = (
            rf"{item}{unit}(?:(?:\s{{0,3}}[,;:/|]\s{{0,3}}|\s{{1,3}}){item}{unit}){{0,{MOST}}}[,;]?"
        )
        group = "|".join(
            rf"{opens}\s{{0,3}}{inside}\s{{0,3}}{closes}"
            for opens, closes in ((r"\(", r"\)"), (r"\[", r"\]"), (r"\{", r"\}"))
        )
        self.number = re.compile(item)
        self.grouped = re.compile(
            rf"{item}{unit}(?:[ ]{{0,2}}[\n]?[ ]{{0,12}},?(?:{group})){{1,{MOST}}}"
        )
        self.slashed = re.compile(rf"{item}(?:[ ]?/[ ]?{item}){{1,{MOST}}}(?![/\d])")
        # a number before another bracket, a comma before one, or colons: 11 : 13 : 15
        one = rf"{item}{unit}"
        self.chained = re.compile(
            rf"{one}(?:,?[ ]{{0,2}}(?:{group})|[ ]{{1,2}}{one}(?=[ ]{{0,2}}(?:{group}))){{1,{MOST}}}"
            rf"|{one}(?:[ ]:[ ]{one}){{1,{MOST}}}|{one}(?:-{one}){{2,{MOST}}}"
        )
        self.listed = re.compile(rf"{item}(?:,\s{{1,3}}{item}){{1,{MOST}}}(?![,\d])")


_WHOLES = _Shape(_WHOLE)
_DECIMALS = _Shape(_DECIMAL, _UNIT)


def number_list(plain: str, at: int, sizes: int = 1) -> tuple[tuple[int, ...], int] | None:
    """The whole numbers that begin there, one or one for each size, and where they end.

    A number above `TOO_MANY` is cut to it. None where no number begins.

    >>> number_list("100 (108, 116) [124] sts", 0)
    ((100, 108, 116, 124), 20)
    >>> number_list("5 (6) sts", 0), number_list("5 (6) sts", 0, sizes=2)
    (((5,), 1), ((5, 6), 5))
    """
    return _read(_WHOLES, _whole, plain, at, sizes)


def decimal_list(plain: str, at: int, sizes: int = 1) -> tuple[tuple[float, ...], int] | None:
    """As `number_list`, of lengths and weights: 31.5 (35 1/2, 39½); a unit may follow each.

    >>> decimal_list("80.5 cm (90 cm, 100½ cm)", 0)
    ((80.5, 90.0, 100.5), 24)
    """
    return _read(_DECIMALS, _decimal, plain, at, sizes)


def lists_in(plain: str, start: int, end: int) -> Iterator[tuple[tuple[int, ...], int, int]]:
    """Every list of two numbers or more that is one by itself, with where it stands."""
    at = start
    while found := _DIGITS.search(plain, at, end):
        read = number_list(plain, found.start())
        at = found.end()
        if read and len(read[0]) > 1:
            at = max(at, read[1])
            yield read[0], found.start(), read[1]


_DIGITS = re.compile(r"(?<![\d.,/])\d+")


def _read(
    shape: _Shape, value: Callable[[str], Number], plain: str, at: int, sizes: int
) -> tuple[tuple[Number, ...], int] | None:
    first = shape.number.match(plain, at)
    if not first:
        return None
    for form, least in (
        (shape.chained, 0),
        (shape.grouped, 3),
        (shape.slashed, 3),
        (shape.listed, 0),
    ):
        found = form.match(plain, at)
        if not found:
            continue
        values = tuple(value(each) for each in shape.number.findall(found[0]))
        if form is shape.listed and not (_in_bracket(plain, at) or _is_rising(plain, at, values)):
            continue
        if len(values) == sizes > 1 or (least and len(values) >= least):
            return values, found.end()
    if first[0] == "-":
        return None
    return (value(first[0]),), first.end()


def _in_bracket(plain: str, at: int) -> bool:
    return plain[max(0, at - 4) : at].rstrip()[-1:] in {"(", "[", "{"}


_NUMBERED = re.compile(
    r"\b(?:rows?|rnds?|rounds?|r|markers?|steps?|pages?)\.?\s{0,3}$", re.IGNORECASE
)


def _is_rising(plain: str, at: int, values: Sequence[float]) -> bool:
    """Whether numbers between commas may be those of the sizes, smallest first."""
    rising = all(one <= other for one, other in pairwise(values))
    return len(values) > 2 and rising and not _NUMBERED.search(plain[max(0, at - 12) : at])


def _whole(word: str) -> int:
    return 0 if word == "-" else min(int(word), TOO_MANY)


def _decimal(word: str) -> float:
    if word == "-":
        return 0.0
    total = 0.0
    for each in re.findall(rf"\d+/\d+|\d+(?:[.]\d+)?|[{_PARTS}]", word):
        over, slash, under = each.partition("/")
        if slash:
            total += float(over) / (float(under) or 1.0)
        else:
            total += _VALUE.get(each) or float(each)
    return min(total, float(TOO_MANY))
