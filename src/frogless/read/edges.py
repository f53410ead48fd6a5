"""Stretches of edges from the words for them: what a piece is begun on, what a seam joins."""

from __future__ import annotations

import re

from frogless.errors import InputError
from frogless.rows.nodes import Base, Edge

_PLACE = r"(?:sts?|chs?|row ends?|rings?|places?)"
#: Each way to name an edge; the longer names before those that they begin with.
_NAMES: tuple[tuple[str, Edge], ...] = (
    (r"the row ends at the right edge of", "right_edge"),
    (r"the row ends at the left edge of", "left_edge"),
    (r"\d+ row ends? at the right edge of", "right_edge"),
    (r"\d+ row ends? at the left edge of", "left_edge"),
    (r"the row ends of", "row_ends"),
    (r"\d+ row ends? of", "row_ends"),
    (r"(?:{along})?the foundation edge of", "foundation"),
    (r"(?:{along})?the last row of", "last_row"),
    (r"(?:{along})?the underside of the foundation of", "underside"),
    (r"(?:{along})?the top of the foundation of", "row"),
    (r"(?:{along})?the underside of (?:rnd|round|row) (?P<row>\d+) of", "underside"),
    (r"(?:{along})?(?:rnd|round|row) (?P<row>\d+) of", "row"),
)
_ALONG = rf"\d+ {_PLACE} along "
_TAIL = (
    r" (?P<piece>.+?)"
    rf"(?: from {_PLACE} (?P<on>\d+) on| \((?P<from>from )?{_PLACE} (?P<first>\d+)"
    r"(?:[–-](?P<last>\d+))?\))?(?P<back>, from last to first)?"
)
_EDGES = tuple((re.compile(name.replace("{along}", _ALONG) + _TAIL), edge) for name, edge in _NAMES)
_MADE_UP = re.compile(rf"(?P<n>\d+) {_PLACE}, made up of (?P<edges>.+)")
_COUNT = re.compile(rf"(?P<n>\d+) {_PLACE} (?:along|of|at) ")


def read_stretches(text: str) -> tuple[Base, ...]:
    """The stretches that a text tells of, one after the other: "…, then …".

    Raises:
        InputError: a stretch that is not understood, or whose numbers do not add up.
    """
    return tuple(_stretch(part) for part in text.split(", then "))


def read_along(text: str) -> tuple[int, tuple[Base, ...]]:
    """So many places along an edge, and the stretches it is made of.

    Raises:
        InputError: as `read_stretches`.
    """
    if found := _MADE_UP.fullmatch(text):
        return int(found["n"]), read_stretches(found["edges"])
    counted = _COUNT.match(text)
    if counted is None:
        raise _not_understood(text)
    return int(counted["n"]), (_stretch(text),)


def _stretch(text: str) -> Base:
    for pattern, edge in _EDGES:
        if found := pattern.fullmatch(text):
            return _base(found, edge, text)
    raise _not_understood(text)


def _base(found: re.Match[str], edge: Edge, text: str) -> Base:
    groups = found.groupdict()
    first, count = int(groups["on"] or groups["first"] or 1) - 1, None
    if groups["first"]:
        count = 0 if groups["from"] else int(groups["last"] or groups["first"]) - first
        told = _COUNT.match(text)
        if told and int(told["n"]) != count:
            raise InputError(f'"{text}": from the first number to the last are {count} places')
    row = int(groups.get("row") or 0)
    return Base(groups["piece"], edge, row, first, count, bool(groups["back"]))


def _not_understood(text: str) -> InputError:
    return InputError(
        f'"{text}" is no edge; write for example "52 sts along rnd 22 of yoke (sts 38–89)", '
        '"the foundation edge of skirt", "the row ends at the right edge of back"'
    )
