"""Every row worked over the row below, in every size."""

from __future__ import annotations

from collections.abc import Sequence

from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.work.model import Reckoning, Told


def reckon(told: Sequence[Told], lexicon: Lexicon, sizes: int) -> Reckoning:
    """What each row uses and makes."""
    raise NotImplementedError
