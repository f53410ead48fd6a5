"""The stated count of a row in words: "160 dc", "192 sc, 96 picots, 32 ch-1 sps"."""

from __future__ import annotations

from collections import Counter

from frogless.rows.count import row_left
from frogless.rows.nodes import Chain, Row, Together, Work
from frogless.rows.walk import nodes
from frogless.write.words import Words

#: A stitch by its key, or a chain space by its number of chains.
Kind = str | int


def say_count(row: Row, words: Words) -> str:
    """What the row states that it leaves.

    The stated number is never mended: when the kinds do not add up to it, it stands alone, and the
    proof says so.
    """
    kinds = _kinds(row)
    if not kinds or row_left(row, words.leaves) != row.count:
        return words.phrases.count("count_st", row.count)
    return ", ".join(_say(kind, n, words) for kind, n in kinds.items())


def first_stitch(row: Row) -> str | None:
    """The key of the first stitch of the body; None when it has only chains."""
    for node, _ in nodes(row.body):
        if isinstance(node, Work | Together):
            return node.stitch
    return None


def _kinds(row: Row) -> Counter[Kind]:
    """How many of each kind, in the order met; a turning chain that counts is one of the first."""
    kinds: Counter[Kind] = Counter()
    for node, met in nodes(row.body):
        match node:
            case Work(stitch, times):
                kinds[stitch] += met * times
            case Together(stitch, _):
                kinds[stitch] += met
            case Chain(times, True):
                kinds["chain"] += met * times
            case Chain(times, False):
                kinds[times] += met
    first = first_stitch(row)
    if row.start.counts and first:
        kinds[first] += 1
    return kinds


def _say(kind: Kind, n: int, words: Words) -> str:
    if isinstance(kind, int):
        return words.phrases.count("count_space", n, chain=words.chain, chains=kind)
    plural = words.stitches[kind].kind in ("ornament", "trim")
    name = "count_ornament" if plural else "count_stitch"
    return words.phrases.count(name, n, stitch=words.stitch(kind))
