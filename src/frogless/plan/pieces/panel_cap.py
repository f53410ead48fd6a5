"""A sleeve's head: as long along its edge as the armhole it is sewn into."""

from __future__ import annotations

import math
from dataclasses import dataclass

from frogless.errors import Impossible, Place
from frogless.plan.pieces.panel_edges import along
from frogless.swatch import Gauge
from frogless.units import Measured


@dataclass(frozen=True, slots=True)
class CapShape:
    """The head of a sleeve.

    Args:
        once: stitches left unworked at each edge by its first row.
        each: stitches that each edge loses after that.
        top: stitches of its top.
        rows: its first row among them.
        length: its edge from underarm to underarm, mm.
        wanted: the armhole's length with the ease, mm.
    """

    once: int
    each: int
    top: int
    rows: int
    length: Measured
    wanted: float


@dataclass(frozen=True, slots=True)
class Wish:
    """What a cap has to meet: the armhole with ease, and how far it may be off, mm."""

    armhole: float
    ease: float
    shorter: float
    longer: float

    @property
    def length(self) -> float:
        """The edge wanted."""
        return self.armhole + self.ease


def cap_length(
    once: int, each: int, top: int, sloping: int, gauge: Gauge, upright: int = 0
) -> Measured:
    """The edge of a cap: its steps, its two slopes and its top, mm.

    Args:
        sloping: rows over which each edge loses its stitches.
        upright: rows of each edge that lose nothing.

    Source: Pythagoras, as in the armhole.
    """
    half = [(0, once), (upright, 0), (sloping, each)]
    return along([*half, *half, (0, top)], gauge.width, gauge.height)


def plan_cap(
    count: int, once: tuple[int, int], top: int, wish: Wish, gauge: Gauge, place: Place
) -> CapShape:
    """The cap whose edge comes nearest to what is wanted; its first row loses the steps only.

    Args:
        count: stitches of the sleeve at the underarm.
        once: the fewest stitches that each side loses at once, which are taken when they do, and
            the most.

    Raises:
        Impossible: no cap comes near enough.
    """
    if (count - 2 * once[0] - top) // 2 < 1:
        each = (count - 2 * once[0] - top) // 2
        raise Impossible(
            f"the sleeve has {count} stitches at the underarm, and its cap a top of {top}: there is "
            "nothing to take away between them",
            place,
            short_stitches=2 - 2 * each,
            ways_out=("a narrower top", "a wider sleeve"),
        )
    steps = range(once[0], max(once) + 1)
    nearest = [_nearest(count, step, top, wish, gauge) for step in steps]
    able = (shape for shape in nearest if _is_near(shape, wish))
    if found := next(able, None):
        return found
    raise _off(min(nearest, key=_distance), wish, gauge, place)


def _nearest(count: int, once: int, top: int, wish: Wish, gauge: Gauge) -> CapShape:
    each = max((count - 2 * once - top) // 2, 1)
    rows = _rows(math.ceil(each / 2), wish, gauge)
    return min((_shape(once, each, top, sloping, wish, gauge) for sloping in rows), key=_distance)


def _distance(shape: CapShape) -> tuple[float, int]:
    """How far its edge is off, mm; of two as near the longer comes first."""
    return round(abs(shape.length.value - shape.wanted), 4), -shape.rows


def _is_near(shape: CapShape, wish: Wish) -> bool:
    off = shape.length.value - shape.wanted
    return -wish.shorter - 1e-6 <= off <= wish.longer + 1e-6


def _rows(least: int, wish: Wish, gauge: Gauge) -> range:
    return range(least, max(least, math.ceil(wish.length / 2 / gauge.height.value)) + 2)


def _shape(once: int, each: int, top: int, sloping: int, wish: Wish, gauge: Gauge) -> CapShape:
    upright = 1 if once else 0
    length = cap_length(once, each, top, sloping, gauge, upright)
    return CapShape(once, each, top, sloping + upright, length, wish.length)


def _off(found: CapShape, wish: Wish, gauge: Gauge, place: Place) -> Impossible:
    off = found.length.value - found.wanted
    longer = off > 0
    limit = wish.longer if longer else wish.shorter
    short = abs(off) - limit
    return Impossible(
        f"the nearest cap has an edge of {found.length.value / 10:.1f} cm, "
        f"{abs(off) / 10:.1f} cm {'longer' if longer else 'shorter'} than the "
        f"{wish.length / 10:.1f} cm wanted, and {limit / 10:.1f} cm is allowed",
        place,
        short_stitches=math.ceil(short / gauge.width.value),
        short=short,
        ways_out=(
            ("a deeper armhole", "a narrower sleeve", "a narrower top")
            if longer
            else ("a shallower armhole", "a wider sleeve", "a wider top")
        ),
    )
