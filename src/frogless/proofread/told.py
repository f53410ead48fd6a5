"""The statements of a pattern with what each says, and to which piece it belongs."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.proofread.script.model import Heading, RowText, Script
from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.words.read import said
from frogless.proofread.work.model import Told


def told_of(script: Script, lexicon: Lexicon) -> tuple[Told, ...]:
    """Every row and sentence of the instructions, in the order of the text."""
    return tuple(_told(script, lexicon))


def _told(script: Script, lexicon: Lexicon) -> Iterator[Told]:
    piece, name, begins = 0, "", True
    worked = False
    for part in (*script.of("instructions"), *script.of("finishing")):
        for statement in part.statements:
            if isinstance(statement, Heading):
                if statement.piece:
                    piece, name, begins = piece + int(worked), statement.name, True
                continue
            row = isinstance(statement, RowText)
            span = statement.body if isinstance(statement, RowText) else statement.span
            label = statement.label if isinstance(statement, RowText) else None
            yield Told(said(span, script, lexicon), span, label, piece, name, begins)
            begins, worked = False, worked or row
