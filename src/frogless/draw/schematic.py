"""The flat front view of a skirt, at true scale, with its measurements."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby, pairwise

from frogless.design.work import JoinAt
from frogless.draw.callouts import SAMPLE_WIDTH, Callout, Key, Sheet, assemble, column
from frogless.draw.describe import describe
from frogless.draw.drawing import Circle, Drawing, Line, Path, Point, Shape, Text, polyline
from frogless.draw.frame import Frame
from frogless.draw.labels import OVER, STEP, Label, on_cloth, stacked
from frogless.draw.layout import extent, spread, text_width
from frogless.draw.mirror import Hand, join_for, lines_for
from frogless.draw.outline import (
    Level,
    ShapingLine,
    edging_height,
    is_front,
    levels,
    meeting,
    shaping_lines,
    wanted_profile,
)
from frogless.draw.scale import scale_key
from frogless.draw.trims import BEAD, edging_shapes, strand_shapes, waist_shapes
from frogless.draw.words import landmark_name, with_defaults
from frogless.plan.model import BandPlan, CordPlan, ElasticPlan, Plan
from frogless.units import Units, show_length

TALLEST = 118.0
GAP = 5.0
TICK = 0.7
SHORTEST_TICK = 0.2
# A point this far round, in turns, lies along the folded side edge (a quarter turn).
SIDE = 0.245
LENGTH_STEP = 4.6


@dataclass(frozen=True, slots=True)
class _Task:
    """What every part of the drawing needs to know."""

    plan: Plan
    units: Units
    words: Mapping[str, str]
    join_at: JoinAt
    hand: Hand

    @property
    def worn_join(self) -> JoinAt:
        """Where the rounds begin on the wearer."""
        return join_for(self.join_at, self.hand)

    def length(self, length: float) -> str:
        """A length as it is shown."""
        return show_length(length, self.units)


@dataclass(frozen=True, slots=True)
class _Label:
    """Lettering for a depth.

    Args:
        across: mm to the wearer's left of centre front where its leader begins; None: at the edge.
        is_on_cloth: whether it belongs to a line across the skirt, and not to one of its ends.
    """

    depth: float
    lines: tuple[tuple[str, str], ...]
    across: float | None = None
    is_on_cloth: bool = False

    @property
    def line(self) -> Label:
        """All of it on one line."""
        return Label(self.lines)


def schematic(
    plan: Plan,
    *,
    title: str,
    units: Units,
    labels: Mapping[str, str],
    join_at: JoinAt = "centre back",
    hand: Hand = "right",
) -> Drawing:
    """The skirt folded flat, seen from the front: half girths wide, worn depths high, one scale.

    Args:
        labels: words by name that replace those of `words.WORDS`.
        join_at: "centre back", "left side" or "right side" (the wearer's), where a right-hander
            has it.
        hand: whose work it shows: what is worked is mirrored for the left hand, and what is sewn on
            stays on its side of the wearer.
    """
    task = _Task(plan, units, with_defaults(labels), join_at, hand)
    sheet = Sheet(title, describe(plan, units, labels, task.worn_join))
    stops, names = _stops(plan), _labels(task)
    body = _with_labels_on_it(task, stops, names, sheet)
    if body is None:
        body = _with_labels_beside_it(task, stops, names, sheet)
    view = task.words["front"].format(join=task.words[meeting(plan, task.worn_join)])
    return assemble(body[1], view, _keys(task, body[0]), sheet)


Body = tuple[Frame, tuple[Shape, ...]]


def _with_labels_on_it(
    task: _Task, stops: Sequence[float], names: Sequence[_Label], sheet: Sheet
) -> Body | None:
    """The skirt as wide as the sheet, labels on the cloth; None when they find no room there."""
    frame = _frame(task, stops, sheet, after=sheet.margin)
    hem = task.plan.main.landmarks[-1].depth
    hung = [
        shape
        for strand in task.plan.main.strands
        for shape in strand_shapes(strand, task.plan, frame)
    ]
    trim = waist_shapes(task.plan, frame, task.join_at, task.hand)
    taken = [extent([shape]) for shape in (*hung, *trim)]
    inside = [label for label in names if label.is_on_cloth]
    placed = on_cloth([(label.depth, label.line) for label in inside], frame, taken)
    skirt = _skirt(task, frame)
    if placed is None:
        return None
    above = [label.line for label in names if not label.is_on_cloth and label.depth < hem]
    below = [label.line for label in names if not label.is_on_cloth and label.depth >= hem]
    box = extent(skirt)
    body = (
        *skirt,
        *_lengths(task, stops, frame, sheet.margin),
        *placed,
        *stacked(above, frame.middle, box.top - OVER - STEP * (len(above) - 1)),
        *stacked(below, frame.middle, box.bottom + STEP),
    )
    return (frame, body) if _fits(body, sheet) else None


def _fits(body: Sequence[Shape], sheet: Sheet) -> bool:
    box = extent(body)
    return box.left >= 0 and box.right <= sheet.width - sheet.margin / 2


def _with_labels_beside_it(
    task: _Task, stops: Sequence[float], names: Sequence[_Label], sheet: Sheet
) -> Body:
    """The skirt with its labels in a column to the right, led to their spots."""
    plain = Frame(1, 0, 0, levels(task.plan))
    width = max(_callout(label, plain).width for label in names)
    frame = _frame(task, stops, sheet, after=width + sheet.margin + GAP)
    right = frame.middle + max(level.girth for level in frame.shape) / 4 * frame.scale + GAP
    callouts = [_callout(label, frame) for label in names]
    body = (
        *_skirt(task, frame),
        *_lengths(task, stops, frame, sheet.margin),
        *column(callouts, right),
    )
    return frame, body


def _frame(task: _Task, stops: Sequence[float], sheet: Sheet, *, after: float) -> Frame:
    """The frame that fills the room between the lengths and what is kept free to the right."""
    shape = levels(task.plan)
    widest = max(level.girth for level in shape) / 2
    before = _lengths_width(task, stops) + sheet.margin + GAP
    room = sheet.width - before - after
    scale = min(room / widest, TALLEST / (stops[-1] - stops[0]))
    return Frame(scale, before + room / 2, 0.0, shape)


def _stops(plan: Plan) -> tuple[float, ...]:
    """Depths between which lengths are shown: trims' ends, top edge, landmarks; none twice."""
    hem = plan.main.depths[plan.main.sections[-1].last_round]
    band = plan.main.waist.height if isinstance(plan.main.waist, BandPlan) else 0.0
    depths = sorted(
        {-band, 0.0, hem, hem + edging_height(plan), *(m.depth for m in plan.main.landmarks)}
    )
    return tuple(b for a, b in pairwise((-1e9, *depths)) if b - a > 1.0)


def _labels(task: _Task) -> list[_Label]:
    return [*_waist_label(task), *_landmark_labels(task), *_edging_label(task)]


def _landmark_labels(task: _Task) -> Iterator[_Label]:
    words = task.words
    ends = (task.plan.main.landmarks[0], task.plan.main.landmarks[-1])
    for mark in task.plan.main.landmarks:
        value = words["count"].format(count=mark.count, girth=task.length(mark.garment.value))
        lines = ((landmark_name(mark.key, words), "name"), (value, "value"))
        remark = ((words["estimated"], "remark"),) if mark.estimated else ()
        yield _Label(mark.depth, lines + remark, is_on_cloth=mark not in ends)


def _waist_label(task: _Task) -> Iterator[_Label]:
    words, show = task.words, task.length
    match task.plan.main.waist:
        case ElasticPlan() as elastic:
            value = words["elastic_value"].format(girth=show(elastic.finished))
            lines = ((words["elastic"], "name"), (value, "value"))
            yield _Label(-elastic.width / 2, lines, elastic.finished / 4)
        case CordPlan() as cord:
            value = words["cord_value"].format(length=show(cord.cord))
            depth = task.plan.main.depths[min(cord.eyelet_round, len(task.plan.main.depths) - 1)]
            yield _Label(depth, ((words["cord"], "name"), (value, "value")))
        case BandPlan() as band:
            value = words["band_value"].format(rows=band.rows, girth=show(band.girth.value))
            lines = ((words["band"], "name"), (value, "value"))
            yield _Label(-band.height / 2, lines, band.girth.value / 4)


def _edging_label(task: _Task) -> Iterator[_Label]:
    edging = task.plan.main.edging
    if edging is None:
        return
    hem = task.plan.main.depths[task.plan.main.sections[-1].last_round]
    key = "edging_plain" if edging.multiple == 1 else "edging_value"
    value = task.words[key].format(
        repeats=edging.repeats, count=edging.base_count, girth=task.length(edging.girth.value)
    )
    lines = ((task.words["edging"], "name"), (value, "value"))
    yield _Label(hem + edging_height(task.plan), lines)


def _callout(label: _Label, frame: Frame) -> Callout:
    across = frame.half(label.depth) if label.across is None else label.across
    return Callout(frame.at(across, label.depth), label.lines)


def _skirt(task: _Task, frame: Frame) -> tuple[Shape, ...]:
    """Everything of the skirt itself, from the cloth up to what hangs over it."""
    plan = task.plan
    outline = [frame.edges(depth) for depth in _knots(frame.shape)]
    around = [left for left, _ in outline] + [right for _, right in reversed(outline)]
    strands = (strand_shapes(strand, plan, frame) for strand in plan.main.strands)
    return (
        polyline(around, "cloth", closed=True),
        *edging_shapes(plan, frame),
        *_levels_across(task, frame),
        *_shaping(lines_for(shaping_lines(plan, task.join_at), task.hand), frame),
        *waist_shapes(plan, frame, task.join_at, task.hand),
        *_wanted(plan, frame),
        polyline(around, "outline", closed=True),
        *_side_join(task, frame),
        *(shape for strand in strands for shape in strand),
    )


def _knots(shape: Sequence[Level]) -> Iterator[float]:
    """Depths between which the sides are drawn straight: both ends, and the middle of each run of
    rounds with one count, so that the few stitches of a shaping round do not show as a notch."""
    yield shape[0].depth
    for count, run in groupby(shape, key=lambda level: level.count):
        depths = [level.depth for level in run]
        at_end = {shape[0].count: depths[-1], shape[-1].count: depths[0]}
        yield at_end.get(count, (depths[0] + depths[-1]) / 2)
    yield shape[-1].depth


def _levels_across(task: _Task, frame: Frame) -> Iterator[Shape]:
    """A hair line over the width at each landmark, with a tick where it meets the outline."""
    for mark in task.plan.main.landmarks:
        left, right = frame.edges(mark.depth)
        yield Line(left, right, "dimension")
        yield from (_slash(point) for point in (left, right))


def _slash(point: Point) -> Line:
    """The small slanted stroke that ends a dimension."""
    x, y = point
    return Line((x - TICK, y + TICK), (x + TICK, y - TICK), "tick")


def _shaping(lines: Sequence[ShapingLine], frame: Frame) -> Iterator[Shape]:
    """Dashed along each shaping point of the front, ticked at its rounds; at a side only ticks."""
    for line in lines:
        stands = [(depth, turns) for depth, turns in line.stands if is_front(turns)]
        points = [frame.placed(turns, depth) for depth, turns in stands]
        if stands and abs(stands[0][1]) < SIDE:
            top = frame.placed(stands[0][1], line.top)
            bottom = frame.placed(stands[-1][1], line.bottom)
            yield polyline((top, *points, bottom), "shaping")
        # Ticks of rounds that lie close stay short, or they would run together into a dark bar.
        gaps = [(b - a) * frame.scale for (a, _), (b, _) in pairwise(line.stands)]
        half = min([TICK, *(max(SHORTEST_TICK, 0.45 * gap) for gap in gaps)])
        for x, y in points:
            yield Line((x - half, y), (x + half, y), "shaping tick")


def _wanted(plan: Plan, frame: Frame) -> Iterator[Path]:
    for way in (-1, 1):
        profile = [frame.at(way * girth / 4, depth) for depth, girth in wanted_profile(plan)]
        yield polyline(profile, "wanted")


def _side_join(task: _Task, frame: Frame) -> Iterator[Shape]:
    """Small arrow heads at the side where the rounds are joined; nothing for a join behind."""
    if task.join_at == "centre back":
        return
    way = 1 if task.worn_join == "left side" else -1
    deep = frame.shape[-1].depth
    for part in (0.4, 0.6, 0.8):
        x, y = frame.at(way * frame.half(part * deep), part * deep)
        yield from _arrow((x - way * 0.6, y), way)


def _arrow(tip: Point, way: int) -> Iterator[Shape]:
    x, y = tip
    yield polyline((tip, (x - way * 1.8, y - 0.9), (x - way * 1.8, y + 0.9)), "join", closed=True)


def _lengths_width(task: _Task, stops: Sequence[float]) -> float:
    """Room for the lengths: the total turned upright, the parts beside their line."""
    parts = [task.length(b - a) for a, b in pairwise(stops)]
    total = LENGTH_STEP + 2.0 if len(parts) > 1 else 0.0
    return total + max(text_width(part, "length") for part in parts) + 3.0


def _lengths(task: _Task, stops: Sequence[float], frame: Frame, left: float) -> Iterator[Shape]:
    """The lengths from stop to stop down the left; beside them the whole, if it has parts."""
    x = left + _lengths_width(task, stops)
    heights = [frame.y(stop) for stop in stops]
    yield Line((x, heights[0]), (x, heights[-1]), "dimension")
    for stop, y in zip(stops, heights, strict=True):
        yield Line((x - 1.0, y), (frame.edges(stop)[0][0] - 1.2, y), "dimension")
        yield _slash((x, y))
    middles = [(a + b) / 2 for a, b in pairwise(heights)]
    places = spread(middles, [LENGTH_STEP] * len(middles))
    for (a, b), middle, place in zip(pairwise(stops), middles, places, strict=True):
        at = (x - 3.0, place + 0.24 * LENGTH_STEP)
        if abs(place - middle) > 0.3:
            yield Line((x, middle), (x - 2.4, place), "dimension")
        yield Text(at, task.length(b - a), "length", "end")
    if len(middles) > 1:
        yield from _whole(task.length(stops[-1] - stops[0]), left + LENGTH_STEP, heights)


def _whole(text: str, x: float, heights: Sequence[float]) -> Iterator[Shape]:
    top, bottom = heights[0], heights[-1]
    yield Line((x, top), (x, bottom), "dimension")
    yield _slash((x, top))
    yield _slash((x, bottom))
    yield Text((x - 1.3, (top + bottom) / 2), text, "length", "middle", -90.0)


def _keys(task: _Task, frame: Frame) -> Iterator[Key]:
    words, end = task.words, SAMPLE_WIDTH
    yield scale_key(frame.scale, task.units)
    yield Key((Line((0, 0), (end, 0), "wanted"),), words["wanted"])
    if any(section.chosen for section in task.plan.main.sections):
        ticks = tuple(Line((x, -TICK), (x, TICK), "shaping tick") for x in (end / 4, end * 3 / 4))
        yield Key((Line((0, 0), (end, 0), "shaping"), *ticks), words["shaping"])
    if task.join_at != "centre back":
        yield Key(tuple(_arrow((end / 2 + 0.9, 0), 1)), words["side_join"])
    for strand in task.plan.main.strands:
        text = words["strand"].format(
            name=strand.name, beads=strand.beads, sag=task.length(strand.actual_sag)
        )
        beads = tuple(Circle((end * part, 0), BEAD, "bead") for part in (0.2, 0.5, 0.8))
        yield Key((Line((0, 0), (end, 0), "strand"), *beads), text)
