"""The rhythm of a section as it is told, and the ones beside it that an author could choose."""

from __future__ import annotations

from frogless.plan import rhythm
from frogless.plan.layout import Shaped, stretch_of
from frogless.plan.model import Option
from frogless.plan.sections import Span

SEEN = 5.0
"""mm less that a rhythm has to stray to be worth a choice: lengths are shown to half a cm."""


def chosen_option(span: Span, wanted: float, before: int, after: int, shaped: Shaped) -> Option:
    """The rhythm taken, with where it strays most."""
    return _option(span, wanted, before, after, shaped.points, shaped.chosen)


def smoother(
    span: Span, wanted: float, before: int, after: int, shaped: Shaped
) -> tuple[Option, ...]:
    """Rhythms that stray visibly less than the one taken; at most two.

    With the same points, or with half as many where the design allows them.
    """
    most = shaped.chosen.stray - SEEN
    options = [
        _option(span, wanted, before, after, shaped.points, c)
        for c in shaped.looked_at
        if c.stray <= most
    ]
    half = shaped.points // 2
    divides = half >= 2 and half % 2 == 0 and abs(after - before) % (half * shaped.add) == 0
    if divides and allows_points(span, half) and span.section.every == "auto":
        found = rhythm.candidates(stretch_of(span, wanted, before, after, half * shaped.add))
        best = min(found, key=lambda c: (c.stray, c.key()), default=None)
        if best is not None and best.stray <= most:
            options.append(_option(span, wanted, before, after, half, best))
    return tuple(sorted(options, key=lambda o: round(abs(o.stray), rhythm.GRAIN))[:2])


def allows_points(span: Span, points: int) -> bool:
    """Whether the design lets a section have so many points."""
    asked = span.section.points
    if isinstance(asked, int):
        return points == asked
    return points % 2 == 0 if asked == "auto" else points in asked


def _option(
    span: Span, wanted: float, before: int, after: int, points: int, candidate: rhythm.Candidate
) -> Option:
    add = span.section.add
    stretch = stretch_of(span, wanted, before, after, points * add)
    off = rhythm.girths(stretch, candidate.rhythm.rounds) - stretch.wanted
    i = int(abs(off).argmax())
    return Option(
        points=points,
        add=add,
        rhythm=candidate.rhythm,
        stray=float(off[i]),
        stray_at=float(span.depths()[i]),
    )
