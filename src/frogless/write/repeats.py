"""Where a list of things repeats, so that as little as possible is left to read."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Generic, TypeVar

T = TypeVar("T", bound=Hashable)


@dataclass(frozen=True, slots=True)
class Repeated(Generic[T]):
    """Items to be worked so many times."""

    items: tuple[T | Repeated[T], ...]
    times: int


Gathered = tuple[T | Repeated[T], ...]


def shortest(items: Sequence[T], *, depth: int = 1, least: int = 2) -> Gathered[T]:
    """The items with what repeats gathered.

    Of equally short ones that with the fewest brackets, then the one that begins its repeat first.

    Exact: from the end back, each point takes the shortest of what can begin there.

    Args:
        depth: how deep repeats may lie in repeats.
        least: how often a thing is there before it is a repeat.
    """

    @cache
    def best_of(part: tuple[T, ...], deep: int) -> Gathered[T]:
        best: list[Gathered[T]] = [()]
        for at in range(len(part) - 1, -1, -1):
            choices: list[Gathered[T]] = []
            for length, times in _repeats(part, at, least) if deep else ():
                inner = best_of(part[at : at + length], deep - 1)
                choices.append((Repeated(inner, times), *best[-length * times]))
            best.append(min([*choices, (part[at], *best[-1])], key=_to_read))
        return best[-1]

    return best_of(tuple(items), depth)


def say_shortest(
    items: Sequence[T],
    say: Callable[[T], str],
    bracket: Callable[[str, int], str],
    *,
    depth: int = 1,
    least: int = 2,
) -> tuple[str, ...]:
    """The items in words, with what repeats in brackets; `depth` and `least` as in `shortest`."""

    def said(gathered: Gathered[T]) -> Iterator[str]:
        for item in gathered:
            if isinstance(item, Repeated):
                yield bracket(", ".join(said(item.items)), item.times)
            else:
                yield say(item)

    return tuple(said(shortest(items, depth=depth, least=least)))


def _to_read(items: Sequence[object]) -> tuple[int, int]:
    """How much there is to read, items and pairs of brackets; and how much of it is brackets."""
    inner = [_to_read(item.items) for item in items if isinstance(item, Repeated)]
    return len(items) + sum(n for n, _ in inner), len(inner) + sum(n for _, n in inner)


def _repeats(items: Sequence[object], at: int, least: int) -> Iterator[tuple[int, int]]:
    """Length and times of what repeats from a point on, each length as often as it goes."""
    for length in range(1, (len(items) - at) // least + 1):
        unit, times = items[at : at + length], 1
        while items[at + length * times : at + length * (times + 1)] == unit:
            times += 1
        if times >= least:
            yield length, times
