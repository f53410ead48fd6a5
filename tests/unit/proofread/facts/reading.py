"""A pattern's facts, read the way that proofreading reads them."""

from __future__ import annotations

from frogless.proofread.facts.model import Facts
from frogless.proofread.facts.read import facts_of
from frogless.proofread.script.cut import cut
from frogless.proofread.words.dialect import terms_of
from frogless.proofread.words.glossary import entries_of
from frogless.proofread.words.own import lexicon_of

ROWS = "\n\nInstructions\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 sc)\n"


def facts(front: str, rows: str = ROWS) -> Facts:
    """What the front matter says, before some rows."""
    script = cut(front + rows)
    entries = entries_of(script)
    return facts_of(script, lexicon_of(script, entries, terms_of(script, entries, None)))
