"""Where the hook goes, in words before "next st": the loop, the post, the space before it."""

from __future__ import annotations

import re
from collections.abc import Mapping

_END = r"(?![\w-])"
_POST = r"around\s+(?:the\s+)?"

#: For each way to say it, what the steps of stitches call the place (`stitches/data/places.toml`).
_PHRASES: Mapping[str, tuple[str, ...]] = {
    r"in\s+(?:the\s+)?(?:front\s+loops?(?:\s+only)?|flo)\s+of": ("front_loop",),
    r"in\s+(?:the\s+)?(?:back\s+loops?(?:\s+only)?|blo)\s+of": ("back_loop",),
    r"in\s+(?:the\s+)?(?:third|3rd)\s+loops?(?:\s+only)?\s+of": ("third_loop",),
    r"in\s+(?:the\s+)?sp(?:ace)?\s+before": ("before_stitch",),
    rf"{_POST}front\s+post\s+of": ("front_post",),
    rf"{_POST}back\s+post\s+of": ("back_post",),
    rf"{_POST}(?:post\s+of)?": ("front_post", "back_post"),
}
#: Which of the places, and the terminal of the grammar.
_WHICH: Mapping[str, str] = {
    "INTO_NEXT": "next",
    "INTO_FIRST": "first",
    "INTO_LAST": "last",
    "INTO_SAME": "same",
    "INTO_EACH": "each",
    "INTO_EACH_OF_NEXT": r"each\s+of\s+(?:the\s+)?next",
}


def into_terminals() -> Mapping[str, str]:
    """The terminals of the grammar for these phrases, by name."""
    where = "|".join(rf"{phrase}\s*" for phrase in _PHRASES)
    return {f"{name}.2": rf"(?:{where})(?:the\s+)?{which}{_END}" for name, which in _WHICH.items()}


def place_named(phrase: str) -> tuple[str, ...]:
    """The places that a phrase means, as steps name them; a post alone is that of either side.

    >>> place_named("in back loop only of next")
    ('back_loop',)
    """
    for pattern, places in _PHRASES.items():
        if re.match(pattern, phrase, re.IGNORECASE):
            return places
    raise ValueError(f"{phrase!r} names no place for the hook")
