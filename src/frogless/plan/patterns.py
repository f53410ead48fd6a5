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
from frogless.stitches.pattern_rows import Way


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

    Each repeat of a row then takes just what the same repeat of the row below leaves, and nothing
    that frames the repeats is worked in the first or the last of them.
    """
    on, leave = stands_on(stitches), leaves(stitches)
    if way.offset or not way.closed or any(_framed(way, i) for i in range(len(way.rows))):
        return False
    below = way.multiple
    for index in range(len(way.rows) + 1):
        row = way.row(index)
        if consumed(row.repeat, on) != below or not row.repeat:
            return False
        below = left(row.repeat, leave)
    return True


def _framed(way: Way, index: int) -> bool:
    row = way.rows[index]
    own_place = row.start.counts and row.start.chains > 0
    return bool(row.before or row.after or row.backwards or row.start.across or own_place)
