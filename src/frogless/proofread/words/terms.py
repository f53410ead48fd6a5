"""The fixed words of the trade: `phrases.toml`, and the words for numbers."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from functools import cache
from pathlib import Path

_FILE = Path(__file__).with_name("phrases.toml")

#: Passed over wherever they stand between other words.
NOISE = frozenset({
    "the", "a", "an", "your", "please", "loosely", "tightly", "carefully", "just", "simply", "now",
})  # fmt: skip

#: Terminals whose words are of the trade: an abbreviation among them has to be explained.
TRADE = frozenset({
    "ST", "CH", "SP", "TCH", "RING", "MAGIC", "SKIP", "INC", "DEC", "TOG", "REP", "ROWS", "SIDE",
    "LOOPS", "YARN_OVER", "REM", "BELOW", "NEXT", "CONT", "MARKED", "FIRST", "EACH", "EVEN",
    "STITCH", "TOGETHER", "CH_SP", "FROM_HOOK", "LAST", "SAME",
})  # fmt: skip
NUMBERS: Mapping[str, int] = {
    "zero": 0, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7,
    "eight": 8, "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14,
    "fifteen": 15, "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19,
}  # fmt: skip
TENS: Mapping[str, int] = {
    "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80,
    "ninety": 90,
}  # fmt: skip
OFTEN: Mapping[str, int] = {"once": 1, "twice": 2, "thrice": 3}
ORDINALS: Mapping[str, int] = {
    "second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8,
    "ninth": 9, "tenth": 10, "eleventh": 11, "twelfth": 12,
}  # fmt: skip


@cache
def phrases() -> Mapping[str, tuple[str, ...]]:
    """The phrases of each terminal."""
    told = tomllib.loads(_FILE.read_text(encoding="utf-8"))
    return {kind: tuple(listed) for kind, listed in told.items()}
