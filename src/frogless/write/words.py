"""The words of one dialect in one language: what a stitch is called in a row."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from frogless.rows.count import CHAIN
from frogless.stitches.load import leaves, stands_on, words
from frogless.stitches.model import Dialect, Stitch
from frogless.write.phrases import Phrases


@dataclass(frozen=True, slots=True)
class Words:
    """Terms and phrases, and the places that stitches take and leave."""

    stitches: Mapping[str, Stitch]
    dialect: Dialect
    phrases: Phrases

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
        return stands_on(self.stitches)

    @property
    def leaves(self) -> Mapping[str, int]:
        """Places each stitch leaves, by key."""
        return leaves(self.stitches)
