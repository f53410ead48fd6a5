"""The list of abbreviations against the words that the rows use."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from frogless.proofread.checks.model import Reading
from frogless.proofread.findings import Finding
from frogless.proofread.script.model import Span
from frogless.proofread.words.forms import foreign_to, keys_of
from frogless.proofread.words.glossary import lists_of
from frogless.proofread.words.model import Entry, Used
from frogless.stitches.load import dictionary
from frogless.stitches.load import words as reading_words
from frogless.stitches.model import Dialect

#: A list shorter than this is no list: somebody explained a word or two.
FEWEST = 3
#: Words that every maker is expected to know, and that few lists hold.
_KNOWN = frozenset(
    {"row", "rows", "round", "rounds", "rnd", "rnds", "turn", "join", "ring", "chain", "chains"}
    | {"stitch", "stitches", "space", "spaces", "next", "each", "skip", "miss", "repeat", "around"}
    | {
        "cord",
        "bead",
        "beads",
        "across",
        "loop",
        "loops",
        "marker",
        "hook",
        "yarn",
        "slip",
        "rs",
        "ws",
        "in",
        "cm",
        "mm",
    }
)
#: Abbreviations that are no word of the dictionary; common practice.
_MORE = frozenset({"prev", "foll", "alt", "cont", "beg", "patt", "tch", "t ch", "yo", "yrh", "sk"})
#: Letters of an abbreviation; what is longer is a name.
_LONGEST = 7
_TOGETHER = re.compile(r"^(?P<stitch>[a-z]+?)[ -]?(?P<count>\d*)[ -]?tog$")
#: Where a stitch goes, written in one with it: "BLOsc", "FPdc".
_PLACED = re.compile(r"^(?P<place>blo?|flo?|[fb]p) ?(?P<stitch>[a-z]{2,5})$")
_IN_BRACKETS = re.compile(r"\(.{0,9}?\)")
_WORD = re.compile(r"[a-z][a-z0-9-]*", re.IGNORECASE)
#: What a line of the special stitches explains: "Puff (ps):", "Popcorn stitch - ".
_DEFINED = re.compile(
    r"^[\s*#>_-]{0,8}(?P<one>[a-z][a-z0-9 -]{1,30}?)[ ]?(?:\((?P<other>[a-z0-9 -]{1,12})\))?[ *_]{0,4}(?::|[ ]-|=)",
    re.IGNORECASE | re.MULTILINE,
)


def undefined_abbreviation(reading: Reading) -> Iterator[Finding]:
    """Abbreviations that the rows use and the list does not hold."""
    if sum(_has_meaning(entry) for entry in _listed(reading)) < FEWEST:
        return  # no list, or one of the stitches that are used
    known = _explained(reading)
    told: set[str] = set()
    seen: set[tuple[str, str]] = set()
    for each in reading.told:
        for used in each.said.used:
            if (used.word, used.stitch) in seen:
                continue
            seen.add((used.word, used.stitch))
            base = _lacking(used, known, reading)
            if not base or base in told:
                continue
            told.add(base)
            words = reading.script.words(used.span)
            shown = next((word for word in words.split() if _base(word) == base), words)
            yield Finding(
                "undefined-abbreviation",
                used.span,
                f'"{shown}" is used',
                "it is not in the list of abbreviations",
                f'Add "{base}" to the list of abbreviations, or use the word that is in it.',
                "certain",
            )


def _lacking(used: Used, known: frozenset[str], reading: Reading) -> str:
    """The abbreviation, of a phrase like "sc in BLO" the one in it, that is nowhere explained."""
    if used.word.lower() in foreign_to(reading.lexicon.terms.dialect):
        return ""  # the check of mixed terms tells of it
    if _is_short(used, reading):
        base = _base(used.word)
        return "" if _covered(base, used, known, reading) else base
    if used.stitch and " in " in used.word:
        bases = [_base(word) for word in used.word.lower().split()]
        lacking = (each for each in bases if each in _trade_words() and each not in known)
        return next(lacking, "")
    return ""


def unused_abbreviation(reading: Reading) -> Iterator[Finding]:
    """Entries of the list that nothing in the pattern uses."""
    listed = _listed(reading)
    by_span: dict[Span, list[Entry]] = {}
    for entry in listed:
        by_span.setdefault(entry.span, []).append(entry)
    text = _text_without(reading, tuple(by_span))
    for span, entries in by_span.items():
        if any(_occurs(entry.word, text) for entry in entries):
            continue
        word = entries[0].word
        yield Finding(
            "unused-abbreviation",
            span,
            f'"{word}" is explained',
            "it is used nowhere",
            f'Nothing in the pattern uses "{word}": take it out of the list, or look where it was meant to be.',
            "likely",
        )


def _listed(reading: Reading) -> tuple[Entry, ...]:
    """The entries that stand in a list of abbreviations, not where a word is used."""
    lists = [part.body for part in lists_of(reading.script)]
    return tuple(
        entry
        for entry in reading.lexicon.entries
        if any(body.start <= entry.span.start < body.end for body in lists)
    )


def _has_meaning(entry: Entry) -> bool:
    """It is explained, and does not only stand there: "Stitches used: ch, sc, dc"."""
    bare = _IN_BRACKETS.sub("", entry.meaning.lower().replace(".", ""))
    return bare not in (entry.word, entry.word.removesuffix("s"))


def _explained(reading: Reading) -> frozenset[str]:
    lexicon = reading.lexicon
    own = (word for stitch in lexicon.own.values() for word in stitch.words)
    whole = {_base(entry.word) for entry in lexicon.entries} | {_base(word) for word in own}
    for part in reading.script.of("special"):
        for found in _DEFINED.finditer(reading.script.plain, part.body.start, part.body.end):
            words = (found["one"], found["other"] or "")
            whole |= {re.sub(r" (?:stitch|st)$", "", _base(word)) for word in words if word}
    # "inv dec" explains the "dec" that is read in it, "sl st" the "st".
    return frozenset(
        whole | {word for each in whole for word in each.split() if word in ("dec", "st")}
    )


def _base(word: str) -> str:
    """A word in its plain look: "sl. sts" is "sl st", "dc's" is "dc"."""
    plain = re.sub(r"[ .-]+", " ", word.lower().replace("'s", "")).strip()
    if plain.endswith("s") and len(plain) > 2 and plain not in ("rs", "ws", "ss", "bs", "ps"):
        plain = plain[:-1]
    return {"slst": "sl st", "ss": "sl st", "slip st": "sl st"}.get(plain, plain)


def _is_short(used: Used, reading: Reading) -> bool:
    """An abbreviation: of a stitch, of another word of the trade, or of several worked together."""
    word = used.word.lower()
    if word in _KNOWN or _base(word) in _KNOWN or word in _names(reading):
        return False
    if _TOGETHER.match(_base(word)) or _base(word) in _trade_words():
        return True
    return bool(used.stitch) and len(word) <= _LONGEST


@cache
def _trade_words() -> frozenset[str]:
    """What is written for words of the trade that are no stitches."""
    dialects: tuple[Dialect, ...] = ("us", "uk")
    terms = [term for dialect in dialects for term in reading_words(dialect).values()]
    names = {term.name.lower() for term in terms}
    return frozenset({_base(term.abbreviation) for term in terms} - names) | _MORE


@cache
def _names_in(dialect: Dialect) -> frozenset[str]:
    names = {each.terms[dialect].name.lower() for each in dictionary().values()}
    names |= {name.removesuffix(" crochet") for name in names}
    names |= {name for name in keys_of(dialect) if len(name) > _LONGEST}
    return frozenset(names | {name + "s" for name in names})


def _names(reading: Reading) -> frozenset[str]:
    return _names_in(reading.lexicon.terms.dialect)


def _covered(base: str, used: Used, known: frozenset[str], reading: Reading) -> bool:
    """Explained itself, or made of words that are: "dc2tog" of dc, "ch-2 sp" of ch and sp."""
    if base in known or base.replace(" ", "") in {each.replace(" ", "") for each in known}:
        return True
    if found := _TOGETHER.match(base):
        others = {match["stitch"] for each in known if (match := _TOGETHER.match(each))}
        return found["stitch"] in others or {"tog", found["stitch"]} <= known
    placed = _PLACED.match(base)
    if placed and {placed["place"], placed["stitch"]} <= known:
        return True
    parts = _WORD.findall(base)
    if len(parts) > 1 and all(part in known or part in _KNOWN or len(part) > 4 for part in parts):
        return True
    keys = keys_of(reading.lexicon.terms.dialect)
    key = used.stitch or keys.get(base, "")
    same = {word for word, other in keys.items() if other == key} if key else set()
    return bool(same & known)


def _text_without(reading: Reading, spans: tuple[Span, ...]) -> str:
    """Everything but the entries of the list, and what they mean: they may use one another's words."""
    text, at, kept = reading.script.plain.lower(), 0, []
    for span in sorted(spans):
        kept.append(text[at : span.start])
        at = max(at, span.end)
    meanings = [entry.meaning.lower() for entry in reading.lexicon.entries if entry.span in spans]
    return "\n".join((*kept, text[at:], *meanings))


def _occurs(word: str, text: str) -> bool:
    """The word itself, or as a part of a longer one ("dc" in "dc2tog", "ch" in "ch-2")."""
    plain = re.escape(word.lower()).replace(r"\ ", r"[ .-]{0,2}").replace(r"\-", r"[ .-]{0,2}")
    if re.search(rf"(?<![a-z]){plain}(?:e?s|'s)?(?![a-z])", text):
        return True
    short = re.sub(r"[^a-z0-9]", "", word.lower())
    if short in ("bl", "blo", "fl", "flo", "fp", "bp"):
        return bool(re.search(rf"\b{short}[a-z]{{2,5}}\b", text))
    return 2 <= len(short) <= 5 and bool(
        re.search(rf"(?:bl|fl|blo|flo|fp|bp|beg|inv|f){short}\b", text)
    )
