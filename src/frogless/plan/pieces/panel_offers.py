"""The edges that a panel offers to borders, sleeves and joins, with their lengths."""

from __future__ import annotations

from collections.abc import Iterator
from functools import reduce

from frogless.plan.pieces.made import OfferedEdge
from frogless.plan.pieces.panel_edges import HANDS, Hand, along, edge_length
from frogless.plan.pieces.panel_layout import Layout
from frogless.plan.pieces.panel_rows import Strip
from frogless.plan.pieces.panel_strips import Strips
from frogless.rows.nodes import Base, Edge
from frogless.units import Measured

Part = tuple[Base, int]


def offered(panel: Layout, strips: Strips) -> tuple[OfferedEdge, ...]:
    """Every edge, in the order met round the piece with the right side facing."""
    found = [
        _hem(panel, strips),
        *_outer(panel, strips, "right"),
        *_top(panel, strips),
        *_outer(panel, strips, "left"),
        *_slit(panel, strips),
    ]
    if panel.cap:
        found.append(_cap(panel, strips))
    return tuple(edge for edge in found if sum(edge.places))


def _edge(panel: Layout, name: str, parts: list[Part], length: Measured) -> OfferedEdge:
    kept = [(base, places) for base, places in parts if places]
    bases, places = tuple(b for b, _ in kept), tuple(p for _, p in kept)
    return OfferedEdge(name, bases, places, length, panel.gauge)


def _hem(panel: Layout, strips: Strips) -> OfferedEdge:
    """Met from the left, with the piece turned upside down."""
    halves = strips.halves
    begun = [halves["left"], halves["right"]] if halves else [strips.main]
    parts: list[Part] = [(Base(strip.name, "foundation"), strip.count) for strip in begun]
    name = "hem" if panel.choice.worked == "upwards" else "top"
    return _edge(panel, name, parts, panel.gauge.width.times(panel.begun.count))


def _ends(strips: Strips, panel: Layout, hand: Hand, first: int, last: int) -> list[Part]:
    """The ends of rows along an outer edge, in the order met."""
    parts = []
    for strip, low, high in strips.outer(hand, panel.split):
        bottom, top = max(low, first), min(high, last)
        if top >= bottom:
            parts.append(ends_of(strip, hand, bottom, top, foundation=first <= 1))
    return parts if hand == "right" else parts[::-1]


def ends_of(strip: Strip, hand: Hand, first: int, last: int, *, foundation: bool = False) -> Part:
    """The ends of some rows of a strip: upwards at the right edge, downwards at the left.

    A foundation stitch is a row with ends; a chain has none.
    """
    edge: Edge = "right_edge" if hand == "right" else "left_edge"
    is_row = int(bool(strip.begun_with) and strip.begun_with != "chain")
    below = is_row if not (foundation and first == strip.first) else 0
    count = last - first + 1 + (is_row - below)
    start = first - strip.first + below
    return Base(strip.name, edge, first=start, count=count, reverse=hand == "left"), count


def tops_of(strip: Strip, row: int, first: int, count: int) -> Part:
    """Stitches of a row, counted from its right edge, met from right to left.

    Row 0 and all even rows run from left to right.
    """
    number, there = strip.number(row), strip.count_after(row)
    if row % 2:
        return Base(strip.name, "row", row=number, first=first, count=count), count
    start = there - first - count
    return Base(strip.name, "row", row=number, first=start, count=count, reverse=True), count


def _step(panel: Layout, strips: Strips, hand: Hand, row: int) -> list[Part]:
    """What an outer edge leaves unworked in a row: stitches of the row below it."""
    once = panel.lines[hand].rows[row].once if row in panel.lines[hand].rows else 0
    if not once:
        return []
    for strip, low, high in strips.outer(hand, panel.split):
        if low <= row - 1 <= high or (row == 1 and low == 1):
            there = strip.count_after(row - 1)
            return [tops_of(strip, row - 1, 0 if hand == "right" else there - once, once)]
    return []


def _outer(panel: Layout, strips: Strips, hand: Hand) -> Iterator[OfferedEdge]:
    """Side and armhole of one edge; with a half neck there, the neck too."""
    top = panel.last
    neck = panel.neck
    half = panel.choice.neck is not None and panel.choice.neck.at == hand
    if half and neck is not None:
        top = neck.first - 1
    cut = panel.armhole if _has_armhole(panel, hand) or panel.cap else 0
    sides = [_side(panel, strips, hand, cut - 1 if cut else top)]
    if cut and not panel.cap:
        sides.append(_armhole(panel, strips, hand, cut))
    if half and neck is not None:
        sides.append(_half_neck(panel, strips, hand, neck.first))
    yield from sides if hand == "right" else sides[::-1]


def _has_armhole(panel: Layout, hand: Hand) -> bool:
    choice = panel.choice.armhole
    return choice is not None and choice.edges in ("both", hand)


def _side(panel: Layout, strips: Strips, hand: Hand, last: int) -> OfferedEdge:
    stages = [s for s in panel.stages if s.first <= last]
    line = panel.lines[hand]
    lengths = [
        _upright(panel, s.first, min(s.last, last))
        if s.worked
        else edge_length(line, s.first, min(s.last, last), s.gauge.width, s.gauge.height)
        for s in stages
    ]
    length = reduce(Measured.plus, lengths, Measured(panel.foundation_height))
    return _edge(panel, f"{hand} side", _ends(strips, panel, hand, 1, last), length)


def _upright(panel: Layout, first: int, last: int) -> Measured:
    """Length of an edge along rows that differ in height, none of them shaped."""
    off = sum(gauge.height.uncertainty for gauge in panel.gauges[first - 1 : last])
    return Measured(panel.top_of(last) - panel.top_of(first - 1), off)


def _in_pattern(panel: Layout, first: int, last: int) -> bool:
    return any(s.worked and s.last >= first and s.first <= last for s in panel.stages)


def armhole_end(panel: Layout, hand: Hand) -> int:
    """The last row whose end belongs to an armhole: above it lie the steps of the shoulder."""
    return panel.last - max(len(panel.steps) - 1, 0) if _has_armhole(panel, hand) else panel.last


def _armhole(panel: Layout, strips: Strips, hand: Hand, first: int) -> OfferedEdge:
    last = armhole_end(panel, hand)
    parts = _step(panel, strips, hand, first), _ends(strips, panel, hand, first, last)
    length = edge_length(panel.lines[hand], first, last, panel.gauge.width, panel.gauge.height)
    if _in_pattern(panel, first, last):  # an armhole that is not cut in
        length = _upright(panel, first, last)
    run = [*parts[0], *parts[1]] if hand == "right" else [*parts[1], *parts[0]]
    return _edge(panel, f"{hand} armhole", run, length)


def _half_neck(panel: Layout, strips: Strips, hand: Hand, first: int) -> OfferedEdge:
    step = _step(panel, strips, hand, first)
    ends = _ends(strips, panel, hand, first, panel.last)
    length = edge_length(
        panel.lines[hand], first, panel.last, panel.gauge.width, panel.gauge.height
    )
    return _edge(panel, "neck", [*step, *ends] if hand == "right" else [*ends, *step], length)


def _top(panel: Layout, strips: Strips) -> Iterator[OfferedEdge]:
    if panel.neck is None:
        count = strips.main.count_after(panel.last)
        parts = [tops_of(strips.main, panel.last, 0, count)]
        if not panel.cap:
            name = "top" if panel.choice.worked == "upwards" else "hem"
            yield _edge(panel, name, parts, panel.gauges[-1].width.times(count))
        return
    if strips.sides:
        yield _shoulder(panel, strips, "right")
        yield from _neck(panel, strips)
        yield _shoulder(panel, strips, "left")
    else:
        at = panel.choice.neck.at if panel.choice.neck else "left"
        yield _shoulder(panel, strips, "right" if at == "left" else "left")


def _shoulder(panel: Layout, strips: Strips, hand: Hand) -> OfferedEdge:
    """Its steps from right to left: the tip is at the armhole, and may lie below a shallow neck."""
    parts: list[Part] = []
    number = len(panel.steps)
    for i, step in enumerate(panel.steps):
        row = panel.last - number + 1 + i
        strip = next(s for s, low, high in strips.outer(hand, panel.split) if low <= row <= high)
        there = strip.count_after(row)
        at = 0 if hand == "right" else there - step
        parts.append(tops_of(strip, row, at, step))
    length = along(
        [(number if number > 1 else 0, sum(panel.steps))], panel.gauge.width, panel.gauge.height
    )
    return _edge(panel, f"{hand} shoulder", parts if hand == "right" else parts[::-1], length)


def _neck(panel: Layout, strips: Strips) -> Iterator[OfferedEdge]:
    """The neck from the right shoulder to the left, and the two edges of a placket below it."""
    neck, split, last = panel.neckline, panel.split, panel.last
    right, left = strips.sides["right"], strips.sides["left"]
    down, up = ends_of(right, "left", neck.first, last), ends_of(left, "right", neck.first, last)
    if split == neck.first:
        middle = [tops_of(strips.main, split - 1, strips.middle[1], strips.middle[0])]
    else:
        middle = list(_above_placket(right, left, neck.first))
    yield _edge(panel, "neck", [down, *middle, up], neck_length(panel))
    if split < neck.first:
        high = panel.gauge.height.times(neck.first - split)
        for hand, strip, edge in (("right", right, HANDS[1]), ("left", left, HANDS[0])):
            part = ends_of(strip, edge, split, neck.first - 1)
            yield _edge(panel, f"{hand} placket edge", [part], high)


def _above_placket(right: Strip, left: Strip, first: int) -> Iterator[Part]:
    """What both sides leave at once where the neck begins above a placket."""
    for strip, edge in ((right, HANDS[1]), (left, HANDS[0])):
        once = strip.change(edge, first).once
        if once:
            there = strip.count_after(first - 1)
            yield tops_of(strip, first - 1, there - once if edge == "left" else 0, once)


def neck_length(panel: Layout) -> Measured:
    """The edge of the neck, mm: what is left at once, and one or two slopes."""
    neck = panel.neckline
    rows = panel.last - neck.first + 1
    sloping = sum(leg.last - leg.first + 1 for leg in panel.neck_run.legs)
    slopes = [(leg.last - leg.first + 1, leg.stitches) for leg in panel.neck_run.legs]
    half = [(rows - sloping, 0), *slopes]
    halves = 2 if panel.split else 1
    return along([(0, neck.once), *half * halves], panel.gauge.width, panel.gauge.height)


def _slit(panel: Layout, strips: Strips) -> Iterator[OfferedEdge]:
    length = panel.gauge.height.times(panel.slit)
    for hand, strip in strips.halves.items():
        edge: Hand = "left" if hand == "right" else "right"
        part = ends_of(strip, edge, 1, panel.slit, foundation=True)
        yield _edge(panel, f"{hand} slit edge", [part], length)


def _cap(panel: Layout, strips: Strips) -> OfferedEdge:
    """From underarm to underarm: up the right edge, along the top, down the left."""
    cap, first, last = panel.sleeve_cap, panel.armhole, panel.last
    parts = [
        *_step(panel, strips, "right", first),
        *_ends(strips, panel, "right", first, last),
        tops_of(strips.main, last, 0, cap.top),
        *_ends(strips, panel, "left", first, last),
        *_step(panel, strips, "left", first),
    ]
    return _edge(panel, "cap", parts, cap.length)
