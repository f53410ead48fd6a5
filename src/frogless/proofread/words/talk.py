"""Which sentences of a row are talk, and which words begin work."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from frogless.proofread.words.build import SLIP
from frogless.proofread.words.structure import Item
from frogless.proofread.words.tokens import Token

#: Words of a sentence on markers that are looked at.
MOST_MARKED = 400
#: What markers and their places are told with.
_MARKING = frozenset({
    "WORD", "WORK", "MARKED", "NUM", "ORD", "COMMA", "RANGE", "DASH", "AND", "IN", "ST", "OF", "EACH", "INC",
    "DEC", "STOP", "NEXT", "FIRST", "LAST", "SAME",
})  # fmt: skip
#: What work is told with; a sentence that has none of it, but other words, is no work.
_WORK = frozenset({
    "STITCH", "INC", "DEC", "CH", "TOGETHER", "SKIP", "NTIMES", "REP", "REP_FROM", "STAR", "ACROSS",
    "AROUND", "ROW_REF", "TURN", "LEAVE", "COUNT", "TCH", "CH_SP", "MAGIC", "GROUP", "STARRED", "EVENLY",
    "EVEN", "UNTIL", "CONT", "JOIN", "NO_JOIN", "AS", "TO_JOIN", "COLOUR",
})  # fmt: skip
_SURE = frozenset({"INC", "DEC", "TOGETHER", "SKIP", "GROUP", "STARRED"})


def sentences_of(items: Sequence[Item]) -> Iterator[Sequence[Item]]:
    """What stands between full stops, each with the stop that ends it."""
    start = 0
    for at, item in enumerate(items):
        if item.kind == "STOP":
            if at > start:
                yield items[start : at + 1]
            start = at + 1
    if start < len(items):
        yield items[start:]


def is_of_markers(sentence: Sequence[Item]) -> bool:
    """ "Place marker 1 in the 3rd st and markers 2-5 in the 1st st of each increase."."""
    kinds = [each.kind for each in sentence[:MOST_MARKED]]
    if "MARKED" not in kinds[:4] or kinds[0] not in ("WORD", "WORK") or set(kinds) - _MARKING:
        return False
    return all(
        kind not in ("INC", "DEC") or kinds[at - 1] in ("OF", "EACH")
        for at, kind in enumerate(kinds)
    )


def is_work(first: Item) -> bool:
    """Whether what begins so is work and no remark: no pattern has to be tried."""
    if first.kind == "STITCH" and isinstance(first, Token):
        return first.value != SLIP
    return first.kind in _SURE


def says_no_work(sentence: Sequence[Item]) -> bool:
    """Words without a stitch, a number or a repeat among them: "Now put on some music."."""
    words = sum(each.kind == "WORD" for each in sentence)
    if not words and all(each.kind in ("NUM", "DASH", "STOP", "OTHER") for each in sentence):
        # the number of a page
        return sum(each.kind == "NUM" for each in sentence) == 1 and len(sentence) < 4
    if len(sentence) == 2 and words and getattr(sentence[1], "value", "") == "!":
        return True
    numbers = any(each.kind in ("NUM", "ORD", "LENGTH") for each in sentence)
    return words > (3 if numbers else 1) and not any(each.kind in _WORK for each in sentence)
