"""The statements of a pattern with what each says, and to which piece it belongs."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from frogless.proofread.script.model import Heading, Prose, RowText, Script, Span
from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.words.model import (
    Act,
    Again,
    Aside,
    Bare,
    Chain,
    Evenly,
    Increase,
    Into,
    Join,
    Met,
    Repeat,
    Ring,
    Said,
    Together,
    Unclear,
)
from frogless.proofread.words.of_sizes import for_all_sizes
from frogless.proofread.words.read import said
from frogless.proofread.work.acts import unclear_in
from frogless.proofread.work.model import Told

#: Rows and sentences that are read; a book of patterns has fewer. What comes after them is told as
#: not understood, so that nothing that was not read is taken for proven.
MOST = 20_000
_TOO_MANY = f"give it in parts, as only the first {MOST:,} rows and sentences of a text are read"


def told_of(script: Script, lexicon: Lexicon) -> tuple[Told, ...]:
    """Every row of the instructions and every sentence that instructs, in the order of the text.

    A sentence between rows of which little is understood is a remark; one that its looks call a
    remark is left out.
    """
    return tuple(_told(script, lexicon))


def _told(script: Script, lexicon: Lexicon) -> Iterator[Told]:
    piece, name, begins, onto = 0, "", True, False
    worked, read = False, 0
    for part in (*script.of("instructions"), *script.of("finishing")):
        for statement in part.statements:
            if isinstance(statement, Heading):
                if statement.piece:
                    piece, name, begins = piece + int(worked), statement.name, True
                    onto = statement.onto and worked
                continue
            if statement.begins:
                piece, name, begins, onto = piece + int(worked), "", True, False
            label = statement.label if isinstance(statement, RowText) else None
            read += 1
            if read > MOST and isinstance(statement, RowText):
                rest = Span(statement.body.start, part.body.end)
                yield Told(Said((Unclear(rest, _TOO_MANY),)), rest, label, piece, name, begins)
                return
            told = _one(statement, script, lexicon) if read <= MOST else None
            if told is None:
                continue
            span, says, guessed = told
            yield Told(
                says,
                span,
                label,
                piece,
                name,
                begins,
                onto=begins and onto,
                guessed=guessed,
                only=statement.only,
            )
            begins, worked = False, worked or label is not None


def _one(
    statement: RowText | Prose, script: Script, lexicon: Lexicon
) -> tuple[Span, Said, bool] | None:
    """Where it stands, what it says, and whether it is taken for a remark without being known as one."""
    if isinstance(statement, RowText):
        return statement.body, _said(statement.body, statement.only, script, lexicon), False
    if statement.remark:
        return None
    span = statement.span
    says = _said(span, statement.only, script, lexicon)
    if says.acts and _explains(says.acts, span):
        return span, replace(says, acts=(Aside(span, "remark"),)), True
    return span, says, False


def _said(span: Span, only: tuple[int, ...], script: Script, lexicon: Lexicon) -> Said:
    """What stands there; the lists of rows that some sizes work may have numbers for these alone."""
    if not only:
        return said(span, script, lexicon)
    own = replace(script, sizes=tuple(script.sizes[size] for size in only))
    return for_all_sizes(said(span, own, lexicon), only, len(script.sizes))


def _explains(acts: tuple[Act, ...], span: Span) -> bool:
    """Whether a sentence between rows is a remark: much of it, or all but its asides, is unclear."""
    lost = sum(each.span.end - each.span.start for each in unclear_in(acts))
    if not lost:
        return False
    return 2 * lost > span.end - span.start or not any(_works(act) for act in acts)


def _works(act: Act) -> bool:
    """Whether stitches are made by it; "stitch" by itself is told of one."""
    if isinstance(act, Bare):
        return act.times is not None
    return isinstance(
        act, Into | Met | Increase | Together | Chain | Repeat | Evenly | Again | Ring | Join
    )
