"""Motifs as their data files tell them: shapes worked from the middle out, their rounds as text.

The rounds are in the language of written patterns; `read.motifs` makes pieces of them.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import Literal, get_args

from frogless.errors import InputError, near_names
from frogless.stitches.model import Dialect, Ratio
from frogless.stitches.parameters import Parameter, parameters_of
from frogless.stitches.tables import Entry, check_keys, read_folder, texts_of

DIALECTS: tuple[Dialect, ...] = get_args(Dialect)
Lies = Literal["cups", "lies flat", "ruffles"]

_NEEDED = frozenset({"us", "uk", "shape", "text", "source", "basis"})
_KEYS = _NEEDED | {"corners", "points", "count", "count_from", "parameters", "note", "around"}


@dataclass(frozen=True, slots=True)
class MotifEntry:
    """A motif, its rounds not yet read.

    Args:
        shape: what it looks like: square, hexagon, circle, flower, ...
        names: by dialect.
        text: a line for each round; those with `{r}` in their label are worked over and over, in
            turn, `r` being the number of the round and `k` how often all of them came before.
        corners: of a polygon; 0 of what has none.
        points: how many times it is the same around; a number or a sum over the parameters.
        count: places that round `r` leaves, as a sum over `r` and the parameters; "" for none.
        count_from: the first round that `count` holds for.
        around: whether its foundation is a chain that is worked round on both sides, first along its
            top and then along its underside.
    """

    key: str
    shape: str
    names: Mapping[Dialect, str]
    text: str
    parameters: Mapping[str, Parameter]
    corners: int
    points: int | str
    count: str
    count_from: int
    note: str
    source: str
    basis: str
    around: bool = False

    @property
    def lines(self) -> tuple[str, ...]:
        """The lines of its text."""
        return tuple(line.strip() for line in self.text.strip().splitlines() if line.strip())

    @property
    def grows(self) -> bool:
        """Whether it goes on for ever."""
        return any(is_general(line) for line in self.lines)

    @property
    def own_rounds(self) -> int:
        """Rounds that are told one by one, before those that are worked over and over."""
        return sum(not is_general(line) for line in self.lines) - 1

    @property
    def period(self) -> int:
        """Rounds that are worked over and over."""
        return sum(is_general(line) for line in self.lines)


@dataclass(frozen=True, slots=True)
class Flatness:
    """How a growing shape lies: what its rounds gain, and what they would gain to lie flat.

    Args:
        stitch: the stitch that most of a round is made of.
        growth: widths of a stitch that its girth gains in a round.
        flat: low, typical, high of what lies flat.
        corners: of the shape; 0 of a circle.
    """

    stitch: str
    growth: float
    flat: Ratio
    corners: int

    @property
    def lies(self) -> Lies:
        """What becomes of it: too few stitches cup, too many ruffle."""
        if self.growth < self.flat.low:
            return "cups"
        return "ruffles" if self.growth > self.flat.high else "lies flat"


def flat_growth(corners: int) -> float:
    """Widths of a stitch that a round gains, for a stitch as high as it is wide, to lie flat.

    A circle gains 2 pi times its rounds' height; a polygon 2 n tan(pi / n) times it.

    Source: girth of a regular polygon around a circle: geometry; 2 pi h / w of a disc: common
    practice, in tests/reference/stitches/conventions.csv.

    >>> round(flat_growth(4), 2), round(flat_growth(0), 2)
    (8.0, 6.28)
    """
    return 2 * corners * math.tan(math.pi / corners) if corners else 2 * math.pi


def is_general(line: str) -> bool:
    """Whether a line tells of rounds that are worked over and over: its label has no number."""
    return "{" in line.partition(":")[0]


@cache
def motifs() -> Mapping[str, MotifEntry]:
    """Every motif of the library by key.

    Raises:
        InputError: an entry is incomplete.
    """
    return read_folder(texts_of("motifs"), motif_entry)


def motif_named(key: str) -> MotifEntry:
    """The motif of that key.

    Raises:
        InputError: no such key, with the nearest ones.
    """
    known = motifs()
    if key not in known:
        raise InputError(f'unknown motif "{key}"{near_names(key, known)}')
    return known[key]


def motif_entry(key: str, entry: Entry) -> MotifEntry:
    """The motif that a table of a data file tells of.

    Raises:
        InputError: it is incomplete, has a key that is not known, or its rounds cannot follow.
    """
    check_keys(entry, _NEEDED, _KEYS)
    corners = entry.get("corners", 0)
    made = MotifEntry(
        key=key,
        shape=entry["shape"],
        names=MappingProxyType({dialect: entry[dialect] for dialect in DIALECTS}),
        text=entry["text"],
        parameters=parameters_of(entry),
        corners=corners,
        points=entry.get("points", corners or 1),
        count=str(entry.get("count", "")),
        count_from=entry.get("count_from", 1),
        note=entry.get("note", ""),
        source=entry["source"],
        basis=entry["basis"],
        around=entry.get("around", False),
    )
    for fault in _faults(made):
        raise InputError(fault)
    return made


def _faults(made: MotifEntry) -> Iterator[str]:
    general = [is_general(line) for line in made.lines]
    if general != sorted(general):
        yield 'rounds worked over and over ("Rnd {r}: ...") come last'
    if made.own_rounds < 1:
        yield "it begins with a foundation and a round that are told with their numbers"
    if made.corners in (1, 2):
        yield f"a shape of {made.corners} corners is none; write 0, or 3 or more"
