"""Where a pattern defines stitches of its own: names, and the text that says how they are worked."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import zip_longest

from frogless.proofread.script.model import Part, Script, Span
from frogless.proofread.words.model import Entry

_NAMED = re.compile(
    r"(?P<name>[a-z0-9][\w '/.-]{0,40}?)[ ]{0,3}(?:\((?P<short>[^()\n]{1,24})\)|\[(?P<alias>[^\[\]\n]{1,24})\])?"
    r"[ \t*_]{0,4}(?:[:=]|[ \t]-{1,2}(?=[ \t]))[ \t*_]{0,4}(?P<text>.*)",
    re.IGNORECASE,
)
_BULLET = re.compile(r"[ \t]{0,20}(?:[*+•·>#_-]+[ \t]+|\*\*|\d{1,2}[.)][ \t]+)?")
_ALONE = re.compile(
    r"(?P<name>[a-z0-9][\w '/-]{1,40}?)[ ]?(?:\((?P<short>[^()\n]{1,24})\))?[ *_]*$", re.I
)
_COLUMNS = re.compile(
    r"(?P<name>[a-z0-9][\w'/-]*(?: [\w'/-]+){0,4})(?:[ ]{2,40}|\t+)(?P<text>\S.*)", re.I
)
_NO_NAME = re.compile(
    r"(?:please )?(?:note|notes|n\.?b|tip|hint|step \d+|row|rnd|round|rows|rnds|rounds|foundation|caution"
    r"|next|us|uk|terms|hook|yarn|gauge|photo|video)\b",
    re.IGNORECASE,
)
#: A remark among the notes is a definition only where it reads like one: "Shell = (2 dc, ch 1 …".
_DEFINES = re.compile(
    r"[ ]*(?:work |make )?(?:[(\[]|\d{1,2} ?(?!cm|mm|in\b)[a-z]|ch |yo\b|yrh\b|insert\b|\w+\d+tog\b)",
    re.I,
)

_SECOND = re.compile(
    r"[ \t]*(?P<name>[a-z][a-z -]{1,30}):[ \t]*(?=[(\[]|\d+ ?[a-z]|ch )", re.IGNORECASE
)
#: A name that the designer gives in a sentence of her own.
_SAID = re.compile(
    r"(?:\b(?:i|we) (?:use|write|call|say)|\bby) [\"'](?P<name>[a-z][a-z -]{0,24})[\"'],? "
    r"(?:for|to mean|when i mean|i mean|we mean|means|meaning) (?P<text>[^.\n]{3,200})",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Definition:
    """A name, all it is called, and where the text stands that says what it is.

    Args:
        text: one sentence or more; span of the whole is `span`.
    """

    names: tuple[str, ...]
    span: Span
    text: Span


def definitions(script: Script, entries: tuple[Entry, ...]) -> Iterator[Definition]:
    """All definitions: of the list of abbreviations, of the special stitches, of the notes."""
    yield from (_named_twice(script.plain, each) for each in _listed(script.plain, entries))
    yield from _named_in_a_sentence(script.plain)
    for part in script.of("special"):
        yield from (_named_twice(script.plain, each) for each in _of_part(script.plain, part))
    for part in (*script.of("about"), *script.of("notes")):
        for each in _of_part(script.plain, part):
            if _DEFINES.match(script.plain, each.text.start, each.text.end):
                yield each


def _named_twice(plain: str, definition: Definition) -> Definition:
    """ "V-st - V-stitch: (dc, ch 1, dc) in the st indicated": a second name before the colon."""
    found = _SECOND.match(plain, definition.text.start, definition.text.end)
    if found is None:
        return definition
    names = dict.fromkeys((*definition.names, " ".join(found["name"].lower().split())))
    return Definition(tuple(names), definition.span, Span(found.end(), definition.text.end))


def _named_in_a_sentence(plain: str) -> Iterator[Definition]:
    """ "I use "corner" for (hdc, ch 1, hdc) all in one place." """
    for found in _SAID.finditer(plain):
        names = (" ".join(found["name"].lower().split()),)
        yield Definition(names, Span(*found.span()), Span(*found.span("text")))


def _listed(plain: str, entries: tuple[Entry, ...]) -> Iterator[Definition]:
    """Entries of one line are one definition with several names."""
    by_span: dict[Span, list[Entry]] = {}
    for entry in entries:
        by_span.setdefault(entry.span, []).append(entry)
    for span, those in by_span.items():
        text = _meaning_at(plain, those[0])
        yield Definition(tuple(dict.fromkeys(each.word for each in those)), span, text)


def _meaning_at(plain: str, entry: Entry) -> Span:
    first = entry.meaning.split()[0]
    at = plain.find(first, min(entry.span.start + len(entry.word), entry.span.end), entry.span.end)
    if at < 0:
        at = max(plain.find(first, entry.span.start, entry.span.end), entry.span.start)
    return Span(at, entry.span.end)


def _of_part(plain: str, part: Part) -> Iterator[Definition]:
    """Every line that begins with a name begins a definition, which lasts until the next one."""
    names: tuple[str, ...] = ()
    start = text = end = 0
    lines = list(re.finditer(r"[^\n]+", plain[part.body.start : part.body.end]))
    for line, after in zip_longest(lines, lines[1:]):
        at = part.body.start + line.start()
        bullet = _BULLET.match(plain, at, part.body.start + line.end())
        begin = bullet.end() if bullet else at
        stop = part.body.start + line.end()
        if found := _begins(plain, Span(begin, stop), bool(after)):
            if names and text < end:
                yield Definition(names, Span(start, end), Span(text, end))
            names, start = _names(found), begin
            text = found.start("text") if "text" in found.re.groupindex else stop
        end = stop
    if names and text < end:
        yield Definition(names, Span(start, end), Span(text, end))


def _begins(plain: str, line: Span, more: bool) -> re.Match[str] | None:
    if _NO_NAME.match(plain, line.start, line.end):
        return None
    named = _NAMED.match(plain, line.start, line.end) or _COLUMNS.match(plain, line.start, line.end)
    if named:
        return named
    alone = _ALONE.match(plain, line.start, line.end) if more else None
    return alone if alone and len(alone["name"].split()) <= 5 else None


def _names(found: re.Match[str]) -> tuple[str, ...]:
    told = found.groupdict()
    names = [found["name"], told.get("short"), told.get("alias")]
    parts = [each for name in names if name for each in re.split(r"[ ]?(?:/|,|\bor\b|;)[ ]?", name)]
    words = (
        " ".join(re.sub(r"\babbreviated\b|[\"'*_]", "", part).lower().split()) for part in parts
    )
    return tuple(dict.fromkeys(word for word in words if word))
