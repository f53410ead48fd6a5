"""Girth against depth: the wanted line, the counts round by round, what the landmarks allow."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, floor, isfinite

from frogless.draw.callouts import SAMPLE_WIDTH, Callout, Key, Sheet, assemble, column
from frogless.draw.describe import describe_profile
from frogless.draw.drawing import Circle, Drawing, Line, Point, Shape, Text, polyline
from frogless.draw.layout import ASCENT, text_box, text_width
from frogless.draw.outline import Level, levels, wanted_at, wanted_profile
from frogless.draw.styles import STYLES
from frogless.draw.words import landmark_name, with_defaults
from frogless.plan.model import Landmark, Plan
from frogless.units import Units, show_length, show_signed

TALL = 88.0
GAP = 6.0
STRIP = 8.5
CAP = 1.1
NO_BREAK = "\N{NO-BREAK SPACE}"
DOT = 1.0
ROUND_STEP = 4.0
GIRTH_STEP = 9.3
DEPTH_STEP = 12.0
AXIS_STEPS: Mapping[Units, tuple[float, ...]] = {
    "cm": (5, 10, 20, 50, 100, 200, 500, 1000),
    "in": (6.35, 12.7, 25.4, 50.8, 101.6, 203.2, 508, 1016),
}


@dataclass(frozen=True, slots=True)
class _Graph:
    """The plotted field on the sheet: x from `left` for `girths`, y from 0 for `depth`; mm.

    Args:
        girths: least and greatest; they begin beyond the strip of round numbers.
    """

    left: float
    right: float
    girths: tuple[float, float]
    depth: float

    def at(self, girth: float, depth: float) -> Point:
        """The spot of a girth at a depth."""
        low, high = self.girths
        x = self.left + STRIP + (girth - low) / (high - low) * (self.right - self.left - STRIP)
        return (x, depth / self.depth * TALL)


def profile(plan: Plan, *, title: str, units: Units, labels: Mapping[str, str]) -> Drawing:
    """The graph that shows how closely the rhythm follows the wanted girth; depth runs down.

    Args:
        labels: words by name that replace those of `words.WORDS`.
    """
    words = with_defaults(labels)
    sheet = Sheet(title, describe_profile(plan, units, labels))
    shape = levels(plan)
    names = [_lines(mark, units, words) for mark in plan.main.landmarks]
    width = max(Callout((0, 0), lines).width for lines in names)
    end = sheet.width - sheet.margin - width - GAP
    start = sheet.margin + _axis_width(shape[-1].depth, units) + 2.0
    graph = _Graph(start, end, _girths(plan, shape), shape[-1].depth)
    spots = [graph.at(mark.garment.value, mark.depth) for mark in plan.main.landmarks]
    callouts = [Callout(spot, lines) for spot, lines in zip(spots, names, strict=True)]
    body = (
        *_axes(graph, units),
        *column(callouts, end + GAP),
        *_curves(plan, shape, graph),
        *_marks(plan, graph),
        *_round_numbers(shape, graph),
    )
    return assemble(body, words["profile"], _keys(plan, shape, units, words), sheet)


def _lines(mark: Landmark, units: Units, words: Mapping[str, str]) -> tuple[tuple[str, str], ...]:
    worked = words["count"].format(count=mark.count, girth=show_length(mark.garment.value, units))
    wanted = words["wanted_value"].format(girth=show_length(mark.wanted, units))
    lines = ((landmark_name(mark.key, words), "name"), (worked, "value"), (wanted, "value"))
    return (*lines, (words["estimated"], "remark")) if mark.estimated else lines


def _girths(plan: Plan, shape: Sequence[Level]) -> tuple[float, float]:
    """All girths that are drawn, with a little air."""
    drawn = [level.girth for level in shape]
    for mark in plan.main.landmarks:
        bounds = (mark.wanted, mark.garment.value, mark.low, mark.high)
        drawn += [girth for girth in bounds if _is_said(girth)]
        drawn += [mark.body.value] if mark.body else []
    low, high = min(drawn), max(drawn)
    air = max(0.04 * (high - low), 0.01 * high)
    return (low - air, high + air)


def _step(steps: Sequence[float], scale: float, closest: float) -> float:
    """The finest step of the axis whose lines are at least `closest` apart on the sheet."""
    return next((step for step in steps if step * scale >= closest), steps[-1])


def _multiples(low: float, high: float, step: float) -> list[float]:
    return [step * i for i in range(ceil(low / step - 1e-9), floor(high / step + 1e-9) + 1)]


def _depth_marks(depth: float, units: Units) -> list[float]:
    return _multiples(0.0, depth, _step(AXIS_STEPS[units], TALL / depth, DEPTH_STEP))


def _axis_width(depth: float, units: Units) -> float:
    return max(text_width(show_length(d, units), "axis") for d in _depth_marks(depth, units))


def _axes(graph: _Graph, units: Units) -> Iterator[Shape]:
    """Depths down the left, girths along the top, a fine line for each."""
    low, high = graph.girths
    for depth in _depth_marks(graph.depth, units):
        _, y = graph.at(low, depth)
        yield Line((graph.left, y), (graph.right, y), "grid")
        lowered = y + ASCENT / 2 * STYLES["axis"].size
        yield Text((graph.left - 1.5, lowered), show_length(depth, units), "axis", "end")
    scale = (graph.right - graph.left - STRIP) / (high - low)
    marks = _multiples(low, high, _step(AXIS_STEPS[units], scale, GIRTH_STEP))
    for girth in marks:
        x, _ = graph.at(girth, 0.0)
        yield Line((x, 0.0), (x, TALL), "grid")
        shown = show_length(girth, units)
        # The unit once is enough, and leaves room for more of the numbers.
        told = shown if girth == marks[0] else shown.rpartition(" ")[0]
        text = Text((x, -2.0), told, "axis", "middle")
        # Beyond the frame a label would stand in the way of the leaders.
        if text_box(text).right <= graph.right:
            yield text
    corners = ((graph.left, 0), (graph.right, 0), (graph.right, TALL), (graph.left, TALL))
    yield polyline(corners, "frame", closed=True)


def _curves(plan: Plan, shape: Sequence[Level], graph: _Graph) -> Iterator[Shape]:
    bodies = [(m.body.value, m.depth) for m in plan.main.landmarks if m.body]
    if len(bodies) > 1:
        yield polyline((graph.at(*spot) for spot in bodies), "body")
    yield polyline(_stair(shape, graph), "worked")
    yield polyline((graph.at(girth, depth) for depth, girth in wanted_profile(plan)), "wanted")


def _stair(shape: Sequence[Level], graph: _Graph) -> Iterator[Point]:
    """A tread for each round, as high as the round, at the girth of its count."""
    yield graph.at(shape[0].girth, shape[0].depth)
    for above, level in pairwise(shape):
        yield graph.at(level.girth, above.depth)
        yield graph.at(level.girth, level.depth)


def _marks(plan: Plan, graph: _Graph) -> Iterator[Shape]:
    """Strays, then whiskers of what is allowed, then the dots of body and garment."""
    for section in plan.main.sections:
        if section.chosen and section.chosen.stray:
            depth, wanted = section.chosen.stray_at, wanted_at(plan, section.chosen.stray_at)
            ends = graph.at(wanted, depth), graph.at(wanted + section.chosen.stray, depth)
            yield Line(*ends, "stray")
    for mark in plan.main.landmarks:
        yield from _whisker(mark, graph)
        if mark.body:
            yield Circle(graph.at(mark.body.value, mark.depth), 0.8 * DOT, "body dot")
        yield Circle(graph.at(mark.garment.value, mark.depth), DOT, "landmark dot")


def _whisker(mark: Landmark, graph: _Graph) -> Iterator[Shape]:
    """From the least to the greatest allowed, capped; a side on which nothing was said has none."""
    bounds = (mark.low, mark.high)
    ends = [graph.at(b if _is_said(b) else mark.garment.value, mark.depth) for b in bounds]
    yield Line(ends[0], ends[1], "whisker")
    for bound, (x, y) in zip(bounds, ends, strict=True):
        if _is_said(bound):
            yield Line((x, y - CAP), (x, y + CAP), "whisker")


def _is_said(bound: float) -> bool:
    """Whether a bound of a girth says anything: not infinite, and not what every girth is above."""
    return isfinite(bound) and bound > 0


def _round_numbers(shape: Sequence[Level], graph: _Graph) -> Iterator[Shape]:
    """A tick on the left for each shaping round, and its number where the one above leaves room."""
    taken = -ROUND_STEP
    for above, level in pairwise(shape):
        _, y = graph.at(0.0, (above.depth + level.depth) / 2)
        if level.shapes:
            yield Line((graph.left, y), (graph.left + 1.4, y), "tick")
        if level.shapes and y >= taken + ROUND_STEP:
            taken = y
            lowered = y + ASCENT / 2 * STYLES["axis"].size
            yield Text((graph.left + 2.4, lowered), str(level.round), "axis")


def _keys(
    plan: Plan, shape: Sequence[Level], units: Units, words: Mapping[str, str]
) -> Iterator[Key]:
    end, half = SAMPLE_WIDTH, SAMPLE_WIDTH / 2
    stair = ((0, -1.0), (half, -1.0), (half, 0.8), (end, 0.8))
    yield Key((polyline(stair, "worked"),), words["worked"])
    yield Key((Line((0, 0), (end, 0), "wanted"),), words["wanted"])
    if any(mark.body for mark in plan.main.landmarks):
        dot = Circle((half, 0), 0.8 * DOT, "body dot")
        yield Key((Line((0, 0), (end, 0), "body"), dot), words["body"])
    caps = (Line((x, -CAP), (x, CAP), "whisker") for x in (1.5, end - 1.5))
    whisker = Line((1.5, 0), (end - 1.5, 0), "whisker")
    yield Key((whisker, *caps, Circle((half, 0), DOT, "landmark dot")), words["allowed"])
    if any(level.shapes for level in shape):
        yield Key((Line((half - 0.6, 0), (half + 0.6, 0), "tick"),), words["rounds"])
    strays = [
        _stray(s.chosen.stray, s.chosen.stray_at, shape, units, words)
        for s in plan.main.sections
        if s.chosen
    ]
    if strays:
        text = words["stray"].format(strays=", ".join(strays))
        yield Key((Line((half - 2, 0), (half + 2, 0), "stray"),), text)


def _stray(
    stray: float, depth: float, shape: Sequence[Level], units: Units, words: Mapping[str, str]
) -> str:
    nearest = min(shape, key=lambda level: abs(level.depth - depth))
    text = words["stray_value"].format(stray=show_signed(stray, units), round=nearest.round)
    return text.replace(" ", NO_BREAK)
