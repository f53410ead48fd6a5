"""US and UK terms: one of them throughout."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.proofread.checks.model import Reading
from frogless.proofread.findings import Finding
from frogless.proofread.script.model import Span
from frogless.proofread.words.forms import foreign_to
from frogless.proofread.words.model import Used
from frogless.proofread.work.model import Told

#: From this weight on a word of the dialect is stronger than the height of its chains.
_WORDS = 2.5
_NAMES = {"us": "US", "uk": "UK"}


def mixed_terms(reading: Reading) -> Iterator[Finding]:
    """Words of the other dialect, and stitches whose chains are those of the other dialect."""
    terms = reading.lexicon.terms
    foreign = foreign_to(terms.dialect)
    defined = {
        entry.word for entry in reading.lexicon.entries if entry.meaning.lower() not in foreign
    }
    defined |= {word for own in reading.lexicon.own.values() for word in own.words}
    told: set[str] = set()
    for each in reading.told:
        for used in each.said.used:
            word = used.word.lower()
            if word in foreign and word not in defined and foreign[word] not in told:
                told.add(foreign[word])
                yield _strange(reading, each, used)
    yield from _heights(reading)


def _strange(reading: Reading, each: Told, used: Used) -> Finding:
    terms = reading.lexicon.terms
    here, other = _NAMES[terms.dialect], _NAMES["us" if terms.dialect == "uk" else "uk"]
    stitch = reading.lexicon.stitches[foreign_to(terms.dialect)[used.word.lower()]]
    right = stitch.terms[terms.dialect].abbreviation
    how = "says that it is" if terms.declared == terms.dialect else "is read as"
    return Finding(
        "mixed-terms",
        used.span,
        f'"{reading.script.words(used.span)}"',
        f"a {other} word; in {here} terms {right}",
        f"The pattern {how} in {here} terms, which have no {used.word}: "
        f"write {right}, or look which dialect this part was taken from.",
        "likely",
        piece=each.piece_name,
    )


def _heights(reading: Reading) -> Iterator[Finding]:
    """All chains are as tall as a stitch of that name in the other dialect.

    Only where the terms are declared: else the chains told the dialect.
    """
    terms = reading.lexicon.terms
    if terms.declared != terms.dialect:
        return
    by_height = [e for e in terms.evidence if " is as tall as a " in e.why]
    against = [e for e in by_height if e.dialect != terms.dialect]
    if not against or len(against) != len(by_height):
        return
    if any(e.dialect == terms.dialect and e.weight >= _WORDS for e in terms.evidence):
        return
    here, other = _NAMES[terms.dialect], _NAMES[against[0].dialect]
    span = Span(against[0].span.start, against[0].span.end)
    yield Finding(
        "mixed-terms",
        span,
        f"{here} terms",
        against[0].why,
        f"The pattern says that it is in {here} terms, but its turning chains suit {other} "
        "terms: look which stitches are meant.",
        "possible",
    )
