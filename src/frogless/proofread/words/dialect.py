"""Whether a pattern is written in US or in UK terms."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from itertools import islice
from typing import Literal

from frogless.proofread.script.model import RowText, Script, Span
from frogless.proofread.words.model import Entry, Evidence, Terms
from frogless.stitches.model import Dialect

_NATION: Mapping[Dialect, str] = {
    "us": r"(?:us|u\.s\.|usa|american)",
    "uk": r"(?:uk|u\.k\.|british|english)",
}
_NAMED = (
    r"(?:crochet |stitch |standard )?(?:terms|terminology|abbreviations|notation|conventions|names)"
)
_DECLARED: Mapping[Dialect, re.Pattern[str]] = {
    dialect: re.compile(
        rf"(?P<firm>\b(?:written|given|worked|uses?|using|in|are|is|with)\b(?:(?!terms|\bUS\b|\bUK\b)[^.\n]){{0,20}}?)?"
        rf"(?:\b{nation}[ -]{_NAMED}\b"
        rf"|\b(?:terms|terminology|abbreviations|stitches)[ ]?[:(,-][ ]?{nation}\b"
        rf"|\b(?:terms|terminology|abbreviations) (?:used )?(?:is|are)(?: all)?(?: in)? {nation}\b)",
        re.IGNORECASE,
    )
    for dialect, nation in _NATION.items()
}
#: The dialect of a version that is not this one.
_OTHERWISE_BEFORE = re.compile(
    r"\b(?:not|equivalents?|convert\w*|translat\w+|available)\b[^.;]*$"
    r"|\b(?:us|uk|american|british)(?:\s?(?:and|or|/|&)\s?(?:in\s)?|\s)$",
    re.I,
)
_OTHERWISE_AFTER = re.compile(
    r"[^.\n]{0,12}\b(?:versions?|equivalents?|brackets|parenthes[ei]s|available|conversions?)\b",
    re.I,
)

#: What speaks for a dialect in the words alone, and how strongly. Source: the two lists of stitch
#: names; the words around them are common practice, from memory, and weigh little by themselves.
_TELLING: tuple[tuple[Dialect, float, str, str], ...] = (
    ("us", 6.0, r"\d*scs?(?:\d*tog)?|single crochets?", "only US terms have single crochet"),
    ("us", 6.0, r"hdcs?(?:\d*tog)?|half[ -]doubles?(?: crochets?)?", "only US terms have hdc"),
    ("us", 4.0, r"fsc|fhdc|esc|[fb]psc|[fb]phdc|bl?o?sc|bl?o?hdc", "a US abbreviation"),
    ("us", 2.0, r"skip|sk", "US patterns skip what UK patterns miss"),
    ("us", 1.5, r"gauge", "US patterns have a gauge, UK patterns a tension"),
    ("us", 0.5, r"yo|yoh", "US patterns yarn over, UK patterns yarn round hook"),
    ("us", 0.3, r"colors?|center|gray", "US spelling"),
    ("uk", 6.0, r"htrs?(?:\d*tog)?|half[ -]trebles?(?: crochets?)?", "only UK terms have half treble"),
    ("uk", 4.0, r"fhtr|exhtr|rtr[fb]|rdc[fb]|[fb]phtr|exdc|extr", "a UK abbreviation"),
    ("uk", 3.0, r"miss", "UK patterns miss what US patterns skip"),
    ("uk", 2.5, r"tension", "UK patterns have a tension, US patterns a gauge"),
    ("uk", 1.5, r"yrh|work straight|sew in (?:the )?ends|base chain", "UK wording"),
    ("uk", 0.3, r"colours?|centre|grey", "UK spelling"),
)  # fmt: skip
_WORDS = tuple(
    (dialect, weight, re.compile(rf"(?<![\w-])(?:{words})(?![\w-])", re.IGNORECASE), why)
    for dialect, weight, words, why in _TELLING
)
#: A word behind the name of a dialect is a translation: "US readers: dc = sc".
_TRANSLATED = re.compile(r"\b(?:us|usa|uk|american|british)\b[^.\n]{0,20}$", re.IGNORECASE)
#: Places of a word that are looked at for one that is no translation.
_MOST_PLACES = 50
#: A turning chain is as tall as its stitch: dc after ch 1 is a UK dc, tr after ch 3 a UK treble.
_CHAIN_THEN = re.compile(
    r"\b(?:ch(?:ain)? ?(?P<chains>[1-5])|(?P<before>[1-5]) ?ch)\b"
    r"[^.*\[\n]{0,60}?[,:.;)] *(?:work )?(?:\d+ )?(?P<stitch>dc|tr|dtr)\b(?![\w-])",
    re.IGNORECASE,
)
#: What a chain stands behind that begins a row, where it is not its first word.
_BEGINS = re.compile(r"(?:[.:!]|\bturn(?:ing)?[,;]?)\s{1,3}$", re.IGNORECASE)
_TALLER: Mapping[tuple[str, int], Dialect] = {
    ("dc", 1): "uk",
    ("dc", 3): "us",
    ("dc", 2): "us",
    ("tr", 3): "uk",
    ("tr", 4): "us",
    ("dtr", 4): "uk",
    ("dtr", 5): "us",
}
_BY_HEIGHT = 3.0
#: How often the yarn goes over the hook before it goes in tells one stitch of that name from the other.
_MOTIONS: Mapping[str, Mapping[int, Dialect]] = {
    "dc": {0: "uk", 1: "us"},
    "tr": {1: "uk", 2: "us"},
    "dtr": {2: "uk", 3: "us"},
}
_NAMES = {"double crochet": "dc", "treble crochet": "tr", "treble": "tr", "double treble": "dtr"}
_BY_MOTION = 8.0
_OVER = r"(?:yo|yoh|yrh|yarn (?:over|round)(?: (?:the )?hook)?|wrap (?:the )?yarn[^,;]{0,20})"
_INSERTED = re.compile(r"\binsert", re.IGNORECASE)
_BEFORE = re.compile(
    rf"{_OVER}(?P<times> ?\(?(?:twice|2 times|two times|x ?2|3 times|three times|x ?3))?", re.IGNORECASE
)  # fmt: skip
_BARE_LIST = 3.0


def terms_of(script: Script, entries: tuple[Entry, ...], asked: Dialect | None) -> Terms:
    """The dialect that a pattern is read in: as asked, as declared, or guessed from its words.

    Nothing that tells: US terms, guessed.
    """
    evidence = tuple(sorted(_evidence(script, entries), key=lambda each: each.span))
    declared = _declared(script.plain)
    if asked:
        return Terms(asked, declared, guessed=False, evidence=evidence)
    if declared:
        return Terms(declared, declared, guessed=False, evidence=evidence)
    for_uk = sum(e.weight if e.dialect == "uk" else -e.weight for e in evidence)
    return Terms("uk" if for_uk > 0 else "us", guessed=True, evidence=evidence)


def _declared(plain: str) -> Literal["us", "uk", ""]:
    """What it says that its terms are; "" where it names both alike or neither."""
    us, uk = (_declarations(plain, dialect) for dialect in ("us", "uk"))
    for firmly in (True, False):
        more = us.count(firmly) - uk.count(firmly)
        if more:
            return "us" if more > 0 else "uk"
    return ""


def _declarations(plain: str, dialect: Dialect) -> list[bool]:
    """Each place that says so, and whether in so many words ("written in US terms")."""
    return [
        bool(found["firm"])
        for found in _DECLARED[dialect].finditer(plain)
        if not _OTHERWISE_BEFORE.search(plain[max(0, found.start() - 25) : found.start()])
        and not _OTHERWISE_AFTER.match(plain[found.end() : found.end() + 30])
    ]


def _evidence(script: Script, entries: tuple[Entry, ...]) -> Iterator[Evidence]:
    for dialect, weight, word, why in _WORDS:
        for found in islice(word.finditer(script.plain), _MOST_PLACES):
            if not _TRANSLATED.search(script.plain[max(0, found.start() - 30) : found.start()]):
                yield Evidence(dialect, why, Span(*found.span()), weight)
                break
    yield from _by_height(script)
    for entry in entries:
        yield from _by_motions(entry)
    yield from _by_list(entries)


def _by_height(script: Script) -> Iterator[Evidence]:
    """The first of each stitch and height: a pattern of fifty rounds says it no louder than one."""
    seen: set[tuple[str, int]] = set()
    for part in script.of("instructions"):
        starts = {each.body.start for each in part.statements if isinstance(each, RowText)}
        for found in _CHAIN_THEN.finditer(script.plain, part.body.start, part.body.end):
            before = script.plain[max(part.body.start, found.start() - 12) : found.start()]
            if found.start() not in starts and not _BEGINS.search(before):
                continue
            stitch, chains = found["stitch"].lower(), int(found["chains"] or found["before"])
            dialect = _TALLER.get((stitch, chains))
            if dialect and (stitch, chains) not in seen:
                seen.add((stitch, chains))
                yield Evidence(
                    dialect,
                    f"ch {chains} is as tall as a {dialect.upper()} {stitch}",
                    Span(*found.span()),
                    _BY_HEIGHT,
                )


def _by_motions(entry: Entry) -> Iterator[Evidence]:
    stitch = _NAMES.get(entry.word, entry.word)
    inserted = _INSERTED.search(entry.meaning)
    if stitch not in _MOTIONS or not inserted:
        return
    overs = sum(_times(found) for found in _BEFORE.finditer(entry.meaning, 0, inserted.start()))
    if dialect := _MOTIONS[stitch].get(overs):
        why = f"the steps of {entry.word} are those of a {dialect.upper()} {stitch}"
        yield Evidence(dialect, why, entry.span, _BY_MOTION)


def _times(found: re.Match[str]) -> int:
    told = found["times"] or ""
    return 3 if re.search("3|three", told) else 2 if told else 1


def _by_list(entries: tuple[Entry, ...]) -> Iterator[Evidence]:
    """A list with dc and tr and no sc among five entries or more is hardly a US one."""
    there = {entry.word: entry for entry in entries}
    if len(there) >= 5 and {"dc", "tr"} <= there.keys() and not {"sc", "hdc"} & there.keys():
        why = "its list has dc and tr, and nothing shorter"
        yield Evidence("uk", why, there["dc"].span, _BARE_LIST)
