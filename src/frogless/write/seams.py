"""Seams in words: which edges, with which stitch, and how the longer is spread over the shorter."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from itertools import groupby

from frogless.rows.nodes import Seam
from frogless.rows.spread import even_spread
from frogless.write.edges import say_along
from frogless.write.evenly import say_shares
from frogless.write.fold import Line
from frogless.write.repeats import say_shortest
from frogless.write.words import Words

#: So many of the seam's stitches in each of so many next places.
Run = tuple[int, int]

#: Brackets within brackets within brackets are more than a maker can keep count of.
DEEPEST = 2


def say_seam(seam: Seam, words: Words, rounds: Collection[str] = ()) -> Line:
    """A seam as a line of its own.

    Args:
        rounds: names of the pieces that are worked in rounds.
    """
    phrases = words.phrases
    wording, told = _wording(seam, words)
    text = phrases.say(
        wording,
        stitch=words.stitch(seam.stitch),
        first=say_along(seam.count, seam.first, words, rounds),
        second=say_along(seam.over, seam.second, words, rounds),
        told=told,
    )
    count = phrases.count("count_stitch", seam.count, stitch=words.stitch(seam.stitch))
    label = phrases.say("seam", name=seam.name)
    return Line(0, 0, label, text[:1].upper() + text[1:], count)


def _wording(seam: Seam, words: Words) -> tuple[str, str]:
    """The phrase, and how the spread is told in it.

    An even spread is told by how many take how many: nobody works from a list of a hundred.
    """
    if not seam.spread:
        return "seam_even", ""
    if seam.spread == (1,) * seam.over:
        return "seam_each", ""
    if len(set(seam.spread)) > 1 and seam.spread == even_spread(seam.count, seam.over):
        return "seam_shares", say_shares(seam.spread, words)
    return "seam_spread", say_spread(seam.spread, words)


def say_spread(spread: Sequence[int], words: Words) -> str:
    """How many stitches each place takes: "[2 in next, 1 in each of next 3] 4 times, 2 in next"."""
    runs = tuple((k, len(list(group))) for k, group in groupby(spread))
    items = say_shortest(
        runs,
        lambda run: words.phrases.count("spread", run[1], k=run[0]),
        lambda inner, times: words.phrases.count("times", times, items=inner),
        depth=DEEPEST,
    )
    return ", ".join(items)
