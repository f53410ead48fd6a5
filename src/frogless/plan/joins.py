"""Joins between pieces: two edges of the same length, stitch on stitch or one eased over the other."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import reduce

from frogless.because import Because, Step
from frogless.design.document import JoinChoice
from frogless.errors import Impossible, InputError, near_names
from frogless.plan.basis import Basis
from frogless.plan.model import JoinPlan, Remark
from frogless.plan.pieces.made import Made, OfferedEdge, edge_named
from frogless.rows.nodes import ROW_ENDS, Base, Seam
from frogless.rows.spread import even_spread
from frogless.units import Measured

# An edge eased in by more than this puckers visibly (own choice: as an edging may differ from its
# hem by one part in thirty).
PUCKERS = 0.03


@dataclass(frozen=True, slots=True)
class Joined:
    """The joins of a design: their plans, the seams that carry them out, and remarks."""

    plans: tuple[JoinPlan, ...] = ()
    seams: tuple[Seam, ...] = ()
    remarks: tuple[Remark, ...] = ()


@dataclass(frozen=True, slots=True)
class Side:
    """One side of a join: the edges that follow one another along it."""

    name: str
    edges: tuple[OfferedEdge, ...]

    @property
    def bases(self) -> tuple[Base, ...]:
        """All stretches, one after the other."""
        return tuple(base for edge in self.edges for base in edge.bases)

    @property
    def count(self) -> int:
        """Stitches and row ends."""
        return sum(sum(edge.places) for edge in self.edges)

    @property
    def length(self) -> Measured:
        """mm."""
        return reduce(Measured.plus, (edge.length for edge in self.edges))

    @property
    def noun(self) -> str:
        """What its places are."""
        ends = {base.edge in ROW_ENDS for base in self.bases}
        return "row ends" if ends == {True} else "stitches" if ends == {False} else "places"


def plan_joins(basis: Basis, choices: Sequence[JoinChoice], made: Mapping[str, Made]) -> Joined:
    """Every join of a design.

    Args:
        made: the pieces, by the names they have in the design.

    Raises:
        InputError: an edge or the stitch is not known, or the edge has gaps.
        Impossible: two edges differ by more than the join allows.
    """
    found = [_join(basis, choice, f"join.{i}", made) for i, choice in enumerate(choices, 1)]
    return Joined(
        tuple(plan for plan, _ in found),
        tuple(seam for _, seam in found),
        tuple(r for plan, _ in found for r in _remarks(basis, plan)),
    )


def seam_along(
    name: str,
    stitch: str,
    first: tuple[Base, ...],
    second: tuple[Base, ...],
    counts: tuple[int, int],
) -> Seam:
    """A seam of as many stitches as the finer of two edges has places, even over the other.

    Args:
        counts: places of the first and of the second edge.

    >>> edge = (Base("front", "right_edge"),), (Base("back", "left_edge"),)
    >>> seam_along("side", "slip_stitch", *edge, (3, 4)).spread
    (1, 1, 2)
    """
    if counts[1] > counts[0]:
        first, second, counts = second, first, counts[::-1]
    return Seam(name, stitch, first, second, counts[0], counts[1], even_spread(*counts))


def _join(
    basis: Basis, choice: JoinChoice, key: str, made: Mapping[str, Made]
) -> tuple[JoinPlan, Seam]:
    _check_stitch(basis, choice, key)
    first = _side(basis, choice.first, f"{key}.first", made)
    second = _side(basis, choice.second, f"{key}.second", made)
    limit = basis.length(choice.limit, f"{key}.limit")
    off = abs(first.length.value - second.length.value)
    if off > limit + 1e-6:
        raise _too_unlike(basis, choice, key, first, second)
    steps = (
        Step("length", first.length.value, note=first.name),
        Step("length", second.length.value, note=second.name),
        Step("off", first.length.value - second.length.value),
    )
    plan = JoinPlan(
        choice.name,
        first.name,
        second.name,
        first.length,
        second.length,
        limit,
        Because(steps),
    )
    counts = first.count, second.count
    return plan, seam_along(choice.name, choice.stitch, first.bases, second.bases, counts)


def _side(basis: Basis, names: Sequence[str], key: str, made: Mapping[str, Made]) -> Side:
    place = basis.place(key)
    edges = tuple(edge_named(name, made, place) for name in names)
    for name, edge in zip(names, edges, strict=True):
        if any(edge.bridges):
            raise InputError(
                f'"{name}" has gaps that are bridged with chains by what goes on from it; begin a '
                "piece on it instead of joining it",
                place,
            )
    return Side(" and ".join(" ".join(name.split(".", 1)) for name in names), edges)


def _check_stitch(basis: Basis, choice: JoinChoice, key: str) -> None:
    place = basis.place(f"{key}.stitch")
    if choice.stitch not in basis.stitches:
        near = near_names(choice.stitch, basis.stitches)
        raise InputError(f'unknown stitch "{choice.stitch}"{near}', place)
    stitch = basis.stitches[choice.stitch]
    if stitch.kind != "stitch" or stitch.stands_on != 1:
        raise InputError(
            f'"{choice.stitch}" joins nothing; accepted are slip_stitch, single_crochet and '
            "the taller stitches",
            place,
        )


def _too_unlike(
    basis: Basis, choice: JoinChoice, key: str, first: Side, second: Side
) -> Impossible:
    longer, shorter = sorted((first, second), key=lambda side: -side.length.value)
    off = longer.length.value - shorter.length.value
    limit = basis.length(choice.limit, f"{key}.limit")
    fewer, more = (_places(side, off - limit) for side in (longer, shorter))
    return Impossible(
        f"{_told(basis, longer)} is to be joined to {_told(basis, shorter)}: they differ by "
        f"{basis.show(off)}, and {basis.show(limit)} is allowed",
        basis.place(key),
        short_stitches=fewer,
        short=off - limit,
        ways_out=(
            f"{fewer} {longer.noun} fewer along {longer.name}",
            f"{more} {shorter.noun} more along {shorter.name}",
            f'limit = "{math.ceil(off)} mm", with the longer edge eased in',
        ),
    )


def _told(basis: Basis, side: Side) -> str:
    return f"{side.name} ({basis.show(side.length.value)}, {side.count} {side.noun})"


def _places(side: Side, length: float) -> int:
    """Places of a side that make up a length, rounded up."""
    return math.ceil(length * side.count / side.length.value - 1e-9)


def _remarks(basis: Basis, plan: JoinPlan) -> Iterator[Remark]:
    a, b = plan.first_length.value, plan.second_length.value
    if abs(a - b) > PUCKERS * min(a, b):
        name, longer = (plan.first, a) if a > b else (plan.second, b)
        yield Remark(
            "eased_in",
            f"{plan.name}: {name} ({basis.show(longer)}) is longer than what it is joined to "
            f"({basis.show(min(a, b))}); ease it in evenly, and pin it first",
            serious=False,
        )
