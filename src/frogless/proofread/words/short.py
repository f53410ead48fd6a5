"""What is said in short: "work even", "MR 6", "repeat around"."""

from __future__ import annotations

from collections.abc import Sequence

from frogless.proofread.script.model import Span
from frogless.proofread.words.build import AgainBefore
from frogless.proofread.words.model import (
    Act,
    Again,
    Bare,
    Chain,
    Evenly,
    Extent,
    Into,
    Numbers,
    Ring,
    Target,
)
from frogless.proofread.words.order import MOST_TRIED
from frogless.proofread.words.structure import Item, span_of
from frogless.proofread.words.tokens import Times, Token


def in_short(items: Sequence[Item]) -> tuple[Act, ...]:
    """ "dec evenly to 40 sts", "MR 6", "work even"."""
    kinds = " ".join(each.kind for each in items[:MOST_TRIED])
    numbers = next((e.value for e in items if e.kind == "NUM" and isinstance(e, Token)), None)
    span = span_of(items)
    if kinds == "SAME":
        return (Again(span, name="same"),)
    if kinds == "CONT EVEN":
        return (Again(span, name="pattern"),)  # "continue as set"
    if kinds in ("WORK EVEN", "WORK EVEN EVEN"):
        return (Again(span, name="even", rows=Numbers((1,), span)),)
    if not isinstance(numbers, Numbers):
        return ()
    if kinds in ("INC EVENLY TO NUM ST", "DEC EVENLY TO NUM ST"):
        return (Evenly(span, "", total=numbers, sense=1 if kinds.startswith("INC") else -1),)
    if kinds in ("NUM TO_TURN", "NUM MORE TO_TURN", "PLUS NUM TO_TURN"):
        return (Chain(span, numbers),)
    if kinds == "MAGIC NUM":
        into = Into(span, (Bare(span, "", numbers),), Target("ring"), once(span))
        return Ring(items[0].span), into
    return ()


def again_before(items: Sequence[Item]) -> AgainBefore | None:
    """ "repeat around", "repeat 4 times", "repeat 5 more times"."""
    if len(items) == 1 and items[0].kind in ("ACROSS", "AROUND"):
        return AgainBefore(span_of(items), Extent("end"), more=False, doubtful=True)
    if items[0].kind == "NTIMES":
        items = [items[0], *items]
    kinds = [each.kind for each in items]
    if kinds[:1] not in (["REP"], ["NTIMES"]) or len(kinds) > 2:
        return None
    span = span_of(items)
    if (
        kinds[1:] == ["NTIMES"]
        and isinstance(items[1], Token)
        and isinstance(items[1].value, Times)
    ):
        times = items[1].value
        return AgainBefore(
            span, Extent("times", times.times), times.more, not (times.more or times.total)
        )
    if kinds[1:] and kinds[1] in ("ACROSS", "AROUND"):
        return AgainBefore(span, Extent("end"), more=False, doubtful=False)
    return None


def once(span: Span) -> Extent:
    """One time, which nobody says."""
    return Extent("times", Numbers((1,), span))
