"""How much work there is in each part: stitches, and how often each catches the yarn.

A stitch takes yarn in proportion to the times it catches it, and to its width: rows of one length
took 1 : 2.08 : 3.08 : 4.00 as chain, single, half double and double crochet (one maker's
measurement).
So the *work* of a stitch is catches · width, in mm, and yarn is in proportion to work.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from frogless.fabric.colours import Coloured, ColouredRow, coloured
from frogless.fabric.model import Fabric, Ints, RowFabric
from frogless.plan.model import Plan
from frogless.rows.colours import colours_of
from frogless.rows.nodes import Seam
from frogless.stitches.load import dictionary
from frogless.stitches.model import Stitch
from frogless.swatch import Gauge, Swatch, gauge, has_gauge

SLIP_STITCH = "slip_stitch"
KEPT = 1024
"""Rows whose catches are remembered."""


@dataclass(frozen=True, slots=True)
class PartWork:
    """The work of one part in one colour, mm, and the gauge its width is from.

    Args:
        colour: its letter; "" when there is one colour only.
        weighed: relative standard uncertainty of its own stitch's mass; None when that stitch was
            not weighed.
    """

    name: str
    work: float
    gauge: Gauge
    weighed: float | None = None
    colour: str = ""


def catches_of_row(row: RowFabric, stitches: Mapping[str, Stitch]) -> int:
    """Times the yarn is caught in a row, turning chain and joining slip stitch included."""
    return int(np.sum(_catches_of_each(row, stitches))) + _joining(row, stitches)


def catches_by_colour(
    row: RowFabric, stitches: Mapping[str, Stitch], colours: ColouredRow, number: int
) -> tuple[int, ...]:
    """Times the yarn of each of `number` colours is caught in a row; a join is in the last one."""
    each = _catches_of_each(row, stitches)
    found = np.bincount(colours.stitch, weights=each, minlength=number)
    found[colours.after] += _joining(row, stitches)
    return tuple(int(catches) for catches in found)


def _catches_of_each(row: RowFabric, stitches: Mapping[str, Stitch]) -> Ints:
    """Catches of every stitch of a row, (n,) int32.

    Of stitches closed together each but one leaves its last catch to the others.
    """
    values = _values(row, stitches)
    return _each(row.stitch.tobytes(), row.taken.tobytes(), values)


@lru_cache(maxsize=KEPT)
def _each(stitch: bytes, taken: bytes, values: _Values) -> Ints:
    """The same by value, as many rows are alike and each is asked for more than once."""
    keys = np.frombuffer(stitch, np.int32)
    catches = values.catches[keys]
    others = np.maximum(np.frombuffer(taken, np.int32) - values.stands_on[keys], 0)
    each: Ints = catches + others * np.maximum(catches - 1, 0)
    each.flags.writeable = False
    return each


def _joining(row: RowFabric, stitches: Mapping[str, Stitch]) -> int:
    return 0 if row.row.end.join == "none" else catches_of(SLIP_STITCH, stitches)


def catches_of(key: str, stitches: Mapping[str, Stitch]) -> int:
    """Catches of one stitch; a chain and a slip stitch catch once, whether listed or not."""
    if key in stitches:
        return stitches[key].catches
    return 1


def stitches_worked(row: RowFabric, stitches: Mapping[str, Stitch]) -> int:
    """Stitches of a row as a maker counts work: chains, slip stitches and beads left out."""
    return int(np.count_nonzero(_values(row, stitches).catches[row.stitch] > 1))


def main_gauge(plan: Plan, swatch: Swatch) -> Gauge:
    """The gauge of the swatch's own stitch; where it was not read, the plan's first."""
    if has_gauge(swatch, swatch.stitch):
        return gauge(swatch, swatch.stitch)
    return next(iter(plan.gauges.values()))


def works(
    fabric: Fabric, plan: Plan, stitches: Mapping[str, Stitch], main: Gauge
) -> tuple[PartWork, ...]:
    """The work of every section of every piece, and of the seams, in the order worked.

    A section in several colours is a part in each of them.
    """
    found: dict[tuple[str, str], PartWork] = {}
    for part in (*_rows(fabric, plan, stitches, main), *_seams(plan, stitches, main)):
        key = part.name, part.colour
        before = found[key].work if key in found else 0.0
        found[key] = replace(part, work=before + part.work)
    return tuple(found.values())


def main_colour(plan: Plan) -> str:
    """The colour of seams and trims: the first of the alphabet; "" when there is one only."""
    return next(iter(colours_of(plan.program)), "")


def crocheted(fabric: Fabric, plan: Plan) -> Iterator[tuple[str, tuple[RowFabric, ...]]]:
    """The pieces worked at a gauge: all but the strands, whose yarn the plan has worked out."""
    strands = {strand.name for piece in plan.pieces for strand in piece.strands}
    return ((name, rows) for name, rows in fabric.pieces.items() if name not in strands)


def times_made(plan: Plan, piece: str) -> int:
    """How many of a piece are made; one of what was not planned row by row."""
    planned = plan.piece(piece)
    return planned.number_made if planned else 1


def times_seamed(plan: Plan, seam: Seam) -> int:
    """How often a seam is worked: one that closes a piece on itself as often as it is made."""
    names = {base.piece for base in (*seam.first, *seam.second)}
    return times_made(plan, names.pop()) if len(names) == 1 else 1


def part_name(piece: str, section: str) -> str:
    """ "skirt: hip"; the piece alone when the section has the same name."""
    return piece if piece == section else f"{piece}: {section}"


def _rows(
    fabric: Fabric, plan: Plan, stitches: Mapping[str, Stitch], main: Gauge
) -> Iterator[PartWork]:
    for piece, rows in crocheted(fabric, plan):
        colours = coloured(plan.program.piece(piece).colour, rows)
        for row, each in zip(rows, colours.rows, strict=True):
            own = plan.gauges.get(row.row.section, main)
            name = part_name(piece, row.row.section)
            for letter, catches in _in_colours(row, stitches, each, colours):
                work = catches * own.width.value * times_made(plan, piece)
                yield PartWork(name, work, own, colour=letter)


def _in_colours(
    row: RowFabric, stitches: Mapping[str, Stitch], each: ColouredRow, colours: Coloured
) -> Iterator[tuple[str, int]]:
    """The colours that a row has stitches in, with their catches."""
    catches = catches_by_colour(row, stitches, each, len(colours.letters))
    one = len(colours.letters) == 1
    return ((letter, n) for letter, n in zip(colours.letters, catches, strict=True) if n or one)


def _seams(plan: Plan, stitches: Mapping[str, Stitch], main: Gauge) -> Iterator[PartWork]:
    for seam in plan.program.seams:
        catches = seam.count * catches_of(seam.stitch, stitches) * times_seamed(plan, seam)
        work = catches * main.width.value
        yield PartWork("seams", work, main, colour=main_colour(plan))


def _stands_on(key: str, stitches: Mapping[str, Stitch]) -> int:
    return stitches[key].stands_on if key in stitches else 0


@dataclass(frozen=True, slots=True, eq=False)
class _Values:
    """What each key of a fabric's stitches is worth; alike only to itself.

    Args:
        catches: (k,) int32.
        stands_on: (k,) int32, places that it takes by itself, at least 1.
    """

    catches: Ints
    stands_on: Ints


def _values(row: RowFabric, stitches: Mapping[str, Stitch]) -> _Values:
    return _of_dictionary(row.keys) if stitches is dictionary() else _found(row.keys, stitches)


@lru_cache(maxsize=4)
def _of_dictionary(keys: tuple[str, ...]) -> _Values:
    """Of the program's own dictionary, which never changes."""
    return _found(keys, dictionary())


def _found(keys: tuple[str, ...], stitches: Mapping[str, Stitch]) -> _Values:
    catches = np.array([catches_of(key, stitches) for key in keys], np.int32)
    alone = np.array([max(1, _stands_on(key, stitches)) for key in keys], np.int32)
    return _Values(catches, alone)
