"""Whether two fabrics are the same, stitch by stitch: what a round trip through text is held to."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np

from frogless.fabric.model import Fabric, RowFabric

#: The arrays compared, in this order, with the words for what they hold.
_ARRAYS: Sequence[tuple[str, str, str]] = (
    ("first", "stitch", "stands on place"),
    ("taken", "stitch", "takes a number of places"),
    ("counted", "stitch", "leaves a number of places"),
    ("made_by", "place", "is made by stitch"),
    ("used", "place below", "is worked into a number of times"),
    ("skipped", "place below", "is skipped (1) or not (0)"),
    ("left", "place below", "is left for later (1) or not (0)"),
    ("from_row", "place below", "is made by row"),
    ("from_place", "place below", "has the number"),
)


def same(a: Fabric, b: Fabric) -> str | None:
    """None when two fabrics are equal, else one sentence: where they first differ."""
    if tuple(a.pieces) != tuple(b.pieces):
        return f"the pieces are {_listed(a)} in one and {_listed(b)} in the other"
    for name, rows in a.pieces.items():
        begun = [fabric.colours.get(name) or "none" for fabric in (a, b)]
        if begun[0] != begun[1]:
            return f"{name} begins with color {begun[0]} in one and {begun[1]} in the other"
        others = b.pieces[name]
        for row, other in zip(rows, others, strict=False):
            if difference := same_row(row, other):
                return f"{name}, row {row.row.number}: {difference}"
        if len(rows) != len(others):
            return f"{name} has {len(rows)} rows in one and {len(others)} in the other"
    return None


def same_row(a: RowFabric, b: RowFabric) -> str | None:
    """None when two rows hold the same stitches on the same places, else one sentence."""
    if a is b:
        return None
    if a.stitch.size != b.stitch.size:
        return f"{a.stitch.size} stitches in one, {b.stitch.size} in the other"
    alike = a.keys == b.keys and np.array_equal(a.stitch, b.stitch)
    if not alike and (difference := _different(_names(a), _names(b), "stitch", "is")):
        return difference
    for field, thing, verb in _ARRAYS:
        if difference := _different(getattr(a, field), getattr(b, field), thing, verb):
            return difference
    if a.changes != b.changes:
        return f"colours change {_changed(a)} in one and {_changed(b)} in the other"
    if a.overrun != b.overrun:
        return f"it runs {a.overrun} places over in one and {b.overrun} in the other"
    return None


def _changed(row: RowFabric) -> str:
    told = (f"to {change.colour} after stitch {after}" for after, change in row.changes)
    return ", ".join(told) or "nowhere"


def _names(row: RowFabric) -> Any:  # noqa: ANN401 — an array of strings has no short type
    return np.asarray(row.keys)[row.stitch]


def _different(a: Any, b: Any, thing: str, verb: str) -> str | None:  # noqa: ANN401 — as above
    if a.size != b.size:
        return f"{a.size} of what {thing} {verb} in one, {b.size} in the other"
    if np.array_equal(a, b):
        return None
    at = int(np.flatnonzero(a != b)[0])
    return f"{thing} {at + 1} {verb} {a[at]} in one and {b[at]} in the other"


def _listed(fabric: Fabric) -> str:
    return ", ".join(fabric.pieces) or "none"
