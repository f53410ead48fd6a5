"""What a question offers to write instead, "did you mean 33 in?", and taking it. Knows no Django."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from urllib.parse import parse_qsl, urlencode

from frogless.errors import InputError
from frogless.units import parse_number

MEANT = re.compile(r"did you mean ([^?]+)\?")
NUMBER = re.compile(r"^[\d\s.,/½¼¾⅛⅜⅝⅞-]+")
LONGEST = 400


@dataclass(frozen=True, slots=True)
class Offer:
    """Something that can be taken with one button: what it is called, and what it writes where."""

    label: str
    writes: tuple[tuple[str, str], ...]

    @property
    def value(self) -> str:
        """What the button of the form sends, under the name "take"."""
        return urlencode(self.writes)


def meant(sentence: str, name: str, values: Mapping[str, str]) -> tuple[Offer, ...]:
    """The offers of a sentence that asks "did you mean 33 in (83.8 cm)?".

    Args:
        name: the field that the sentence stands at; a number of another field is written there.
        values: what the form holds.
    """
    found = []
    for asked in MEANT.findall(sentence):
        for part in asked.split(" or "):
            words = part.partition("(")[0].strip()
            where = _holds(words, name, values)
            if where:
                found.append(Offer(f"Write {words}", ((where, words),)))
    return tuple(dict.fromkeys(found))


def _holds(words: str, name: str, values: Mapping[str, str]) -> str:
    """The field that holds the same number, first the one that is asked about; "" for none."""
    wanted = _number(words)
    order = (name, *(one for one in values if one != name))
    return next((one for one in order if wanted and _number(values.get(one, "")) == wanted), "")


def _number(text: str) -> float:
    """The number that a text begins with; 0 for none."""
    found = NUMBER.match(text.strip())
    try:
        return round(parse_number(found[0].strip()), 6) if found else 0
    except InputError:
        return 0


def taken(sent: str, known: Collection[str]) -> dict[str, str]:
    """What the button of an offer writes, as far as the form has such fields."""
    return {name: text for name, text in parse_qsl(sent[:LONGEST]) if name in known}
