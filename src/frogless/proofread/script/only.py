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
_SKIPS = re.compile(
    rf"(?:for\s)?(?:the\s)?(?P<named>{_LINKED})[:,]?\s(?:skip|go|proceed|move|jump)\s(?:ahead\s|on\s|straight\s)?to\s",
    re.IGNORECASE,
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
    return end - start < 80 and any(form.match(plain, start, end) for form in (_ALL, _ONLY, _SKIPS))


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
            if left := _skipping(words, sizes):
                rest = only or tuple(range(len(sizes)))
                only = tuple(at for at in rest if at not in left)
                yield Prose(each.span, remark=True)
                continue
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
    """The indices of the sizes that only some work; none where a word is not one of them."""
    found = _ONLY.match(words.strip())
    return _sizes_in(found["named"], sizes) if found else ()


def _skipping(words: str, sizes: Sequence[str]) -> tuple[int, ...]:
    """The sizes that leave out all up to the next heading: "Newborn size: skip to Body."."""
    found = _SKIPS.match(words.strip())
    return _sizes_in(found["named"], sizes) if found else ()


def _sizes_in(words: str, sizes: Sequence[str]) -> tuple[int, ...]:
    named: list[tuple[int, int]] = []
    rest = words.lower()
    known = {name.lower(): at for at, name in enumerate(sizes)} | _ORDINALS
    for name in sorted(known, key=len, reverse=True):
        at = known[name] % len(sizes) if known[name] < len(sizes) else -1
        for found in re.finditer(rf"(?<![\w-]){re.escape(name)}(?![\w-])", rest) if name else ():
            named.append((found.start(), at))
            rest = rest[: found.start()] + " " * len(name) + rest[found.end() :]
    between = re.findall(_NAME, rest)
    if set(between) - _FILLING or any(at < 0 for _, at in named):
        return ()
    order = [at for _, at in sorted(named)]
    if between.count("to") == 1 and len(order) == 2:
        return tuple(range(min(order), max(order) + 1))
    return tuple(sorted(set(order)))
