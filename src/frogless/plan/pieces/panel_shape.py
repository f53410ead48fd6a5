"""A panel as it lies: its outline with right side up, and its finished measurements."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence

from frogless.because import Because, Step
from frogless.plan.landing import because_landed
from frogless.plan.model import Measure, Shape
from frogless.plan.pieces.made import OfferedEdge
from frogless.plan.pieces.panel_edges import HANDS, STILL, Hand
from frogless.plan.pieces.panel_layout import Layout, Stage
from frogless.plan.pieces.panel_strips import Strips
from frogless.swatch import Gauge
from frogless.units import Measured

Point = tuple[float, float]
OUTWARDS = {"right": 1, "left": -1}


def shape_of(panel: Layout, strips: Strips) -> Shape:
    """The outline, up the right edge, over the top and down the left; the slit and placket inside."""
    right, left = outer_path(panel, "right"), outer_path(panel, "left")
    ring = [*right, *_neck_path(panel, strips), *left[::-1]]
    laid = _laid(panel)
    outline = _simple([laid(point) for point in ring])
    lines = tuple(tuple(laid(point) for point in line) for line in _openings(panel, strips))
    return Shape((outline,), lines, (0.0, -1.0) if panel.choice.worked == "upwards" else (0.0, 1.0))


def _laid(panel: Layout) -> Callable[[Point], Point]:
    """What lays a point that is counted from where the work begins as it is worn: y grows downwards.

    What is worked downwards is worn the other way up: turned by half a circle.
    """
    top, width = panel.top_of(panel.last), panel.begun.count * panel.gauge.width.value
    if panel.choice.worked == "upwards":
        return lambda point: (point[0], top - point[1])
    return lambda point: (width - point[0], point[1])


def outer_path(panel: Layout, hand: Hand) -> list[Point]:
    """An outer edge from below upwards: steps flat, what changes in a row along that row, mm."""
    sign, line = OUTWARDS[hand], panel.lines[hand]
    count = panel.begun.count
    width = panel.gauges[0].width.value
    x = count * panel.gauge.width.value if hand == "right" else 0.0
    path = [(x, 0.0)]
    y = panel.foundation_height
    if y:
        path.append((x, y))
    for row, gauge in enumerate(panel.gauges, start=1):
        x += sign * count * (gauge.width.value - width) / 2
        width = gauge.width.value
        change = line.rows.get(row, STILL)
        inner = sum(by for _, by in panel.inner.get(row, ()))
        x -= sign * change.once * width
        path.append((x, y))
        x += sign * (change.by + inner / 2) * width
        y += gauge.height.value
        path.append((x, y))
        count += inner + sum(
            each.by - each.once for each in (panel.lines[h].rows.get(row, STILL) for h in HANDS)
        )
    return path


def _neck_path(panel: Layout, strips: Strips) -> list[Point]:
    """Down the right side of the neck, across, and up its left side."""
    if not strips.sides or panel.neck is None:
        return []
    first, width = panel.neck.first, panel.gauge.width.value
    sides: dict[Hand, list[Point]] = {}
    for hand in HANDS:
        sign, strip = OUTWARDS[hand], strips.sides[hand]
        tops = _tops(panel, hand)
        path: list[Point] = []
        for row in range(first, panel.last + 1):
            change = strip.change("left" if hand == "right" else "right", row)
            after = tops[row] - sign * strip.count_after(row) * width
            once = change.once if not (row == panel.split and strip is strips.main) else 0
            del once
            path.append((after + sign * change.by * width, panel.top_of(row - 1)))
            path.append((after, panel.top_of(row)))
        sides[hand] = path
    return [*sides["right"][::-1], *sides["left"]]


def _tops(panel: Layout, hand: Hand) -> dict[int, float]:
    """Where the outer edge lies at the top of each row."""
    tops: dict[int, float] = {}
    path = outer_path(panel, hand)
    start = 2 if panel.foundation_height else 1
    for row in range(1, panel.last + 1):
        tops[row] = path[start + 2 * row - 1][0]
    return tops


def _openings(panel: Layout, strips: Strips) -> Iterator[tuple[Point, Point]]:
    """Slit and placket, as lines."""
    width = panel.gauge.width.value
    if panel.slit:
        x = strips.halves["left"].count * width
        yield (x, 0.0), (x, panel.top_of(panel.slit))
    if panel.neck and panel.split and panel.split < panel.neck.first:
        row = panel.split
        x = _tops(panel, "right")[row] - strips.sides["right"].count_after(row) * width
        yield (x, panel.top_of(row - 1)), (x, panel.top_of(panel.neck.first - 1))


def _simple(points: Sequence[Point]) -> tuple[Point, ...]:
    """Without points that lie on the line between their neighbours."""
    kept: list[Point] = []
    for point in points:
        if kept and math.dist(kept[-1], point) < 1e-6:
            continue
        while len(kept) > 1 and _is_straight(kept[-2], kept[-1], point):
            kept.pop()
        kept.append(point)
    return tuple(kept)


def _is_straight(a: Point, b: Point, c: Point) -> bool:
    turned = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0])
    onwards = (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1])
    return abs(turned) < 1e-6 and onwards > 0


def measures_of(panel: Layout, strips: Strips, edges: Sequence[OfferedEdge]) -> tuple[Measure, ...]:
    """What the whole numbers give: widths at both ends of each section, lengths, edges."""
    return (
        _width(
            panel, "width", 0, panel.begun.count, panel.gauge, panel.begun.because, _asked(panel)
        ),
        *_stage_widths(panel),
        _length(panel, "length", 1, panel.last, _length_asked(panel), at=1.0),
        *_lengths(panel),
        *_neck_widths(panel, strips),
        *_edges(panel, edges),
    )


def _asked(panel: Layout) -> float:
    choice, basis = panel.choice, panel.basis
    ease = basis.length(choice.ease, panel.where("ease"))
    return basis.length(choice.width, panel.where("width")) + ease


def _length_asked(panel: Layout) -> float | None:
    asked = panel.basis.length(panel.choice.length, panel.where("length"))
    return None if panel.cap else asked


def _across(panel: Layout, row: int) -> tuple[Point, Point]:
    """The line over the width at the top of a row."""
    y = panel.top_of(row)
    ends = []
    for hand in HANDS:
        tops = _tops(panel, hand)
        x = tops[row] if row else (panel.begun.count * panel.gauge.width.value) * (hand == "right")
        ends.append(_laid(panel)((x, y)))
    return ends[1], ends[0]


def _width(
    panel: Layout,
    name: str,
    row: int,
    count: int,
    gauge: Gauge,
    because: Because,
    wanted: float | None,
) -> Measure:
    got = gauge.width.times(count)
    return Measure(name, "width", got, wanted, count, because, _across(panel, row))


def _stage_widths(panel: Layout) -> Iterator[Measure]:
    for stage in panel.stages:
        if stage.worked is not None:
            name = f"width in {stage.name.removeprefix(f'{panel.name} ')}"
            found, own = stage.worked, stage.before * stage.gauge.width.value
            yield _width(panel, name, found.first, found.base, found.gauge, found.because, own)
        if stage.after != stage.before or stage.wanted is not None:
            told = stage.name.removeprefix(f"{panel.name} ")
            name = (
                f"width above the {told}" if told in ("armhole", "cap") else f"width after {told}"
            )
            row = _widest_row(stage)
            because = stage.because if stage.because.steps else _landed(stage)
            yield _width(panel, name, row, stage.after, stage.gauge, because, stage.wanted)


def _widest_row(stage: Stage) -> int:
    """The last row of the stage's shaping, before shoulders step in."""
    return max(stage.run.amounts, default=stage.last) if "armhole" in stage.name else stage.last


def _landed(stage: Stage) -> Because:
    if stage.wanted is None:
        return Because((Step("landed", stage.after, "stitches"),))
    return Because(because_landed(stage.wanted, stage.gauge.width.value, stage.after, ""))


def _length(
    panel: Layout, name: str, first: int, last: int, wanted: float | None, at: float
) -> Measure:
    """A length over rows, its line at a share of the width."""
    below = panel.foundation_height if first == 1 else 0.0
    length = panel.top_of(last) - panel.top_of(first - 1) + below
    rows = last - first + 1
    steps = (
        Step("row_gauge", 100 / panel.gauge.height.value, "rows per 10 cm"),
        Step("landed", rows, "rows"),
        Step("girth", length),
    )
    x = at * panel.begun.count * panel.gauge.width.value
    bottom = 0.0 if first == 1 else panel.top_of(first - 1)
    laid = _laid(panel)
    line = laid((x, bottom)), laid((x, panel.top_of(last)))
    off = panel.gauge.height.uncertainty * rows
    return Measure(name, "length", Measured(length, off), wanted, rows, Because(steps), line)


def _lengths(panel: Layout) -> Iterator[Measure]:
    choice, basis, last = panel.choice, panel.basis, panel.last
    for stage in panel.stages[: len(choice.section)]:
        told = stage.name.removeprefix(f"{panel.name} ")
        yield _length(panel, f"length of {told}", stage.first, stage.last, None, 0.0)
    if choice.armhole:
        wanted = basis.length(choice.armhole.depth, panel.where("armhole.depth"))
        yield _length(panel, "armhole depth", panel.armhole, last, wanted, 0.0)
    if choice.neck and panel.neck:
        wanted = basis.length(choice.neck.depth, panel.where("neck.depth"))
        yield _length(panel, "neck depth", panel.neck.first, last, wanted, 0.5)
    if choice.placket and panel.neck:
        wanted = basis.length(choice.placket, panel.where("placket"))
        yield _length(panel, "placket", panel.split, panel.neck.first - 1, wanted, 0.5)
    if choice.slit:
        wanted = basis.length(choice.slit, panel.where("slit"))
        yield _length(panel, "slit", 1, panel.slit, wanted, 0.5)
    if panel.cap:
        yield _length(panel, "cap height", panel.armhole, last, None, 0.0)
    if panel.short and choice.full_bust:
        wanted = basis.length(choice.full_bust.extra, panel.where("full_bust.extra"))
        rows, height = panel.short.rows, panel.gauge.height
        steps = (
            Step("row_gauge", 100 / height.value, "rows per 10 cm"),
            Step("landed", rows, "rows"),
        )
        yield Measure(
            "extra length over the bust", "length", height.times(rows), wanted, rows, Because(steps)
        )


def _neck_widths(panel: Layout, strips: Strips) -> Iterator[Measure]:
    choice = panel.choice.neck
    if choice is None or panel.neck is None:
        return
    width, count = panel.gauge.width, panel.neck.count
    wanted = panel.basis.length(choice.width, panel.where("neck.width"))
    because = Because(because_landed(wanted, width.value, count, ""))
    line = None
    if strips.sides:
        path = _neck_path(panel, strips)
        laid = _laid(panel)
        line = laid(path[-1]), laid(path[0])
    yield Measure("neck width", "width", width.times(count), wanted, count, because, line)
    shoulder = sum(panel.steps)
    told = Because((Step("landed", shoulder, "stitches"), Step("girth", shoulder * width.value)))
    yield Measure("shoulder width", "width", width.times(shoulder), None, shoulder, told)


def _edges(panel: Layout, edges: Sequence[OfferedEdge]) -> Iterator[Measure]:
    """Lengths along edges that something is joined to; of a cap, what it was made for too."""
    for edge in edges:
        if edge.name.endswith(("armhole", "neck", "cap")):
            wanted = panel.cap.wanted if panel.cap and edge.name == "cap" else None
            steps = () if wanted is None else (Step("wanted", wanted),)
            steps = (*steps, Step("length", edge.length.value))
            name = edge.name if edge.name.endswith("edge") else f"{edge.name} edge"
            yield Measure(name, "edge", edge.length, wanted, edge.count, Because(steps))
