"""Two texts line by line: what was taken away, what was added, with some lines around it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from frogless.studio.compare import groups

Sort = Literal["same", "added", "removed", "left out"]

AROUND = 2


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


def _beside(before: int | None, places: Sequence[int]) -> int:
    return places[-1] if places else before or 1


def _lines(old: Sequence[str], new: Sequence[str]) -> Iterator[Line]:
    found = groups(old, new)
    for number, (tag, i1, i2, j1, j2) in enumerate(found):
        if tag != "equal":
            yield from (Line("removed", old[i], i + 1, None) for i in range(i1, i2))
            yield from (Line("added", new[j], None, j + 1) for j in range(j1, j2))
            continue
        head = 0 if number == 0 else AROUND
        tail = 0 if number == len(found) - 1 else AROUND
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
