"""What rows of some sizes only say: "Sizes M and L only: … 24 (26) sts" has a number for each of them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, fields, is_dataclass, replace
from typing import TypeVar

from frogless.proofread.words.model import Numbers, Said

Part = TypeVar("Part")


@dataclass(frozen=True, slots=True)
class _Sizes:
    """All sizes, and those that work the row."""

    count: int
    only: Sequence[int]


def for_all_sizes(says: Said, only: Sequence[int], sizes: int) -> Said:
    """The same with every list of `only` as a list of all sizes, nothing for those between."""
    if len(only) in (1, sizes):
        return says
    return _spread(says, _Sizes(sizes, only))


def _spread(part: Part, sizes: _Sizes) -> Part:
    """A part of what is said; it is no deeper than brackets may stand in one another."""
    if isinstance(part, Numbers):
        if len(part.values) != len(sizes.only):
            return part
        own = dict(zip(sizes.only, part.values, strict=True))
        values = tuple(own.get(size, 0) for size in range(sizes.count))
        return replace(part, values=values)
    if isinstance(part, tuple) and type(part) is tuple:
        return tuple(_spread(each, sizes) for each in part)  # type: ignore[return-value]
    if not is_dataclass(part) or isinstance(part, type):
        return part
    told = {each.name: getattr(part, each.name) for each in fields(part)}
    changed = {name: _spread(value, sizes) for name, value in told.items()}
    changed = {name: value for name, value in changed.items() if value is not told[name]}
    return replace(part, **changed) if changed else part
