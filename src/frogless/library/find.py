"""Searching the library by what people call things, in any dialect or language that it knows."""

from __future__ import annotations

import unicodedata
from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from functools import lru_cache

from frogless.errors import InputError
from frogless.library.items import Item, Name, items
from frogless.stitches.model import Dialect

#: How surely something is meant: its whole name in the reader's terms, in others; a name that begins
#: so; all the words in one name; all the words somewhere; a part of a word.
OWN, WHOLE, BEGINS, WORDS, SOMEWHERE, PART = range(6)

#: Of a name that is told back, and how alike a word has to be to be meant.
_MOST_LETTERS, _ALIKE = 40, 0.7
#: How letters are written where the keyboard has none of them.
_SPELLED = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue", "å": "aa"})
_UNMARKED = str.maketrans({"ø": "o", "æ": "ae", "œ": "oe", "ł": "l", "'": "", "\u2019": ""})


@dataclass(frozen=True, slots=True)
class Found:
    """Something found, and the name that was looked for; None when other words found it."""

    item: Item
    by: Name | None
    rank: int = PART


def find(
    words: str, among: Sequence[Item] | None = None, terms: Dialect | None = None
) -> tuple[Found, ...]:
    """What words mean, the surest first; everything when there are none.

    A whole name or abbreviation comes before names that begin so, and these before names that
    have all the words somewhere. Plurals and accents make no difference.

    Args:
        terms: whose names come before the same names in other terms.

    Raises:
        InputError: nothing is called so; with the nearest names.
    """
    known = items() if among is None else among
    if not words.strip():
        return tuple(Found(item, None) for item in known)
    wanted = frozenset(filter(None, _forms(words)))
    found = [each for item in known if (each := _met(item, wanted, terms))]
    if not found:
        told = words if len(words) <= _MOST_LETTERS else f"{words[:_MOST_LETTERS]}..."
        raise InputError(
            f'nothing in the library is called "{told}"{_meant(plain(words), known)}; '
            "try one word of its name, or an abbreviation"
        )
    return tuple(sorted(found, key=lambda each: each.rank))


@lru_cache(maxsize=4096)
def plain(text: str) -> str:
    """In small letters without accents and marks, each word in the singular, single blanks between."""
    apart = unicodedata.normalize("NFKD", text.casefold().translate(_UNMARKED))
    letters = "".join(c for c in apart if not unicodedata.combining(c))
    return " ".join(map(_singular, "".join(c if c.isalnum() else " " for c in letters).split()))


def _singular(word: str) -> str:
    if len(word) > 5 and word.endswith(("ches", "shes", "sses", "xes")):
        return word[:-2]
    if len(word) > 4 and word.endswith("ies"):
        return word[:-3] + "y"
    return word[:-1] if len(word) > 3 and word.endswith("s") and word[-2] not in "su" else word


@lru_cache(maxsize=4096)
def _forms(text: str) -> tuple[str, ...]:
    """A text as it may be typed: "stabchen" and "staebchen"."""
    composed = unicodedata.normalize("NFC", text.casefold())
    return tuple(dict.fromkeys((plain(text), plain(composed.translate(_SPELLED)))))


def _met(item: Item, wanted: Collection[str], terms: Dialect | None) -> Found | None:
    """An item, and how surely it is meant; nothing when it is not."""
    best: Found | None = None
    for text, name in _called(item):
        for form in _forms(text):
            for each in wanted:
                rank = _rank(form, each)
                if rank == WHOLE and name and name.where == terms:
                    rank = OWN
                if rank is not None and (best is None or rank < best.rank):
                    best = Found(item, name, rank)
    if best is None or best.rank > SOMEWHERE:
        all_ = " ".join(form for text, _ in _called(item) for form in _forms(text))
        if any(_has_words(all_, each) for each in wanted):
            return Found(item, None, SOMEWHERE)
    return best


def _called(item: Item) -> Iterator[tuple[str, Name | None]]:
    for name in item.names:
        yield from ((text, name) for text in (name.name, name.abbreviation) if text)
    yield from ((text, None) for text in (item.key, *item.others))


def _rank(text: str, wanted: str) -> int | None:
    joined, asked = text.replace(" ", ""), wanted.replace(" ", "")
    if joined == asked or _stitch_is_understood(text, wanted):
        return WHOLE
    if text.startswith(wanted + " "):
        return BEGINS
    if _has_words(text, wanted):
        return WORDS
    return PART if len(asked) > 2 and asked in joined else None


def _stitch_is_understood(text: str, wanted: str) -> bool:
    """Whether one is the other with "stitch" after it: "moss stitch", "popcorn stitch"."""
    shorter, longer = sorted((text, wanted), key=len)
    return len(shorter) > 2 and longer == f"{shorter} stitch"


def _has_words(text: str, wanted: str) -> bool:
    """Whether each word that is asked for begins one of the text, and no two the same."""
    left = text.split()
    for each in sorted(wanted.split(), key=len, reverse=True):
        word = next((word for word in left if word.startswith(each)), None)
        if word is None:
            return False
        left.remove(word)
    return True


def _meant(wanted: str, known: Sequence[Item]) -> str:
    """`; did you mean "granny"?`, or nothing: each word mended, and names that are alike."""
    names = {plain(text): text for item in reversed(known) for text in _texts(item)}
    words = {word: word for name in names for word in name.split() if len(word) > 2}
    if not wanted:
        return ""
    mended = [_near_word(word, words) for word in wanted.split()[:8]]
    near = [" ".join(mended)] if all(mended) and _is_found(" ".join(mended), names) else []
    short = wanted[: 2 * _MOST_LETTERS]
    near += [names[name] for name in get_close_matches(short, names, n=3, cutoff=_ALIKE)]
    told = list({plain(text): text for text in reversed(near)}.values())[::-1][:3]
    return "; did you mean " + " or ".join(f'"{text}"' for text in told) + "?" if told else ""


def _near_word(word: str, words: Collection[str]) -> str:
    if len(word) > _MOST_LETTERS:
        return ""
    return next(iter(get_close_matches(word, words, n=1, cutoff=_ALIKE)), "")


def _is_found(wanted: str, names: Iterable[str]) -> bool:
    return any(_rank(name, wanted) is not None for name in names)


def _texts(item: Item) -> Iterable[str]:
    for name in item.names:
        yield from filter(None, (name.name, name.abbreviation))
