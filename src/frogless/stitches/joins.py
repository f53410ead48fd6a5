"""Ways to join two edges stitch to stitch, from a data file: worked, sewn, or in the last round."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import Literal, get_args

from frogless.errors import InputError, near_names
from frogless.rows.nodes import Base, Seam
from frogless.stitches.load import data_file, stitch_named
from frogless.stitches.model import Dialect
from frogless.stitches.tables import Entry, check_keys, read_tables

DIALECTS: tuple[Dialect, ...] = get_args(Dialect)
Tool = Literal["hook", "needle"]
When = Literal["after", "as you go"]

_NEEDED = frozenset(
    {"us", "uk", "tool", "when", "held", "looks", "how", "cannot", "source", "basis"}
)
_KEYS = _NEEDED | {"stitch", "chains"}


@dataclass(frozen=True, slots=True)
class Join:
    """A way to join two edges.

    Args:
        stitch: what it is worked with; "" when it is sewn.
        chains: between two stitches of the join.
        how: `{key}` stands for the term of a stitch.
        cannot: what it cannot do.
    """

    key: str
    names: Mapping[Dialect, str]
    stitch: str
    tool: Tool
    when: When
    held: str
    looks: str
    chains: int
    how: str
    cannot: str
    source: str
    basis: str

    @property
    def is_seam(self) -> bool:
        """Whether each stitch of it goes through both edges, once they are finished."""
        return bool(self.stitch) and not self.chains and self.when == "after"


@cache
def joins() -> Mapping[str, Join]:
    """Every join by key.

    Raises:
        InputError: an entry is incomplete.
    """
    return read_tables(data_file("joins.toml"), "joins.toml", join_entry)


def join_named(key: str) -> Join:
    """The join of that key.

    Raises:
        InputError: no such key, with the nearest ones.
    """
    known = joins()
    if key not in known:
        raise InputError(
            f'unknown join "{key}"; accepted: {", ".join(known)}{near_names(key, known)}'
        )
    return known[key]


def seam_of(
    join: Join, name: str, first: Sequence[Base], second: Sequence[Base], counts: tuple[int, int]
) -> Seam:
    """The seam of a join that goes through both edges, stitch to stitch.

    Args:
        counts: places of the first edge, and of the second.

    Raises:
        InputError: edges of unlike counts, or a join that is no seam, with what it is.
    """
    count, over = counts
    if count != over:
        raise InputError(
            f"{name}: one edge has {count} places and the other {over}; a join goes stitch to "
            "stitch, so work both to the same count"
        )
    if not join.is_seam:
        raise InputError(
            f'{name}: "{join.key}" is {_other(join)}; accepted: '
            f"{', '.join(key for key, each in joins().items() if each.is_seam)}"
        )
    return Seam(name, join.stitch, tuple(first), tuple(second), count, over, (1,) * over)


def chains_of(join: Join, count: int) -> int:
    """Chains of a join that goes back and forth between edges of so many places each.

    It ends in the last place of the second edge, so a run less than it has stitches.

    >>> chains_of(join_named("zigzag"), 10)
    38
    """
    return max(2 * count - 1, 0) * join.chains


def say_join(join: Join, dialect: Dialect) -> str:
    """How it is worked, in the terms of a dialect, and what it cannot do."""
    return f"{_filled(join.how, dialect)} {join.cannot}"


def _filled(how: str, dialect: Dialect) -> str:
    head, *parts = how.split("{")
    told = [head]
    for part in parts:
        key, _, rest = part.partition("}")
        told.append(stitch_named(key).terms[dialect].name + rest)
    text = "".join(told)
    return text[:1].upper() + text[1:]


def _other(join: Join) -> str:
    if join.tool == "needle":
        return "sewn with a needle"
    return "worked in the last round" if join.when == "as you go" else "worked in each edge in turn"


def join_entry(key: str, entry: Entry) -> Join:
    """The join that a table of a data file tells of.

    Raises:
        InputError: it is incomplete, or has a key or value that is not known.
    """
    check_keys(entry, _NEEDED, _KEYS)
    for name, accepted in (("tool", get_args(Tool)), ("when", get_args(When))):
        if entry[name] not in accepted:
            raise InputError(f'{name} = "{entry[name]}"; accepted: {", ".join(accepted)}')
    if entry["tool"] == "hook":
        stitch_named(entry.get("stitch", ""))
    rest = {name: value for name, value in entry.items() if name not in DIALECTS}
    names = MappingProxyType({dialect: entry[dialect] for dialect in DIALECTS})
    return Join(**{"key": key, "names": names, "stitch": "", "chains": 0, **rest})
