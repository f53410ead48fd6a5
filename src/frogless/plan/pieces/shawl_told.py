"""What a shawl measures, how it looks laid flat, and what its maker should know."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from frogless.because import Because, Step
from frogless.design.pieces.shawl import ShawlChoice
from frogless.design.work import Work
from frogless.plan.basis import Basis
from frogless.plan.model import Measure, Remark, Shape
from frogless.plan.pieces.shawl_rows import CLEAN, Gains, Rates
from frogless.swatch import Gauge
from frogless.units import Measured

ARC = 48
"""Stretches that the arc of a crescent is drawn with."""

Corner = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Band:
    """Rows in one stitch; `chains` are those of the turning chain."""

    name: str
    gauge: Gauge
    chains: int
    rows: int


@dataclass(frozen=True, slots=True)
class Shawl:
    """A shawl as far as it is decided.

    Args:
        gains: what each row gains. counts: what the beginning and each row leave.
        angle: at the lower point, or where it begins, radians.
        depth, wingspan: wanted, mm.
    """

    basis: Basis
    choice: ShawlChoice
    key: str
    work: Work
    gauge: Gauge
    bands: tuple[Band, ...]
    rates: Rates
    gains: tuple[Gains, ...]
    counts: tuple[int, ...]
    angle: float
    depth: float
    wingspan: float
    because: Because

    @property
    def rows(self) -> int:
        """Of all bands."""
        return len(self.gains)

    @property
    def along(self) -> Measured:
        """Length along the work, across its rows, mm."""
        total = Measured(0.0)
        for band in self.bands:
            total = total.plus(band.gauge.height.times(band.rows))
        return total

    @property
    def last(self) -> Measured:
        """Length of the last row, mm."""
        return self.bands[-1].gauge.width.times(self.counts[-1])


def finished_depth(shawl: Shawl) -> Measured:
    """From the long edge to the lower point, or along the work, mm."""
    if shawl.choice.shape == "triangle":
        return shawl.along.times(1 / math.sin(shawl.angle / 2))
    return shawl.along


def finished_wingspan(shawl: Shawl) -> Measured:
    """Of a triangle the long edge, of a crescent its chord, of the others the last row; mm."""
    match shawl.choice.shape:
        case "triangle":
            return shawl.along.times(2 / math.cos(shawl.angle / 2))
        case "crescent":
            return shawl.along.times(shawl.wingspan / shawl.depth)
        case _:
            return shawl.last


def side_lengths(shawl: Shawl) -> tuple[Measured, Measured]:
    """The edges of row ends, left and right, mm."""
    match shawl.choice.shape:
        case "triangle" | "crescent":
            half = finished_wingspan(shawl).times(0.5)
            return half, half
        case "asymmetric":
            return shawl.along.times(1 / math.cos(shawl.angle)), shawl.along
        case _:
            return shawl.along, shawl.along


def measures(shawl: Shawl) -> tuple[Measure, ...]:
    """Wingspan, depth, and the length of the last row."""
    wide, deep = finished_wingspan(shawl), finished_depth(shawl)
    x, y, last = wide.value, deep.value, shawl.counts[-1]
    told = shawl.because.then(Step("landed", shawl.rows, "rows"))
    is_triangle = shawl.choice.shape in ("triangle", "crescent")
    across = 0.0 if is_triangle else y
    down = x / 2 if is_triangle else 0.0
    found = [
        Measure(
            "wingspan",
            "edge" if is_triangle else "width",
            wide,
            shawl.wingspan,
            shawl.rows if is_triangle else last,
            told.then(Step("length", x)),
            ((0.0, across), (x, across)),
        ),
        Measure(
            "depth",
            "length",
            deep,
            shawl.depth,
            shawl.rows,
            told.then(Step("length", y)),
            ((down, 0.0), (down, y)),
        ),
    ]
    if is_triangle:
        steps = (Step("landed", last, "stitches"), Step("length", shawl.last.value))
        found.append(Measure("last row", "edge", shawl.last, None, last, Because(steps)))
    return tuple(found)


def shape(shawl: Shawl) -> Shape:
    """Its outline lying flat, the long edge or the beginning above."""
    x, y = finished_wingspan(shawl).value, finished_depth(shawl).value
    match shawl.choice.shape:
        case "triangle":
            spine = (((x / 2, 0.0), (x / 2, y)),)
            return Shape((((0.0, 0.0), (x, 0.0), (x / 2, y)),), spine, None)
        case "crescent":
            return Shape((tuple(_arc(x, y)),), (), None)
        case "asymmetric":
            start = shawl.counts[0] * shawl.gauge.width.value
            return Shape((((0.0, 0.0), (start, 0.0), (x, y), (0.0, y)),))
        case _:
            return Shape((((0.0, 0.0), (x, 0.0), (x, y), (0.0, y)),))


def _arc(chord: float, height: float) -> Iterator[Corner]:
    """From the left end of the chord along it and back over the arc."""
    radius = (chord**2 / 4 + height**2) / (2 * height)
    half = 2 * math.atan(2 * height / chord)
    yield (0.0, 0.0)
    for i in range(ARC + 1):
        turn = half - 2 * half * i / ARC
        across = chord / 2 + radius * math.sin(turn)
        if 0 < i < ARC:
            yield across, radius * math.cos(turn) - (radius - height)
        elif i == 0:
            yield chord, 0.0


def remarks(shawl: Shawl) -> Iterator[Remark]:
    """Edges that move out faster than rows do well."""
    name, basis = shawl.choice.name, shawl.basis
    steep = [
        band
        for band in shawl.bands
        if max(shawl.rates.left, shawl.rates.right) * _ratio(band) > _ratio(band) + CLEAN
    ]
    if steep:
        rate = max(shawl.rates.left, shawl.rates.right) * _ratio(steep[0])
        yield Remark(
            "shawl_steep_edge",
            f"{name}: its edges gain {rate:.1f} stitches a row, and about "
            f"{_ratio(steep[0]) + CLEAN:.1f} lie well; block its points out, or make it deeper",
        )
    off = finished_depth(shawl).value - shawl.depth
    if abs(off) > max(shawl.bands[-1].gauge.height.value, 0.03 * shawl.depth):
        yield Remark(
            "shawl_depth",
            f"{name}: its bands come to a depth of {basis.show(finished_depth(shawl).value)}, and "
            f"{basis.show(shawl.depth)} is wanted",
        )


def _ratio(band: Band) -> float:
    return band.gauge.height.value / band.gauge.width.value
