"""What a pattern says of its turning chains in general: whether they count as a stitch."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from frogless.proofread.script.model import Prose, RowText, Script, Span

# A line that begins with a capital begins a sentence: the stop before it was left out.
_SENTENCE = re.compile(r"[^.;!\n]{1,400}(?:\n(?![ \t]*\n|[ \t]*[A-Z])[^.;!\n]{1,400}){0,6}")
_COUNT = re.compile(
    r"(?P<verb>\b(?:is|are|does|do|will|should|has|have)?[ ]?(?P<no>n't|not|never)?[ ]?(?:be )?"
    r"count(?:s|ed|ing)?\b)(?P<after>[^,.;]{0,60})",
    re.IGNORECASE,
)
_INCLUDES = re.compile(
    r"counts? (?P<no>(?:does|do) not |never )?includes? (?:the |your |any )?(?P<what>[^.;]{0,60})",
    re.I,
)
_NEGATION = re.compile(
    r"\b(?:not|never|no|neither|don't|doesn't|isn't|aren't|without)\b|n't\b", re.I
)
_CHAINS = re.compile(
    r"\bch(?:ain)?s?[ -]?(?:of )?(?P<one>\d{1,2})\b|\b(?P<two>\d{1,2})[ -]?(?:turning )?ch(?:ain)?s?\b",
    re.I,
)
_TURNING = re.compile(
    r"\b(?:turning|beginning|starting|initial|first|beg|t-?)[ -]?ch(?:ain)?s?\b|\btch\b", re.I
)
_GENERAL = re.compile(
    r"\bthroughout\b|\balways\b|\b(?:at|in) (?:the )?(?:start|beg(?:inning)?)\b|\bbegins? (?:each|every)\b"
    r"|\b(?:each|every|all) (?:rows?|rounds?|rnds?)\b|\bunless\b|\bwhole pattern\b",
    re.IGNORECASE,
)
#: "counts as a dc", "does not count."; and no other counting, "count your stitches".
_AS = re.compile(r"(?:as|to|for|in|toward|unless|here|at)\b|\)|$")

_THROUGHOUT = re.compile(r"\bthroughout\b", re.IGNORECASE)
#: Letters before it that tell what holds throughout.
_BEFORE = 60


def chain_counts(script: Script) -> Mapping[int, bool]:
    """Whether turning chains count, by their number of chains; 0: all that are not named.

    What is said last holds: notes first, then the rows ("here and throughout").
    """
    counts: dict[int, bool] = {}
    for span in (*_remarks(script), *_rows(script)):
        for sentence in _SENTENCE.finditer(script.plain, span.start, span.end):
            counts |= _of_sentence(" ".join(sentence[0].split()))
    return counts


def _remarks(script: Script) -> Iterator[Span]:
    for part in script.parts:
        if part.kind not in ("instructions", "finishing"):
            yield part.body


def _rows(script: Script) -> Iterator[Span]:
    """Sentences between rows, and of rows the brackets that speak for those after them too."""
    for part in script.parts:
        for statement in part.statements:
            if isinstance(statement, Prose):
                yield statement.span
            elif isinstance(statement, RowText):
                body = statement.body
                for found in _THROUGHOUT.finditer(script.plain, body.start, body.end):
                    yield Span(max(body.start, found.start() - _BEFORE), found.end())


def _of_sentence(sentence: str) -> Mapping[int, bool]:
    if included := _INCLUDES.search(sentence):
        if _TURNING.search(included["what"]) or _CHAINS.search(included["what"]):
            return dict.fromkeys(_numbers(included["what"]), not included["no"])
        return {}
    counts: dict[int, bool] = {}
    general = bool(_GENERAL.search(sentence))
    start = 0
    for found in _COUNT.finditer(sentence):
        subject = sentence[start : found.start()]
        start = found.end()
        named = _TURNING.search(subject) or (general and _CHAINS.search(subject))
        if named and _AS.match(found["after"].strip()):
            denied = found["no"] or _NEGATION.search(subject, named.start())
            counts |= dict.fromkeys(_numbers(subject), not denied)
    return counts


def _numbers(text: str) -> list[int]:
    return [int(found["one"] or found["two"]) for found in _CHAINS.finditer(text)] or [0]
