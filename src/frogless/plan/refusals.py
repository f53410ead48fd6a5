"""Why a piece cannot be laid out: the requirement that fails, by how much, and what would help."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from frogless.errors import Impossible
from frogless.plan import conflicts, rate
from frogless.plan.basis import Basis
from frogless.plan.landing import Stop, exact_count, multiple_note
from frogless.plan.layout import (
    LEAST_GAP,
    POINTS,
    Layout,
    Multiple,
    choices,
    keeps_floors,
    land_all,
    layout_at,
    task_of,
)
from frogless.plan.rhythm.conflict import explain
from frogless.plan.sections import LANDMARKS, Floor, Span, Target

HALF_CM = 5.0
"""mm."""

UNMEASURED = 0.1
"""Stretch that is thought possible of a fabric that was not measured, as a ratio (own choice)."""


@dataclass(frozen=True, slots=True)
class Failed:
    """A piece that could not be laid out."""

    basis: Basis
    first: Target
    spans: tuple[Span, ...]
    multiple: Multiple

    def laid_out(
        self, spans: Sequence[Span] | None = None, multiple: Multiple | None = None
    ) -> Layout | None:
        """Any layout of the piece with other sections or another multiple."""
        tried = self.spans if spans is None else spans
        wish = self.multiple if multiple is None else multiple
        return next(
            (
                layout
                for points in choices(self.basis, tried, POINTS)
                if (layout := layout_at(self.basis, self.first, tried, points, wish))
            ),
            None,
        )

    def possible(self, changed: Span) -> bool:
        """Whether the piece could be laid out with one section changed, its multiple apart."""
        spans = [changed if s.key == changed.key else s for s in self.spans]
        return self.laid_out(spans, Multiple()) is not None


def why_not(basis: Basis, first: Target, spans: tuple[Span, ...], multiple: Multiple) -> Impossible:
    """The requirement that fails first: points, rate, multiple, rhythm, a landmark, ease."""
    failed = Failed(basis, first, spans, multiple)
    if refused := _points_refused(failed):
        return refused
    landed = [each for each in _landed(failed) if not _too_many(*each)]
    shorts = [_shortfall(failed, points, counts) for points, counts in landed]
    worst = [s for s in shorts if s is not None]
    if worst and len(worst) == len(shorts):
        return rate.refuse(basis, min(worst, key=lambda s: s.missing), failed.possible)
    if multiple.of > 1 and failed.laid_out(multiple=Multiple()):
        return _multiple_missed(failed)
    if refused := _rhythm_refused(failed):
        return refused
    bare = [replace(span, floors=()) for span in spans]
    if any(span.floors for span in spans) and failed.laid_out(bare, Multiple()):
        return _landmark_missed(failed)
    return _ease_missed(failed)


Landed = list[tuple[tuple[int, ...], tuple[int, ...]]]


def _landed(failed: Failed) -> Landed:
    """For each choice of points that has any, the nearest counts, the rate of shaping apart."""
    found = []
    for points in choices(failed.basis, failed.spans, POINTS):
        counts = land_all(failed.first, failed.spans, points, Multiple(), rate=False)
        if counts is not None:
            found.append((points, counts))
    return found


def _too_many(points: Sequence[int], counts: Sequence[int]) -> bool:
    return any(k * LEAST_GAP > min(counts) for k in points)


def _points_refused(failed: Failed) -> Impossible | None:
    """The refusal of more shaping points than the narrowest girth has room for, if they are."""
    aims = [(failed.first, failed.spans[0]), *((s.target, s) for s in failed.spans if s.target)]
    room = min(math.floor(aim.high / span.width) for aim, span in aims)
    tried = list(choices(failed.basis, failed.spans, POINTS))
    if not all(_too_many(points, (room,)) for points in tried):
        return None
    fewest = min(tried, key=max)
    span = failed.spans[fewest.index(max(fewest))]
    needed = max(fewest) * LEAST_GAP
    return Impossible(
        f'section "{span.section.name}": {max(fewest)} shaping points need {needed} stitches or '
        f"more, one in {LEAST_GAP} at the closest, and there are {room} at the narrowest",
        failed.basis.place(f"{span.key}.points"),
        short_stitches=needed - room,
        short=(needed - room) * span.width,
        ways_out=(f"at most {room // LEAST_GAP} shaping points",),
        requirements=("points", "girth"),
    )


def _shortfall(
    failed: Failed, points: Sequence[int], counts: Sequence[int]
) -> rate.Shortfall | None:
    """The first section whose rate of shaping cannot reach its girth."""
    for i, span in enumerate(failed.spans):
        if span.target is None:
            continue
        short = rate.Shortfall(span, counts[i], counts[i + 1], points[i], span.section.add)
        if short.missing > 0:
            return short
    return None


def _rhythm_refused(failed: Failed) -> Impossible | None:
    """The refusal of keys that leave no rhythm for counts that are within reach, if they do."""
    for points, counts in _landed(failed):
        wanted = failed.first.wanted
        for i, span in enumerate(failed.spans):
            before, after = counts[i : i + 2]
            if span.target is not None and before != after:
                task = task_of(failed.basis, span, wanted, before, after, points[i])
                conflict = explain(task)
                if conflict and conflicts.OF_KEYS & set(conflict.names):
                    return conflicts.refuse(failed.basis, span, task, conflict)
                wanted = span.target.wanted
    return None


def _multiple_missed(failed: Failed) -> Impossible:
    basis, multiple, last = failed.basis, failed.multiple, failed.spans[-1]
    aim = next((s.target for s in reversed(failed.spans) if s.target), failed.first)
    low, high = exact_count(max(aim.low, 1), last.width), exact_count(aim.high, last.width)
    return Impossible(
        f"the edging needs a {multiple_note(multiple.of, multiple.offset)}, and no such count that "
        f"the shaping can reach lies between {low:.1f} and {high:.1f} stitches, where the hem may "
        "be",
        basis.place("edging.correction_round"),
        ways_out=(
            'correction_round = "when needed": the edging\'s first round takes up the difference',
            f"a wider allowed ease at the hem ({multiple.of} stitches are "
            f"{basis.show(multiple.of * last.width)})",
            "another number of shaping points, or an edging with a smaller repeat",
        ),
        requirements=("multiple", "ease_allowed", "points"),
    )


def _landmark_missed(failed: Failed) -> Impossible:
    """A landmark on the way that no layout keeps: the nearest that can be had there."""
    span, floor = _hard_floor(failed)
    basis, name = failed.basis, _named(floor.key)
    had = max((_most_at(failed, span, floor, *one) for one in _landed(failed)), default=0)
    missing = floor.least - had * span.width
    body = basis.body.measurements[floor.key].value.value
    least = (
        "" if abs(floor.least - body) < 1 else f", of which {basis.show(floor.least)} are needed"
    )
    return Impossible(
        f'section "{span.section.name}": the body is {basis.show(body)} at the {name}, '
        f"{basis.show(floor.depth)} below the top edge{least}; {had} stitches "
        f"({basis.show(had * span.width)}) can be had there: {basis.show(missing)} short",
        basis.place(f"{span.key}.girth" if span.target else span.key),
        short_stitches=max(round(missing / span.width + 0.5), 1),
        short=missing,
        ways_out=tuple(_landmark_ways(failed, span, floor, missing)),
        requirements=("landmarks", "points", "rounds"),
    )


def _hard_floor(failed: Failed) -> tuple[Span, Floor]:
    """The floor without which the piece could be laid out; the last one when it takes several."""
    every = [(span, floor) for span in failed.spans for floor in span.floors]
    for span, floor in every:
        eased = replace(span, floors=tuple(f for f in span.floors if f is not floor))
        if failed.possible(eased):
            return span, floor
    return every[-1]


def _most_at(
    failed: Failed, span: Span, floor: Floor, points: Sequence[int], counts: Sequence[int]
) -> int:
    """The most stitches at a landmark on the way to the nearest counts."""
    i = [s.key for s in failed.spans].index(span.key)
    least = 0
    for stitches in range(max(counts[i], counts[i + 1]), 0, -1):
        asked = replace(floor, least=stitches * span.width)
        if keeps_floors(replace(span, floors=(asked,)), counts[i], counts[i + 1], points[i]):
            least = stitches
            break
    return least


def _landmark_ways(failed: Failed, span: Span, floor: Floor, missing: float) -> Iterator[str]:
    basis = failed.basis
    to = next((name for name, keys in LANDMARKS.items() if keys[0] == floor.key), None)
    if span.target is not None and span.section.add == 1:
        twice = replace(span, section=span.section.model_copy(update={"add": 2}))
        if failed.possible(twice):
            yield "add = 2, so that it widens sooner"
    if to is not None and span.section.to != to:
        yield f'a section of its own that ends with to = "{to}", with its ease'
    yield f"a start of {basis.show(floor.least)} or more, gathered by the waist"
    stretch = UNMEASURED if basis.stretch is None else basis.stretch
    if missing <= (floor.least - missing) * stretch:
        less = basis.show(-math.ceil(missing / HALF_CM) * HALF_CM)
        yield f'if the skirt is to lie close there: ease = "{less}" in what comes before'


def _named(key: str) -> str:
    return key.removesuffix("_girth").replace("_", " ")


def _ease_missed(failed: Failed) -> Impossible:
    """No whole counts inside the allowed girths: the first stop that has none, or the steps."""
    basis, spans = failed.basis, failed.spans
    aims = [(failed.first, spans[0], "start"), *((s.target, s, s.key) for s in spans if s.target)]
    for aim, span, key in aims:
        if not Stop(aim.wanted, aim.low, aim.high, span.width).counts():
            return Impossible(
                f"no whole number of stitches lies between {basis.show(aim.low)} and "
                f"{basis.show(aim.high)}: one stitch is {span.width:.1f} mm",
                basis.place(f"{key}.ease_allowed"),
                ways_out=(
                    f"allow at least {span.width:.1f} mm between the least and the most ease",
                ),
                requirements=("ease_allowed",),
            )
    tried = list(choices(basis, spans, POINTS))
    points = min(tried, key=max, default=(0,) * len(spans))
    span = max(zip(spans, points, strict=True), key=lambda pair: pair[1])[0]
    step = max(points) * span.section.add
    return Impossible(
        f'section "{span.section.name}": with {max(points)} shaping points the counts move in '
        f"steps of {step} stitches ({basis.show(step * span.width)}), and no such steps meet every "
        "girth within its allowed ease",
        basis.place(f"{span.key}.points"),
        ways_out=(
            'points = "auto", or fewer shaping points',
            "a wider ease_allowed at the start or at the end of the sections",
        ),
        requirements=("points", "ease_allowed"),
    )
