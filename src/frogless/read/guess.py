"""What to say of a word that is not understood: where it stands, and what was probably meant."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping
from functools import cache
from pathlib import Path

from lark.exceptions import UnexpectedInput

from frogless.errors import near_names
from frogless.read.vocabulary import Vocabulary, normal, word_begins
from frogless.stitches.load import words
from frogless.stitches.model import Dialect, Stitch

_WORD = re.compile(r"[^\s,;:.*()\[\]]+")
_AROUND = 40
_LOOK_AHEAD = 3
_OTHER: Mapping[Dialect, Dialect] = {"us": "uk", "uk": "us"}


def not_understood(text: str, error: UnexpectedInput, vocabulary: Vocabulary) -> str:
    """One sentence, and an excerpt with a caret under the word."""
    known = set(vocabulary.keys) | set(vocabulary.skips) | grammar_words()
    word, at = _culprit(text, _position(text, error), known)
    return f"{_sentence(word, text, at, vocabulary, known)}\n{excerpt(text, at)}"


def excerpt(text: str, at: int) -> str:
    """The text around a position, with a caret below it."""
    begin = max(0, at - _AROUND)
    dots = "…" if begin else ""
    line = dots + text[begin : at + _AROUND] + ("…" if at + _AROUND < len(text) else "")
    return f"  {line}\n  {' ' * (len(dots) + at - begin)}^"


def _sentence(word: str, text: str, at: int, vocabulary: Vocabulary, known: Collection[str]) -> str:
    if text.count("*") % 2:
        return (
            f'column {text.rindex("*") + 1}: "*" begins what repeats along the row; end it with '
            '"; rep from * across", "around" or "to last 2 sts", or with "2 more times"'
        )
    if not word:
        return (
            "the line ends too early; a row ends with a full stop and its count in round brackets"
        )
    if other := _other_dialect(text[at:], vocabulary):
        return f"column {at + 1}: {other}"
    if _is_known(word, known):
        return f'column {at + 1}: "{word}" does not fit here'
    return f'column {at + 1}: "{word}" is not understood{near_names(normal(word), sorted(known))}'


def _position(text: str, error: UnexpectedInput) -> int:
    at = getattr(error, "pos_in_stream", None)
    token = getattr(error, "token", None)
    ended = token is not None and token.type == "$END"
    return len(text) if at is None or at < 0 or ended else at


def _culprit(text: str, at: int, known: Collection[str]) -> tuple[str, int]:
    """The word that a position lies in, and where it begins.

    "in each" is one word to the grammar, so a fault in "each" is found at "in": of the next words,
    the first that is not known is meant.
    """
    found = [word for word in _WORD.finditer(text) if word.end() > at]
    if not found or found[0].start() > at:
        return text[at : at + 1], at
    for word in found[:_LOOK_AHEAD]:
        if not _is_known(word[0], known):
            return word[0], word.start()
    return found[0][0], found[0].start()


def _is_known(word: str, known: Collection[str]) -> bool:
    return normal(word) in known or not any(letter.isalpha() for letter in word)


def _other_dialect(rest: str, vocabulary: Vocabulary) -> str:
    """What is said of a text that begins with a term of the other dialect alone."""
    if any(word_begins(word, rest) for word in (*vocabulary.keys, *vocabulary.skips)):
        return ""
    here, other = vocabulary.dialect, _OTHER[vocabulary.dialect]
    for theirs, ours in _terms(vocabulary.stitches, other, here):
        if word_begins(theirs, rest):
            return (
                f'"{theirs}" is a {other.upper()} term, but {here.upper()} terms are declared, '
                f'in which it is "{ours}"'
            )
    return ""


def _terms(
    stitches: Mapping[str, Stitch], other: Dialect, here: Dialect
) -> Iterator[tuple[str, str]]:
    """Names and abbreviations in the other dialect with those of the declared one."""
    pairs = [(stitch.terms[other], stitch.terms[here]) for stitch in stitches.values()]
    for theirs, ours in (*pairs, (words(other)["skip"], words(here)["skip"])):
        yield theirs.name, ours.name
        yield theirs.abbreviation, ours.abbreviation


@cache
def grammar_words() -> frozenset[str]:
    """Every word that the grammar itself knows."""
    grammar = Path(__file__).with_name("pattern.lark").read_text(encoding="utf-8")
    patterns = re.findall(r"^[A-Z_]+: (/.*/)i$", grammar, re.MULTILINE)
    return frozenset(re.findall(r"[a-z]{2,}", re.sub(r"\\s|\\w|\\d", " ", " ".join(patterns))))
