"""Beads in the repeats of an edging: how many to string, and on which ball of yarn."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator

from frogless.design.trims import EdgingBeads
from frogless.errors import InputError
from frogless.plan.basis import Basis
from frogless.plan.model import EdgingBeadsPlan, EdgingPlan, Remark
from frogless.plan.strand import yarn_diameter
from frogless.rows.count import worked
from frogless.stitches.model import Edging

PICOT = "picot"
BEAD = "bead"
# Rounded before it is cut off, so that 25 m at 1 m a repeat are 25 repeats.
GRAIN = 6


def beads_in(edging: Edging) -> int:
    """Beads that a repeat of the edging slides up by itself."""
    return sum(worked(nodes)[BEAD] for nodes in edging.rounds)


def plan_beads(basis: Basis, choice: EdgingBeads, edging: Edging, repeats: int) -> EdgingBeadsPlan:
    """Beads for so many repeats: those worked in, those to spare, and what each ball is good for.

    Raises:
        InputError: a ball has not yarn enough for one repeat, a hole is wider than its bead, or the
            edging's rounds slide up another number of beads.

    Source: 10 % spare, and beads strung on the yarn before it is worked: common practice.
    """
    if (own := beads_in(edging)) not in (0, choice.per_repeat):
        raise InputError(
            f'each repeat of "{edging.key}" slides up {own}, not {choice.per_repeat}',
            basis.place("edging.beads.per_repeat"),
        )
    if choice.bead_hole >= choice.bead_diameter:
        raise InputError(
            f"a hole of {choice.bead_hole:g} mm does not go into a bead of "
            f"{choice.bead_diameter:g} mm; write the width of its hole",
            basis.place("edging.beads.bead_hole"),
        )
    beads = repeats * choice.per_repeat
    label = basis.main_swatch.yarn
    return EdgingBeadsPlan(
        beads=beads,
        spare=_spare(beads, choice),
        per_repeat=choice.per_repeat,
        bead_diameter=choice.bead_diameter,
        bead_hole=choice.bead_hole,
        yarn_diameter=yarn_diameter(label.tex) if label.tex else None,
        balls=_balls(basis, choice, repeats, label.ball_length),
        picots=sum(worked(nodes)[PICOT] for nodes in edging.rounds),
    )


def _spare(beads: int, choice: EdgingBeads) -> int:
    return math.ceil(round(beads * choice.spare_percent / 100, GRAIN))


def _balls(basis: Basis, choice: EdgingBeads, repeats: int, label: float | None) -> tuple[int, ...]:
    """Whole repeats of each ball, the last with what is left of them."""
    one = choice.yarn_per_repeat
    first = choice.first_ball or label
    if one is None or first is None:
        return (repeats,)
    balls: list[int] = []
    length = first
    while (left := repeats - sum(balls)) > 0:
        enough = math.floor(round(length / one, GRAIN))
        if enough < 1:
            raise InputError(
                f"a repeat takes {basis.show(one)} of yarn and a ball has {basis.show(length)}",
                basis.place("edging.beads.yarn_per_repeat"),
            )
        balls.append(min(enough, left))
        length = label or first
    return tuple(balls)


def bead_remarks(edging: EdgingPlan, show: Callable[[float], str]) -> Iterator[Remark]:
    """What to string, whether the hole lets the yarn through, and where the ball ends."""
    beads = edging.beads
    if beads is None:
        return
    yield Remark(
        "edging_beads",
        f"string {beads.strung} beads on the yarn before the edging is begun: {beads.beads}, "
        f"{_where(beads)}, and {beads.spare} to spare; the bead strung last comes first, so "
        "string colours in the opposite order",
        serious=False,
    )
    if beads.yarn_diameter is not None and 2 * beads.yarn_diameter > beads.bead_hole:
        yield Remark(
            "edging_bead_hole",
            f"the edging's yarn is about {beads.yarn_diameter:.1f} mm thick and goes through the "
            f"bead doubled at the needle, {2 * beads.yarn_diameter:.1f} mm; the hole is "
            f"{beads.bead_hole:.1f} mm: take a larger hole, or stiffen the end and thread it "
            "single",
        )
    if len(beads.balls) > 1:
        yield _split(beads)


def _where(beads: EdgingBeadsPlan) -> str:
    if beads.per_repeat > 1:
        return f"{beads.per_repeat} in each repeat"
    if beads.picots % 2:
        return f"one in {'the middle' if beads.picots > 1 else 'the'} picot of each repeat"
    return "one in each repeat"


def _split(beads: EdgingBeadsPlan) -> Remark:
    """Beads cannot pass from one ball to the next, so each gets its own before it is begun."""
    first, *others = beads.balls
    each = [n * beads.per_repeat for n in beads.balls]
    following = " and ".join(str(n) for n in each[1:])
    return Remark(
        "edging_beads_split",
        f"the first ball is good for {first} repeats of the edging and "
        f"{len(others)} more {'is' if len(others) == 1 else 'are'} needed: split the beads, "
        f"{each[0]} on the first ball and {following} on the next, with some of the spare ones "
        "on each, and change balls between two repeats",
    )
