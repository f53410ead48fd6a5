"""Counts and rhythms of a whole piece, decided together: the best of every choice of shaping points.

The order (DESIGN 5): allowed ease and usable counts are hard; of all layouts whose greatest stray lies
within the indifference of the best one, the fewest clauses, then the least stray, then the least sum of
squares, then the fewest shaping points.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import product

from frogless.errors import Impossible, InputError
from frogless.plan import rate, rhythm
from frogless.plan.basis import Basis
from frogless.plan.landing import Stop, exact_count, land_together, multiple_note
from frogless.plan.model import Option
from frogless.plan.sections import Span, Target

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
    """One shaped section of a layout: its points, the rhythm taken, and all that were looked at."""

    points: int
    add: int
    chosen: rhythm.Candidate
    looked_at: tuple[rhythm.Candidate, ...]
    indifference: float


@dataclass(frozen=True, slots=True)
class Layout:
    """Counts at the start and after each section, and for each shaped section how it gets there."""

    counts: tuple[int, ...]
    shaped: tuple[Shaped | None, ...]

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
    basis: Basis, first: Target, spans: Sequence[Span], multiple: Multiple, *, strict: bool
) -> Layout | None:
    """The best layout; None when none exists and the multiple is to blame and need not be met (`strict` off).

    Raises:
        Impossible: the rate of shaping, the allowed ease or the multiple cannot be met.
    """
    # Girths come before rhythms: only when no number of points reaches the nearest counts may the counts
    # give way to the rate, within the allowed ease.
    for give_way in (False, True):
        for usual in (_usual(first, spans), rate.POINTS):
            found = [
                layout
                for points in _choices(basis, spans, usual)
                if (layout := _layout(basis, first, spans, points, multiple, rate=give_way))
            ]
            if found:
                return _best(found)
    if not strict and multiple.of > 1:
        return None
    raise _why_not(basis, first, spans, multiple)


def _usual(first: Target, spans: Sequence[Span]) -> tuple[int, ...]:
    """Points a planner tries first: two suit a straight skirt only (common practice)."""
    wanted, straight = first.wanted, True
    for span in spans:
        if span.target is not None:
            rise = (span.target.wanted - wanted) / (span.rounds * span.height)
            straight &= abs(rise) / (2 * math.pi) <= STRAIGHT
            wanted = span.target.wanted
    return rate.USUAL if straight else tuple(k for k in rate.USUAL if k > 2)


def _best(found: Sequence[Layout]) -> Layout:
    least = min(layout.stray for layout in found)
    give = max((s.indifference for layout in found for s in layout.shaped if s), default=0.0)
    return min((f for f in found if f.stray <= least + give + 1e-9), key=Layout.key)


def _choices(
    basis: Basis, spans: Sequence[Span], points_: Sequence[int]
) -> Iterator[tuple[int, ...]]:
    """Points for every section (0: straight). Sections that leave it open share one number, so lines run through."""
    at_side = basis.design.work.join_at != "centre back"
    free = [k for k in points_ if not (at_side and k == 2)]
    open_: list[int] | None = None
    fixed: list[list[int] | None] = []
    for span in spans:
        asked = span.section.points
        if span.target is None:
            fixed.append([0])
        elif isinstance(asked, int):
            fixed.append([asked])
        else:
            mine = free if asked == "auto" else _checked(basis, span, asked)
            open_ = mine if open_ is None else [k for k in open_ if k in mine] or mine
            fixed.append(None)
    for shared in open_ or [0]:
        yield from product(*[[shared] if f is None else f for f in fixed])


def _checked(basis: Basis, span: Span, asked: list[int]) -> list[int]:
    if not asked or any(k < 1 for k in asked):
        raise InputError(
            "write the shaping points as whole numbers above zero, such as [4, 8]",
            basis.place(f"{span.key}.points"),
        )
    return asked


def _layout(
    basis: Basis,
    first: Target,
    spans: Sequence[Span],
    points: tuple[int, ...],
    multiple: Multiple,
    *,
    rate: bool = True,
) -> Layout | None:
    """The layout for one choice of points; `rate`: land only on counts that the rate of shaping reaches."""
    counts = _land(_stops(first, spans, points, multiple, rate=rate), max(points))
    if counts is None or any(k * LEAST_GAP > min(counts) for k in points):
        return None
    shaped: list[Shaped | None] = []
    wanted = first.wanted
    for i, span in enumerate(spans):
        one = _shape(basis, span, wanted, counts[i], counts[i + 1], points[i])
        if span.target is not None and one is None and counts[i] != counts[i + 1]:
            return None
        shaped.append(one)
        wanted = span.target.wanted if span.target else wanted
    return Layout(counts, tuple(shaped))


def _land(stops: Sequence[Stop], points: int) -> tuple[int, ...] | None:
    """The nearest counts; or counts that every shaping point divides evenly, if they are about as near.

    Even counts make all stretches between shaping points alike, which is easier to read and to work. About
    as near: no girth is further off than the furthest of the nearest counts, and a stitch.
    """
    nearest = land_together(stops)
    if nearest is None or points <= 1:
        return nearest
    even = land_together(
        [replace(s, multiple=math.lcm(s.multiple, points)) if s.offset == 0 else s for s in stops]
    )
    if even is None or _furthest(stops, even) > _furthest(stops, nearest) + stops[0].width:
        return nearest
    return even


def _furthest(stops: Sequence[Stop], counts: Sequence[int]) -> float:
    """The greatest distance of a count's girth from the wanted one, mm; straight sections carry theirs on."""
    return max(
        stop.cost(n)[0]
        for i, (stop, n) in enumerate(zip(stops, counts, strict=True))
        if i == 0 or stop.step
    )


def _stops(
    first: Target,
    spans: Sequence[Span],
    points: Sequence[int],
    multiple: Multiple,
    *,
    rate: bool = True,
) -> list[Stop]:
    """The girths to land on. A straight section carries its count on; the last one has to meet the multiple."""
    only = multiple if all(s.target is None for s in spans) else Multiple()
    stops = [
        Stop(
            first.wanted, first.low, first.high, spans[0].width,
            multiple=only.of, offset=only.offset, fuller=first.fuller,
        )
    ]  # fmt: skip
    last_shaped = max((i for i, s in enumerate(spans) if s.target is not None), default=-1)
    for i, span in enumerate(spans):
        here = multiple if i >= last_shaped >= 0 else Multiple()
        if span.target is None:
            stops.append(Stop(0, 0, 0, span.width, step=0))
            continue
        step = max(points[i], 1) * span.section.add
        most = step * (span.rounds // _every(span)) if rate else None
        stops.append(
            Stop(
                span.target.wanted, span.target.low, span.target.high, span.width, step, most,
                here.of, here.offset, span.target.fuller,
            )
        )  # fmt: skip
    return stops


def _every(span: Span) -> int:
    return span.section.every if isinstance(span.section.every, int) else 1


def stretch_of(span: Span, wanted: float, before: int, after: int, step: int) -> rhythm.Stretch:
    """What the rhythm of a section has to follow: from `before` to `after` stitches in steps of `step`."""
    sign = 1 if after >= before else -1
    return rhythm.Stretch(
        span.profile(wanted),
        before * span.width,
        sign * step * span.width,
        abs(after - before) // step,
        span.floor(),
    )


def _shape(
    basis: Basis, span: Span, wanted: float, before: int, after: int, points: int
) -> Shaped | None:
    if span.target is None or before == after:
        return None
    stretch = stretch_of(span, wanted, before, after, points * span.section.add)
    every = None if span.section.every == "auto" else span.section.every
    found = rhythm.candidates(stretch, every)
    if not found:
        return None
    give = indifference(basis, span, after)
    return Shaped(points, span.section.add, rhythm.choose(found, give), tuple(found), give)


def indifference(basis: Basis, span: Span, count: int) -> float:
    """What the tape cannot see, mm: the girth's standard uncertainty, at least a stitch; or what the author set."""
    if span.section.indifference is not None:
        return basis.length(span.section.indifference, f"{span.key}.indifference")
    return max(count * span.gauge.width.uncertainty, span.width)


def smoother(
    span: Span, wanted: float, before: int, after: int, shaped: Shaped
) -> tuple[Option, ...]:
    """Rhythms that stray less than the one taken, for the author to choose: same points, or half as many."""
    options = [
        _option(span, wanted, before, after, shaped.points, c)
        for c in shaped.looked_at
        if c.stray < shaped.chosen.stray
    ]
    half = shaped.points // 2
    change = abs(after - before)
    if half >= 2 and half % 2 == 0 and change % (half * shaped.add) == 0:
        found = rhythm.candidates(stretch_of(span, wanted, before, after, half * shaped.add))
        if found:
            best = min(found, key=lambda c: (c.stray, c.key()))
            if best.stray < shaped.chosen.stray:
                options.append(_option(span, wanted, before, after, half, best))
    return tuple(sorted(options, key=lambda o: abs(o.stray))[:2])


def _option(
    span: Span, wanted: float, before: int, after: int, points: int, candidate: rhythm.Candidate
) -> Option:
    add = span.section.add
    stretch = stretch_of(span, wanted, before, after, points * add)
    off = rhythm.girths(stretch, candidate.rhythm.rounds) - stretch.wanted
    i = int(abs(off).argmax())
    return Option(points, add, candidate.rhythm, float(off[i]), float(span.depths()[i]))


def chosen_option(span: Span, wanted: float, before: int, after: int, shaped: Shaped) -> Option:
    """The rhythm taken, with where it strays most."""
    return _option(span, wanted, before, after, shaped.points, shaped.chosen)


def _why_not(basis: Basis, first: Target, spans: Sequence[Span], multiple: Multiple) -> Impossible:
    """The requirement that fails first: the rate of shaping, then the multiple, then the allowed ease."""
    choices = list(_choices(basis, spans, rate.POINTS))
    shorts = [s for points in choices if (s := _shortfall(first, spans, points)) is not None]
    if shorts and len(shorts) == len(choices):
        return rate.refuse(basis, min(shorts, key=lambda s: s.missing))
    if multiple.of > 1 and any(
        _layout(basis, first, spans, points, Multiple()) for points in choices
    ):
        return _multiple_missed(basis, spans, multiple)
    bare = [replace(span, floors=()) for span in spans]
    if any(_layout(basis, first, bare, points, Multiple()) for points in choices):
        return _high_hip_missed(basis, spans)
    return _ease_missed(basis, first, spans, choices[0])


def _high_hip_missed(basis: Basis, spans: Sequence[Span]) -> Impossible:
    span = next(s for s in spans if s.floors)
    depth, least = span.floors[0]
    return Impossible(
        f'section "{span.section.name}": no rhythm makes {basis.show(least)} at the high hip, '
        f"{basis.show(depth)} below the top edge, and keeps the other girths",
        basis.place(f"{span.key}.points"),
        ways_out=(
            "more shaping points, or add = 2, so that the skirt widens sooner",
            "more ease at the start, gathered by the waist",
            "a smaller least ease at the hip, if the fabric stretches",
        ),
    )


def _shortfall(
    first: Target, spans: Sequence[Span], points: Sequence[int]
) -> rate.Shortfall | None:
    counts = _land(_stops(first, spans, points, Multiple(), rate=False), max(points))
    if counts is None:
        return None
    for i, span in enumerate(spans):
        if span.target is None:
            continue
        short = rate.Shortfall(
            span, counts[i], counts[i + 1], points[i], span.section.add, _every(span)
        )
        if short.missing > 0:
            return short
    return None


def _multiple_missed(basis: Basis, spans: Sequence[Span], multiple: Multiple) -> Impossible:
    last = spans[-1]
    aim = next(s.target for s in reversed(spans) if s.target is not None)
    low, high = exact_count(max(aim.low, 1), last.width), exact_count(aim.high, last.width)
    return Impossible(
        f"the edging needs a {multiple_note(multiple.of, multiple.offset)}, and no such count that the "
        f"shaping can reach lies between {low:.1f} and {high:.1f} stitches, where the hem may be",
        basis.place("edging.pattern"),
        ways_out=(
            'correction_round = "when needed": the edging\'s first round takes up the difference',
            f"a wider allowed ease at the hem ({multiple.of} stitches are "
            f"{basis.show(multiple.of * last.width)})",
            "another number of shaping points, or an edging with a smaller repeat",
        ),
    )


def _ease_missed(
    basis: Basis, first: Target, spans: Sequence[Span], points: Sequence[int]
) -> Impossible:
    """No whole counts inside the allowed girths: name the first stop that has none, or the steps between."""
    aims = [(first, spans[0], "start"), *((s.target, s, s.key) for s in spans if s.target)]
    for aim, span, key in aims:
        if aim is not None and not Stop(aim.wanted, aim.low, aim.high, span.width).counts():
            return Impossible(
                f"no whole number of stitches lies between {basis.show(aim.low)} and {basis.show(aim.high)}: "
                f"one stitch is {span.width:.1f} mm",
                basis.place(f"{key}.ease_allowed"),
                ways_out=(
                    f"allow at least {span.width:.1f} mm between the least and the most ease",
                ),
            )
    step = max(points)
    width = spans[0].width
    return Impossible(
        f"with {step} shaping points the counts move in steps of {step} stitches "
        f"({basis.show(step * width)}), and no such steps meet every girth within its allowed ease",
        basis.place("section"),
        ways_out=(
            'points = "auto", or fewer shaping points',
            "a wider ease_allowed at the start or at the end of the sections",
        ),
    )
