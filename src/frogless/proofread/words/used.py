"""The words of the trade that a row uses, as they are written."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from frogless.proofread.script.model import Script, Span
from frogless.proofread.words.model import Used
from frogless.proofread.words.terms import TRADE
from frogless.proofread.words.tokens import Token

_LETTERS = re.compile(r"[^\W\d_]+")


def used(words: Sequence[Token], script: Script) -> Iterator[Used]:
    """Every word of the trade, as it is written: "dc2tog" is one, "ch-2 sp" two."""
    at = 0
    while at < len(words):
        token = words[at]
        tog = words[at + 1 : at + 3]
        if token.kind == "STITCH" and [each.kind for each in tog] == ["NUM", "TOG"]:
            span = Span(token.start, tog[1].end)
            yield Used(_word(span, script), span, str(token.value))
            at += 3
            continue
        at += 1
        if token.kind in ("STITCH", "TOGETHER"):
            key = token.value if isinstance(token.value, str) else ""
            yield Used(_word(token.span, script), token.span, key)
        elif token.kind in TRADE:
            text = script.plain[token.start : token.end]
            for word in _LETTERS.finditer(text):
                span = Span(token.start + word.start(), token.start + word.end())
                yield Used(word[0].lower(), span)


def _word(span: Span, script: Script) -> str:
    return " ".join(script.plain[span.start : span.end].lower().split())
