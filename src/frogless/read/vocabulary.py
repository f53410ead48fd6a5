"""The words of the declared dialect, as the terminals of the grammar and as a table of keys."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import lru_cache
from types import MappingProxyType
from typing import get_args

from frogless.errors import InputError
from frogless.read.hook_places import into_terminals, place_named
from frogless.rows.nodes import Into, Node, Repeat, Work
from frogless.stitches.load import dictionary, words
from frogless.stitches.model import Dialect, Stitch

CHAIN = "chain"
SLIP_STITCH = "slip_stitch"
KEPT, KEPT_LINES = 32, 4096
"""Sets of words whose terminals are remembered, and lines with the words that they have."""
_END = r"(?![\w-])"
#: A pattern that nothing matches: where a dictionary has no words of a kind.
_NONE = "(?!x)x"


@dataclass(frozen=True, slots=True, eq=False)
class Meanings:
    """What the words of a dialect mean, of the stitches of one dictionary; alike only to itself.

    Args:
        keys: stitch keys by name and abbreviation, in lower case.
        skips: words for passing a stitch over.
    """

    dialect: Dialect
    stitches: Mapping[str, Stitch]
    keys: Mapping[str, str]
    skips: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Vocabulary:
    """Words of one dialect, and the terminals that they are found by.

    Two are alike whose words mean the same: they read every line alike that both have terminals
    for.

    Args:
        keys, skips: as in `Meanings`.
        terminals: the terminals that depend on the dialect, as lines of the grammar.
    """

    dialect: Dialect
    stitches: Mapping[str, Stitch] = field(compare=False)
    keys: Mapping[str, str] = field(compare=False)
    skips: tuple[str, ...] = field(compare=False)
    terminals: str = field(compare=False)
    meanings: Meanings

    def key(self, word: str) -> str:
        """The stitch that a word means; plural forms of ornaments and trims are read as well."""
        plain = normal(word)
        return self.keys.get(plain) or self.keys[plain.removesuffix("s")]

    def put_into(self, node: Node, phrase: str) -> Node:
        """A node with every stitch worked where a phrase says, "in back loop only of next".

        Raises:
            InputError: a stitch that is not worked there by any entry of the dictionary.
        """
        match node:
            case Work(stitch, _) if self.stitches[stitch].stands_on:
                return replace(node, stitch=self._placed(stitch, phrase))
            case Into(body) | Repeat(body, _):
                return replace(node, body=tuple(self.put_into(each, phrase) for each in body))
        return node

    def _placed(self, key: str, phrase: str) -> str:
        stitch, places = self.stitches[key], place_named(phrase)
        if stitch.into in places:
            return key
        found = [
            other
            for other in self.stitches.values()
            if other.like == key and other.into in places and other.kind == stitch.kind
        ]
        name = stitch.terms[self.dialect].abbreviation
        if len({other.into for other in found}) > 1:
            told = " or ".join(f'"{o.terms[self.dialect].abbreviation}"' for o in found)
            raise InputError(f'"{name}" worked "{_shortened(phrase)}" may be {told}; write which')
        if found:
            return found[0].key
        there = [
            other.terms[self.dialect].abbreviation
            for other in self.stitches.values()
            if other.into in places and other.kind == "stitch"
        ]
        accepted = f"; worked there: {', '.join(there)}" if there else ""
        raise InputError(f'"{name}" is no stitch worked "{_shortened(phrase)}"{accepted}')


def vocabulary(
    stitches: Mapping[str, Stitch], dialect: Dialect, text: str | None = None
) -> Vocabulary:
    """The words of a dialect.

    Args:
        text: what is to be read: no terminals are made for words that occur neither in it nor in
            what was read before, which reads the same and sooner.
    """
    own = stitches is dictionary()
    meant = _of_dictionary(dialect) if own else _meanings(stitches, dialect)
    there = frozenset(meant.keys) if text is None else _in_text(meant, text)
    if own and text is not None:
        # With the words of the texts before, the next text needs no other parser.
        there |= _met.get(dialect, frozenset())
        _met[dialect] = there
    return Vocabulary(dialect, stitches, meant.keys, meant.skips, _terminals(there, meant), meant)


#: The words that texts read before have needed, by dialect.
_met: dict[Dialect, frozenset[str]] = {}


def every_word(dialect: Dialect) -> Vocabulary:
    """The words of the program's own dictionary; from here on no text needs another parser."""
    _met[dialect] = frozenset(_of_dictionary(dialect).keys)
    return vocabulary(dictionary(), dialect)


@lru_cache(maxsize=len(get_args(Dialect)))
def _of_dictionary(dialect: Dialect) -> Meanings:
    """What the words of the program's own dictionary mean, which never changes."""
    return _meanings(dictionary(), dialect)


def _meanings(stitches: Mapping[str, Stitch], dialect: Dialect) -> Meanings:
    keys = {word: key for key, stitch in stitches.items() for word in _named(stitch, dialect)}
    keys |= _others(stitches, keys)
    skip = words(dialect)["skip"]
    skips = tuple(dict.fromkeys((normal(skip.name), normal(skip.abbreviation))))
    return Meanings(dialect, stitches, MappingProxyType(keys), skips)


def _in_text(meant: Meanings, text: str) -> frozenset[str]:
    return frozenset().union(*(_in_line(meant, line) for line in text.splitlines()), _chains(meant))


@lru_cache(maxsize=KEPT_LINES)
def _in_line(meant: Meanings, line: str) -> frozenset[str]:
    plain = normal(line)
    return frozenset(word for word in meant.keys if word in plain)


def _chains(meant: Meanings) -> frozenset[str]:
    """The words for chains, which the grammar cannot do without."""
    return frozenset(word for word, key in meant.keys.items() if key == CHAIN)


def _named(stitch: Stitch, dialect: Dialect) -> tuple[str, ...]:
    """Name and abbreviation; a trim's name is a whole phrase, which the grammar reads."""
    term = stitch.terms[dialect]
    name = () if stitch.kind == "trim" else (normal(term.name),)
    return (*name, *map(normal, (term.abbreviation, *term.others)))


def _others(stitches: Mapping[str, Stitch], known: Mapping[str, str]) -> Mapping[str, str]:
    """What else stitches are called, where it means one stitch alone in whatever dialect."""
    terms = {
        normal(word)
        for stitch in stitches.values()
        for term in stitch.terms.values()
        for word in (term.name, term.abbreviation)
    }
    told = [
        (word, key)
        for key, stitch in stitches.items()
        if stitch.kind != "trim"
        for word in {normal(word) for word in stitch.also}
    ]
    times = Counter(word for word, _ in told)
    return {word: key for word, key in told if times[word] == 1 and word not in {*terms, *known}}


@lru_cache(maxsize=KEPT)
def _terminals(there: frozenset[str], meant: Meanings) -> str:
    stitches, skips = meant.stitches, meant.skips
    keys = {word: key for word, key in meant.keys.items() if word in there}

    def those(*kinds: str) -> str:
        found = [w for w, key in keys.items() if key != CHAIN and stitches[key].kind in kinds]
        return _either(found) if found else _NONE

    chain = _either(word for word, key in keys.items() if key == CHAIN)
    stitch = those("stitch", "foundation", "ornament", "trim")
    space = rf"(?:sps?|spaces?){_END}"
    lines = {
        "TOGETHER.3": rf"(?:{stitch})\d+tog{_END}",
        "STITCH.2": rf"(?:{those('ornament', 'trim')})s{_END}|(?:{stitch}){_END}",
        "GROUP.2": rf"(?:{those('group')}){_END}",
        "CHAIN.1": rf"(?:{chain}){_END}",
        "CHAIN_SPACE.2": rf"(?:(?:{chain})[\s-]?\d+|\d+-(?:{chain}))[\s-]{space}",
        "CHAIN_TOP.1": rf"(?:{chain})-\d+{_END}",
        "SPACE.2": rf"(?:(?:{chain})[\s-])?{space}",
        "SKIP_OTHERS.2": rf"(?:{_either(skips)})\s+(?:all\s+)?(?:the\s+)?others?(?:\s+sts?)?{_END}",
        "SKIP.1": rf"(?:{_either(skips)})(?:\s+(?:the\s+)?next)?{_END}",
        **into_terminals(),
    }
    return "\n".join(f"{name}: /{pattern}/i" for name, pattern in lines.items())


def normal(word: str) -> str:
    """In lower case, with single blanks."""
    return " ".join(word.lower().split())


def word_begins(word: str, text: str) -> bool:
    """Whether a text begins with a word, as a whole word."""
    return re.match(f"(?:{_either([word])}){_END}", text, re.IGNORECASE) is not None


def _shortened(phrase: str) -> str:
    """A phrase without the words for which of the places."""
    return re.sub(r"\s+(the\s+)?(next|first|last|same|each.*)$", "", normal(phrase))


def _either(words_: Iterable[str]) -> str:
    """Any of the words, the longest first, so that "sc blo" is not read as "sc"."""
    longest_first = sorted(words_, key=len, reverse=True)
    return "|".join(r"\s+".join(map(re.escape, word.split())) for word in longest_first)
