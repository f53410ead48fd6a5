"""The phrases of `messages`, in any language that has a catalogue.

A language is `locale/<language>/LC_MESSAGES/frogless.po`: the English phrases are its message ids,
and with the context `stitch` a stitch's key is the message id of its abbreviation. A language that
has no catalogue is refused; English has none and needs none.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from gettext import NullTranslations
from importlib import import_module
from pathlib import Path

from frogless.write.messages import MEASUREMENTS, PHRASES, PLURALS

LOCALE = Path(__file__).with_name("locale")
STITCH_CONTEXT = "stitch"


@dataclass(frozen=True, slots=True)
class Phrases:
    """The phrases in one language."""

    language: str
    catalogue: NullTranslations

    def say(self, name: str, /, **values: object) -> str:
        """The phrase of that name with its blanks filled."""
        return self.catalogue.gettext(PHRASES[name]).format(**values)

    def count(self, name: str, n: int, /, **values: object) -> str:
        """The phrase of that name in the form that the number `n` takes."""
        one, many = PLURALS[name]
        return self.catalogue.ngettext(one, many, n).format(n=n, **values)

    def measurement(self, key: str) -> str:
        """What a measurement, or any other thing with a key, is called."""
        plain = MEASUREMENTS.get(key, key.replace("_", " "))
        return self.catalogue.gettext(plain)

    def stitch(self, key: str, abbreviation: str) -> str:
        """The language's abbreviation of a stitch, or the one given."""
        found = self.catalogue.pgettext(STITCH_CONTEXT, key)
        return abbreviation if found == key else found

    def nth(self, n: int) -> str:
        """The ordinal: 1st, 2nd, 3rd, 4th, 11th, 21st."""
        return self.say(f"nth_{_ending(n)}", n=n)


@cache
def phrases(language: str = "en", folder: Path = LOCALE) -> Phrases:
    """The phrases of a language.

    Raises:
        InputError: there is no catalogue for that language.
    """
    if language == "en":
        return Phrases(language, NullTranslations())
    # Babel is needed only to read a catalogue, so English starts without importing it.
    load = import_module("frogless.write.catalogue").load
    return Phrases(language, load(language, folder))


def _ending(n: int) -> str:
    if n % 100 in (11, 12, 13) or n % 10 not in (1, 2, 3):
        return "other"
    return str(n % 10)
