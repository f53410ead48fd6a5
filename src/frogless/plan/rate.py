"""When the shaping does not fit into the rounds there are: by how much, and what would make it fit."""

from __future__ import annotations

from dataclasses import dataclass

from frogless.errors import Impossible
from frogless.plan.basis import Basis
from frogless.plan.sections import Span

# Symmetric numbers of shaping points: 2 for a straight skirt and 4 to 8 for a flared one are usual (common
# practice); more are taken only when those cannot reach, as in circles.
USUAL = (2, 4, 6, 8)
POINTS = (*USUAL, 10, 12, 16, 24)


@dataclass(frozen=True, slots=True)
class Shortfall:
    """A section whose rate of shaping cannot reach its girth.

    Args:
        before, needed: counts at its start and wanted at its end.
        points, add, every: the shaping asked for; every = 1 when the planner was free.
    """

    span: Span
    before: int
    needed: int
    points: int
    add: int
    every: int

    @property
    def change(self) -> int:
        """Stitches to add (or take away)."""
        return abs(self.needed - self.before)

    @property
    def shaping_rounds(self) -> int:
        """Rounds that can be shaped."""
        return self.span.rounds // self.every

    @property
    def room(self) -> int:
        """Stitches that can be added in them."""
        return self.shaping_rounds * self.points * self.add

    @property
    def missing(self) -> int:
        """Stitches short."""
        return self.change - self.room


def refuse(basis: Basis, short: Shortfall) -> Impossible:
    """The refusal: the requirement, the shortfall in stitches and mm, and the ways out with their numbers."""
    span, sign = short.span, 1 if short.needed > short.before else -1
    reached = short.before + sign * short.room
    rhythm = "every round" if short.every == 1 else f"every {_ordinal(short.every)} round"
    missing = short.missing * span.width
    message = (
        f'section "{span.section.name}": {short.points} shaping points of {short.add} stitch'
        f"{'es' if short.add > 1 else ''} {rhythm} give {short.shaping_rounds} shaping rounds in "
        f"{span.rounds} and take {short.before} stitches to {reached} ({basis.show(reached * span.width)}); "
        f"{short.needed} ({basis.show(short.needed * span.width)}) are wanted: "
        f"{short.missing} stitches, {basis.show(missing)} short"
    )
    return Impossible(
        message,
        basis.place(f"{span.key}.points"),
        short_stitches=short.missing,
        short=missing,
        ways_out=ways_out(basis, short),
    )


def ways_out(basis: Basis, short: Shortfall) -> tuple[str, ...]:
    """Changes that would make the section possible, least first."""
    span, change, rounds = short.span, short.change, short.span.rounds
    ways = []
    enough = enough_points(change, short.shaping_rounds * short.add)
    if enough:
        room = enough * short.add * short.shaping_rounds
        least = -(-change // max(short.shaping_rounds * short.add, 1))
        ways.append(
            f"points = {enough}: at this rhythm at least {least} are needed, {enough} are symmetric "
            f"(room for {room} stitches, {change} are needed)"
        )
    if short.add == 1 and short.points * 2 * short.shaping_rounds >= change:
        ways.append(f"add = 2: two stitches at each of the {short.points} points")
    if short.every > 1 and short.points * short.add * rounds >= change:
        ways.append(
            f'every = "auto": shape more often ({-(-change // (short.points * short.add))} of the '
            f"{rounds} rounds)"
        )
    longer = -(-change // (short.points * short.add)) * short.every
    ways.append(
        f"a longer section: {longer} rounds ({basis.show(longer * span.height)}) instead of {rounds} "
        f"({basis.show(rounds * span.height)})"
    )
    if short.needed > short.before:
        wider = short.needed - short.room
        ways.append(
            f"a wider start: {wider} stitches ({basis.show(wider * span.width)}), gathered by elastic or a cord"
        )
    return tuple(ways)


def enough_points(change: int, per_point: int) -> int | None:
    """The least symmetric number of points whose room holds `change` stitches; None if none of the usual do."""
    return next((k for k in POINTS if per_point and k * per_point >= change), None)


def _ordinal(n: int) -> str:
    return {2: "2nd", 3: "3rd"}.get(n, f"{n}th")
