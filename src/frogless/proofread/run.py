"""A pattern proofread: the whole way from its text to what was found."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from frogless.errors import InputError, near_names
from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.table import BY_NAME, CHECKS
from frogless.proofread.facts.read import facts_of
from frogless.proofread.findings import Finding, NotUnderstood, Report
from frogless.proofread.script.cut import cut
from frogless.proofread.script.model import Script
from frogless.proofread.told import told_of
from frogless.proofread.words.dialect import terms_of
from frogless.proofread.words.glossary import entries_of
from frogless.proofread.words.own import lexicon_of
from frogless.proofread.work.acts import unclear_in
from frogless.proofread.work.model import Assumption, Told
from frogless.proofread.work.reckon import reckon
from frogless.stitches.model import Dialect

#: Letters of a text; a book of patterns has fewer.
LONGEST = 2_000_000


def proofread(
    text: str,
    terms: Dialect | None = None,
    size: str = "",
    silenced: Collection[str] = (),
) -> Report:
    """Everything in a written pattern that does not add up.

    Args:
        terms: the dialect; None: as declared, or guessed.
        size: the name of the one size that is asked about; "": all.
        silenced: names of checks that are left out.

    Raises:
        InputError: a text that is too long or empty, a size or check that is not there.
    """
    _check_asked(text, silenced)
    script = cut(text)
    entries = entries_of(script)
    words = lexicon_of(script, entries, terms_of(script, entries, terms))
    told = told_of(script, words)
    reckoning = reckon(told, words, len(script.sizes))
    reading = Reading(script, words, told, reckoning, facts_of(script, words))
    found = [f for check in CHECKS if check.name not in silenced for f in check.finds(reading)]
    unclear = tuple(_not_understood(told, script))
    return Report(
        script=script,
        terms=words.terms,
        told=told,
        reckoning=reckoning,
        findings=tuple(sorted(_of_size(found, size, script), key=lambda each: each.span)),
        not_understood=unclear,
        understood=_share(told, unclear),
        assumptions=(*reckoning.assumptions, *_guessed(told)),
        silenced=tuple(sorted(silenced)),
    )


def _check_asked(text: str, silenced: Collection[str]) -> None:
    if len(text) > LONGEST:
        raise InputError(f"the text has {len(text)} letters; {LONGEST} are the most that are read")
    if not text.strip():
        raise InputError("there is no text in it; a written pattern is needed")
    for name in silenced:
        if name not in BY_NAME:
            near = near_names(name, BY_NAME) or "; --checks lists those that there are"
            raise InputError(f'there is no check "{name}"{near}')


def _of_size(found: list[Finding], size: str, script: Script) -> Iterator[Finding]:
    if size and size not in script.sizes:
        named = ", ".join(name for name in script.sizes if name)
        has = f"it has {named}" if named else "it is written in one size, so name none"
        raise InputError(f'the pattern has no size "{size}"; {has}')
    return (each for each in found if not (size and each.sizes and size not in each.sizes))


def _not_understood(told: tuple[Told, ...], script: Script) -> Iterator[NotUnderstood]:
    for each in told:
        row = script.words(each.label.span).strip("*_.:;) ") if each.label else ""
        for act in unclear_in(each.said.acts):
            yield NotUnderstood(act.span, act.guess, row)


def _guessed(told: tuple[Told, ...]) -> Iterator[Assumption]:
    """Sentences between rows that are left out of the work because little of them was understood."""
    said = "a sentence of which little was understood is taken for a remark: look whether it is one"
    return (Assumption(said, each.span) for each in told if each.guessed)


def _share(told: tuple[Told, ...], unclear: tuple[NotUnderstood, ...]) -> float:
    whole = sum(each.span.end - each.span.start for each in told)
    lost = sum(each.span.end - each.span.start for each in unclear)
    return 1 - lost / whole if whole else 0.0
