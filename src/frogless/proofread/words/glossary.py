"""The list of abbreviations of a pattern."""

from __future__ import annotations

from frogless.proofread.script.model import Script
from frogless.proofread.words.model import Entry


def entries_of(script: Script) -> tuple[Entry, ...]:
    """What the pattern says its abbreviations mean, in its order."""
    raise NotImplementedError
