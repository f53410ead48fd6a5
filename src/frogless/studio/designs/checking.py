"""The text of a design checked through the studio's workers; what was checked is remembered."""

from __future__ import annotations

from frogless.errors import FroglessError
from frogless.studio.designs.checked import Checked, check, faulty
from frogless.studio.designs.kept import Kept, key_of
from frogless.studio.designs.standing import Pair, worn
from frogless.studio.library.preferences import Preferred
from frogless.studio.library.shelf import LONGEST_TEXT
from frogless.studio.work.pool import pool

_checked: Kept[Checked] = Kept(64)


def too_long(text: str) -> str:
    """What is said of a text that is longer than any that is kept; "" of all others."""
    if len(text) <= LONGEST_TEXT:
        return ""
    return f"This text has {len(text):,} letters; {LONGEST_TEXT:,} are accepted."


def known(text: str, pair: Pair, likes: Preferred) -> Checked | None:
    """What was found before."""
    return _checked.get(_key(text, pair, likes))


def checked(text: str, pair: Pair, likes: Preferred, affinity: str) -> Checked:
    """What a text comes to for a body in a yarn, or what is wrong with it.

    Args:
        affinity: what is checked again and again is asked of the same worker.
    """
    body, swatches = worn(pair)

    def ask() -> Checked:
        try:
            return pool().ask(affinity, check, text, body, swatches, likes.terms, likes.units)
        except FroglessError as error:
            return faulty(error)

    return _checked.made(_key(text, pair, likes), ask)


def _key(text: str, pair: Pair, likes: Preferred) -> str:
    return key_of(text, worn(pair), likes.terms, likes.units)
