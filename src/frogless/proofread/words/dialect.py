"""Whether a pattern is written in US or in UK terms."""

from __future__ import annotations

from frogless.proofread.script.model import Script
from frogless.proofread.words.model import Entry, Terms
from frogless.stitches.model import Dialect


def terms_of(script: Script, entries: tuple[Entry, ...], asked: Dialect | None) -> Terms:
    """The dialect that a pattern is read in: as asked, as declared, or guessed from its words."""
    raise NotImplementedError
