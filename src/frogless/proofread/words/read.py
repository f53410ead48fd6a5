"""What a row says: its text read with the words of its pattern."""

from __future__ import annotations

from frogless.proofread.script.model import Script, Span
from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.words.model import Said


def said(span: Span, script: Script, lexicon: Lexicon) -> Said:
    """What the text there says; what is not understood is in it as `Unclear`."""
    raise NotImplementedError
