"""What may have been meant by words that are not understood."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import cache, lru_cache

from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.words.structure import Group, Item
from frogless.proofread.words.terms import phrases
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect

#: Letters of a word that is compared: a shorter one is near too many, a longer one is none of the
#: trade. One letter more, fewer or another tells only in words of `FIRM` letters.
SHORTEST, FIRM = 4, 5
LONGEST = 30
_WORD = re.compile(r"[a-z]+")


def guess_of(items: Sequence[Item], lexicon: Lexicon) -> str:
    """One phrase, or "" when nothing is near."""
    for item in items:
        if isinstance(item, Group):
            continue
        if (
            item.kind == "WORD"
            and isinstance(item.value, str)
            and SHORTEST <= len(item.value) <= LONGEST
        ):
            near = _near(item.value, lexicon)
            if near and near != item.value:
                return f'"{near}" instead of "{item.value}"'
        if item.kind == "OTHER" and isinstance(item.value, str) and item.value in "([{<":
            return "a bracket that is not closed"
        if item.kind == "OTHER" and isinstance(item.value, str) and item.value in ")]}>":
            return "a bracket that is not opened"
        if item.kind == "REP_FROM":
            return "a * where the repeat begins"
        if item.kind == "STAR":
            return '"; rep from * around", or how often, where the repeat ends'
    return ""


@lru_cache(maxsize=2048)
def _near(word: str, lexicon: Lexicon) -> str:
    """The one known word that a slip of a finger makes this one of; "" where it is one itself."""
    known = _words(lexicon)
    if word in known or word.removesuffix("s") in known:
        return ""
    near = known.intersection(_slips(word))
    return next(iter(near)) if len(near) == 1 else ""


def _slips(word: str) -> Iterator[str]:
    """Words that differ in one letter or in the order of two; the first letter is seldom wrong."""
    for at in range(1, len(word) - 1):
        yield word[:at] + word[at + 1] + word[at] + word[at + 2 :]
    if len(word) < FIRM:
        return
    for at in range(1, len(word) + 1):
        before, after = word[:at], word[at:]
        if after:
            yield before + after[1:]
        for letter in "abcdefghijklmnopqrstuvwxyz":
            yield before + letter + after
            if after:
                yield before + letter + after[1:]


@lru_cache(maxsize=8)
def _words(lexicon: Lexicon) -> frozenset[str]:
    """Words that people write: the trade's, and those of the pattern itself."""
    own = (word for stitch in lexicon.own.values() for word in stitch.words)
    return _of_the_trade(lexicon.terms.dialect).union(*map(_WORD.findall, own))


@cache
def _of_the_trade(dialect: Dialect) -> frozenset[str]:
    names = (stitch.terms[dialect] for stitch in dictionary().values())
    named = (word for term in names for word in (term.name, term.abbreviation))
    fixed = (phrase for listed in phrases().values() for phrase in listed)
    found = {word for words in (*fixed, *named) for word in _WORD.findall(words.lower())}
    return frozenset(word for word in found if len(word) >= SHORTEST)
