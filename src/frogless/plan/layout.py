"""Counts and rhythms of a whole piece, decided together: the best of every choice of points.

The order: allowed ease and usable counts are hard; then girths that the tape cannot tell from the
nearest ones; of all such layouts whose greatest stray lies within the indifference of the best one,
the fewest clauses, then the least stray, then the least sum of
squares, then the fewest shaping points.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import product

import numpy as np

from frogless.plan.basis import Basis
from frogless.plan.landing import SLACK, Rise, Room, Stop, land_together
from frogless.plan.rhythm.amounts import room
from frogless.plan.rhythm.engine import Solution, Task, on_right_side, solve
from frogless.plan.sections import Span, Target

# Symmetric numbers of shaping points: 2 for a straight skirt and 4 to 8 for a flared one are usual
# (common practice); more are taken only when those cannot reach, as in circles.
USUAL = (2, 4, 6, 8)
POINTS = (*USUAL, 10, 12, 16, 24)
# One increase in every third stitch is about the most that lies well (common practice).
LEAST_GAP = 3
# An A-line widens by about a tenth of a full circle; what widens no more counts as straight.
STRAIGHT = 0.1


@dataclass(frozen=True, slots=True)
class Multiple:
    """What the hem's count has to be a multiple of, for the edging's sake."""

    of: int = 1
    offset: int = 0


@dataclass(frozen=True, slots=True)
class Shaped:
    """One shaped section of a layout: its points, and the rhythm taken.

    Args:
        task: what the rhythm had to follow and to keep.
        asked: the same, keeping only what every rhythm has to.
    """

    points: int
    add: int
    chosen: Solution
    task: Task
    asked: Task

    @property
    def indifference(self) -> float:
        """Strays so near to the least one are as good, mm."""
        return self.task.indifference

    @property
    def floor(self) -> tuple[float, ...]:
        """What the rhythm keeps, as in `SectionPlan`."""
        if self.task.floor is None:
            return ()
        return tuple(np.maximum(np.asarray(self.task.floor, np.float64), 0.0).tolist())


@dataclass(frozen=True, slots=True)
class Layout:
    """Counts at the start and after each section, and for each shaped one how it gets there.

    Args:
        off: the greatest distance of a count's girth from the wanted one, mm.
        begins: what each section begins with, where base rounds change the count between them.
    """

    counts: tuple[int, ...]
    shaped: tuple[Shaped | None, ...]
    off: float = 0.0
    begins: tuple[int, ...] = ()

    def before(self, i: int) -> int:
        """The count that a section begins with."""
        return self.begins[i] if self.begins else self.counts[i]

    @property
    def stray(self) -> float:
        """Greatest stray of any section, mm."""
        return max((s.chosen.stray for s in self.shaped if s), default=0.0)

    def key(self) -> tuple[int, float, float, int]:
        """What layouts are compared by."""
        shaped = [s for s in self.shaped if s]
        return (
            sum(s.chosen.rhythm.clause_count for s in shaped),
            self.stray,
            sum(s.chosen.squares for s in shaped),
            max((s.points for s in shaped), default=0),
        )


def lay_out(
    basis: Basis, first: Target, spans: Sequence[Span], multiple: Multiple
) -> Layout | None:
    """The best layout; None when there is none."""
    # Girths come before rhythms: only when no usual number of points reaches the nearest counts may
    # the counts give way to the rate of shaping and to landmarks on the way, within the allowed
    # ease; and only when even that does not do are more points taken than are usual.
    *few, many = _free_points(first, spans)
    for tier in (few, [many]):
        for give_way, free in product((False, True), tier):
            found = [
                layout
                for points in choices(basis, spans, free)
                if (layout := layout_at(basis, first, spans, points, multiple, rate=give_way))
            ]
            if found:
                return _best(found)
    return None


def _free_points(first: Target, spans: Sequence[Span]) -> tuple[tuple[int, ...], ...]:
    """What sections that leave their points open may take, in the order in which it is tried.

    First what the other sections have, so that the lines run through.
    """
    fixed = [s.section.points for s in spans if s.target and isinstance(s.section.points, int)]
    given = tuple(dict.fromkeys(fixed))
    return (*((given,) if given else ()), _usual(first, spans), POINTS)


def _usual(first: Target, spans: Sequence[Span]) -> tuple[int, ...]:
    """Points a planner tries first: two suit a straight skirt only (common practice)."""
    wanted, straight = first.wanted, True
    for span in spans:
        if span.target is not None:
            rise = (span.target.wanted - wanted) / (span.rounds * span.height)
            straight &= abs(rise) / (2 * math.pi) <= STRAIGHT
            wanted = span.target.wanted
    return USUAL if straight else tuple(k for k in USUAL if k > 2)


def _best(found: Sequence[Layout]) -> Layout:
    give = max((s.indifference for layout in found for s in layout.shaped if s), default=0.0)
    off = min(layout.off for layout in found) + give + 1e-9
    near = [layout for layout in found if layout.off <= off]
    stray = min(layout.stray for layout in near) + give + 1e-9
    return min((f for f in near if f.stray <= stray), key=Layout.key)


def choices(basis: Basis, spans: Sequence[Span], free: Sequence[int]) -> Iterator[tuple[int, ...]]:
    """Points for every section (0: straight).

    Sections that leave it open share one number where they can, so that lines run through.
    """
    at_side = basis.work.join_at != "centre back"
    auto = [k for k in free if not (at_side and k == 2)]
    asked = [_asked(span, auto) for span in spans]
    if not all(asked):
        return
    open_ = [each for each in asked if len(each) > 1]
    shared = [k for k in (open_[0] if open_ else []) if all(k in each for each in open_)]
    if not shared:
        yield from product(*asked)
        return
    for k in shared:
        yield tuple(k if len(each) > 1 else each[0] for each in asked)


def _asked(span: Span, auto: Sequence[int]) -> list[int]:
    """The numbers of points that a section may have."""
    points = span.section.points
    if span.target is None:
        return [0]
    if isinstance(points, int):
        return [points]
    return list(auto) if points == "auto" else list(dict.fromkeys(points))


def layout_at(
    basis: Basis,
    first: Target,
    spans: Sequence[Span],
    points: tuple[int, ...],
    multiple: Multiple,
    *,
    rate: bool = True,
) -> Layout | None:
    """The layout for one choice of points; None when there is none.

    Args:
        rate: land only on counts that the rate of shaping reaches.
    """
    counts = land_all(first, spans, points, multiple, rate=rate)
    if counts is None or any(k * LEAST_GAP > min(counts) for k in points):
        return None
    shaped: list[Shaped | None] = []
    wanted = first.wanted
    for i, span in enumerate(spans):
        if not keeps_floors(span, counts[i], counts[i + 1], points[i]):
            return None
        one = _shape(basis, span, wanted, counts[i], counts[i + 1], points[i])
        if one is None and counts[i] != counts[i + 1]:
            return None
        shaped.append(one)
        wanted = span.target.wanted if span.target else wanted
    return Layout(counts, tuple(shaped), _furthest(_stops(first, spans, points, multiple), counts))


def land_all(
    first: Target,
    spans: Sequence[Span],
    points: Sequence[int],
    multiple: Multiple,
    *,
    rate: bool = True,
) -> tuple[int, ...] | None:
    """The nearest counts; or counts that every shaping point divides evenly, if about as near.

    Even counts make all stretches between shaping points alike, which is easier to read and to
    work. About as near: no girth is further off than the furthest of the nearest counts, and a
    stitch.
    """
    stops = _stops(first, spans, points, multiple, rate=rate)
    nearest, most = land_together(stops), max(points)
    if nearest is None or most <= 1:
        return nearest
    even = land_together(
        [replace(s, multiple=math.lcm(s.multiple, most)) if s.offset == 0 else s for s in stops]
    )
    give = stops[0].width + SLACK
    if even is None or _furthest(stops, even) > _furthest(stops, nearest) + give:
        return nearest
    return even


def _furthest(stops: Sequence[Stop], counts: Sequence[int]) -> float:
    """The greatest distance of a girth from the wanted one, mm; straight sections have none."""
    return max(
        stop.cost(n)[0]
        for i, (stop, n) in enumerate(zip(stops, counts, strict=True))
        if i == 0 or stop.rise.step
    )


def _stops(
    first: Target,
    spans: Sequence[Span],
    points: Sequence[int],
    multiple: Multiple,
    *,
    rate: bool = False,
) -> list[Stop]:
    """The girths to land on. A straight section carries its count on.

    The multiple binds from the end of the last shaped section on: there the hem's count is made.
    """
    last_shaped = max((i for i, s in enumerate(spans) if s.target is not None), default=-1)
    stops = [_stop(first, spans[0], Rise(), multiple if last_shaped < 0 else Multiple())]
    for i, span in enumerate(spans):
        rise = _rise(span, points[i], rate=rate)
        if span.target is None:
            stops.append(Stop(0, 0, 0, span.width, rise))
        else:
            here = multiple if i == last_shaped else Multiple()
            stops.append(_stop(span.target, span, rise, here))
    return stops


def _stop(aim: Target, span: Span, rise: Rise, multiple: Multiple) -> Stop:
    # Gores have to be alike as soon as there are any; an edging with stitches over binds alone.
    alike = math.lcm(aim.multiple, multiple.of) if multiple.offset == 0 else multiple.of
    return Stop(
        wanted=aim.wanted,
        low=aim.low,
        high=aim.high,
        width=span.width,
        rise=rise,
        multiple=alike,
        offset=multiple.offset,
        fuller=aim.fuller,
    )


def _rise(span: Span, points: int, *, rate: bool) -> Rise:
    step = points * span.section.add if span.target is not None else 0
    if not rate:
        return Rise(step)
    floors = tuple((f.round, math.ceil(f.least / span.width - 1e-6)) for f in span.floors)
    return Rise(step, span.rounds, span.every, floors, room_in(span))


def room_in(span: Span) -> Room:
    """How many shapings a section has room for, by any round and after it."""
    may, gap = span.may_shape, span.section.least_gap
    every = None if span.section.every == "auto" else span.every
    backwards = [False, *may[:0:-1]]
    after = room(backwards, gap, every)[::-1]
    return Room(tuple(room(may, gap, every)), tuple(after))


def keeps_floors(span: Span, before: int, after: int, points: int) -> bool:
    """Whether some choice of shaping rounds keeps every landmark of the section in its girth."""
    return _rise(span, points, rate=True).allows(before, after)


def task_of(basis: Basis, span: Span, wanted: float, before: int, after: int, points: int) -> Task:
    """What the rhythm of a section has to follow: from `before` to `after` at so many points."""
    step, section = points * span.section.add, span.section
    right_side = on_right_side(span.rounds, 1 + span.rounds_above % 2)
    return Task(
        wanted=span.profile(wanted),
        before=before * span.width,
        step=(1 if after >= before else -1) * step * span.width,
        shapings=abs(after - before) // step,
        indifference=indifference(basis, span, after),
        clauses=section.clauses,
        allowed=right_side if span.on_right_side else None,
        forbidden=span.plain,
        least_gap=section.least_gap,
        every=None if section.every == "auto" else section.every,
        floor=span.floor(),
        pair=2 if span.on_right_side else 1,
    )


def _shape(
    basis: Basis, span: Span, wanted: float, before: int, after: int, points: int
) -> Shaped | None:
    if span.target is None or before == after:
        return None
    asked = task_of(basis, span, wanted, before, after, points)
    line = span.body_floor()
    # A rhythm stays above the body all the way where one can, else above its landmarks.
    tasks = [asked] if line is None else [replace(asked, floor=line), asked]
    for task in tasks:
        if chosen := solve(task):
            return Shaped(points, span.section.add, chosen, task, asked)
    return None


def indifference(basis: Basis, span: Span, count: int) -> float:
    """What the tape cannot see, mm: the girth's standard uncertainty, and at least a stitch.

    Or what the author set.
    """
    if span.section.indifference is not None:
        return basis.length(span.section.indifference, f"{span.key}.indifference")
    return max(count * span.gauge.width.uncertainty, span.width)
