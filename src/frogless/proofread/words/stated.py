"""Counts that a row states: "(90 sts)", "- 64 dc, 32 ch-2 sps", "(+6 sts)", "= 12"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Literal

from frogless.proofread.script.model import Span
from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.words.model import Numbers, Stated
from frogless.proofread.words.structure import Group, Item
from frogless.proofread.words.tokens import Times, Token

Kind = Literal["stitch", "space", "chain", "group", "any"]
_BETWEEN = frozenset({"COMMA", "AND", "SEMI", "STOP"})
_AFTER = frozenset(
    {"TOTAL", "REMAIN", "REM", "AROUND", "ACROSS", "UNWORKED", "EVENLY", "WORK", "BELOW"}
)
_WORDS = frozenset(
    {"made", "now", "here", "are", "there", "per", "you", "have", "worked", "so", "far"}
)
#: What a count is of in part: "2 half fans" are told beside the whole ones and made like them.
_PARTLY = frozenset({"half", "beg", "beginning"})
_GROUPS = frozenset({
    "group", "groups", "repeat", "repeats", "pattern", "patterns", "wedge", "wedges", "section", "sections",
    "motif", "motifs", "petals", "petal", "points", "point",
})  # fmt: skip


def stated_of(
    items: Sequence[Item], lexicon: Lexicon, *, stitches: bool = True
) -> tuple[Stated, ...]:
    """The counts that some words state; none when they say anything else.

    Args:
        stitches: whether "90 sc" may be a count here, and not 90 sc to work.
    """
    found: list[Stated] = []
    at = 0
    tokens = [each for each in _without_talk(items) if isinstance(each, Token)]
    if len(tokens) != len(_without_talk(items)) or not tokens:
        return ()
    if [each.kind for each in tokens[:2]] in (["ST", "COLON"], ["TOTAL", "COLON"]):
        at = 2
    elif tokens[0].kind == "TOTAL":
        at = 1
    while at < len(tokens):
        token = tokens[at]
        if [each.kind for each in tokens[at : at + 5]] == list(_OF_HALVES):
            found = _with_halves(found, tokens[at : at + 5])
            at += 5
            continue
        if found and token.value in _PARTLY and tokens[at + 1 : at + 2]:
            # "6 shells, 7 sc and a half shell at each end": as with `_with_halves`
            found = [each for each in found if each.stitch != tokens[at + 1].value]
            break
        if past := _past(tokens, at, found=bool(found)):
            at += past
            continue
        if token.kind in _BETWEEN or (found and (_is_after(token) or token.kind == "PLUS")):
            at += 1
            continue
        one = _one(tokens, at, lexicon)
        if one is None:
            return ()
        count, at = one
        found.append(count)
    if not stitches and not any(_is_sure(each, tokens) for each in found):
        return ()
    return _whole(found, tokens)


def _without_talk(items: Sequence[Item]) -> Sequence[Item]:
    """The items without a bracket of mere words at their end: "34 hdc + 1 ch-2 space (buttonhole!)"."""
    *rest, last = items if items else (None,)
    if rest and isinstance(last, Token) and last.kind == "STOP":
        *rest, last = rest
    if rest and isinstance(last, Group) and all(e.kind in ("WORD", "STOP") for e in last.items):
        return rest
    return items


def _past(tokens: Sequence[Token], at: int, *, found: bool) -> int:
    """How many tokens say where the count holds, or are told beside it.

    "after Row 5", "at the end of the last row", "14 on each side", "8 scallops" beside others.
    """
    kinds = [each.kind for each in tokens[at : at + 6]]
    for shape in _HOLDS if found else ():
        if kinds[: len(shape)] == list(shape):
            return len(shape)
    if found and kinds[:1] == ["WORD"] and tokens[at].value in ("after", "by"):
        for row in (["LAST", "ROWS"], ["ROW_REF"], ["BELOW"]):
            if kinds[1 : 1 + len(row)] == row:
                return 1 + len(row)
    for shape in _UNJUDGED:
        after = kinds[len(shape) :][:2]
        if kinds[: len(shape)] == list(shape) and (found or after == ["COMMA", "NUM"]):
            plural = shape[-1] != "WORD" or str(tokens[at + len(shape) - 1].value).endswith("s")
            if plural and str(tokens[at + 1].value) not in _GROUPS and after[:1] in _ENDS:
                return len(shape)
    talks = kinds[:1] in (["WORD"], ["COUNT"], ["NOT"]) and tokens[at - 1].kind in ("SEMI", "COMMA")
    return len(tokens) - at if found and talks else 0


#: What is counted beside stitches, and what they are worked into: nothing that a row is held against.
_UNJUDGED = (
    ("NUM", "CH", "NUM", "WORD"),
    ("NUM", "NUM", "CH", "WORD"),  # "two 40-ch handles"
    ("NUM", "WORD"),
    ("NUM", "STITCH", "LOOP"),
    ("NUM", "CORNER", "SP"),
)
_ENDS: tuple[list[str], ...] = ([], ["COMMA"], ["AND"], ["STOP"])
_HOLDS = (
    ("DASH", "NUM", "IN", "EACH_END"),
    ("AT", "END_WITH", "BELOW"),
    ("AT", "END_WITH", "OF", "ROW_REF"),
    ("AT", "ROW_END", "NUM"),
    ("AT", "END_WITH"),
    ("IN", "ROW_REF"),
    ("IN", "EACH", "ROWS"),
    ("EACH", "ROWS"),
    ("NUM", "TCH"),
    ("TCH",),
    ("NUM", "IN", "EACH_END"),
    ("NUM", "ST", "IN", "EACH_END"),
    ("NUM", "STITCH", "IN", "EACH_END"),
)


def _whole(found: Sequence[Stated], tokens: Sequence[Token]) -> tuple[Stated, ...]:
    """The counts with those of half ones put to the whole ones: "1 fan, 2 half fans"."""
    words = [each for each in tokens if each.kind == "WORD" and each.value in _PARTLY]
    kept: list[Stated] = []
    for each in found:
        whole = next((n for n, k in enumerate(kept) if k.stitch == each.stitch != ""), None)
        half = any(each.span.start <= word.start < each.span.end for word in words)
        if whole is None or not half:
            kept.append(each)
            continue
        kept[whole] = replace(kept[whole], count=_sum(kept[whole].count, each.count))
    return tuple(kept)


#: "6 dc in the half shells".
_OF_HALVES = ("NUM", "STITCH", "IN", "WORD", "STITCH")


def _with_halves(found: Sequence[Stated], tokens: Sequence[Token]) -> list[Stated]:
    """The counts with the stitches of half groups among those of their kind.

    How many half ones there are is not said, so that the whole ones are held against nothing.
    """
    number, stitch, *_, group = tokens
    count = number.value
    assert isinstance(count, Numbers)  # noqa: S101 - what a NUM holds
    kept = [each for each in found if each.stitch != group.value]
    return [
        replace(each, count=_sum(each.count, count)) if each.stitch == stitch.value else each
        for each in kept
    ]


def _sum(some: Numbers, more: Numbers) -> Numbers:
    most = max(len(some.values), len(more.values))
    pairs = zip((some.values * most)[:most], (more.values * most)[:most], strict=True)
    return Numbers(tuple(a + b for a, b in pairs), some.span)


def _is_sure(count: Stated, tokens: Sequence[Token]) -> bool:
    if count.change or count.what in ("space", "any", "group"):
        return True
    return any(t.kind in ("ST", "TOTAL") for t in tokens)


def _one(tokens: Sequence[Token], at: int, lexicon: Lexicon) -> tuple[Stated, int] | None:
    sign = 0
    start = tokens[at].start
    if [each.kind for each in tokens[at : at + 3]] in (["INC", "OF", "NUM"], ["DEC", "OF", "NUM"]):
        sign = 1 if tokens[at].kind == "INC" else -1
        at += 2
    if tokens[at].kind in ("PLUS", "DASH"):
        sign = 1 if tokens[at].kind == "PLUS" else -1
        at += 1
    if at >= len(tokens) or tokens[at].kind != "NUM":
        return None
    count = tokens[at].value
    assert isinstance(count, Numbers)  # noqa: S101 - what a NUM holds
    at += 1
    what: Kind = "stitch"
    stitch, chains = "", 0
    end = tokens[at - 1].end
    more = at < len(tokens) and tokens[at].kind == "MORE"
    at += more
    named = False
    if at + 1 < len(tokens) and tokens[at].kind == "WORD" and _noun(tokens[at + 1], lexicon):
        at += 1  # "50 little loops"
    if at < len(tokens) and (noun := _noun(tokens[at], lexicon)):
        named = True
        what, stitch, chains = noun
        end = tokens[at].end
        at += 1
        if at < len(tokens) and tokens[at].kind == "ST":
            at += 1
        if [each.kind for each in tokens[at : at + 3]] == ["OF", "NUM", "STITCH"]:
            at += 3  # "5 fans of 9 dc"
    if (
        at < len(tokens)
        and tokens[at].kind in ("INC", "DEC")
        and (sign or named or _is_made(tokens, at))
    ):
        sign = 1 if tokens[at].kind == "INC" else -1
        at += 1
    if more:
        sign = sign or 1
    if sign < 0:
        count = Numbers(tuple(-each for each in count.values), count.span)
    return Stated(Span(start, end), count, what, stitch, chains, change=bool(sign)), at


def _is_made(tokens: Sequence[Token], at: int) -> bool:
    """ "6 inc made"."""
    return at + 1 < len(tokens) and tokens[at + 1].kind == "BELOW"


def _noun(token: Token, lexicon: Lexicon) -> tuple[Kind, str, int] | None:
    match token.kind:
        case "ST":
            return "stitch", "", 0
        case "STITCH":
            key = str(token.value)
            if key in _GROUPS and key not in lexicon.own:
                return "group", "", 0  # "12 petals": told of a shape, not of a stitch
            stitch, own = lexicon.stitches.get(key), lexicon.own.get(key)
            group = own.leaves > 1 if own else stitch is not None and stitch.kind == "group"
            return ("group" if group else "stitch"), key, 0
        case "CH":
            return "chain", "chain", 0
        case "SP" | "LOOP":
            return "space", "", 0
        case "CH_SP":
            chains = token.value.values[0] if isinstance(token.value, Numbers) else 0
            return "space", "", chains
        case "TOGETHER" if isinstance(token.value, tuple):
            return "stitch", str(token.value[0]), 0
        case "CORNER":
            return "group", "", 0
        case "CLUMP":
            return "group", "", 0
        case "WORD" if token.value in _GROUPS:
            return "group", "", 0
    return None


def _is_after(token: Token) -> bool:
    if token.kind == "WORD":
        return token.value in _WORDS
    return token.kind in _AFTER and not isinstance(token.value, Times)
