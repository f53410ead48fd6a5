"""The stated count of a row in words: "160 dc", "192 sc, 96 picots, 32 ch-1 sps"."""

from __future__ import annotations

from collections import Counter

from frogless.rows.count import CHAIN, row_left
from frogless.rows.nodes import Chain, Row, Together, Work
from frogless.rows.walk import nodes
from frogless.write.ground import is_ring
from frogless.write.hook_places import called
from frogless.write.words import Words

#: A stitch by its key, or a chain space by its number of chains.
Kind = str | int


def say_count(row: Row, words: Words, *, closed: bool = True, more: int = 0) -> str:
    """What the row states that it leaves.

    The stated number is never mended: when the kinds do not add up to it, it stands alone, and the
    proof says so.

    Args:
        closed: whether it is a round.
        more: chains that a foundation chain is made longer by, for the row that is worked into it.
    """
    kinds = _kinds(row, words)
    if not kinds or row_left(row, words.leaves) != row.count or _branches(kinds, words):
        return words.phrases.count("count_st", row.count + more)
    if is_ring(row, words.stitches, closed=closed):
        return words.phrases.count("count_ring", row.count)
    if more:
        kinds[CHAIN] += more
    return ", ".join(_say(kind, n, words) for kind, n in kinds.items())


def first_stitch(row: Row, words: Words) -> str:
    """The key of the first stitch that the body makes; the chain when it makes none.

    An ornament is no stitch: neither is a turning chain as high as one, nor is a round joined to it.
    """
    made = (node.stitch for node, _ in nodes(row.body) if isinstance(node, Work | Together))
    return next((stitch for stitch in made if words.stitches[stitch].leaves), CHAIN)


def stands_for(row: Row, words: Words) -> str:
    """The key of the stitch that a turning chain which counts stands for.

    That is the one the row ends with, or else the first, of those that the dictionary gives a
    turning chain of so many chains; where the design has chosen another chain, the first stitch.
    A chain is no popcorn, cross or star: a stitch that is like another, or stands on several places,
    only where no plain one is.
    """
    made = [node.stitch for node, _ in nodes(row.body) if isinstance(node, Work | Together)]
    alone = [key for key in made if words.stands_on[key] == 1 and words.leaves[key]] or made
    as_high = [key for key in alone if words.stitches[key].turning_chain == row.start.chains]
    as_high = [key for key in as_high if not words.stitches[key].like] or as_high
    if as_high and as_high[-1] == made[-1]:
        return made[-1]
    return next(iter((*as_high, *alone)), first_stitch(row, words))


def _kinds(row: Row, words: Words) -> Counter[Kind]:
    """How many of each kind, in the order met; a turning chain that counts is one of the first.

    A stitch that leaves several places is counted as so many: 10 pairs of crossed stitches are 20.
    """
    kinds: Counter[Kind] = Counter()
    for node, met in nodes(row.body):
        match node:
            case Work(stitch, times):
                kinds[called(stitch, words)] += met * times * (words.leaves[stitch] or 1)
            case Together(stitch, _):
                kinds[called(stitch, words)] += met * (words.leaves[stitch] or 1)
            case Chain(times, True):
                kinds[CHAIN] += met * times
            case Chain(times, False):
                kinds[times] += met * (times > 0)
    if row.start.counts and row.start.chains:
        kinds[called(stands_for(row, words), words)] += 1
    return +kinds


def _branches(kinds: Counter[Kind], words: Words) -> bool:
    """Whether a stitch leaves more places than it stands on, so that its number tells too little."""
    leaves, stands_on = words.leaves, words.stands_on
    return any(leaves[one] > max(stands_on[one], 1) for one in kinds if isinstance(one, str))


def _say(kind: Kind, n: int, words: Words) -> str:
    if isinstance(kind, int):
        return words.phrases.count("count_space", n, chain=words.chain, chains=kind)
    plural = words.stitches[kind].kind in ("ornament", "trim")
    name = "count_ornament" if plural else "count_stitch"
    return words.phrases.count(name, n, stitch=words.stitch(kind))
