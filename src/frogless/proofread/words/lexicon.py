"""What the words of one pattern mean: the dictionary in its dialect, and what it defines itself."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from frogless.proofread.words.model import Entry, OwnStitch, Terms
from frogless.stitches.model import Stitch


@dataclass(frozen=True, slots=True, eq=False)
class Lexicon:
    """The words of one pattern.

    Args:
        stitches: the dictionary, by key.
        keys: dictionary keys by every name and abbreviation of the dialect, in lower case.
        own: what the pattern defines, by key; `Bare.stitch` and `Target.stitch` may name these too.
        entries: its list of abbreviations, in its order.
        chain_counts: what the pattern says of its turning chains in general ("ch 3 counts as dc
            throughout", "turning chains do not count"), by number of chains; 0: of all of them.
    """

    terms: Terms
    stitches: Mapping[str, Stitch]
    keys: Mapping[str, str]
    own: Mapping[str, OwnStitch] = field(default_factory=dict)
    entries: tuple[Entry, ...] = ()
    chain_counts: Mapping[int, bool] = field(default_factory=dict)
