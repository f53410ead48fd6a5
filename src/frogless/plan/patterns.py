"""Stitch patterns as the planner meets them: filled in, and where they come from.

The rows of a pattern are text until `read` makes rows of it, and the planner does not read: whoever
brings design and swatches together hands over where patterns are found.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from frogless.errors import InputError
from frogless.rows.count import consumed, left
from frogless.stitches.load import leaves, stands_on
from frogless.stitches.model import Dialect, Stitch
from frogless.stitches.pattern_rows import PatternRow, Way


@dataclass(frozen=True, slots=True)
class Pattern:
    """A stitch pattern in rows or in rounds, its numbers filled in.

    Args:
        parameters: all its numbers. usual: what they are where nobody says otherwise.
        names: what it is called, by dialect.
    """

    key: str
    way: Way
    parameters: Mapping[str, int] = field(default_factory=dict)
    usual: Mapping[str, int] = field(default_factory=dict)
    names: Mapping[Dialect, str] = field(default_factory=dict)

    @property
    def name(self) -> str:
        """What it is called in US terms."""
        return self.names.get("us", self.key.replace("_", " "))


@dataclass(frozen=True, slots=True)
class Library:
    """Where patterns are found: those of the design itself, then those of the program.

    Args:
        find: the pattern of a key in rounds (True) or rows, with some of its numbers.
        keys: of all that may be asked for.
    """

    find: Callable[[str, bool, Mapping[str, int]], Pattern]
    keys: tuple[str, ...] = ()


def _nowhere(key: str, closed: bool, parameters: Mapping[str, int]) -> Pattern:
    raise InputError(f'there are no stitch patterns here, and so no "{key}"')


NO_LIBRARY = Library(_nowhere)


def stands_in_columns(way: Way, stitches: Mapping[str, Stitch]) -> bool:
    """Whether whole repeats can stand beside plain stitches: every repeat of every row is alike.

    Each repeat of a row then takes just what the same repeat of the row below leaves. What frames the
    repeats may only be a repeat itself, begun with a chain that stands for a stitch; rounds that are
    turned have no frame at all, as they begin at a column by turns and at a panel. In a pattern of
    several colours nobody says what a column between two changes is worked in.
    """
    on, leave = stands_on(stitches), leaves(stitches)
    if way.offset or not way.closed or way.colour:
        return False
    below, turned = way.multiple, any(row.end.turn for row in way.rows)
    for index in range(len(way.rows) + 1):
        row = way.row(index)
        takes, makes = consumed(row.repeat, on), left(row.repeat, leave)
        if not row.repeat or takes != below or row.backwards:
            return False
        if not (_is_bare(row) if turned else _is_of_repeats(row, stitches, takes, makes)):
            return False
        below = makes
    return True


def _is_bare(row: PatternRow) -> bool:
    """Whether nothing frames the repeats of a row."""
    own_place = row.start.counts and row.start.chains > 0
    return not (row.before or row.after or row.start.across or own_place)


def _is_of_repeats(row: PatternRow, stitches: Mapping[str, Stitch], takes: int, makes: int) -> bool:
    """Whether what frames the repeats is as many whole repeats: it takes and leaves as much."""
    on, leave = stands_on(stitches), leaves(stitches)
    if row.start.across:
        return False
    own_place = int(row.start.counts and row.start.chains > 0)
    ends = (
        (
            own_place - int(row.start.shares) + consumed(row.before, on),
            own_place + left(row.before, leave),
        ),
        (consumed(row.after, on), left(row.after, leave)),
    )
    return all(taken % takes == 0 and made == taken // takes * makes for taken, made in ends)
