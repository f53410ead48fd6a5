"""When the shaping does not fit into the rounds there are: by how much, and what would help."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from frogless.errors import Impossible
from frogless.plan.basis import Basis
from frogless.plan.layout import POINTS, room_in
from frogless.plan.rhythm.amounts import room
from frogless.plan.sections import LANDMARKS, Span

# Whether the piece could be laid out if one section were another.
Possible = Callable[[Span], bool]

# A section more than this many times as long is another skirt, no way out (own choice).
LONGER = 1.5


@dataclass(frozen=True, slots=True)
class Shortfall:
    """A section whose rate of shaping cannot reach its girth.

    Args:
        before, needed: counts at its start and wanted at its end.
        points: shaping points. add: stitches changed at each.
    """

    span: Span
    before: int
    needed: int
    points: int
    add: int

    @property
    def change(self) -> int:
        """Stitches to add (or take away)."""
        return abs(self.needed - self.before)

    @property
    def shaping_rounds(self) -> int:
        """Rounds that can be shaped, the first of the section among them."""
        return room_in(self.span).by[-1]

    @property
    def room(self) -> int:
        """Stitches that can be added in them."""
        return self.shaping_rounds * self.points * self.add

    @property
    def missing(self) -> int:
        """Stitches short."""
        return self.change - self.room

    @property
    def reached(self) -> int:
        """The stitches that can be had at its end."""
        return self.before + self.sign * self.room

    @property
    def rounds_needed(self) -> int:
        """Rounds that would be enough at this rhythm."""
        shapings = -(-self.change // (self.points * self.add))
        return _rounds_for(self.span, shapings)

    @property
    def sign(self) -> int:
        """1 when the section widens, −1 when it narrows."""
        return 1 if self.needed > self.before else -1


def refuse(basis: Basis, short: Shortfall, possible: Possible) -> Impossible:
    """The refusal: the requirement, the shortfall in stitches and mm, the ways out in numbers."""
    span, reached = short.span, short.reached
    missing = short.missing * span.width
    times = _rhythm(span)
    message = (
        f'section "{span.section.name}": {_counted(short.points, "shaping point")} of '
        f"{_counted(short.add, 'stitch', 'stitches')} {times} give"
        f"{'s' if short.points == 1 else ''} {_counted(short.shaping_rounds, 'shaping round')} in "
        f"{span.rounds} and take{'s' if short.points == 1 else ''} "
        f"{short.before} stitches to {reached} ({basis.show(reached * span.width)}); "
        f"{short.needed} ({basis.show(short.needed * span.width)}) are wanted: "
        f"{_counted(short.missing, 'stitch', 'stitches')}, {basis.show(missing)} short"
    )
    return Impossible(
        message,
        basis.place(f"{span.key}.points"),
        short_stitches=short.missing,
        short=missing,
        ways_out=tuple(ways_out(basis, short, possible)),
        requirements=("points", "add", *_slowed_by(span), "rounds", "girth"),
    )


def ways_out(basis: Basis, short: Shortfall, possible: Possible) -> Iterator[str]:
    """Changes that would make the section possible, least first.

    Those of points, stitches and rhythm have been tried; the others are told in numbers.
    """
    span, section = short.span, short.span.section
    if enough := enough_points(short, possible):
        room = enough * short.add * short.shaping_rounds
        least = -(-short.change // (short.shaping_rounds * short.add))
        yield (
            f"points = {enough}: at this rhythm at least {least} are needed, {enough} are "
            f"symmetric (room for {room} stitches, {short.change} are needed)"
        )
    if section.add == 1 and possible(_with(span, add=2)):
        yield f"add = 2: two stitches at each of the {short.points} points"
    if span.every > 1 and possible(_with(span, every="auto")):
        shapings = -(-short.change // (short.points * short.add))
        yield f'every = "auto": shape more often ({shapings} of the {span.rounds} rounds)'
    if span.on_right_side and possible(_with(span, shape_on="any")):
        yield 'shape_on = "any": on wrong-side rounds too'
    closer = (g for g in range(section.least_gap - 1, 0, -1) if possible(_with(span, least_gap=g)))
    if gap := next(closer, None):
        yield f"least_gap = {gap}: shaping rounds nearer to each other"
    if span.plain and possible(replace(span, plain=())):
        yield "no plain stretches, or shorter ones"
    if short.rounds_needed <= span.rounds * LONGER:
        yield _longer(basis, short)
    if short.sign > 0:
        yield _wider(basis, short)
    if short.sign < 0 or section.to not in LANDMARKS:
        had, wanted = (basis.show(n * span.width) for n in (short.reached, short.needed))
        yield f"a girth of {had} where it ends instead of {wanted}"


def enough_points(short: Shortfall, possible: Possible) -> int | None:
    """The least symmetric number of points with which the piece can be laid out."""
    per_point = short.shaping_rounds * short.add
    enough = [k for k in POINTS if k > short.points and k * per_point >= short.change]
    return next((k for k in enough if possible(_with(short.span, points=k))), None)


def _with(span: Span, **changes: object) -> Span:
    """The section with other keys."""
    return replace(span, section=span.section.model_copy(update=changes))


def _longer(basis: Basis, short: Shortfall) -> str:
    span, rounds = short.span, short.rounds_needed
    higher = ", begun that much higher above the waist" if span.section.to in LANDMARKS else ""
    return (
        f"a longer section: {rounds} rounds ({basis.show(rounds * span.height)}) instead of "
        f"{span.rounds} ({basis.show(span.rounds * span.height)}){higher}"
    )


def _wider(basis: Basis, short: Shortfall) -> str:
    stitches = short.needed - short.room
    girth = basis.show(stitches * short.span.width)
    if short.span.rounds_above == 0:
        return f"a wider start: {stitches} stitches ({girth}), gathered by elastic or a cord"
    return f"a wider skirt where the section begins: {stitches} stitches ({girth})"


def _counted(n: int, one: str, many: str = "") -> str:
    return f"{n} {one if n == 1 else many or one + 's'}"


def _rounds_for(span: Span, shapings: int) -> int:
    """The rounds in which so many shapings have room, when the section goes on as it ends."""
    may, section = list(span.may_shape), span.section
    every = None if section.every == "auto" else span.every
    for rounds in range(shapings * max(span.every, section.least_gap, 2) + len(span.plain) + 1):
        if rounds >= len(may):
            may.append(may[-2] if span.on_right_side else True)
        if room(may[: rounds + 1], section.least_gap, every)[-1] >= shapings:
            return rounds
    return len(may)


def _slowed_by(span: Span) -> Iterator[str]:
    """Keys of a section that keep rounds from being shaped."""
    if span.every > 1:
        yield "every"
    if span.section.least_gap > 1:
        yield "least_gap"
    if span.on_right_side:
        yield "shape_on"
    if span.plain:
        yield "plain"


def _rhythm(span: Span) -> str:
    """ "every 2nd round", "every right-side round", "every 3rd round at most"."""
    every = max(span.every, span.section.least_gap)
    of = "right-side round" if span.on_right_side else "round"
    nth = "every" if every == 1 else f"every {({2: '2nd', 3: '3rd'}).get(every, f'{every}th')}"
    if every > 1 and span.on_right_side:
        return f"{nth} round, on the right side,"
    return f"{nth} {of}" + (" outside the plain stretches" if span.plain else "")
