"""Searching the library by what people call things, in any dialect or language that it knows."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache

from frogless.errors import InputError, near_names
from frogless.library.items import Item, Name, items


@dataclass(frozen=True, slots=True)
class Found:
    """Something found, and the name that was looked for; None when other words found it."""

    item: Item
    by: Name | None


def find(words: str, among: Sequence[Item] | None = None) -> tuple[Found, ...]:
    """What words mean, the surest first; everything when there are none.

    A whole name or abbreviation comes before names that begin so, and these before names that
    have all the words somewhere.

    Raises:
        InputError: nothing is called so; with the nearest names.
    """
    known = items() if among is None else among
    wanted = plain(words)
    if not wanted:
        return tuple(Found(item, None) for item in known)
    ranked = [
        (rank, i, found) for i, item in enumerate(known) for rank, found in _met(item, wanted)
    ]
    if not ranked:
        names = [plain(text) for item in known for text in _texts(item)]
        raise InputError(
            f'nothing in the library is called "{words}"{near_names(wanted, names)}; '
            "try one word of its name, or an abbreviation"
        )
    return tuple(found for _, _, found in sorted(ranked, key=lambda each: each[:2]))


@lru_cache(maxsize=4096)
def plain(text: str) -> str:
    """In small letters without accents, hyphens and underscores, single blanks between words."""
    apart = unicodedata.normalize("NFKD", text.casefold())
    letters = "".join(c for c in apart if not unicodedata.combining(c))
    return " ".join(letters.replace("-", " ").replace("_", " ").split())


def _met(item: Item, wanted: str) -> Iterable[tuple[int, Found]]:
    """How surely an item is meant, at most once: 0 its whole name, 3 some words of it."""
    best: tuple[int, Found] | None = None
    for name in item.names:
        for text in filter(None, (name.name, name.abbreviation)):
            rank = _rank(plain(text), wanted)
            if rank is not None and (best is None or rank < best[0]):
                best = (rank, Found(item, name))
    for text in (item.key, *item.others):
        rank = _rank(plain(text), wanted)
        if rank is not None and (best is None or rank < best[0]):
            best = (rank, Found(item, None))
    return () if best is None else (best,)


def _rank(text: str, wanted: str) -> int | None:
    if text == wanted:
        return 0
    if text.startswith(wanted + " "):
        return 1
    words, asked = text.split(), wanted.split()
    if all(any(word.startswith(each) for word in words) for each in asked):
        return 2
    return 3 if len(wanted) > 2 and wanted in text else None


def _texts(item: Item) -> Iterable[str]:
    for name in item.names:
        yield from filter(None, (name.name, name.abbreviation))
