"""A line of text as a `Said`: the grammar, and the faults it finds."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Any

from lark.exceptions import UnexpectedInput

from frogless.errors import InputError
from frogless.read.builder import built
from frogless.read.grammar import parser
from frogless.read.guess import not_understood
from frogless.read.spoken import Said, SaidAgain, SaidSame
from frogless.read.vocabulary import Vocabulary

#: Brackets within brackets, at most (own choice: a published row has three).
DEEPEST = 12
KEPT = 4096
"""Lines that are remembered as they were read: an edit leaves most lines of a pattern alone."""
#: What is meant as a row: it says so, or has what repeats along it.
_ROW = re.compile(r"\s*(?:rows?|rnds?)\b|.*\*", re.IGNORECASE)

AnySaid = Said | SaidAgain | SaidSame


@lru_cache(maxsize=KEPT)
def parse_row(text: str, vocabulary: Vocabulary) -> AnySaid:
    """What a line says.

    Raises:
        InputError: a word that is not understood or does not fit, with its column, an excerpt and
            a guess.
    """
    if ":" not in text and _ROW.match(text):
        raise InputError('a row begins with its number and a colon, such as "Row 2:" or "Rnd 2:"')
    result = _parse(text, "row", vocabulary)
    if not isinstance(result, AnySaid):
        raise TypeError(f"a row was parsed as {result!r}")
    return result


def parse_spread(text: str, vocabulary: Vocabulary) -> tuple[int, ...]:
    """How many stitches each place of a seam takes.

    Raises:
        InputError: as `parse_row`.
    """
    return tuple(_parse(text, "spread", vocabulary))


def _check_depth(text: str) -> None:
    depth = 0
    for at, letter in enumerate(text):
        depth += (letter in "([") - (letter in ")]")
        if depth > DEEPEST:
            raise InputError(
                f"column {at + 1}: brackets stand within brackets more than {DEEPEST} deep"
            )


def _parse(text: str, start: str, vocabulary: Vocabulary) -> Any:  # noqa: ANN401 — a rule's own type
    _check_depth(text)
    try:
        tree = parser(vocabulary.terminals).parse(text, start=start)
    except UnexpectedInput as error:
        raise InputError(not_understood(text, error, vocabulary)) from error
    return built(tree, vocabulary)
