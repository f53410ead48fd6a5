"""Rows that some sizes work and others leave out: "Size L only:", "2nd size only", "Row 8 (L only):"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from frogless.proofread.script.brackets import number_list
from frogless.proofread.script.model import Heading, Part, Prose, RowText, Statement

_NAME = r"[A-Za-z0-9][\w/.-]{0,14}"
_LINKED = rf"{_NAME}(?:(?:\s?[,&+(\[]\s?|\s(?:and|to)\s|\s){_NAME}[)\]]?){{0,8}}"
_ONLY = re.compile(
    rf"(?:for|in)?\s?(?:the\s)?(?P<named>{_LINKED})[\s,]{{1,2}}only[:.,]?\s*$", re.IGNORECASE
)
_ALL = re.compile(r"(?:for\s)?(?:all|both)\s(?:the\s)?sizes[:.]?\s*$", re.IGNORECASE)
_ASIDE = re.compile(r"[(\[]\s?([^()\[\]\n]{1,60}\bonly)\s?[)\]]", re.IGNORECASE)
#: What stands before the row: "Size L only: Rnd 8: …" is read as a heading; this behind its label.
_LEADS = re.compile(r"((?:for\s)?sizes?\s[^:.()\n]{1,50}\bonly)\s?[:,-]", re.IGNORECASE)
_FILLING = frozenset({"and", "to", "size", "sizes", "the", "for", "in"})
_ORDINALS = {
    "first": 0, "1st": 0, "smallest": 0, "second": 1, "2nd": 1, "third": 2, "3rd": 2, "fourth": 3, "4th": 3,
    "fifth": 4, "5th": 4, "sixth": 5, "6th": 5, "largest": -1, "last": -1, "biggest": -1,
}  # fmt: skip
#: Letters of a row that are looked through for a number of every size.
_SEEN = 2000
_DIGITS = re.compile(r"(?<![\d.,/])\d+(?=\s?[(/\[])")


def names_sizes(plain: str, start: int, end: int) -> bool:
    """Whether a line only says which sizes work what follows: "2nd size only", "All sizes"."""
    return end - start < 80 and bool(
        _ALL.match(plain, start, end) or _ONLY.match(plain, start, end)
    )


def with_only(plain: str, parts: Sequence[Part], sizes: Sequence[str]) -> tuple[Part, ...]:
    """The parts with every statement told for which sizes it is.

    What a line "Size L only" says holds up to the next heading, or to a row with a number for each
    size.
    """
    if len(sizes) < 2:
        return tuple(parts)
    return tuple(
        replace(part, statements=tuple(_told(plain, part.statements, sizes)))
        if part.statements
        else part
        for part in parts
    )


def _told(plain: str, statements: Sequence[Statement], sizes: Sequence[str]) -> Iterator[Statement]:
    only: tuple[int, ...] = ()
    for each in statements:
        if isinstance(each, Heading | Prose):
            words = plain[each.span.start : each.span.end]
            if _ALL.match(words) or (named := _named(words, sizes)):
                only = () if _ALL.match(words) else named
                yield Prose(each.span, remark=True)
            elif isinstance(each, Heading):
                only = ()
                yield each
            else:
                yield replace(each, only=only)
            continue
        own = _of_row(plain, each, sizes)
        if own:
            yield replace(each, only=own)
            continue
        only = () if only and _is_of_all(plain, each, len(sizes)) else only
        yield replace(each, only=only)


def _of_row(plain: str, row: RowText, sizes: Sequence[str]) -> tuple[int, ...]:
    """The sizes that the label of a row names, or the words right behind it."""
    aside = _ASIDE.search(plain, row.label.span.start, row.label.span.end)
    lead = _LEADS.match(plain, row.body.start, row.body.end)
    found = aside or lead
    return _named(found[1], sizes) if found else ()


def _is_of_all(plain: str, row: RowText, sizes: int) -> bool:
    if row.label.lasts or row.label.firsts:
        return True
    end = min(row.body.end, row.body.start + _SEEN)
    for found in _DIGITS.finditer(plain, row.body.start, end):
        read = number_list(plain, found.start(), sizes)
        if read and len(read[0]) == sizes:
            return True
    return False


def _named(words: str, sizes: Sequence[str]) -> tuple[int, ...]:
    """The indices of the sizes that are named; none where a word is not one of them."""
    found = _ONLY.match(words.strip())
    if not found:
        return ()
    known = {_plain(name): at for at, name in enumerate(sizes)}
    named: list[int] = []
    ranged = False
    for word in re.findall(_NAME, found["named"]):
        key = _plain(word)
        at = known.get(key, _ORDINALS.get(key))
        if at is None:
            if key not in _FILLING:
                return ()
            ranged = ranged or key == "to"
            continue
        at = at % len(sizes) if at < len(sizes) else -1
        if at < 0:
            return ()
        named += range(named[-1] + 1, at + 1) if ranged and named else [at]
        ranged = False
    return tuple(sorted(set(named)))


def _plain(name: str) -> str:
    return name.lower().strip(".")
