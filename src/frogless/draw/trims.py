"""Hints of what is put on: waist, edging and strands, a few strokes each, in their true places."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import accumulate, pairwise

from frogless.design.work import JoinAt
from frogless.draw.drawing import Circle, Line, Path, Point, Shape, dots, polyline
from frogless.draw.frame import Frame
from frogless.draw.mirror import Hand, turns_for
from frogless.draw.outline import JOIN_TURNS, edging_height, fold, is_front
from frogless.plan import catenary
from frogless.plan.model import BandPlan, CordPlan, EdgingPlan, ElasticPlan, Plan, StrandPlan

# Closer than this, mm on the sheet, strokes run together in print.
CLOSEST = 1.2
BEAD = 0.62
SMALLEST_BEAD = 0.36


def waist_shapes(
    plan: Plan, frame: Frame, join_at: JoinAt, hand: Hand = "right"
) -> tuple[Shape, ...]:
    """The elastic under its stitches, the cord with its bow, or the ribbed band."""
    match plan.main.waist:
        case ElasticPlan() as elastic:
            return _elastic(elastic, frame)
        case BandPlan() as band:
            return _band(band, frame)
        case CordPlan() as cord:
            return _cord(cord, plan, frame, join_at, hand)
        case None:
            return ()


def edging_shapes(plan: Plan, frame: Frame) -> tuple[Shape, ...]:
    """A scallop for each repeat of the front half; a narrow strip for an edging without repeats."""
    if plan.main.edging is None:
        return ()
    hem = plan.main.depths[plan.main.sections[-1].last_round]
    left, right = frame.edges(hem)
    drop = max(edging_height(plan) * frame.scale, CLOSEST)
    if plan.main.edging.multiple == 1:
        corners = (left, right, (right[0], right[1] + drop), (left[0], left[1] + drop))
        return (polyline(corners, "edging", closed=True),)
    number = _scallops(plan.main.edging, right[0] - left[0])
    step = (right[0] - left[0]) / number
    arcs = tuple(
        ((left[0] + (i + 0.5) * step, left[1] + 2 * drop), (left[0] + (i + 1) * step, left[1]))
        for i in range(number)
    )
    return (Path(left, arcs, "edging", closed=True),)


def strand_shapes(strand: StrandPlan, plan: Plan, frame: Frame) -> tuple[Shape, ...]:
    """The strand as it hangs, with its beads; dashed where it passes behind."""
    stitch = plan.main.sections[0].gauge.width.value
    girth = frame.half(0.0) * 4
    start, end = sorted((strand.from_stitch * stitch, strand.to_stitch * stitch))
    line = catenary.of_sag(end - start, strand.actual_sag)

    def spot(along: float) -> tuple[bool, Point]:
        turns = fold((start + along) / girth)
        x, _ = frame.placed(turns, 0.0)
        return is_front(turns), (x, frame.y(line.drop(along)))

    spots = [spot((end - start) * i / 48) for i in range(49)]
    beads = [spot(line.at_length((i + 0.5) / strand.beads)) for i in range(strand.beads)]
    lines = tuple(
        Line(a, b, "strand" if seen and also else "strand behind")
        for (seen, a), (also, b) in pairwise(spots)
    )
    radius = min(BEAD, max(SMALLEST_BEAD, strand.bead_diameter / 2 * frame.scale))
    return _joined(lines) + dots((point for seen, point in beads if seen), radius, "bead")


def _joined(lines: tuple[Line, ...]) -> tuple[Shape, ...]:
    """Neighbouring lines of one class as one path, so that dashes run through."""
    paths: list[list[Point]] = []
    styles: list[str] = []
    for line in lines:
        if styles and styles[-1] == line.style:
            paths[-1].append(line.end)
        else:
            styles.append(line.style)
            paths.append([line.start, line.end])
    return tuple(polyline(points, style) for points, style in zip(paths, styles, strict=True))


def _scallops(edging: EdgingPlan, width: float) -> int:
    """As many as half the repeats, or as many as can still be told apart."""
    return max(1, min(round(edging.repeats / 2), int(width / CLOSEST)))


def _elastic(elastic: ElasticPlan, frame: Frame) -> tuple[Shape, ...]:
    """A strip drawn in to the ring, with a row of crosses for the single crochet over it."""
    left, right = frame.edges(0.0)
    half = min(elastic.finished / 4, frame.half(0.0))
    height = max(elastic.width * frame.scale, CLOSEST + 0.3)
    top_left, top_right = frame.at(-half, 0.0)[0], frame.at(half, 0.0)[0]
    top = left[1] - height
    strip = polyline(((top_left, top), (top_right, top), right, left), "trim", closed=True)
    return (strip, *_crosses(top_left, top_right, left[1] - height / 2))


def _crosses(left: float, right: float, y: float) -> Iterator[Shape]:
    arm, step = 0.42, 1.7
    number = max(1, int((right - left - 1.0) / step))
    for i in range(number):
        x = (left + right) / 2 + (i - (number - 1) / 2) * step
        yield Line((x - arm, y - arm), (x + arm, y + arm), "hatch")
        yield Line((x - arm, y + arm), (x + arm, y - arm), "hatch")


def _band(band: BandPlan, frame: Frame) -> tuple[Shape, ...]:
    """Ribs upright, as a band worked sideways shows them, drawn in to its own girth."""
    half = band.girth.value / 4
    top, edge = frame.at(-half, -band.height)[1], frame.edges(0.0)
    left, right = frame.at(-half, 0.0)[0], frame.at(half, 0.0)[0]
    corners = ((left, top), (right, top), edge[1], edge[0])
    ribs = max(2, min(band.rows // 2, int((right - left) / CLOSEST)))
    lines = (
        Line(
            (left + (right - left) * i / ribs, top),
            (edge[0][0] + (edge[1][0] - edge[0][0]) * i / ribs, edge[0][1]),
            "hatch",
        )
        for i in range(1, ribs)
    )
    return (polyline(corners, "trim", closed=True), *lines)


def _cord(
    cord: CordPlan, plan: Plan, frame: Frame, join_at: JoinAt, hand: Hand
) -> tuple[Shape, ...]:
    """Eyelets where the round has them, the cord over every other gap, a bow at centre front."""
    number = min(max(cord.eyelet_round, 1), len(plan.main.depths) - 1)
    depth = (plan.main.depths[number - 1] + plan.main.depths[number]) / 2
    total = sum(cord.gaps)
    ends = list(accumulate(cord.gaps))
    worked = (
        fold(JOIN_TURNS[join_at] + (end - gap / 2) / total)
        for end, gap in zip(ends, cord.gaps, strict=True)
    )
    turns = sorted(turns_for(worked, hand))
    holes = [frame.placed(place, depth) for place in turns if is_front(place)]
    first = (len(holes) // 2) % 2
    over = tuple(Line(a, b, "cord") for i, (a, b) in enumerate(pairwise(holes)) if i % 2 != first)
    # The cord's ends come out at the two holes next to centre front.
    return (
        *over,
        *dots(holes, 0.55, "eyelet"),
        *_bow(frame.at(0.0, depth), frame.half(depth) * frame.scale),
    )


def _bow(at: Point, half: float) -> Iterator[Shape]:
    """Two loops, two ends, a knot."""
    x, y = at
    size = min(6.5, half * 0.45)
    for way in (-1, 1):
        s = way * size
        tail = ((x + 0.25 * s, y + 0.5 * size), (x + 0.3 * s, y + 0.9 * size))
        yield Path(at, ((*tail, (x + 0.55 * s, y + 1.25 * size)),), "cord")
        rise = ((x + 0.3 * s, y - 0.75 * size), (x + 1.2 * s, y - 0.6 * size), (x + s, y))
        back = ((x + 0.9 * s, y + 0.4 * size), (x + 0.35 * s, y + 0.25 * size), at)
        yield Path(at, (rise, back), "cord")
    yield Circle(at, 0.7, "cord knot")
