"""Where stitches lie, and the shaping points among them: how true their lines run."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from frogless.errors import InputError
from frogless.fabric.model import Floats, Ints, RowFabric, runs_back

#: A place by the row that made it (its index in the piece), and its number there.
Origin = tuple[int, int]
NOWHERE: Origin = (-1, -1)


@dataclass(frozen=True, slots=True)
class Drift:
    """How far the shaping points of one row stray from even spacing.

    Args:
        number: of the row.
        strays: for each shaping point, in the way the right side is worked, stitches off its ideal
            angle; positive when it lies further along.
    """

    number: int
    strays: tuple[float, ...]

    @property
    def greatest(self) -> float:
        """The greatest stray, without its sign, in stitches."""
        return max(map(abs, self.strays), default=0.0)


@dataclass(frozen=True, slots=True)
class Followed:
    """Markers followed up a piece: what is wrong, and at how many shaping points was looked."""

    faults: tuple[str, ...]
    looked_at: int


def angles(rows: Sequence[RowFabric]) -> tuple[Floats, ...]:
    """For each row, (n,) float64: where each stitch stands, as a fraction of the round or row.

    0 is the join; fractions grow in the way the right side is worked, so turned rows are mirrored.
    Stitches share the round evenly by the places they leave. What leaves none (a picot, the other
    chains of a run) stands with the stitch before it; a turning chain that does not count stands on
    the join. A turning chain that counts in a joined round is the join, its middle at 0. A short
    row lies on its part of the whole edge: what is behind it and what it leaves count too.
    """
    return tuple(_angles(row) for row in rows)


def positions(
    rows: Sequence[RowFabric], widths: Sequence[float], heights: Sequence[float]
) -> tuple[tuple[Floats, Floats], ...]:
    """For each row, x and y of each stitch's middle, two (n,) float64, mm.

    Args:
        widths: for each row, the width of one stitch, mm.
        heights: for each row, its height, mm.

    Returns:
        x along the row from the join (a tube is unrolled) in the way the right side is worked; y
        from the edge that the piece was begun at.

    Raises:
        InputError: not one width and one height for each row.
    """
    if not len(rows) == len(widths) == len(heights):
        raise InputError(
            f"{len(rows)} rows, {len(widths)} widths, {len(heights)} heights; each row needs one"
        )
    middles = np.cumsum(heights) - np.asarray(heights, np.float64) / 2
    return tuple(
        (angle * _reach(row) * width, np.full(angle.size, middle))
        for row, angle, width, middle in zip(rows, angles(rows), widths, middles, strict=True)
    )


def is_mirrored(row: RowFabric) -> bool:
    """Whether the row runs against the way the right side is worked."""
    return runs_back(row.row)


def shaping_points(row: RowFabric) -> tuple[tuple[int, ...], ...]:
    """Stitches that share one place, as groups of stitch indices, in the order worked.

    Ornaments stand on no place and belong to no group.
    """
    standing = np.flatnonzero(row.first >= 0)
    if not standing.size:
        return ()
    starts = np.flatnonzero(np.diff(row.first[standing], prepend=-1))
    ends = np.append(starts[1:], standing.size)
    shared = ends - starts > 1
    return tuple(
        tuple(standing[start:end].tolist())
        for start, end in zip(starts[shared], ends[shared], strict=True)
    )


def decrease_points(row: RowFabric) -> tuple[tuple[int, ...], ...]:
    """Stitches worked over several places together, each as a group of one, in the order worked."""
    return tuple((stitch,) for stitch in np.flatnonzero(row.taken > 1).tolist())


def column_drift(rows: Sequence[RowFabric]) -> tuple[Drift, ...]:
    """For each row with marked shaping points, how far each strays from its line.

    The i-th of k shaping points, from 0 at the join in the way the right side is worked, belongs at
    (i + 1/2) / k of the round, in turned and unturned rounds alike. Rows without `marks` are no
    shaping rows and are passed over.
    """
    shaped = [row for row in rows if row.row.marks]
    return tuple(_drift(row, at) for row, at in zip(shaped, angles(shaped), strict=True))


def marked_parent(rows: Sequence[RowFabric]) -> Followed:
    """Whether each shaping point is worked into the stitch that its marker was moved up to.

    A marker is put into one stitch of its group (`row.marks`) and moved up through plain rows to
    the stitch that stands on the marked one. The next shaping row has to increase just there, or
    take that place among those it works together. Where the number of shaping points changes with
    the section, the markers are placed afresh.
    """
    faults: list[str] = []
    looked_at = 0
    marked: list[Origin] | None = None
    section = ""
    for index, row in enumerate(rows):
        if not row.row.marks:
            marked = None if marked is None else _moved_up(row, index, marked)
            continue
        groups = _points(row)
        afresh = row.row.section != section and marked is not None and len(marked) != len(groups)
        if marked is not None and not afresh:
            looked_at += len(groups)
            faults += _astray(row, groups, marked)
        faults += _badly_marked(row, groups)
        marked, section = _marked(row, index, groups), row.row.section
    return Followed(tuple(faults), looked_at)


def _angles(row: RowFabric) -> Floats:
    """Middle of each stitch's own places; the others take the middle of the maker before them."""
    if not row.places:
        return np.zeros(row.stitch.size)
    joined = row.row.end.join != "none"
    on_join = joined and row.row.start.counts and row.row.start.chains > 0
    before = np.cumsum(row.counted) - row.counted
    middle = (row.behind + before + row.counted / 2 - (0.5 if on_join else 0.0)) / _reach(row)
    makers = np.flatnonzero(row.counted)
    maker = np.searchsorted(makers, np.arange(row.stitch.size), side="right") - 1
    along: Floats = np.where(maker >= 0, middle[makers[np.maximum(maker, 0)]], 0.0)
    if not is_mirrored(row):
        return along
    return (1.0 - along) % 1.0 if joined else 1.0 - along


def _reach(row: RowFabric) -> int:
    """Places of the whole edge that a row lies on: its own, those behind it, and those it leaves."""
    return row.behind + row.places + int(row.left.sum())


def _points(row: RowFabric) -> tuple[tuple[int, ...], ...]:
    """Increases and decreases of a row in the order worked."""
    return tuple(sorted(shaping_points(row) + decrease_points(row)))


def _drift(row: RowFabric, at: Floats) -> Drift:
    middles = np.sort([float(np.mean(at[list(group)])) for group in _points(row)])
    ideal = (np.arange(middles.size) + 0.5) / max(middles.size, 1)
    return Drift(row.row.number, tuple(((middles - ideal) * row.places).tolist()))


def _astray(
    row: RowFabric, groups: Sequence[tuple[int, ...]], marked: Sequence[Origin]
) -> list[str]:
    number = row.row.number
    if len(groups) != len(marked):
        return [f"row {number}: {len(groups)} shaping points, but {len(marked)} markers lead to it"]
    lead_to = set(marked)
    return [
        f"row {number}: shaping point {i + 1} is worked into place {row.first[group[0]] + 1} "
        "of the row below, where no marker is"
        for i, group in enumerate(groups)
        if lead_to.isdisjoint(_places_of(row, group[0]))
    ]


def _places_of(row: RowFabric, stitch: int) -> list[Origin]:
    """The places that one stitch stands on."""
    start = int(np.flatnonzero(row.order == row.first[stitch])[0])
    return [_origin(row, place) for place in row.order[start : start + int(row.taken[stitch])]]


def _origin(row: RowFabric, place: int) -> Origin:
    return int(row.from_row[place]), int(row.from_place[place])


def _badly_marked(row: RowFabric, groups: Sequence[tuple[int, ...]]) -> list[str]:
    number, marks = row.row.number, row.row.marks
    if len(marks) != len(groups):
        return [f"row {number}: {len(marks)} markers for {len(groups)} shaping points"]
    return [
        f"row {number}: marker {i + 1} should go into stitch {mark + 1} of a group of {len(group)}"
        for i, (mark, group) in enumerate(zip(marks, groups, strict=True))
        if not 0 <= mark < len(group)
    ]


def _marked(row: RowFabric, index: int, groups: Sequence[tuple[int, ...]]) -> list[Origin]:
    """The places that the marked stitches leave."""
    stitches = [
        group[mark] if 0 <= mark < len(group) else -1
        for mark, group in zip(row.row.marks, groups, strict=False)
    ]
    return _left_by(row, index, np.asarray(stitches, np.int32))


def _moved_up(row: RowFabric, index: int, marked: Sequence[Origin]) -> list[Origin]:
    """The places left by the one stitch on each marked place; nowhere where not just one stands.

    A short row that does not reach a marker leaves it where it is.
    """
    standing = np.flatnonzero(row.first >= 0)
    on_place = np.full(row.used.size + 1, -1, np.int32)
    on_place[row.first[standing]] = standing
    on_place[:-1][row.used != 1] = -1
    at = np.asarray([_number_of(row, spot) for spot in marked], np.int32)
    moved = _left_by(row, index, on_place[at])
    used = np.append(row.used, 0)[at] > 0
    passed = (row.behind > 0) | (np.append(row.left, 0)[at] > 0)
    return [
        old if waits and not works else new
        for old, new, waits, works in zip(marked, moved, passed, used, strict=True)
    ]


def _number_of(row: RowFabric, spot: Origin) -> int:
    """The number that a place has among those offered to a row; -1 when it is not offered."""
    found = np.flatnonzero((row.from_row == spot[0]) & (row.from_place == spot[1]))
    return int(found[0]) if found.size else -1


def _left_by(row: RowFabric, index: int, stitches: Ints) -> list[Origin]:
    """The place that each stitch leaves; nowhere for none."""
    left = np.full(row.stitch.size + 1, -1, np.int32)
    left[row.made_by] = np.arange(row.places, dtype=np.int32)
    return [(index, place) if place >= 0 else NOWHERE for place in left[stitches].tolist()]
