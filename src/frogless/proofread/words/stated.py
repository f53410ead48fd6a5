"""Counts that a row states: "(90 sts)", "- 64 dc, 32 ch-2 sps", "(+6 sts)", "= 12"."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from frogless.proofread.script.model import Span
from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.words.model import Numbers, Stated
from frogless.proofread.words.structure import Item
from frogless.proofread.words.tokens import Times, Token

Kind = Literal["stitch", "space", "chain", "group", "any"]
_BETWEEN = frozenset({"COMMA", "AND", "SEMI", "STOP"})
_AFTER = frozenset(
    {"TOTAL", "REMAIN", "REM", "AROUND", "ACROSS", "UNWORKED", "EVENLY", "WORK", "BELOW"}
)
_WORDS = frozenset(
    {"made", "now", "here", "are", "there", "per", "you", "have", "worked", "so", "far"}
)
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
    tokens = [each for each in items if isinstance(each, Token)]
    if len(tokens) != len(items) or not tokens:
        return ()
    if tokens[0].kind == "TOTAL":
        at = 1
    while at < len(tokens):
        token = tokens[at]
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
    return tuple(found)


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
