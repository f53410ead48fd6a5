"""Where a piece passes the body: at which round, what the body asks for there, what it gets."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from frogless.because import Because, Step
from frogless.body.measurements import Measurement
from frogless.errors import Impossible
from frogless.plan.basis import Basis
from frogless.plan.landing import multiple_note
from frogless.plan.model import Landmark, Remark
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
TOP_EDGE = "top_edge"


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


def with_landmarks(
    basis: Basis, first: Target, spans: Sequence[Span], *, bare: bool = False
) -> tuple[Span, ...]:
    """The sections with what the landmarks they pass ask of them: knots of the profile, floors.

    Args:
        bare: landmarks on the way keep the body and not the least ease that is asked for there.
    """
    line = _body_line(basis, first, spans)
    found = [
        replace(_with_high_hip(basis, first, spans, i), body=line if span.target else ())
        for i, span in enumerate(spans)
    ]
    for mark in marks(basis, spans):
        if mark.ends_here:
            continue
        i, span = mark.section, found[mark.section]
        girth = mark.body.value.value
        least = girth + least_ease(mark, first, spans)
        asked = max(girth + asked_ease(mark, first, spans), least)
        kept = least if bare else asked
        floor = Floor(mark.key, mark.round - span.rounds_above, kept, mark.depth, asked)
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


def asked_ease(mark: Mark, first: Target, spans: Sequence[Span]) -> float:
    """The least ease the author asks for at a landmark on the way to the hip, mm.

    By its depth between the start's and the hip's, and never above the hip's own, so that a
    gathered start asks for nothing there. Elsewhere no less than `least_ease`.
    """
    span = spans[mark.section]
    if not _to_hip(span) or span.target is None:
        return least_ease(mark, first, spans)
    before = _target_before(first, spans, mark.section)
    least = before.asked_ease + _share(span, mark.depth) * (
        span.target.asked_ease - before.asked_ease
    )
    return min(least, span.target.asked_ease)


def _body_line(
    basis: Basis, first: Target, spans: Sequence[Span]
) -> tuple[tuple[float, float], ...]:
    """(depth, girth) of the body's landmarks from the waist down, with the least ease, mm."""
    waist = basis.body.get(WAIST)
    levels = [
        (m.depth, m.body.value.value + least_ease(m, first, spans))
        for m in marks(basis, spans)
        if m.key != WAIST
    ]
    if waist is None or not levels:
        return ()
    return ((above_waist(basis), waist.value.value + first.least_ease), *levels)


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
    """The span with the high hip in its profile, when a section shaped to the hip passes it.

    A profile that the author draws stays as it is drawn.
    """
    span = spans[i]
    girth, down = (basis.body.get(key) for key in LANDMARKS["high hip"])
    if not _to_hip(span) or span.target is None or span.knots or not (girth and down):
        return span
    depth = above_waist(basis) + down.value.value
    if not span.start_depth < depth < span.end_wanted:
        return span
    before = _target_before(first, spans, i)
    ease = before.ease + _share(span, depth) * (span.target.ease - before.ease)
    least = span.target.least_ease
    # The profile does not dip on its way: an opening wider than the high hip stays as it is.
    no_dip = min(before.wanted, span.target.wanted)
    knot = (depth, max(girth.value.value + max(ease, least), no_dip))
    return replace(span, knots=(knot,))


def _to_hip(span: Span) -> bool:
    return span.section.to == "hip"


def _target_before(first: Target, spans: Sequence[Span], i: int) -> Target:
    return next((s.target for s in reversed(spans[:i]) if s.target), first)


def _share(span: Span, depth: float) -> float:
    """How far down a section a depth lies, 0 at its start."""
    return (depth - span.start_depth) / (span.end_wanted - span.start_depth)


def landmarks(tube: Tube, depths: Sequence[float]) -> tuple[Landmark, ...]:
    """The waist or top edge, the body's landmarks on the way and the hem, from the top down.

    Args:
        depths: worn depth after each round, the foundation first, mm.
    """
    passed = [_passed(tube, mark) for mark in marks(tube.basis, tube.spans)]
    key = TOP_EDGE if any(m.key == WAIST for m in passed) else WAIST
    return (_start(tube, key), *passed, _hem(tube, depths))


def _start(tube: Tube, key: str) -> Landmark:
    """The first round, which lies at the waist or is an edge above it."""
    first, count = tube.first, tube.counts[0]
    body = tube.basis.body.get(WAIST) if key == WAIST else None
    landed = tube.because_landed(0, first.wanted, step_note(tube, 0))
    return Landmark(
        key=key,
        depth=0.0,
        body=body.value if body else None,
        estimated=bool(body and body.estimated),
        wanted=first.wanted,
        low=first.low,
        high=first.high,
        rounds=0,
        count=count,
        garment=tube.girth(0),
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
        low, high = max(_kept(span, mark), _unfloored(tube, mark)), float("inf")
    steps = (
        Step(mark.key, girth, "mm", mark.body.source, mark.body.estimated),
        Step("ease", wanted - girth),
        *tube.because_landed(mark.round, wanted, step_note(tube, mark.section + 1)),
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
        garment=tube.girth(mark.round),
        because=Because(steps),
    )


def _kept(span: Span, mark: Mark) -> float:
    """The least girth that is kept at a landmark on the way, mm."""
    return max((f.least for f in span.floors if f.key == mark.key), default=float("-inf"))


def _unfloored(tube: Tube, mark: Mark) -> float:
    """The least girth at a landmark that no rhythm was held to: in a pattern, and below one."""
    if not any(span.worked for span in tube.spans[: mark.section + 1]):
        return float("-inf")
    return mark.body.value.value + least_ease(mark, tube.first, tube.spans)


def check_passed(tube: Tube) -> None:
    """Landmarks that a stitch pattern passes, or what is below one, have room for the body.

    Raises:
        Impossible: one has not.
    """
    for mark in marks(tube.basis, tube.spans):
        least, girth = _unfloored(tube, mark), tube.girth(mark.round).value
        if mark.ends_here or girth >= least - 0.05:
            continue
        basis, span = tube.basis, tube.spans[mark.section]
        name = mark.key.removesuffix("_girth").replace("_", " ")
        raise Impossible(
            f'section "{span.section.name}" passes the {name}, which needs {basis.show(least)}, with '
            f"{basis.show(girth)}",
            basis.place(span.key),
            short_stitches=max(round((least - girth) / span.width + 0.5), 1),
            short=least - girth,
            ways_out=(
                "a plain section that ends there, before the pattern begins",
                "a girth that has room for it, with an ease of its own",
            ),
            requirements=("landmarks",),
        )


def less_than_asked(tube: Tube) -> Iterator[Remark]:
    """What is said of landmarks on the way with less than the least ease asked for there."""
    basis = tube.basis
    for span in tube.spans:
        for floor in span.floors:
            garment = tube.girth(span.rounds_above + floor.round)
            if garment.value >= floor.asked - 1e-6:
                continue
            body = basis.body.measurements[floor.key].value.value
            name = floor.key.removesuffix("_girth").replace("_", " ")
            yield Remark(
                "ease_on_the_way",
                f"the {name} gets {basis.show(garment.value - body)} of ease where at least "
                f"{basis.show(floor.asked - body)} "
                "is asked for, and the gauge leaves that girth "
                f"uncertain by {basis.show(garment.interval()[1] - garment.value)} either way (95 %); no rhythm of the "
                f'section "{span.section.name}" gives more: widen sooner, or start wider',
            )


def _hem(tube: Tube, depths: Sequence[float]) -> Landmark:
    last = len(tube.spans) - 1
    count, aim = tube.counts[tube.rounds], tube.spans[last].target
    wanted = aim.wanted if aim else tube.wanted_before(last)
    landed = tube.because_landed(tube.rounds, wanted, step_note(tube, last + 1))
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
        garment=tube.girth(tube.rounds),
        because=(aim.because if aim else Because()).then(*landed),
    )


def step_note(tube: Tube, stop: int) -> str:
    """What the count at a stop was landed on: the edging's multiple, or steps of shaping points.

    Args:
        stop: 0 for the start, i + 1 for the end of section i.
    """
    own = tube.spans[max(stop - 1, 0)].worked
    if own is not None:
        return (
            "" if own.columns else multiple_note(own.pattern.way.multiple, own.pattern.way.offset)
        )
    last = max((i + 1 for i, s in enumerate(tube.spans) if s.target), default=0)
    if stop >= last and tube.multiple.of > 1:
        return multiple_note(tube.multiple.of, tube.multiple.offset)
    shaped = [s for s in tube.layout.shaped if s]
    if not shaped:
        return ""
    step = shaped[0].points * shaped[0].add
    even = all(count % step == 0 for count in tube.layout.counts)
    return multiple_note(step) if even else f"steps of {step}"
