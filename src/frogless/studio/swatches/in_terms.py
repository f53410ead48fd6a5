"""Sentences of the library about a swatch, in the words of a form and of its reader."""

from __future__ import annotations

import re

from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.swatch_file import STITCH_NAMES
from frogless.units import INCH, Units

KEYS = {
    "`stitch`": "“worked in”",
    "`mass`": "the mass",
    "`ball_mass`": "the mass of a ball",
    "`ball_length`": "the length in a ball",
}
WRITTEN = {key.replace("_", " "): key for key in STITCH_NAMES.values()}
NAMES = re.compile("|".join(sorted(map(re.escape, WRITTEN), key=len, reverse=True)))
CENTIMETRES = re.compile(r"(\d+(?:\.\d+)?) cm")


def in_terms(sentence: str, units: Units, terms: Dialect) -> str:
    """The sentence with the stitches in the reader's terms and lengths in her units.

    One that speaks of both terms stays as it is.
    """
    for key, words in KEYS.items():
        sentence = sentence.replace(key, words)
    if terms != "us" and "UK" not in sentence:
        sentence = NAMES.sub(
            lambda found: dictionary()[WRITTEN[found[0]]].terms[terms].name, sentence
        )
    return CENTIMETRES.sub(_in_inches, sentence) if units == "in" else sentence


def _in_inches(found: re.Match[str]) -> str:
    length = float(found[1])
    return found[0] if length == 10 else f"{10 * length / INCH:.3g} in"
