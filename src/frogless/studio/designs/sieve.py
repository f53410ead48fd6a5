"""Designs chosen by what they are like: filters that combine, how many each leaves, what to loosen."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from difflib import get_close_matches
from typing import Protocol

from frogless.stitches.model import Dialect
from frogless.studio.designs.facets import FACETS, Facet
from frogless.studio.designs.facts import Facts, label

LONGEST_SEARCH = 200
LONGEST_WORD = 40

NEAR = 0.75
"""How alike two words are that one is taken for the other: one slip in five letters (own choice)."""

WORD = re.compile(r"[^\W\d_]{3,}")


class Choosable(Protocol):
    """Anything with a name and facts."""

    @property
    def name(self) -> str:
        """What it is called."""

    @property
    def facts(self) -> Facts:
        """What it is like."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is looked for.

    Args:
        chosen: values by facet, those with nothing chosen left out.
        words: all of them have to occur.
        body: ref of the body that has to have what is needed; "" for any.
        measured: what that body was measured for.
    """

    chosen: tuple[tuple[str, tuple[str, ...]], ...] = ()
    words: str = ""
    body: str = ""
    measured: frozenset[str] = frozenset()

    @property
    def number(self) -> int:
        """How many filters are set."""
        return (
            sum(len(values) for _, values in self.chosen) + bool(words_of(self)) + bool(self.body)
        )

    def without(self, facet: str) -> Wanted:
        """The same with nothing chosen in a facet."""
        return replace(self, chosen=tuple(one for one in self.chosen if one[0] != facet))


@dataclass(frozen=True, slots=True)
class Option:
    """One value to choose, whether it is chosen, and how many designs it leaves or would leave."""

    facet: str
    value: str
    label: str
    chosen: bool
    count: int


@dataclass(frozen=True, slots=True)
class Loosened:
    """A filter to take away, and how many designs would be found without it."""

    label: str
    wanted: Wanted
    count: int


def words_of(looked_for: Wanted) -> list[str]:
    """The words that have to occur; commas stand between them like blanks."""
    return looked_for.words.casefold().replace(",", " ").split()


def wanted(chosen: Mapping[str, Sequence[str]], words: str = "") -> Wanted:
    """What was asked for, as far as there is such a facet."""
    picked = ((facet.key, tuple(dict.fromkeys(chosen.get(facet.key, ())))) for facet in FACETS)
    return Wanted(tuple(one for one in picked if one[1]), words[:LONGEST_SEARCH])


def fits(one: Choosable, looked_for: Wanted, dialect: Dialect) -> bool:
    """Whether a design is among what is looked for."""
    if looked_for.body and (one.facts.fault or not _measured(one.facts, looked_for)):
        return False
    if not all(_has(one.facts, facet, values) for facet, values in looked_for.chosen):
        return False
    text = searched(one, dialect) if words_of(looked_for) else ""
    return all(word in text for word in words_of(looked_for))


def corrected(all_: Iterable[Choosable], looked_for: Wanted, dialect: Dialect) -> Wanted | None:
    """The same with words that no design has taken for the nearest that one has; None for none."""
    texts = [searched(one, dialect) for one in all_]
    known = sorted({word for text in texts for word in WORD.findall(text)})
    words = []
    for word in words_of(looked_for):
        if any(word in text for text in texts):
            words.append(word)
            continue
        near = get_close_matches(word[:LONGEST_WORD], known, n=1, cutoff=NEAR)
        if not near:
            return None
        words.append(near[0])
    better = replace(looked_for, words=" ".join(words))
    return better if words != words_of(looked_for) else None


def found(all_: Iterable[Choosable], looked_for: Wanted, dialect: Dialect) -> int:
    """How many designs are left."""
    return sum(fits(one, looked_for, dialect) for one in all_)


def options(
    all_: Sequence[Choosable], facet: Facet, looked_for: Wanted, dialect: Dialect
) -> tuple[Option, ...]:
    """The values of a facet that any of the designs has."""
    present = {value for one in all_ for value in one.facts.has(facet.key)}
    known = [value for value in facet.labels if value in present]
    known += sorted(present - set(known))
    chosen = dict(looked_for.chosen).get(facet.key, ())
    return tuple(
        Option(
            facet.key,
            value,
            label(facet.key, value, dialect),
            value in chosen,
            found(all_, _with(looked_for, facet, value, chosen), dialect),
        )
        for value in known
    )


def loosened(
    all_: Sequence[Choosable], looked_for: Wanted, dialect: Dialect
) -> tuple[Loosened, ...]:
    """Each filter that could be taken away, what helps most first; those that alone help nothing left out."""
    fewer = [*_fewer(looked_for, dialect)]
    counted = (Loosened(name, less, found(all_, less, dialect)) for name, less in fewer)
    return tuple(sorted((one for one in counted if one.count), key=lambda one: -one.count))


def _fewer(looked_for: Wanted, dialect: Dialect) -> Iterable[tuple[str, Wanted]]:
    for facet, values in looked_for.chosen:
        for value in values:
            rest = tuple(other for other in values if other != value)
            less = looked_for.without(facet)
            kept = replace(less, chosen=(*less.chosen, (facet, rest))) if rest else less
            yield label(facet, value, dialect), kept
    if words_of(looked_for):
        yield f"“{' '.join(words_of(looked_for))}”", replace(looked_for, words="")
    if looked_for.body:
        yield "what was measured", replace(looked_for, body="", measured=frozenset())


def searched(one: Choosable, dialect: Dialect) -> str:
    """What search words are looked for in."""
    told = [label(facet, value, dialect) for facet, values in one.facts.facets for value in values]
    said = [text for both in one.facts.said(dialect) for text in both]
    return " ".join((one.name, one.facts.title, one.facts.summary, *told, *said)).casefold()


def _has(facts: Facts, facet: str, values: tuple[str, ...]) -> bool:
    every = next(one.every for one in FACETS if one.key == facet)
    mine = facts.has(facet)
    return all(v in mine for v in values) if every else any(v in mine for v in values)


def _measured(facts: Facts, looked_for: Wanted) -> bool:
    return looked_for.measured.issuperset(facts.measurements)


def _with(looked_for: Wanted, facet: Facet, value: str, chosen: tuple[str, ...]) -> Wanted:
    """What choosing a value shows: among the others of its facet, or besides them."""
    others = chosen if facet.every else ()
    values = tuple(dict.fromkeys((*others, value)))
    less = looked_for.without(facet.key)
    return replace(less, chosen=(*less.chosen, (facet.key, values)))
