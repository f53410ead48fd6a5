"""Where a piece passes the body: at which round, what the body asks for there, what it gets."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from frogless.because import Because, Step
from frogless.body.measurements import Measurement
from frogless.plan.basis import Basis
from frogless.plan.landing import because_landed, multiple_note
from frogless.plan.model import Landmark
from frogless.plan.sections import (
    DEFAULT_ALLOWED,
    LANDMARKS,
    Floor,
    Span,
    Target,
    above_waist,
    foundation_height,
)
from frogless.plan.tube import Tube

WAIST = "waist_girth"


@dataclass(frozen=True, slots=True)
class Mark:
    """A girth of the body that the piece passes.

    Args:
        depth: below the top edge, mm. round: the one that lies nearest to it, 0 the foundation.
        section: index of the section that has the round.
        ends_here: whether the section is shaped to just this girth.
    """

    body: Measurement
    depth: float
    round: int
    section: int
    ends_here: bool

    @property
    def key(self) -> str:
        """The key of the girth."""
        return self.body.key


def with_landmarks(basis: Basis, first: Target, spans: Sequence[Span]) -> tuple[Span, ...]:
    """The sections with what the landmarks they pass ask of them: knots of the profile, floors."""
    found = [_with_high_hip(basis, first, spans, i) for i in range(len(spans))]
    for mark in marks(basis, spans):
        if mark.ends_here:
            continue
        i, span = mark.section, found[mark.section]
        least = mark.body.value.value + least_ease(mark, first, spans)
        floor = Floor(mark.key, mark.round - span.rounds_above, least, mark.depth)
        found[i] = replace(span, floors=(*span.floors, floor))
    return tuple(found)


def least_ease(mark: Mark, first: Target, spans: Sequence[Span]) -> float:
    """The least ease at a landmark that is passed on the way, mm: none, or what the author allows.

    Author's word is the section's own; in a straight section that of the girth it carries on. A
    waist passed on the way may be as much under the body as any waist that is not spoken of.
    """
    carried = [s.target for s in spans[: mark.section + 1] if s.target]
    ease = (carried[-1] if carried else first).least_ease
    return ease - DEFAULT_ALLOWED if mark.key == WAIST else ease


def marks(basis: Basis, spans: Sequence[Span]) -> tuple[Mark, ...]:
    """The girths of the body that the piece passes, from the top down.

    Those that were not measured, or lie below the hem, are left out.
    """
    depths = [foundation_height(basis)]
    for span in spans:
        depths.extend(float(d) for d in span.depths()[1:])
    above = above_waist(basis)
    wanted = [(girth, basis.body.get(down)) for girth, down in LANDMARKS.values()]
    levels = [(girth, above + down.value.value) for girth, down in wanted if down is not None]
    if above:
        levels.append((WAIST, above))
    found = []
    for key, depth in levels:
        girth = basis.body.get(key)
        if girth is not None and depth <= max(depths[-1], spans[-1].end_wanted) + 1e-6:
            found.append(_mark(girth, depth, spans, depths))
    return tuple(sorted(found, key=lambda m: m.depth))


def _mark(girth: Measurement, depth: float, spans: Sequence[Span], depths: Sequence[float]) -> Mark:
    """The mark at the end of the section that ends there, else at the nearest round."""
    for i, span in enumerate(spans):
        if span.section.to in LANDMARKS and LANDMARKS[str(span.section.to)][0] == girth.key:
            last = span.rounds_above + span.rounds
            return Mark(girth, depth, last, i, ends_here=span.target is not None)
    nearest = min(range(len(depths)), key=lambda r: (round(abs(depths[r] - depth), 4), r))
    section = next(i for i, s in enumerate(spans) if nearest <= s.rounds_above + s.rounds)
    return Mark(girth, depth, nearest, section, ends_here=False)


def _with_high_hip(basis: Basis, first: Target, spans: Sequence[Span], i: int) -> Span:
    """The span with the high hip in its profile, when a section shaped to the hip passes it."""
    span = spans[i]
    girth, down = (basis.body.get(key) for key in LANDMARKS["high hip"])
    if span.section.to != "hip" or span.target is None or not (girth and down):
        return span
    depth = above_waist(basis) + down.value.value
    if not span.start_depth < depth < span.end_wanted:
        return span
    before = next((s.target for s in reversed(spans[:i]) if s.target), first)
    share = (depth - span.start_depth) / (span.end_wanted - span.start_depth)
    ease = before.ease + share * (span.target.ease - before.ease)
    least = span.target.least_ease
    # The profile does not dip on its way: an opening wider than the high hip stays as it is.
    no_dip = min(before.wanted, span.target.wanted)
    knot = (depth, max(girth.value.value + max(ease, least), no_dip))
    return replace(span, knots=(knot,))


def landmarks(tube: Tube, depths: Sequence[float]) -> tuple[Landmark, ...]:
    """The waist or top edge, the body's landmarks on the way and the hem, from the top down.

    Args:
        depths: worn depth after each round, the foundation first, mm.
    """
    passed = [_passed(tube, mark) for mark in marks(tube.basis, tube.spans)]
    waist = [] if any(m.key == WAIST for m in passed) else [_start(tube)]
    return (*waist, *passed, _hem(tube, depths))


def _start(tube: Tube) -> Landmark:
    """The first round, which lies at the waist."""
    first, count, gauge = tube.first, tube.counts[0], tube.spans[0].gauge
    body = tube.basis.body.get(WAIST)
    landed = because_landed(first.wanted, gauge.width.value, count, step_note(tube, 0))
    return Landmark(
        key=WAIST,
        depth=0.0,
        body=body.value if body else None,
        estimated=bool(body and body.estimated),
        wanted=first.wanted,
        low=first.low,
        high=first.high,
        rounds=0,
        count=count,
        garment=gauge.width.times(count),
        because=first.because.then(*landed),
    )


def _passed(tube: Tube, mark: Mark) -> Landmark:
    span, count = tube.spans[mark.section], tube.counts[mark.round]
    girth, aim = mark.body.value.value, span.target
    if mark.ends_here and aim is not None:
        wanted, low, high = aim.wanted, aim.low, aim.high
    else:
        profile = span.profile(tube.wanted_before(mark.section))
        wanted = float(profile[mark.round - span.rounds_above])
        low, high = girth + least_ease(mark, tube.first, tube.spans), float("inf")
    steps = (
        Step(mark.key, girth, "mm", mark.body.source, mark.body.estimated),
        Step("ease", wanted - girth),
        *because_landed(wanted, span.width, count, step_note(tube, mark.section + 1)),
        Step("depth", mark.depth),
    )
    return Landmark(
        key=mark.key,
        depth=mark.depth,
        body=mark.body.value,
        estimated=mark.body.estimated,
        wanted=wanted,
        low=low,
        high=high,
        rounds=mark.round,
        count=count,
        garment=span.gauge.width.times(count),
        because=Because(steps),
    )


def _hem(tube: Tube, depths: Sequence[float]) -> Landmark:
    last = len(tube.spans) - 1
    span, count, aim = tube.spans[last], tube.counts[tube.rounds], tube.spans[last].target
    wanted = aim.wanted if aim else tube.wanted_before(last)
    landed = because_landed(wanted, span.width, count, step_note(tube, last + 1))
    return Landmark(
        key="hem",
        depth=depths[tube.rounds],
        body=None,
        estimated=False,
        wanted=wanted,
        low=aim.low if aim else float("-inf"),
        high=aim.high if aim else float("inf"),
        rounds=tube.rounds,
        count=count,
        garment=span.gauge.width.times(count),
        because=(aim.because if aim else Because()).then(*landed),
    )


def step_note(tube: Tube, stop: int) -> str:
    """What the count at a stop was landed on: the edging's multiple, or steps of shaping points.

    Args:
        stop: 0 for the start, i + 1 for the end of section i.
    """
    last = max((i + 1 for i, s in enumerate(tube.spans) if s.target), default=0)
    if stop >= last and tube.multiple.of > 1:
        return multiple_note(tube.multiple.of, tube.multiple.offset)
    shaped = [s for s in tube.layout.shaped if s]
    if not shaped:
        return ""
    step = shaped[0].points * shaped[0].add
    even = all(count % step == 0 for count in tube.layout.counts)
    return multiple_note(step) if even else f"steps of {step}"
