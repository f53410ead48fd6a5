"""Small pictures of skirts and other tubes that hang from a waist, as they are worn."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby, pairwise
from math import floor

from frogless.draw.drawing import Circle, Path, Point, Shape, polyline
from frogless.draw.outline import edging_height, levels
from frogless.draw.sketch import BETWEEN, along, bow, rounded, scallops, simple, strip, waved
from frogless.plan.model import BandPlan, CordPlan, ElasticPlan, PiecePlan, Plan

#: How much a level edge seems to hang down in front, in parts of the width.
SAG = 0.055
#: How far a full skirt stands off, in parts of its length; what is wider falls in folds.
STANDS_OFF = 0.55
#: Folds for each time that a hem is wider than what is seen of it.
FOLDS = 4
#: Above this part of the length the waist draws the skirt in; how far off straight a side may run,
#: in parts of the length.
GATHERED, STRAIGHT = 0.08, 0.01
#: The least height of a waistband, mm on the sheet.
BAND = 2.2


@dataclass(frozen=True, slots=True)
class _Tier:
    """Part of a skirt: its side from top to bottom as (depth, half width), mm, and its folds.

    Args:
        is_gathered: whether it is drawn in at its upper edge.
    """

    side: tuple[tuple[float, float], ...]
    folds: int = 0
    is_gathered: bool = False

    @property
    def top(self) -> tuple[float, float]:
        """Depth and half width of its upper edge."""
        return self.side[0]

    @property
    def bottom(self) -> tuple[float, float]:
        """Depth and half width of its lower edge."""
        return self.side[-1]


def skirt(plan: Plan, unit: float) -> Iterator[Shape]:
    """A skirt from the front, tier by tier.

    Args:
        unit: mm of garment for a mm on the sheet.
    """
    tiers = list(_tiers(plan))
    half = tiers[0].top[1]
    yield _opening(-_band_height(plan, unit), half)
    for tier in reversed(tiers):
        yield from _cloth(tier, unit)
    yield from _trimmed(plan, tiers[-1], unit)
    for strand in range(len(plan.main.strands)):
        yield from _strand(half, strand)
    yield from _waist(plan, half, unit)


def tiers_of(shapes: Sequence[PiecePlan]) -> tuple[PiecePlan, ...]:
    """The pieces that hang one below the other."""
    return tuple(p for p in shapes if p.construction == "tube" and p.shape is not None)


def _tiers(plan: Plan) -> Iterator[_Tier]:
    first = _draped(_main_side(plan))
    yield first
    depth, half = first.bottom
    for piece in tiers_of(plan.pieces[1:]):
        corners = piece.shape.outlines[0] if piece.shape else ()
        length = max(y for _, y in corners)
        wide = max(x for x, _ in corners)
        seen = half + min(max(wide - half, 0.0), STANDS_OFF * length)
        tier = _Tier(((depth, half), (depth + length, seen)), _folds(wide, seen), wide > 1.1 * half)
        yield tier
        depth, half = tier.bottom


def _main_side(plan: Plan) -> list[tuple[float, float]]:
    """Depth and half width of the skirt, once for each run of rounds of one count.

    Its upper edge is as wide as the waist draws it in; what is wider is gathered under it.
    """
    shape = levels(plan)
    top = shape[0].girth / 4
    knots = [(shape[0].depth, _waist_half(plan, top))]
    length = shape[-1].depth - shape[0].depth
    for _, run in groupby(shape[1:], key=lambda level: level.count):
        found = list(run)
        depth = found[len(found) // 2].depth
        if depth - shape[0].depth > GATHERED * length:
            knots.append((depth, found[0].girth / 4))
    return [*knots, (shape[-1].depth, shape[-1].girth / 4)]


def _draped(side: Sequence[tuple[float, float]]) -> _Tier:
    seen = [side[0]]
    for (above, _), (depth, half) in pairwise(side):
        limit = seen[-1][1] + STANDS_OFF * (depth - above)
        seen.append((depth, min(half, limit)))
    is_gathered = seen[0][1] < 0.93 * side[1][1]
    return _Tier(_smoothed(seen), _folds(side[-1][1], seen[-1][1]), is_gathered)


def _smoothed(side: Sequence[tuple[float, float]]) -> tuple[tuple[float, float], ...]:
    few = simple([(half, depth) for depth, half in side], STRAIGHT * side[-1][0])
    return tuple((depth, half) for half, depth in rounded(few))


def _folds(flat: float, seen: float) -> int:
    """How many folds fall where a hem is wider than what is seen of it.

    Always odd, or a line in the middle would make legs of a skirt.
    """
    return min(9, 2 * round(FOLDS * (flat / seen - 1) / 2) + 3) if flat > 1.05 * seen else 0


def _edge(depth: float, half: float) -> tuple[Point, ...]:
    return bow((-half, depth), (half, depth), SAG * 2 * half)


def _hem(tier: _Tier, unit: float) -> tuple[Point, ...]:
    line = _edge(*tier.bottom)
    return waved(line, tier.folds, 1.9 * unit) if tier.folds else line


def _cloth(tier: _Tier, unit: float) -> Iterator[Shape]:
    hem = _hem(tier, unit)
    left = [(-half, depth) for depth, half in tier.side]
    right = [(half, depth) for depth, half in reversed(tier.side)]
    around = [*left, *hem[1:-1], *right, *reversed(_edge(*tier.top)[1:-1])]
    yield polyline(around, "cloth", closed=True)
    yield from _rounds(tier, unit)
    yield from _fold_lines(tier, hem)
    if tier.is_gathered:
        yield from _gathers(tier, unit)
    yield polyline(around, "outline", closed=True)


def _rounds(tier: _Tier, unit: float) -> Iterator[Shape]:
    (top, _), (bottom, _) = tier.side[0], tier.side[-1]
    number = max(1, floor((bottom - top) / (BETWEEN * unit)))
    for i in range(1, number):
        depth = top + (bottom - top) * i / number
        yield polyline(_edge(depth, _half_at(tier, depth)), "row hint")


def _fold_lines(tier: _Tier, hem: Sequence[Point]) -> Iterator[Shape]:
    """From where the hem is highest between two folds up towards the top, ever fainter."""
    upper = _edge(*tier.top)
    for i in range(1, tier.folds):
        part = i / tier.folds
        (x1, y1), (x2, y2) = along(hem, part), along(upper, part)
        reach = 0.62 if i % 2 else 0.42
        end = (x1 + (x2 - x1) * reach, y1 + (y2 - y1) * reach)
        yield Path((x1, y1), (((x1 + (x2 - x1) * 0.3, y1 + (y2 - y1) * 0.32), end),), "fold")


def _gathers(tier: _Tier, unit: float) -> Iterator[Shape]:
    """Short strokes below the upper edge, long and short by turns."""
    (top, half), number = tier.top, max(5, round(2 * tier.top[1] / (3.2 * unit)))
    below = (tier.bottom[0] - top) * 0.16
    lower = _edge(top + below, _half_at(tier, top + below))
    for i in range(1, number):
        part = i / number
        (x1, y1), (x2, y2) = along(_edge(top, half), part), along(lower, part)
        reach = min(1.0, (4.4 if i % 2 else 2.6) * unit / below)
        yield polyline([(x1, y1), (x1 + (x2 - x1) * reach, y1 + (y2 - y1) * reach)], "fold")


def _half_at(tier: _Tier, depth: float) -> float:
    for (a, half_a), (b, half_b) in pairwise(tier.side):
        if a <= depth <= b and b > a:
            return half_a + (half_b - half_a) * (depth - a) / (b - a)
    return tier.bottom[1]


def _trimmed(plan: Plan, tier: _Tier, unit: float) -> Iterator[Shape]:
    edged = next((p for p in reversed(plan.pieces) if p.edging is not None), None)
    if edged is None or edged.edging is None:
        return
    hem = _hem(tier, unit)
    if edged.edging.multiple > 1:
        yield scallops(hem, unit)
    else:
        height = edging_height(plan) / unit if edged is plan.main else 1.0
        yield strip(hem, unit, deep=min(2.0, max(1.0, height)))


def _waist_half(plan: Plan, half: float) -> float:
    match plan.main.waist:
        case ElasticPlan() as elastic:
            return min(half, elastic.finished / 4)
        case BandPlan() as band:
            return min(half, band.girth.value / 4)
        case _:
            return half


def _band_height(plan: Plan, unit: float) -> float:
    match plan.main.waist:
        case ElasticPlan() as elastic:
            return max(elastic.width, BAND * unit)
        case BandPlan() as band:
            return max(band.height, BAND * unit)
        case _:
            return 0.0


def _opening(depth: float, half: float) -> Path:
    """What is seen of the inside at the back of the waist."""
    front, back = _edge(depth, half), bow((-half, depth), (half, depth), -SAG * 2 * half)
    return polyline([*front, *reversed(back[1:-1])], "inside", closed=True)


def _waist(plan: Plan, half: float, unit: float) -> Iterator[Shape]:
    match plan.main.waist:
        case ElasticPlan() | BandPlan():
            upper, lower = _edge(-_band_height(plan, unit), half), _edge(0.0, half)
            yield polyline([*upper, *reversed(lower)], "band", closed=True)
            ribs = max(6, round(2 * half / (1.5 * unit)))
            for i in range(1, ribs):
                ends = along(upper, i / ribs), along(lower, i / ribs)
                yield polyline(ends, "rib")
        case CordPlan():
            yield from _cord(half, unit)
        case None:
            return


def _cord(half: float, unit: float) -> Iterator[Shape]:
    """The cord through every other gap, and a bow in front."""
    line = _edge(2.4 * unit, half)
    number = max(4, 2 * round(half / (2.2 * unit)))
    for i in range(0, number, 2):
        spots = [along(line, (i + k / 3) / number) for k in range(4)]
        yield polyline(spots, "tie")
    x, y = along(line, 0.5)
    size = 3.2 * unit
    for way in (-1, 1):
        near, far = (x + way * size * 0.5, y - size), (x + way * size * 1.7, y - size * 0.3)
        yield Path((x, y), ((near, far, (x + way * size * 1.2, y + size * 0.35)), ((x, y),)), "tie")
        yield Path(
            (x, y),
            (((x + way * size * 0.6, y + size * 0.8), (x + way * size * 0.8, y + 2 * size)),),
            "tie",
        )
    yield Circle((x, y), 0.55 * unit, "tie knot")


def _strand(half: float, number: int) -> Iterator[Shape]:
    """A beaded strand that hangs from the waist."""
    line = bow((-half * 0.55, 0.0), (half * 0.75, 0.0), half * (0.55 + 0.2 * number))
    yield polyline(line, "strand")
    beads = 11
    for i in range(1, beads):
        yield Circle(along(line, i / beads), half * 0.022, "bead")
