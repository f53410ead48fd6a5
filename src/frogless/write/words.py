"""The words of one dialect in one language: what a stitch is called in a row."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache

from frogless.rows.count import CHAIN
from frogless.stitches.load import dictionary, leaves, stands_on, words
from frogless.stitches.model import Dialect, Stitch
from frogless.write.phrases import Phrases


@dataclass(frozen=True, slots=True, eq=False)
class Places:
    """Places that each stitch takes and leaves, by key.

    Alike only to itself: what is said of the stitches of one dictionary holds for no other.
    """

    stitches: Mapping[str, Stitch]
    stands_on: Mapping[str, int]
    leaves: Mapping[str, int]


def _places_of(stitches: Mapping[str, Stitch]) -> Places:
    """The places of a dictionary; always the same for the program's own, which never changes."""
    return _of_dictionary() if stitches is dictionary() else _counted(stitches)


@cache
def _of_dictionary() -> Places:
    return _counted(dictionary())


def _counted(stitches: Mapping[str, Stitch]) -> Places:
    return Places(stitches, stands_on(stitches), leaves(stitches))


@dataclass(frozen=True, slots=True)
class Words:
    """Terms and phrases, and the places that stitches take and leave."""

    stitches: Mapping[str, Stitch] = field(compare=False)
    dialect: Dialect
    phrases: Phrases
    places: Places = field(init=False)

    def __post_init__(self) -> None:
        """Counts the places once, for every row asks for them."""
        object.__setattr__(self, "places", _places_of(self.stitches))

    def stitch(self, key: str) -> str:
        """What a stitch is called in a row: its abbreviation.

        An ornament is called by its name: its abbreviation is one letter ("p") and easily missed.
        """
        stitch = self.stitches[key]
        term = stitch.terms[self.dialect]
        named = term.name if stitch.kind == "ornament" else term.abbreviation
        return self.phrases.stitch(key, named)

    @property
    def chain(self) -> str:
        """The abbreviation of the chain."""
        return self.stitch(CHAIN)

    @property
    def colour(self) -> str:
        """The word for what is changed, as each dialect spells it."""
        return self.phrases.say(f"colour_{self.dialect}")

    @property
    def slip(self) -> str:
        """The abbreviation of the slip stitch."""
        return self.stitch("slip_stitch")

    @property
    def skip(self) -> str:
        """The word for passing a stitch over; written out, as no two abbreviations of it agree."""
        return words(self.dialect)["skip"].name

    @property
    def stands_on(self) -> Mapping[str, int]:
        """Places each stitch takes, by key."""
        return self.places.stands_on

    @property
    def leaves(self) -> Mapping[str, int]:
        """Places each stitch leaves, by key."""
        return self.places.leaves
