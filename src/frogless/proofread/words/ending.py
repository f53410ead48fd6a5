"""Repeats whose last time ends otherwise: "omitting the last sc", "ending last rep with 3 dc in last st"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from frogless.proofread.script.model import Span
from frogless.proofread.words.model import Act, Bare, Chain, Extent, Into, Numbers, Repeat, Skip
from frogless.proofread.words.structure import Item


@dataclass(frozen=True, slots=True)
class Ending:
    """The last time of the repeat before ends otherwise.

    Args:
        omits: the stitch left out; None of one that ends with something else, "" of any.
        first: what stands in the place of its end, the first act of it.
    """

    span: Span
    omits: str | None = None
    first: Act | None = None


def ending_at(items: Sequence[Item]) -> tuple[int, int]:
    """Where "ending last rep with" stands in a clause, and where what it ends with begins; (0, 0)."""
    kinds = [each.kind for each in items]
    for at, kind in enumerate(kinds):
        if kind != "END_WITH" or kinds[at + 1 : at + 3] != ["LAST", "REP"]:
            continue
        end = at + 3 + (kinds[at + 3 : at + 4] == ["WITH"])
        if kinds[at + 3 : at + 4] == ["WITH"] and end < len(items):
            return at, end
    return 0, 0


def omitted(items: Sequence[Item]) -> Ending | None:
    """ "omitting the last sc", "omit last ch 3 of last rep"; None of anything else."""
    kinds = [each.kind for each in items]
    if kinds[:1] != ["OMIT"]:
        return None
    rest = kinds[1:]
    ends = rest[-5:] == ["AT", "END_WITH", "OF", "LAST", "REP"]
    rest = rest[:-5] if ends else rest
    for tail in (["IN", "LAST", "REP"], ["OF", "LAST", "REP"], ["AT", "END_WITH"]):
        if rest[-3:] == tail:
            rest = rest[:-3]
    shape = [each for each in rest if each not in ("LAST", "NUM", "FINAL")]
    if "LAST" not in kinds or shape not in (["STITCH"], ["ST"], ["CH"]):
        return None
    named = next(each for each in items if each.kind in ("STITCH", "ST", "CH"))
    stitch = str(getattr(named, "value", "")) if named.kind == "STITCH" else ""
    span = Span(items[0].start, items[-1].end)
    return Ending(span, "chain" if named.kind == "CH" else stitch)


def ended(repeat: Repeat, ending: Ending) -> tuple[Act, ...] | None:
    """The repeat with another end: A B; rep from *, omitting the last B, is A, then B and A again.

    None where the repeat does not end with what is left out.
    """
    body = repeat.body if ending.omits is None else _unfolded(repeat.body)
    cut = _cut(body, ending)
    if cut is None or repeat.extent.kind not in ("end", "unsaid", "times"):
        return None
    first, rest = body[:cut], body[cut:]
    extent = repeat.extent if repeat.extent.kind != "unsaid" else Extent("end")
    if extent.kind == "times" and extent.times and not repeat.more:
        less = tuple(max(0, each - 1) for each in extent.times.values)
        extent = Extent("times", Numbers(less, extent.times.span))
    again = replace(repeat, body=(*rest, *first), extent=extent, more=False, in_place=False)
    return (*first, again)


def _unfolded(body: tuple[Act, ...]) -> tuple[Act, ...]:
    """ "sc in next 3 sts" at the end of a repeat as two and one, so that one may be left out."""
    last = body[-1] if body else None
    if not isinstance(last, Into) or last.extent.kind != "times" or not last.extent.times:
        return body
    times = last.extent.times
    if len(times.values) != 1 or times.values[0] < 2:
        return body
    some = Extent("times", Numbers((times.values[0] - 1,), times.span))
    one = Extent("times", Numbers((1,), times.span))
    return (*body[:-1], replace(last, extent=some), replace(last, extent=one))


def _cut(body: tuple[Act, ...], ending: Ending) -> int | None:
    """From which act on the end of the repeat is another."""
    if isinstance(ending.first, Chain):
        chains = (at for at in range(len(body) - 1, -1, -1) if isinstance(body[at], Chain))
        return next(chains, len(body) - 1)
    if len(body) < 2:
        return None
    if ending.omits is not None:
        stitch, times = _worked(body[-1])
        once = times == (1,) or ending.omits == "chain"
        return len(body) - 1 if once and ending.omits in ("", stitch) else None
    alike = (
        at
        for at in range(len(body) - 1, -1, -1)
        if ending.first is not None and _worked(body[at]) == _worked(ending.first)
    )
    cut = next(alike, len(body) - 1)
    if not cut and any(not isinstance(each, Chain | Skip) for each in body[1:]):
        cut = len(body) - 1
    if isinstance(body[-1], Skip) and cut == len(body) - 1:
        return 0  # "…, sk 2; ending last rep with sc in last st": after the last of the repeats
    return cut


def _worked(act: Act) -> tuple[str, tuple[int, ...]]:
    """Which stitch an act works, and how many of it into one place."""
    if isinstance(act, Into) and len(act.body) == 1:
        return _worked(act.body[0])
    if isinstance(act, Bare):
        return act.stitch, act.times.values if act.times else (1,)
    if isinstance(act, Chain):
        return "chain", act.times.values
    if isinstance(act, Skip):
        return "skip", act.times.values if act.times else (1,)
    return "", ()
