"""A section whose girths on the way the author draws: a profile of its own, that may also turn.

Where it turns, from widening to narrowing or back, the section is divided: each part only widens or
only narrows, has a rhythm of its own, and its count at the turn is landed together with all others.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from frogless.design.pieces.tube import Plain, Section
from frogless.errors import InputError
from frogless.plan.basis import Basis

Points = tuple[tuple[float, float], ...]
"""(depth below the top of the section, girth), mm."""


@dataclass(frozen=True, slots=True)
class Part:
    """A part of a section that does not turn.

    Args:
        below: how far below the top of the section it begins, mm.
        points: what is drawn in it, depths from the top of the whole section.
    """

    section: Section
    key: str
    below: float = 0.0
    points: Points = ()


def parts(
    basis: Basis, section: Section, key: str, girths: tuple[float, float], length: float
) -> tuple[Part, ...]:
    """The parts of a section: itself, when it does not turn.

    Args:
        girths: wanted at its start and at its end, mm. length: mm.

    Raises:
        InputError: the depths drawn are not in order, or lie outside the section.
    """
    points = _drawn(basis, section, key, length)
    if not points:
        return (Part(section, key),)
    turns = _turns(girths, points)
    if not turns:
        return (Part(section, key, points=points),)
    found = []
    for i, (a, b) in enumerate(zip((None, *turns), (*turns, None), strict=True)):
        top = points[a][0] if a is not None else 0.0
        inside = points[0 if a is None else a + 1 : b]
        one = _part(section, i + 1, top, points[b] if b is not None else None)
        found.append(Part(one, key if b is None else f"{key}.through.{b + 1}", top, inside))
    return tuple(found)


def _drawn(basis: Basis, section: Section, key: str, length: float) -> Points:
    points = tuple(
        (
            basis.length(point.at, f"{key}.through.{i}.at"),
            basis.girth_wanted(point.girth, f"{key}.through.{i}.girth"),
        )
        for i, point in enumerate(section.through, 1)
    )
    above = 0.0
    for i, (at, _) in enumerate(points, 1):
        if not above < at < length:
            raise InputError(
                f"{basis.show(at)} does not lie between {basis.show(above)} and the end of the "
                f"section, {basis.show(length)} below its top; write the points from the top down",
                basis.place(f"{key}.through.{i}.at"),
            )
        above = at
    return points


def _turns(girths: tuple[float, float], points: Points) -> list[int]:
    """The points at which widening becomes narrowing, or the other way round."""
    values = [girths[0], *(girth for _, girth in points), girths[1]]
    turns, way = [], 0
    for i, (before, after) in enumerate(pairwise(values)):
        here = (after > before) - (after < before)
        if way and here and here != way:
            turns.append(i - 1)
        way = here or way
    return turns


def _part(section: Section, number: int, top: float, end: tuple[float, float] | None) -> Section:
    """One part as a section of its own; the last one ends as the whole does."""
    changes: dict[str, object] = {
        "name": f"{section.name} ({number})",
        "through": (),
        "plain": _plain_below(section.plain, top),
    }
    if end is not None:
        changes |= {
            "to": None,
            "length": f"{end[0] - top} mm",
            "girth": f"{end[1]} mm",
            "ease": "0 cm",
            "ease_allowed": None,
        }
    elif section.length is not None:
        changes["length"] = f"({section.length}) - {top} mm"
    return section.model_copy(update=changes)


def _plain_below(plain: Sequence[Plain], top: float) -> tuple[Plain, ...]:
    """Plain stretches counted from a depth."""
    return tuple(
        one.model_copy(
            update={
                "from_depth": f"({one.from_depth}) - {top} mm",
                "to_depth": f"({one.to_depth}) - {top} mm",
            }
        )
        for one in plain
    )
