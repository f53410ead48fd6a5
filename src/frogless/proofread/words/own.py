"""The words of a pattern gathered: the dictionary's, and the stitches that it defines itself."""

from __future__ import annotations

from frogless.proofread.script.model import Script
from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.words.model import Entry, Terms


def lexicon_of(script: Script, entries: tuple[Entry, ...], terms: Terms) -> Lexicon:
    """The words of a pattern, its own stitches among them."""
    raise NotImplementedError
