"""Two texts line by line: what was taken away, what was added, with some lines around it."""

from __future__ import annotations

import json
import re
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher
from typing import Literal

Sort = Literal["same", "added", "removed", "left out"]

TITLE = re.compile(r'^[ \t]*title[ \t]*=[ \t]*("(?:[^"\\\n]|\\.)*"|\'[^\'\n]*\')', re.MULTILINE)
FIRST_TABLE = re.compile(r"^[ \t]*\[", re.MULTILINE)
"""A title stands above the first table."""

AROUND = 2
MOST_LINES = 6_000
MOST_PAIRS = 20_000
"""Lines of both, and pairs of them that are the same; texts with more are held against each other
as two blocks.

An example has some hundred. Lines that come again thousands of times would take minutes.
"""

Group = tuple[str, int, int, int, int]


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the comparison: its number before and now (None where it is not)."""

    sort: Sort
    text: str
    before: int | None = None
    now: int | None = None


def compared(before: str, now: str) -> tuple[Line, ...]:
    """The lines of two texts; unchanged ones far from any change are folded into one "left out"."""
    old, new = before.splitlines(), now.splitlines()
    return tuple(_lines(old, new))


def counted(lines: Sequence[Line]) -> tuple[int, int]:
    """How many lines were added and removed."""
    sorts = [line.sort for line in lines]
    return sorts.count("added"), sorts.count("removed")


def told(before: str, now: str) -> str:
    """What was done to a text, for whoever may want it undone: "lines 3 to 5 changed"."""
    places: list[int] = []
    for line in compared(before, now):
        if line.sort in ("added", "removed"):
            places.append(line.now if line.now is not None else _beside(line.before, places))
    if not places:
        return "the text changed"
    first, last = min(places), max(places)
    return f"line {first} changed" if first == last else f"lines {first} to {last} changed"


def retitled(text: str, title: str) -> str | None:
    """The text of a design with another title, every other letter as it was; None when it has none.

    >>> retitled('format = "frogless-design/1"\\ntitle = "One"   # mine\\n', "Two")
    'format = "frogless-design/1"\\ntitle = "Two"   # mine\\n'
    """
    head = FIRST_TABLE.search(text)
    found = TITLE.search(text, 0, head.start() if head else len(text))
    if found is None:
        return None
    written = json.dumps(title, ensure_ascii=False)
    return text[: found.start(1)] + written + text[found.end(1) :]


def _beside(before: int | None, places: Sequence[int]) -> int:
    return places[-1] if places else before or 1


def _lines(old: Sequence[str], new: Sequence[str]) -> Iterator[Line]:
    groups = list(_groups(old, new))
    for number, (tag, i1, i2, j1, j2) in enumerate(groups):
        if tag != "equal":
            yield from (Line("removed", old[i], i + 1, None) for i in range(i1, i2))
            yield from (Line("added", new[j], None, j + 1) for j in range(j1, j2))
            continue
        head = 0 if number == 0 else AROUND
        tail = 0 if number == len(groups) - 1 else AROUND
        yield from _unchanged(new, i1, i2, j1, head, tail)


def _unchanged(
    new: Sequence[str], i1: int, i2: int, j1: int, head: int, tail: int
) -> Iterator[Line]:
    length = i2 - i1
    shown = set(range(min(head, length))) | set(range(max(0, length - tail), length))
    if length - len(shown) <= 1:
        shown = set(range(length))
    for k in range(length):
        if k in shown:
            yield Line("same", new[j1 + k], i1 + k + 1, j1 + k + 1)
        elif k - 1 in shown or k == 0:
            yield Line("left out", f"{length - len(shown)} lines are the same")


def _groups(old: Sequence[str], new: Sequence[str]) -> Sequence[Group]:
    """What to do to the old lines, as `SequenceMatcher` tells it; what begins and ends alike first."""
    head = _alike(old, new)
    tail = _alike(old[head:][::-1], new[head:][::-1])
    ends = len(old) - tail, len(new) - tail
    inner = _inner(old[head : ends[0]], new[head : ends[1]])
    groups = [("equal", 0, head, 0, head)] if head else []
    groups += [(tag, i + head, j + head, k + head, m + head) for tag, i, j, k, m in inner]
    return [*groups, ("equal", ends[0], len(old), ends[1], len(new))] if tail else groups


def _alike(old: Sequence[str], new: Sequence[str]) -> int:
    """How many lines are the same from the beginning."""
    pairs = enumerate(zip(old, new, strict=False))
    return next((n for n, (one, other) in pairs if one != other), min(len(old), len(new)))


def _inner(old: Sequence[str], new: Sequence[str]) -> Sequence[Group]:
    if not old and not new:
        return []
    there = Counter(new)
    if len(old) + len(new) > MOST_LINES or sum(there[line] for line in old) > MOST_PAIRS:
        return [("replace", 0, len(old), 0, len(new))]
    return SequenceMatcher(None, old, new, autojunk=False).get_opcodes()
