"""The list of abbreviations of a pattern."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from itertools import pairwise

from frogless.proofread.script.model import Part, Script, Span
from frogless.proofread.words.forms import keys_of
from frogless.proofread.words.model import Entry
from frogless.stitches.load import dictionary, words

_LINE = re.compile(r"[^\n]+")
_BULLET = re.compile(r"[ \t]*(?:[*+•·▪◦>#_-]+[ \t]+|\|[ \t]*|\*\*|\d{1,2}[.)][ \t]+)?")
_LABEL = re.compile(
    r"[ \t]*(?:(?:in|the|all)[ \t]+)?(?:us|uk|u\.s\.|u\.k\.|american|british|crochet)?[ \t]*"
    r"(?:terms|terminology|abbreviations|abbrev\.?|key|glossary)[^:=\n]{0,30}:[ \t]*",
    re.IGNORECASE,
)
_SEPARATOR = re.compile(
    r"[ \t]{0,9}(?:=|:|[ \t]-{1,3}(?=[ \t])|-{1,3}[ \t]|[ \t]-{2,3}|->|→)[ \t]{0,9}"
)
_GAP = re.compile(r"(?:[ \t]{0,9}\|[ \t]{0,9})|\t+|[ ]{2,}(?![ ,;.:])")
_BEHIND = re.compile(
    r"^(?P<meaning>[a-z][a-z0-9 /,'&-]{2,60}?)[ ]?\((?P<word>[^()=:]{1,15})\)$", re.I
)
_BEFORE = re.compile(
    r"^(?P<word>[a-z0-9][^()=:]{0,14}?(?:\([a-z]{1,3}\))?)[ ]?"
    r"\((?P<meaning>[a-z\d][^()=:]{2,60}(?:\([^()]{0,8}\))?)\)$",
    re.I,
)
_TOG = re.compile(r"\d{1,2}tog$")
_DASH = re.compile(r" - ")
#: A full stop that ends an entry, and no abbreviation: "d.c. = double crochet".
_STOP = re.compile(r"(?<![^a-z][a-z])(?<![^a-z][a-z]{2})\.[ \t]{1,9}(?![ \t=:-])", re.IGNORECASE)
_DOTTED = re.compile(r"(?:[a-z]{1,3}\. ?){1,3}[a-z]{0,3}")
_TOGETHER = re.compile(r",? \d{1,2} together$")
_RULE = re.compile(r"^[\s|:=+*_~-]+$")
#: Below the line that names the columns of a table.
_BELOW_HEAD = re.compile(r"[ \t]{0,9}\n[ \t]{0,8}\|[ :|-]{0,80}--[ :|-]{0,200}(?:\n|$)")
#: A line that is a row is no entry, wherever a list seems to end.
_ROW = re.compile(
    r"[\s*#>|_-]{0,8}(?:(?:rows?|rounds?|rnds?)[. ]{0,2}\d|r\d{1,3}\b|\d{1,3}(?:st|nd|rd|th) (?:row|round|rnd))",
    re.IGNORECASE,
)
_HEAD = re.compile(r"^(?:abbreviation|abbr\.?|term|symbol|stitch|word)s?$", re.IGNORECASE)
#: A word is no longer than this, in letters and in words: "beginning popcorn shell (beg pc sh)".
LONGEST_WORD, MOST_WORDS = 36, 5
#: Abbreviations that the dictionary has no word for; common practice.
_MORE = frozenset({"mr", "mc", "fo", "ea", "yo", "yrh", "alt", "approx", "prev", "foll", "tch"})
#: Lists longer than this are no lists of abbreviations.
MOST_ENTRIES = 500
_SHORT = 8
"""Letters of a word that a comma alone parts from its meaning."""
_SEEN = 200
"""Letters of a piece of a line that are looked at to tell whether it is an entry."""


def entries_of(script: Script) -> tuple[Entry, ...]:
    """What the pattern says its abbreviations mean, in its order.

    Where a line explains several words ("BLO/FLO", "st(s)") there is an entry for each, all at the
    place of the line. Words that are explained where they are used, "magic ring (MR)", come last.
    """
    found: list[Entry] = []
    for part in script.of("abbreviations"):
        found += _of_lines(script, part.body)
    for part in script.of("special"):
        found += [each for each in _of_lines(script, part.body) if _is_plain(each)]
    found = found[:MOST_ENTRIES]
    there = {entry.word for entry in found}
    lists = [part.body for part in lists_of(script)]
    for entry in _inline(script):
        listed = any(body.start <= entry.span.start < body.end for body in lists)
        if not listed and entry.word not in there:
            found.append(entry)
    return tuple(found)


def lists_of(script: Script) -> tuple[Part, ...]:
    """The parts that abbreviations are listed in."""
    return (*script.of("abbreviations"), *script.of("special"))


def _is_plain(entry: Entry) -> bool:
    """ "hdc = half double crochet", and no stitch of the pattern's own."""
    return _ENDING.sub("", entry.meaning.lower()).strip(" .") in _long_words()


def _of_lines(script: Script, body: Span) -> Iterator[Entry]:
    plain = script.plain
    last: list[Entry] = []
    indent = 0
    for line in _LINE.finditer(plain, body.start, body.end):
        if (
            _RULE.match(line[0])
            or _ROW.match(line[0])
            or _BELOW_HEAD.match(script.text, line.end())
        ):
            continue
        lead = len(line[0]) - len(line[0].lstrip())
        entries = list(_of_line(plain, Span(line.start(), line.end())))
        if entries and not (last and lead > indent + 3):
            yield from last
            last, indent = entries, lead
        elif last and lead > indent:
            last = [_longer(entry, line[0], line.end()) for entry in last]
    yield from last


def _longer(entry: Entry, more: str, end: int) -> Entry:
    return Entry(
        entry.word, f"{entry.meaning} {' '.join(more.split())}", Span(entry.span.start, end)
    )


def _of_line(plain: str, line: Span) -> Iterator[Entry]:
    """The entries of a line: one, or several with commas, semicolons or columns between them."""
    begin = line.start
    for mark in (_BULLET, _LABEL):
        if lead := mark.match(plain, begin, line.end):
            begin = lead.end()
    text = plain[begin : line.end]
    dashed = list(_dashed(text, begin))
    if dashed:
        for piece in dashed:
            yield from _of_piece(plain, piece)
        return
    cells = list(_cells(text, begin))
    if len(cells) > 1 and not any(_SEPARATOR.search(plain, s.start, s.end) for s in cells):
        yield from _of_columns(plain, cells)
        return
    if len(cells) == 2 and not _SEPARATOR.search(plain, cells[0].start, cells[0].end):
        yield from _of_columns(plain, cells)
        return
    for cell in cells if _all_entries(plain, cells) else [Span(begin, line.end)]:
        for piece in _pieces(plain, cell):
            yield from _of_piece(plain, piece)


def _cells(text: str, begin: int) -> Iterator[Span]:
    at = 0
    for gap in (*_GAP.finditer(text), None):
        end = gap.start() if gap else len(text)
        if text[at:end].strip(" *`_"):
            yield Span(begin + at, begin + end)
        at = gap.end() if gap else end


def _dashed(text: str, begin: int) -> Iterator[Span]:
    """ "ch, chain - dc, double crochet - rep, repeat": dashes between entries, commas within."""
    dashes = list(_DASH.finditer(text))
    starts, ends = [0, *(d.end() for d in dashes)], [*(d.start() for d in dashes), len(text)]
    parts = [Span(start, end) for start, end in zip(starts, ends, strict=True)]
    told = (text[part.start : part.end].partition(",") for part in parts)
    if len(parts) > 2 and all(comma and len(word.strip()) <= _SHORT for word, comma, _ in told):
        yield from (Span(begin + part.start, begin + part.end) for part in parts)


def _all_entries(plain: str, cells: list[Span]) -> bool:
    return all(_SEPARATOR.search(plain, cell.start, cell.end) for cell in cells)


def _of_columns(plain: str, cells: list[Span]) -> Iterator[Entry]:
    """Word, meaning, word, meaning: as columns or as a table."""
    for word, meaning in zip(cells[::2], cells[1::2], strict=False):
        name = plain[word.start : word.end]
        if _is_word(name) and not _HEAD.match(name.strip(" *`_")):
            span = Span(word.start, meaning.end)
            yield from _entries(name, plain[meaning.start : meaning.end], span)


def _pieces(plain: str, cell: Span) -> Iterator[Span]:
    """A line cut at commas and semicolons, where an entry begins after them."""
    cuts = (*_cuts(plain, cell), cell.end)
    start = cell.start
    begins = _begins_entry if _SEPARATOR.search(plain, cell.start, cell.end) else _begins_unparted
    for cut, nearest in pairwise(cuts):
        before, after = Span(start, cut), Span(cut + 1, nearest)
        if all(begins(plain[s.start : min(s.end, s.start + _SEEN)]) for s in (after, before)):
            yield Span(start, cut)
            start = cut + 1
    yield Span(start, cell.end)


def _cuts(plain: str, cell: Span) -> Iterator[int]:
    depth = 0
    for at in range(cell.start, cell.end):
        depth += (plain[at] in "([{") - (plain[at] in ")]}")
        if depth <= 0 and (
            plain[at] in ",;"
            or (plain[at] == "." and _STOP.match(plain, at))
            or plain[at - 1 : at + 2] == " / "
        ):
            yield at


def _begins_entry(text: str) -> bool:
    text = text.strip()
    if _BEHIND.match(text) or _BEFORE.match(text):
        return True
    split = _SEPARATOR.search(text)
    return bool(split and _is_word(text[: split.start()]) and text[split.end() :].strip())


def _begins_unparted(text: str) -> bool:
    """Where no sign parts words from meanings: "dc, ea (each), st(s)", "ch chain, rep, repeat"."""
    text = text.strip().lower()
    if _is_bare(text):
        return True
    return not _is_long(text) and (_begins_entry(text) or _split_unparted(text) is not None)


def _is_bare(text: str) -> bool:
    """An abbreviation that is listed without a meaning."""
    word = _TOG.sub("", _ENDING.sub("", text.lower().replace(".", "")))
    return word in _abbreviations()


def _of_piece(plain: str, piece: Span) -> Iterator[Entry]:
    text = plain[piece.start : piece.end]
    span = Span(
        piece.start + len(text) - len(text.lstrip()), piece.start + len(text.rstrip(" .;,"))
    )
    text = _DIALECT_MARK.sub("", text).strip(" \t.;,*`_|")
    split = _SEPARATOR.search(text)
    if split and _is_word(text[: split.start()]):
        yield from _entries(text[: split.start()], text[split.end() :], span)
    elif behind := _BEHIND.match(text):
        word, meaning = behind["word"], behind["meaning"]
        if len(word) > len(meaning):
            word, meaning = meaning, word
        yield from _entries(word, meaning, span)
    elif before := _BEFORE.match(text):
        yield from _entries(before["word"], before["meaning"], span)
    else:
        yield from _unparted(text, span)


def _unparted(text: str, span: Span) -> Iterator[Entry]:
    """ "dc double crochet", "rep, repeat": no sign between them, or a comma; "dc" by itself."""
    if _is_bare(text):
        yield from _entries(text, text, span)
    elif split := _split_unparted(text.lower()):
        yield from _entries(*split, span)


def _split_unparted(text: str) -> tuple[str, str] | None:
    tokens = text.split()
    for many in (2, 1):
        word, meaning = " ".join(tokens[:many]), " ".join(tokens[many:])
        together = _TOG.search(word) and meaning.endswith((" together", " tog"))
        if _is_short(word) and (_is_long(meaning) or together):
            return word, meaning
    word, comma, meaning = text.partition(",")
    listed = any(each.strip() in _abbreviations() for each in meaning.split(","))
    if comma and len(word) <= _SHORT and len(meaning) > len(word) and not listed:
        return word, meaning
    return None


def _is_short(word: str) -> bool:
    word = _ENDING.sub("", word.replace(".", ""))
    return any(
        each in _short_words() for each in (word, word.removesuffix("s"), _TOG.sub("", word))
    )


def _is_long(meaning: str) -> bool:
    """ "single crochet", "spaces", "single crochet, 2 together"."""
    name = _ENDING.sub("", _TOGETHER.sub("", meaning))
    return name in _long_words() or name.removesuffix("s") in _long_words()


def _is_word(text: str) -> bool:
    text = text.strip(" *`_|")
    return 0 < len(text) <= LONGEST_WORD and len(text.split()) <= MOST_WORDS and "(" not in text[:1]


def _entries(word: str, meaning: str, span: Span) -> Iterator[Entry]:
    told = " ".join(meaning.strip(" \t*`_|").lstrip("-=:> ").split())
    if told:
        for each in dict.fromkeys(_words(word)):
            yield Entry(each, told, span)


_DIALECT_MARK = re.compile(r"\((?:us|uk|u\.s\.|u\.k\.)(?: terms?)?\)", re.IGNORECASE)
_MORE_ENDING = re.compile(r"^(?P<stem>[\w .-]*\w)\((?P<end>[a-z]{1,3})\)$", re.IGNORECASE)
_ENDING = re.compile(r"\(e?s\)|\(.*?\)")
_IN_BRACKETS = re.compile(r"^(?P<one>[^()]+?)[ ]*\((?P<other>[^()]+)\)$")


def _words(word: str) -> Iterator[str]:
    """All that one left side names: "st(s)", "BLO/FLO", "beg or begin", "shell (sh)"."""
    word = " ".join(_DIALECT_MARK.sub("", word).strip(" \t*`_|\"'").lower().split())
    if _DOTTED.fullmatch(word):
        word = word.replace(".", "")  # "d.c."
    for each in re.split(r"[ ]*(?:/|,|;|\bor\b|\band\b)[ ]*", word):
        if ending := _MORE_ENDING.match(each):
            yield ending["stem"]
            yield ending["stem"] + ending["end"]
        elif both := _IN_BRACKETS.match(each):
            yield both["one"]
            yield both["other"]
        elif each and len(each) <= LONGEST_WORD:
            yield each.rstrip(".")


@cache
def _short_words() -> frozenset[str]:
    return frozenset(
        {w for d in ("us", "uk") for w in keys_of(d) if len(w) <= 12}
        | {t.abbreviation.lower() for d in ("us", "uk") for t in words(d).values()}
    )


@cache
def _abbreviations() -> frozenset[str]:
    """What is written for a name, and is no name itself."""
    terms = [t for stitch in dictionary().values() for t in stitch.terms.values()]
    terms += [t for d in ("us", "uk") for t in words(d).values()]
    short = {t.abbreviation.lower() for t in terms} | _MORE
    return frozenset(short - {t.name.lower() for t in terms})


@cache
def _long_words() -> frozenset[str]:
    return frozenset(
        {w for d in ("us", "uk") for w in keys_of(d) if len(w) > 4}
        | {t.name.lower() for d in ("us", "uk") for t in words(d).values()}
    )


_INLINE = re.compile(
    r"\b([a-z][a-z-]{0,20}(?: [a-z][a-z-]{0,20}){0,4}) \(([a-z][a-z0-9 -]{0,9})\)", re.I
)


def _inline(script: Script) -> Iterator[Entry]:
    """ "single crochet (sc)", "magic ring (MR)", wherever a known name has its short form behind."""
    there: set[str] = set()
    for found in _INLINE.finditer(script.plain):
        tokens, word = found[1].lower().split(), found[2].lower()
        names = (" ".join(tokens[-many:]) for many in range(len(tokens), 0, -1))
        name = next((each for each in names if each in _long_words()), None)
        begins = word[0] == name[0] if name else False
        if name and begins and word not in there and len(word) < len(name):
            there.add(word)
            yield Entry(word, name, Span(found.end(1) - len(name), found.end()))
