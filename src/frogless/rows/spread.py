"""Spreading evenly: what `spread evenly` means, wherever it is planned, written or read."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from frogless.rows.nodes import Into, Node, Repeat, Skip, Work


def even_spread(count: int, over: int) -> tuple[int, ...]:
    """How many of `count` each of `over` places takes; they differ by one at most.

    Source: ⌊n/k⌋ and ⌈n/k⌉, the larger ones spread too (Toussaint, The Euclidean algorithm
    generates traditional musical rhythms, BRIDGES 2005; common practice).

    >>> even_spread(10, 4)
    (2, 3, 2, 3)
    """
    ends = [i * count // over for i in range(over + 1)]
    return tuple(b - a for a, b in itertools.pairwise(ends))


def apportioned(count: int, shares: Sequence[float]) -> tuple[int, ...]:
    """`count` divided in proportion to `shares`, in whole numbers that add up to it.

    Each gets the whole part of what is due to it; what is left goes to the largest remainders.
    Equal shares are treated alike where that can be: the two sides of a neck, say.

    Source: largest remainders, common practice.

    >>> apportioned(41, (100.0, 210.0, 100.0))
    (10, 21, 10)
    """
    due = [count * share / sum(shares) for share in shares]
    given = [int(each + 1e-9) for each in due]
    rest = [round(each - whole, 9) for each, whole in zip(due, given, strict=True)]
    order = sorted(range(len(rest)), key=lambda i: -rest[i])
    more: list[int] = []
    for _, alike in itertools.groupby(order, key=lambda i: rest[i]):
        them = list(alike)
        if len(more) + len(them) <= count - sum(given):
            more += them
    more += [i for i in order if i not in more]
    for i in more[: count - sum(given)]:
        given[i] += 1
    return tuple(given)


def worked_over(stitch: str, spread: Sequence[int]) -> tuple[Node, ...]:
    """A body that works so many of `stitch` into each place; what repeats is folded.

    >>> worked_over("single_crochet", (1, 2) * 6)[0].times
    6
    """
    return tuple(_folded(stitch, _words(spread)))


def _words(spread: Sequence[int]) -> list[tuple[int, ...]]:
    """The spread cut at what is rarer in it: before it when it begins with that, else after it."""
    values = sorted(set(spread), reverse=True)
    rarer = min(values, key=list(spread).count, default=0)
    at = [i for i, many in enumerate(spread) if many == rarer]
    if len(values) < 2:
        at = []
    elif spread[0] != rarer:
        at = [i + 1 for i in at]
    cuts = [0, *(i for i in at if 0 < i < len(spread)), len(spread)]
    return [tuple(spread[a:b]) for a, b in itertools.pairwise(cuts) if b > a]


def _folded(stitch: str, words: Sequence[tuple[int, ...]]) -> list[Node]:
    """From each word on, the run of words that comes again most is one repeat."""
    nodes: list[Node] = []
    i = 0
    while i < len(words):
        length, times = max(
            ((p, _times(words[i:], p)) for p in range(1, (len(words) - i) // 2 + 1)),
            key=lambda found: (found[0] * found[1] if found[1] > 1 else 0, -found[0]),
            default=(1, 1),
        )
        if times < 2:
            nodes += _plain(stitch, words[i])
            i += 1
            continue
        once = words[i : i + length]
        inner = _folded(stitch, once) if length > 1 else _plain(stitch, once[0])
        nodes.append(Repeat(tuple(inner), times))
        i += length * times
    return nodes


def _times(words: Sequence[tuple[int, ...]], period: int) -> int:
    """How often the first `period` words come again, one after the other."""
    times = 1
    while words[times * period : (times + 1) * period] == words[:period]:
        times += 1
    return times


def _plain(stitch: str, word: Sequence[int]) -> list[Node]:
    """Each run of places that take as many: one in each, none, or several in one."""
    nodes: list[Node] = []
    for many, run in itertools.groupby(word):
        length = len(list(run))
        if many > 1:
            inside: list[Node] = [Into((Work(stitch, many),))]
            nodes += inside if length == 1 else [Repeat(tuple(inside), length)]
        else:
            nodes.append(Work(stitch, length) if many else Skip(length))
    return nodes
