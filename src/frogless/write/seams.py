"""Seams in words: which edges, with which stitch, and how the longer is spread over the shorter."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from frogless.rows.nodes import Base, Seam
from frogless.write.fold import Line
from frogless.write.words import Words

#: So many of the seam's stitches in each of so many next places.
Run = tuple[int, int]

#: Brackets within brackets within brackets are more than a maker can keep count of.
DEEPEST = 2


def say_seam(seam: Seam, words: Words) -> Line:
    """A seam as a line of its own."""
    phrases = words.phrases
    text = phrases.say(
        "seam_spread" if seam.spread else "seam_even",
        stitch=words.stitch(seam.stitch),
        first=_along(seam.count, seam.first, words),
        second=_along(seam.over, seam.second, words),
        spread=say_spread(seam.spread, words),
    )
    count = phrases.count("count_stitch", seam.count, stitch=words.stitch(seam.stitch))
    label = phrases.say("seam", name=seam.name)
    return Line(0, 0, label, text[:1].upper() + text[1:], count)


def say_edge(base: Base, words: Words) -> str:
    """The edge of a piece: "the foundation edge of skirt"."""
    return words.phrases.say(f"edge_{base.edge}", piece=base.piece)


def say_spread(spread: Sequence[int], words: Words) -> str:
    """How many stitches each place takes: "[2 in next, 1 in next 3] 4 times, 2 in next"."""
    runs = tuple((k, len(list(group))) for k, group in groupby(spread))
    return ", ".join(_say_repeats(runs, words))


def _along(n: int, base: Base, words: Words) -> str:
    return words.phrases.count(f"along_{base.edge}", n, piece=base.piece)


def _say_repeats(runs: tuple[Run, ...], words: Words, depth: int = 0) -> list[str]:
    """The runs, with the longest repeat at each point in square brackets, two deep at most."""
    items: list[str] = []
    at = 0
    while at < len(runs):
        length, times = _longest_repeat(runs, at) if depth < DEEPEST else (1, 1)
        if times > 1:
            inner = ", ".join(_say_repeats(runs[at : at + length], words, depth + 1))
            items.append(words.phrases.count("times", times, items=inner))
        else:
            k, n = runs[at]
            items.append(words.phrases.count("spread", n, k=k))
        at += length * times
    return items


def _longest_repeat(runs: tuple[Run, ...], at: int) -> tuple[int, int]:
    """Length and times of the repeat that covers most from `at` on; (1, 1) when nothing repeats."""
    best = (1, 1)
    for length in range(1, (len(runs) - at) // 2 + 1):
        unit, times = runs[at : at + length], 1
        while runs[at + length * times : at + length * (times + 1)] == unit:
            times += 1
        if times > 1 and length * times > best[0] * best[1]:
            best = (length, times)
    return best
