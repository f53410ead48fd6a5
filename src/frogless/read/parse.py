"""A line of text as a `Said`: the grammar, and the faults it finds."""

from __future__ import annotations

from typing import Any

from lark.exceptions import UnexpectedInput

from frogless.errors import InputError
from frogless.read.builder import built
from frogless.read.grammar import parser
from frogless.read.guess import not_understood
from frogless.read.spoken import Said, SaidAgain, SaidSame
from frogless.read.vocabulary import Vocabulary

AnySaid = Said | SaidAgain | SaidSame


def parse_row(text: str, vocabulary: Vocabulary) -> AnySaid:
    """What a line says.

    Raises:
        InputError: a word that is not understood or does not fit, with its column, an excerpt and
            a guess.
    """
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


def _parse(text: str, start: str, vocabulary: Vocabulary) -> Any:  # noqa: ANN401 — a rule's own type
    try:
        tree = parser(vocabulary.terminals).parse(text, start=start)
    except UnexpectedInput as error:
        raise InputError(not_understood(text, error, vocabulary)) from error
    return built(tree, vocabulary)
