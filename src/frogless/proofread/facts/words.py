"""Which stitch some words of the front matter name."""

from __future__ import annotations

import re

from frogless.proofread.words.lexicon import Lexicon

_WORD = re.compile(r"[A-Za-z0-9][\w-]*")
_LONGEST = 4  # words in the name of a stitch


def stitch_in(text: str, lexicon: Lexicon) -> str:
    """The key of the first stitch that is named, by its longest name; "" when there is none."""
    words = [match[0].lower() for match in _WORD.finditer(text[:200])]
    for at in range(len(words)):
        for size in range(min(_LONGEST, len(words) - at), 0, -1):
            name = " ".join(words[at : at + size])
            key = _key(name, lexicon)
            if key:
                return key
    return ""


def _key(name: str, lexicon: Lexicon) -> str:
    for own in lexicon.own.values():
        if name in own.words:
            return own.meaning or own.key
    for form in (name, name.removesuffix("s")):
        key = lexicon.keys.get(form, "")
        if key in lexicon.stitches:
            return key
    return ""
