"""The front matter of a pattern, read."""

from __future__ import annotations

from frogless.proofread.facts.model import Facts
from frogless.proofread.script.model import Script
from frogless.proofread.words.lexicon import Lexicon


def facts_of(script: Script, lexicon: Lexicon) -> Facts:
    """Gauge, materials, sizes and finished measurements that a pattern states."""
    raise NotImplementedError
