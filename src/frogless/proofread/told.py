"""The statements of a pattern with what each says, and to which piece it belongs."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.proofread.script.model import Heading, Prose, RowText, Script, Span
from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.words.model import Said, Unclear
from frogless.proofread.words.read import said
from frogless.proofread.work.model import Told


def told_of(script: Script, lexicon: Lexicon) -> tuple[Told, ...]:
    """Every row of the instructions and every sentence that instructs, in the order of the text.

    A sentence between rows of which nothing is understood is a remark and is left out; so is one
    that its looks call a remark.
    """
    return tuple(_told(script, lexicon))


def _told(script: Script, lexicon: Lexicon) -> Iterator[Told]:
    piece, name, begins, onto = 0, "", True, False
    worked = False
    for part in (*script.of("instructions"), *script.of("finishing")):
        for statement in part.statements:
            if isinstance(statement, Heading):
                if statement.piece:
                    piece, name, begins = piece + int(worked), statement.name, True
                    onto = statement.onto and worked
                continue
            told = _one(statement, script, lexicon)
            if told is None:
                continue
            span, says = told
            label = statement.label if isinstance(statement, RowText) else None
            yield Told(says, span, label, piece, name, begins, onto=begins and onto)
            begins, worked = False, worked or label is not None


def _one(statement: RowText | Prose, script: Script, lexicon: Lexicon) -> tuple[Span, Said] | None:
    if isinstance(statement, RowText):
        return statement.body, said(statement.body, script, lexicon)
    if statement.remark:
        return None
    says = said(statement.span, script, lexicon)
    if all(isinstance(act, Unclear) for act in says.acts):
        return None
    return statement.span, says
