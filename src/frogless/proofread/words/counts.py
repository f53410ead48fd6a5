"""What a remark says of chains: "counts as first dc and ch-1 sp", "does not count as a st"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import takewhile

from frogless.proofread.script.model import Span
from frogless.proofread.words.model import Numbers
from frogless.proofread.words.structure import Item
from frogless.proofread.words.tokens import Token


@dataclass(frozen=True, slots=True)
class Counts:
    """Whether chains count, as which stitch, and how many chains of them are a space after it.

    Args:
        skipped: it is said of chains that are skipped at a foundation chain.
    """

    span: Span
    counts: bool
    stitch: str = ""
    space: int = 0
    skipped: bool = False


def counts_of(items: Sequence[Item]) -> Counts | None:
    """What words in brackets, or between commas, say of the chains before; None: nothing."""
    at = next((n for n, each in enumerate(items) if each.kind == "COUNT"), None)
    if [each.kind for each in items] in (["NOT", "ST"], ["NOT", "COUNT"]):
        return Counts(Span(items[0].start, items[-1].end), counts=False)
    if at is None and items[0].kind == "DASH" and getattr(items[0], "value", "") == "=":
        at = 0
    if at and [each.kind for each in items[:2]] in (["NUM", "STITCH"], ["NUM", "ST"]):
        return None  # "(7 tr, counting the turning ch)": a count of the row
    if at is None or any(not isinstance(each, Token) for each in items):
        return None
    span = Span(items[0].start, items[-1].end)
    skipped = any(each.kind in ("SKIP", "TCH") for each in items[:at])
    if any(each.kind == "NOT" for each in items[: at + 2]):
        return Counts(span, counts=False, skipped=skipped)
    after = [each for each in items[at + 1 :] if isinstance(each, Token)]
    after = list(takewhile(lambda each: each.kind != "IN", after))  # where it stands
    if not after and at == 0:
        return Counts(span, counts=True, skipped=skipped)
    stitch = next((str(each.value) for each in after if each.kind == "STITCH"), "")
    return Counts(span, counts=True, stitch=stitch, space=_space(after), skipped=skipped)


def _space(after: Sequence[Token]) -> int:
    """The chains of "dc, ch 1", "dc and ch-1 sp", "tr + 2 ch"."""
    for n, each in enumerate(after):
        value: object = None
        if each.kind == "CH_SP":
            value = each.value
        elif each.kind == "CH":
            near = [w for w in after[max(0, n - 1) : n + 2] if w.kind == "NUM"]
            value = near[-1].value if near else 0
        if isinstance(value, Numbers):
            return value.values[0]
    return 0
