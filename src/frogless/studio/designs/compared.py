"""Two texts of a design, drafted for the same body in the same yarn: what differs in the garment."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from frogless.design.load import parse_design
from frogless.draft import Texts, draft_texts
from frogless.errors import FroglessError
from frogless.publish.difference import differences, document_differences
from frogless.publish.drafted import Drafted
from frogless.stitches.model import Dialect
from frogless.studio.designs.pictures import Worn
from frogless.units import Units


@dataclass(frozen=True, slots=True)
class Differences:
    """What differs, one sentence each.

    Args:
        document: in what the design asks for.
        garment: in what comes of it.
        why: why the garments could not be compared; "" when they were.
    """

    document: tuple[str, ...] = ()
    garment: tuple[str, ...] = ()
    why: str = ""


def compare_drafts(
    before: str,
    after: str,
    tries: Sequence[Worn],
    terms: Dialect = "us",
    units: Units = "cm",
) -> Differences:
    """What differs between two texts of a design, in the document and once they are drafted.

    Args:
        tries: bodies with swatches, the ones wanted most first: the first that does for both texts
            is taken, and what is wrong is told for the first.
    """
    asked = _in_document(before, after, terms)
    why = ""
    for body, swatches in tries:
        found = _drafted((before, after), body, swatches, terms, units)
        if not isinstance(found, str):
            return Differences(asked, differences(*found))
        why = why or found
    return Differences(asked, why=why)


def _drafted(
    texts: tuple[str, str], body: str, swatches: tuple[str, ...], terms: Dialect, units: Units
) -> tuple[Drafted, Drafted] | str:
    """Both of them, or why there are not."""
    made: list[Drafted] = []
    for name, text in zip(("The first", "The second"), texts, strict=True):
        try:
            made.append(draft_texts(Texts(text, body, swatches), terms, units).drafted)
        except FroglessError as error:
            return f"{name} cannot be drafted: {error.faults[0].message}"
    return made[0], made[1]


def _in_document(before: str, after: str, terms: Dialect) -> tuple[str, ...]:
    """What differs in what is asked for; nothing where one of the texts cannot be read."""
    try:
        for text in (before, after):
            parse_design(text)
        return document_differences(before, after, terms)
    except FroglessError:
        return ()
