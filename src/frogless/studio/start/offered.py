"""What can be made: a card for each design, with what it asks for."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from frogless.stitches.model import Dialect
from frogless.studio.needs import need_words, needs

KINDS = {
    "skirt": "Skirts",
    "top": "Tops",
    "dress": "Dresses",
    "cardigan": "Cardigans",
    "hat": "Hats",
    "shawl": "Shawls",
    "bag": "Bags",
}
FIRST = "ring-dance-skirt"
"""The example that comes first: a skirt of one stitch, with everything that a skirt can have."""


@dataclass(frozen=True, slots=True)
class Offer:
    """One design to make.

    Args:
        line: what it is, in one sentence. asks: what it needs, in a few words.
        fault: why it cannot be made as it is; "" when it can. own: whether the person wrote it.
    """

    ref: str
    name: str
    kind: str
    line: str
    asks: str
    fault: str
    own: bool = False


@dataclass(frozen=True, slots=True)
class Choice:
    """A kind of garment to look at alone, and how many there are."""

    key: str
    label: str
    number: int


def offer(ref: str, name: str, text: str, terms: Dialect) -> Offer:
    """A design as a card."""
    need = needs(text)
    line = need.summary.partition(". ")[0].rstrip(".")
    asks = "" if need.error else f"Needs {need_words(need, terms)}"
    fault = need.error.splitlines()[0] if need.error else ""
    own = ref.startswith("own:")
    return Offer(ref, name, need.kind, f"{line}." if line else "", asks, fault, own)


def kinds(offers: Iterable[Offer]) -> Iterator[Choice]:
    """The kinds of garment that there are."""
    found = [one.kind for one in offers]
    for key, label in KINDS.items():
        if key in found:
            yield Choice(key, label, found.count(key))
