"""Yarn as the materials list it: balls, what is in one, and what is needed in all."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from frogless.errors import InputError
from frogless.proofread.facts.lines import Line
from frogless.proofread.facts.model import YarnAmount
from frogless.proofread.facts.notions import colours_in
from frogless.proofread.script.model import Span
from frogless.units import LENGTH_UNITS, parse_length, parse_mass

_N = r"\d{1,3}(?:,\d{3})(?!\d)|\d{1,5}(?:\.\d{1,2})?"
_LIST = rf"(?:{_N})(?:[ ]?[,;(\[/:-][ ]?(?:{_N})){{0,20}}[)\]]?"
_AMOUNT = re.compile(
    rf"(?<![\d.,-])(?<!\d/)(?P<list>{_LIST})[ ]?(?P<unit>met(?:re|er)s?|m|yards?|yds?|grams?|g|kg|ounces?|oz)\b",
    re.IGNORECASE,
)
_BALLS = re.compile(
    rf"(?<![\d.,-])(?<!\d/)(?P<list>{_LIST})(?:[ ]?[x×])?[ ](?:[a-z]+[ ]){{0,2}}?"
    r"(?:(?:\d{1,4}[ -]?(?:g|oz|m|yd)\b[ ]?/?[ ]?){0,3})(?P<ball>balls?|skeins?|hanks?|cones?|cakes?)\b"
    r"|(?<![\d.,-])(?<!\d/)(?P<times>\d{1,3})[ ]?[x×][ ]?(?=\d{1,4}[ ]?g\b)",
    re.IGNORECASE,
)
_YARN = re.compile(
    r"\b(?:yarn|balls?|skeins?|hanks?|cones?|cotton|wool|acrylic|category|worsted|dk)\b"
    r"|\d[ ]?(?:m|yds?|metres|meters|yards)\b",
    re.IGNORECASE,
)
#: Other things that are sold by length or weight.
_OTHER = re.compile(
    r"\b(?:elastic|ribbon|cord|hook|zip|lace|fabric|stuffing|filling|fiberfill|fringe)\b",
    re.IGNORECASE,
)
_CATEGORY = re.compile(
    r"\b(?:category|CYC|weight|#)[ ]?#?(?P<number>[0-7])\b|\((?P<bare>[0-7])\)(?= (?:weight|yarn))",
    re.IGNORECASE,
)
#: "MC white 550 yds, CC plum 550 yds": yarns of one line, each with its color's letters.
_NEXT_COLOUR = re.compile(r"[,;+][ ]{0,4}(?:and )?(?=(?:(?:colou?r )?[A-H]|MC|CC\d?)[ :(])")
_MOST = 20  # amounts in one line
_EACH = re.compile(r"\b(?:per|each|a|to the)\b|[/=@]|^ ?\($", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class _Amount:
    start: int
    end: int
    values: tuple[float, ...]
    length: bool
    metric: bool
    ranged: bool


def yarns_in(line: Line) -> Iterator[YarnAmount]:
    """What one line of the materials says of yarn; nothing when it is about something else."""
    cuts = [found.end() for found in _NEXT_COLOUR.finditer(line.text)][:_MOST]
    bounds = [0, *cuts, len(line.text)]
    parts = [replace(line, text=line.text[a:b], start=line.start + a) for a, b in pairwise(bounds)]
    told = [each for each in map(yarn_in, parts) if each]
    if len(told) > 1 and len(told) >= len(parts) - 1:
        yield told[0]
        for each in told[1:]:
            if each.balls and not each.ball_length:  # of the same yarn
                each = replace(each, ball_mass=told[0].ball_mass, ball_length=told[0].ball_length)
            yield each
    elif whole := yarn_in(line):
        yield whole


def yarn_in(line: Line) -> YarnAmount | None:
    """The yarn of a line that tells of one."""
    if not _YARN.search(line.text):
        return None
    amounts = [
        each
        for each in _amounts(line.text)
        if not each.ranged and not _OTHER.search(_about(line.text, each))
    ]
    amounts = amounts[:_MOST]
    balls = _BALLS.search(line.text)
    counts = _numbers(balls["list"] or balls["times"]) if balls else ()
    if balls:
        # "5 x 50 g balls": the 5 is no list with the 50.
        amounts = [each for each in amounts if not (each.start <= balls.start() < each.end)]
    label = _label(line.text, amounts, bool(balls), balls.end() if balls else 0)
    rest = [each for each in amounts if each not in label]
    category = _CATEGORY.search(line.text)
    if not (amounts or balls):
        return None
    spans = [(a.start, a.end) for a in amounts] + ([balls.span()] if balls else [])
    colour = next(colours_in(line), None)
    return YarnAmount(
        Span(line.start + min(s for s, _ in spans), line.start + max(e for _, e in spans)),
        tuple(int(number) for number in counts if number == int(number)),
        next((a.values[0] for a in label if not a.length), 0.0),
        next((a.values[0] for a in label if a.length), 0.0),
        next((a.values for a in rest if a.length), ()),
        next((a.values for a in rest if not a.length), ()),
        colour.name if colour else "",
        int(category["number"] or category["bare"]) if category else None,
    )


def _about(text: str, amount: _Amount) -> str:
    """The words around an amount, from comma to comma: "1 m of elastic"."""
    before = re.split(r"[,;.:]", text[max(0, amount.start - 40) : amount.start])[-1]
    after = re.split(r"[,;]|(?<!\bin)\.", text[amount.end : amount.end + 40])[0]
    return f"{before} {after}"


def _amounts(text: str) -> Iterator[_Amount]:
    for match in _AMOUNT.finditer(text):
        unit = match["unit"].lower()
        numbers = _numbers(match["list"])
        length = unit in LENGTH_UNITS
        try:
            values = tuple(
                parse_length(f"{n:g} {unit}") if length else parse_mass(f"{n:g} {unit}")
                for n in numbers
            )
        except InputError:
            continue
        ranged = "-" in match["list"] or bool(
            re.match(r"[ ]to[ ]\d", text[match.end() : match.end() + 5])
        )
        ranged = ranged or bool(re.search(r"\d[ ]?\w{0,2}[ ]to[ ]$", text[: match.start()][-10:]))
        if all(0 < value < 1e8 for value in values):
            metric = not unit.startswith(("y", "o"))
            yield _Amount(match.start(), match.end(), values, length, metric, ranged)


def _numbers(text: str) -> tuple[float, ...]:
    plain = re.sub(r"(?<=\d),(?=\d{3}(?!\d))", "", text)
    return tuple(float(n) for n in re.findall(r"\d{1,6}(?:\.\d{1,2})?", plain))


def _label(text: str, amounts: list[_Amount], in_balls: bool, ball: int) -> list[_Amount]:
    """The amounts that are of one ball: mass and length that stand side by side."""
    single = [each for each in amounts if len(each.values) == 1]
    for first in single:
        for second in single:
            if second.start < first.end or first.length == second.length:
                continue
            between = text[first.end : second.start]
            if len(between) <= 30 and _EACH.search(between) and not re.search(r"[.;]\s", between):
                whole = [a for a in single if first.start <= a.start and a.end <= second.end]
                # "50 g / 120 m (131 yds)": the same length again.
                return whole + [
                    a for a in single
                    if a.start >= second.end and text[second.end : a.start].strip(" /") in ("(", "", "=")
                ]  # fmt: skip
    if in_balls:
        # "5 balls (50 g)", "5 x 50 g balls": a mass beside the word is of one.
        return [
            a
            for a in single
            if (not a.length and abs(a.start - ball) <= 12) or (a.end <= ball and ball - a.end <= 8)
        ]
    return []
