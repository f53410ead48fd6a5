"""The words of a pattern gathered: the dictionary's, and the stitches that it defines itself."""

from __future__ import annotations

from frogless.proofread.script.model import Script
from frogless.proofread.words.define import defined
from frogless.proofread.words.forms import keys_of
from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.words.model import Entry, OwnStitch, Terms
from frogless.proofread.words.special import definitions
from frogless.proofread.words.throughout import chain_counts
from frogless.stitches.load import dictionary

#: Stitches that a pattern defines itself; more are not gathered.
MOST = 200
#: "MR - magic ring" is a word for what is begun on, and none for a stitch.
_RING = "adjustable_ring"


def lexicon_of(script: Script, entries: tuple[Entry, ...], terms: Terms) -> Lexicon:
    """The words of a pattern, its own stitches among them.

    A definition may use the words of those before it ("Beg shell: ch 3, shell …").
    """
    own: dict[str, OwnStitch] = {}
    words = Lexicon(terms, dictionary(), keys_of(terms.dialect), own, entries, chain_counts(script))
    for each in definitions(script, entries):
        stitch = defined(each, script, words) if len(own) < MOST else None
        if stitch and stitch.meaning != _RING:
            own[stitch.key] = stitch
    return words
