"""What may have been meant by words that are not understood."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from difflib import get_close_matches
from functools import lru_cache

from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.words.structure import Group, Item
from frogless.proofread.words.terms import phrases

#: Letters of a word that is compared: a shorter one is near too many, a longer one is none of the
#: trade.
SHORTEST = 4
LONGEST = 30


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
    found = get_close_matches(word, _words(lexicon), n=1, cutoff=0.8)
    return found[0] if found else ""


@lru_cache(maxsize=8)
def _words(lexicon: Lexicon) -> tuple[str, ...]:
    known: set[str] = set()
    fixed = (phrase for listed in phrases().values() for phrase in listed)
    for words in (*fixed, *_names(lexicon)):
        known.update(word for word in words.split() if len(word) > 1)
    return tuple(sorted(known))


def _names(lexicon: Lexicon) -> Iterable[str]:
    yield from (word for word in lexicon.keys if " " not in word)
    for own in lexicon.own.values():
        yield from own.words
