"""Everything in the library under one roof: what it is, and all that it is called."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from itertools import product
from typing import Literal, get_args

from frogless.errors import InputError
from frogless.read.patterns import way_of
from frogless.stitches import edgings
from frogless.stitches.joins import joins
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect, Edging, Stitch
from frogless.stitches.motifs import motifs
from frogless.stitches.parameters import Parameter, filled_in, usual
from frogless.stitches.pattern_rows import Way
from frogless.stitches.patterns import PatternEntry, patterns
from frogless.stitches.sums import whole

Kind = Literal["stitch", "pattern", "edging", "motif", "join"]
KINDS: tuple[Kind, ...] = get_args(Kind)
DIALECTS: tuple[Dialect, ...] = get_args(Dialect)


@dataclass(frozen=True, slots=True)
class Name:
    """What something is called in a dialect ("us") or a language ("de")."""

    where: str
    name: str
    abbreviation: str = ""


@dataclass(frozen=True, slots=True)
class Item:
    """One thing of the library.

    Args:
        names: US first, then UK, then other languages.
        others: words that find it besides its names.
    """

    kind: Kind
    key: str
    names: tuple[Name, ...]
    others: tuple[str, ...] = ()

    def name(self, where: str) -> Name:
        """What it is called in a dialect."""
        return next(name for name in self.names if name.where == where)


@dataclass(frozen=True, slots=True)
class Fit:
    """How something works over a count: in rows or in rounds, and with which parameters."""

    closed: bool
    multiple: int
    offset: int
    least: int = 1
    parameters: tuple[tuple[str, int], ...] = ()

    def over(self, places: int) -> bool:
        """Whether it works over so many places."""
        repeats, rest = divmod(places - self.offset, self.multiple)
        return rest == 0 and repeats >= self.least


@cache
def items() -> tuple[Item, ...]:
    """Every stitch, stitch pattern, edging, motif and join, in the order of their files."""
    return (
        *(_of_stitch(stitch) for stitch in dictionary().values()),
        *(_of_pattern(entry) for entry in patterns().values()),
        *(_of_edging(entry) for entry in edgings.patterns().values()),
        *(_named("motif", each.key, each.names, each.shape) for each in motifs().values()),
        *(_named("join", each.key, each.names, "join seam") for each in joins().values()),
    )


def ways(entry: PatternEntry, values: Mapping[str, int] | None = None) -> Iterator[Way]:
    """A pattern in rows, and in rounds, as far as it is either."""
    if entry.rows is not None:
        yield way_of(entry.key, closed=False, parameters=values)
    if entry.rounds is not None:
        yield way_of(entry.key, closed=True, parameters=values)


def stated(entry: PatternEntry, values: Mapping[str, int] | None = None) -> Iterator[Fit]:
    """What a pattern says that it works over, in rows and in rounds; its rows are not read."""
    chosen = filled_in(entry.key, entry.parameters, values or {})
    for closed, text in ((False, entry.rows), (True, entry.rounds)):
        if text is not None:
            own = _unusual(chosen, entry.parameters)
            sums = whole(text.multiple, chosen), whole(text.offset, chosen)
            yield Fit(closed, *sums, text.least, own)


def fits(item: Item, places: int) -> tuple[Fit, ...]:
    """Every way in which something works over so many places, usual parameters first.

    A stitch or a join works over any count and a motif over none: they are not told.
    """
    if item.kind == "pattern":
        return tuple(_of_pattern_over(item.key, places))
    return tuple(_of_edging_over(item.key, places)) if item.kind == "edging" else ()


def _of_pattern_over(key: str, places: int) -> Iterator[Fit]:
    entry = patterns()[key]
    for values in _settings(entry.parameters):
        yield from (fit for fit in stated(entry, values) if fit.over(places))


def _of_edging_over(key: str, places: int) -> Iterator[Fit]:
    pattern = edgings.patterns()[key]
    for values in _settings(pattern.parameters):
        try:
            made = edgings.build(pattern, values)
        except InputError:
            continue
        yield from (fit for fit in edging_fits(made, values) if fit.over(places))


def edging_fits(made: Edging, values: Mapping[str, int] | None = None) -> Iterator[Fit]:
    """What an edging works over: along an edge in rows, and in rounds."""
    usual = edgings.patterns()[made.key].parameters
    own = _unusual(values or {}, usual)
    if made.rows:
        yield Fit(False, made.multiple, made.row_offset, parameters=own)
    yield Fit(True, made.multiple, made.offset, parameters=own)


def _settings(parameters: Mapping[str, Parameter]) -> Iterator[dict[str, int]]:
    """The usual values, then every other choice of them."""
    yield usual(parameters)
    spans = [range(p.low, p.high + 1) for p in parameters.values()]
    for chosen in product(*spans):
        values = dict(zip(parameters, chosen, strict=True))
        if values != usual(parameters):
            yield values


def _unusual(
    values: Mapping[str, int], parameters: Mapping[str, Parameter]
) -> tuple[tuple[str, int], ...]:
    return tuple((n, v) for n, v in values.items() if v != parameters[n].default)


def _of_stitch(stitch: Stitch) -> Item:
    return Item("stitch", stitch.key, names_of(stitch), stitch.also)


def names_of(stitch: Stitch) -> tuple[Name, ...]:
    """All that a stitch is called, US first, then UK, then other languages."""
    own = (Name(d, t.name, t.abbreviation) for d, t in stitch.terms.items())
    abroad = (Name(lang, t.name, t.abbreviation) for lang, t in stitch.abroad.items())
    return (*own, *abroad)


def _of_pattern(entry: PatternEntry) -> Item:
    return _named("pattern", entry.key, entry.names, entry.family, *entry.also)


def _named(kind: Kind, key: str, names: Mapping[Dialect, str], *others: str) -> Item:
    return Item(kind, key, tuple(Name(where, name) for where, name in names.items()), others)


def _of_edging(pattern: edgings.Pattern) -> Item:
    names = tuple(Name(dialect, pattern.entry[dialect][0]) for dialect in DIALECTS)
    return Item("edging", pattern.key, names, ("edging", "border", "trim"))
