"""The words of the declared dialect, as the terminals of the grammar and as a table of keys."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from frogless.stitches.load import words
from frogless.stitches.model import Dialect, Stitch

CHAIN = "chain"
SLIP_STITCH = "slip_stitch"
_END = r"(?![\w-])"


@dataclass(frozen=True, slots=True)
class Vocabulary:
    """Words of one dialect.

    Args:
        keys: stitch keys by name and abbreviation, in lower case.
        skips: words for passing a stitch over.
        terminals: the terminals that depend on the dialect, as lines of the grammar.
    """

    dialect: Dialect
    stitches: Mapping[str, Stitch]
    keys: Mapping[str, str]
    skips: tuple[str, ...]
    terminals: str

    def key(self, word: str) -> str:
        """The stitch that a word means; plural forms of ornaments and trims are read as well."""
        plain = normal(word)
        return self.keys.get(plain) or self.keys[plain.removesuffix("s")]


def vocabulary(stitches: Mapping[str, Stitch], dialect: Dialect) -> Vocabulary:
    """The words of a dialect."""
    keys: dict[str, str] = {}
    for key, stitch in stitches.items():
        if stitch.kind == "group":  # only a name: a row holds what it works into one place
            continue
        term = stitch.terms[dialect]
        if stitch.kind != "trim":  # its name is a whole phrase, which the grammar reads
            keys[normal(term.name)] = key
        keys[normal(term.abbreviation)] = key
    skip = words(dialect)["skip"]
    skips = tuple(dict.fromkeys((normal(skip.name), normal(skip.abbreviation))))
    told = MappingProxyType(keys)
    return Vocabulary(dialect, stitches, told, skips, _terminals(told, stitches, skips))


def _terminals(
    keys: Mapping[str, str], stitches: Mapping[str, Stitch], skips: Iterable[str]
) -> str:
    chain = _either(word for word, key in keys.items() if key == CHAIN)
    stitch = _either(word for word, key in keys.items() if key != CHAIN)
    plural = _either(
        word for word, key in keys.items() if stitches[key].kind in ("ornament", "trim")
    )
    lines = {
        "TOGETHER.3": rf"(?:{stitch})\d+tog{_END}",
        "STITCH.2": rf"(?:{plural})s{_END}|(?:{stitch}){_END}" if plural else f"(?:{stitch}){_END}",
        "CHAIN.1": rf"(?:{chain}){_END}",
        "CHAIN_SPACE.1": rf"(?:{chain})-\d+\s+sps?{_END}",
        "CHAIN_TOP.1": rf"(?:{chain})-\d+{_END}",
        "SPACE.1": rf"(?:{chain})-sps?{_END}",
        "SKIP.1": rf"(?:{_either(skips)})\s+next{_END}",
    }
    return "\n".join(f"{name}: /{pattern}/i" for name, pattern in lines.items())


def normal(word: str) -> str:
    """In lower case, with single blanks."""
    return " ".join(word.lower().split())


def word_begins(word: str, text: str) -> bool:
    """Whether a text begins with a word, as a whole word."""
    return re.match(f"(?:{_either([word])}){_END}", text, re.IGNORECASE) is not None


def _either(words_: Iterable[str]) -> str:
    """Any of the words, the longest first, so that "sc blo" is not read as "sc"."""
    longest_first = sorted(words_, key=len, reverse=True)
    return "|".join(r"\s+".join(map(re.escape, word.split())) for word in longest_first)
