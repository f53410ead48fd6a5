"""Beaded strands: how long one hangs between two points, how many beads, how much yarn to cut."""

from __future__ import annotations

import math
from collections.abc import Iterator

from frogless.because import Because, Step
from frogless.design.trims import BeadedStrand
from frogless.errors import InputError
from frogless.plan import catenary
from frogless.plan.basis import Basis
from frogless.plan.model import Remark, StrandPlan
from frogless.rows.nodes import Chain, End, Node, Piece, Repeat, Row, Work
from frogless.units import Measured

# One chain takes about 5 times its own length of yarn (one hobby measurement; 4 to 8 in use).
YARN_PER_CHAIN_LENGTH = 5.1
# Without a sample a chain is taken as long as the yarn round hook and yarn allows, π (hook + yarn) of
# yarn over 5.1, and no shorter than the strands that lie behind one another in it, 2.2 of them (from
# memory). Good to 40 % at best (own estimate); a sample of ten repeats replaces it.
CHAIN_STRANDS = 2.2
UNSAMPLED_UNCERTAINTY = 0.4
SAMPLED_UNCERTAINTY = 0.02
# Yarn diameter from tex: 0.0357 √(tex / (φ ρ)) mm; φ ρ = 0.75 g/cm³ lies between soft acrylic
# (0.59) and cotton (0.91); a plied strand's diameter goes with the square root of its share of the
# plies.
PACKED_DENSITY = 0.75
# A ply of which the label tells nothing, mm (from memory).
PLY = 0.3


def plan_strand(basis: Basis, choice: BeadedStrand, key: str, waist_count: int) -> StrandPlan:
    """A strand planned: hanging length, repeats, beads, yarn to cut.

    Raises:
        InputError: the two points are the same, or a length is wrong.
    """
    here, there = _points(basis, choice, key, waist_count)
    span = abs(there - here) / waist_count * basis.girth_wanted("waist_girth", "waist")
    sag = basis.length(choice.sag, f"{key}.sag")
    if sag < 0:
        raise InputError("the sag has to be zero or more", basis.place(f"{key}.sag"))
    wanted = catenary.of_sag(span, sag).length
    diameter = strand_diameter(basis, choice)
    repeat, sampled = _repeat_length(basis, choice, key, diameter)
    repeats = max(round(wanted / repeat.value), 1)
    length = repeat.times(repeats)
    tails = basis.length(choice.tails, f"{key}.tails")
    return StrandPlan(
        name=choice.name,
        span=span,
        sag=sag,
        wanted=wanted,
        length=length,
        actual_sag=catenary.of_length(span, length.value).sag,
        repeats=repeats,
        chains_between=choice.chains_between,
        beads=repeats,
        spare_beads=choice.spare_beads,
        chains=repeats * choice.chains_between,
        plies=choice.plies,
        yarn_plies=basis.main_swatch.yarn.plies,
        # A strand that is cut too short is worked for nothing.
        cut_yarn=length.value
        * (1.0 if sampled else 1 + UNSAMPLED_UNCERTAINTY)
        * YARN_PER_CHAIN_LENGTH
        + 2 * tails,
        bead_hole=choice.bead_hole,
        bead_diameter=choice.bead_diameter,
        hook=choice.hook,
        strand_diameter=diameter,
        tails=tails,
        from_stitch=here,
        to_stitch=there,
        sampled=sampled,
        because=Because(
            (
                Step("span", span),
                Step("sag", sag),
                Step("hanging_length", wanted),
                *_because_repeats(repeat.value, wanted, repeats, sampled=sampled),
            )
        ),
    )


def _because_repeats(
    repeat: float, wanted: float, repeats: int, *, sampled: bool
) -> tuple[Step, ...]:
    return (
        Step("repeat", repeat, "mm", "sampled" if sampled else "not sampled", not sampled),
        Step("exact", wanted / repeat, "ratio"),
        Step("landed", repeats, "ratio"),
        Step("length", repeat * repeats),
    )


def _points(basis: Basis, choice: BeadedStrand, key: str, waist_count: int) -> tuple[int, int]:
    """The two waist stitches the strand hangs between, counted from centre front."""
    waist = basis.girth_wanted("waist_girth", "waist")
    here, there = (
        round(basis.length(text, f"{key}.{name}") / waist * waist_count)
        for text, name in ((choice.from_side, "from"), (choice.to_side, "to"))
    )
    if here == there:
        raise InputError(
            "the strand's two points fall on the same stitch; set them further apart",
            basis.place(key),
        )
    if abs(here - there) >= waist_count:
        raise InputError(
            "the strand would go once round the waist to the stitch it comes from; bring its two "
            "points nearer",
            basis.place(key),
        )
    return here, there


def strand_diameter(basis: Basis, choice: BeadedStrand) -> float:
    """Diameter of the plies worked with, mm, from the label; a guess when it does not say."""
    yarn = basis.main_swatch.yarn
    if yarn.tex is None or not yarn.plies:
        return PLY * math.sqrt(choice.plies)
    share = min(choice.plies / yarn.plies, 1.0)
    return yarn_diameter(yarn.tex * share)


def yarn_diameter(tex: float) -> float:
    """Diameter of a yarn of so many g per km, mm; see `PACKED_DENSITY`."""
    return 0.0357 * math.sqrt(tex / PACKED_DENSITY)


def _repeat_length(
    basis: Basis, choice: BeadedStrand, key: str, diameter: float
) -> tuple[Measured, bool]:
    """Length of one bead and its chains, mm; from the designer's sample when there is one."""
    if (choice.sample_length is None) != (choice.sample_repeats is None):
        raise InputError(
            "a sample is told by both sample_repeats and sample_length; write the other one too, "
            "or neither",
            basis.place(key),
        )
    if choice.sample_length is not None and choice.sample_repeats is not None:
        long = basis.girth_wanted(choice.sample_length, f"{key}.sample_length")
        one = long / choice.sample_repeats
        return Measured(one, one * SAMPLED_UNCERTAINTY), True
    chain = max(
        math.pi * (choice.hook + diameter) / YARN_PER_CHAIN_LENGTH, CHAIN_STRANDS * diameter
    )
    # The first chain locks the bead and lies behind it; the bead adds its own length.
    one = (choice.chains_between - 1) * chain + max(choice.bead_diameter, chain)
    return Measured(one, one * UNSAMPLED_UNCERTAINTY), False


def strand_piece(plan: StrandPlan) -> Piece:
    """The strand as worked, the same from both ends: half the chains, bead, chains, …, bead, half.

    A bead is slid up and locked by the chain after it.
    """
    between = plan.chains_between
    half = between // 2
    body: list[Node] = [Chain(half)] if half else []
    if plan.repeats > 1:
        body.append(Repeat((Work("bead"), Chain(between)), plan.repeats - 1))
    body += [Work("bead"), Chain(between - half)]
    spaces = plan.repeats + (half > 0)
    row = Row(1, "RS", plan.name, tuple(body), spaces, end=End(fasten_off=True), hook=plan.hook)
    return Piece(plan.name, False, (row,))


def _hook_for(plan: StrandPlan) -> float:
    """A hook that draws the plies through, mm: one and a half times as thick (from memory)."""
    return math.ceil(plan.strand_diameter * 1.5 * 4) / 4


def strand_remarks(plan: StrandPlan) -> Iterator[Remark]:
    """Bead hole against the strand, plies against the yarn, and whether a sample is missing."""
    doubled = 2 * plan.strand_diameter
    if doubled > plan.bead_hole:
        yield Remark(
            "bead_hole",
            f"{plan.name}: {plan.plies} plies are about {plan.strand_diameter:.1f} mm thick and go "
            f"through the bead doubled at the needle, {doubled:.1f} mm; the hole is "
            f"{plan.bead_hole:.1f} mm: take fewer plies, a larger hole, or stiffen the end and "
            "thread it single",
        )
    if plan.hook < plan.strand_diameter:
        yield Remark(
            "strand_hook",
            f"{plan.name}: a hook of {plan.hook:g} mm is too fine for these plies, about "
            f"{plan.strand_diameter:.2g} mm thick: take about {_hook_for(plan):g} mm, or fewer "
            "plies",
        )
    if plan.yarn_plies is not None and plan.plies > plan.yarn_plies:
        yield Remark(
            "plies",
            f"{plan.name}: worked from {plan.plies} plies, but the yarn has {plan.yarn_plies}",
        )
    if not plan.sampled:
        yield Remark(
            "strand_sample",
            f"{plan.name}: no sample was given, so its length is an estimate good to 40 %; "
            "work ten repeats, measure them, and write sample_repeats and sample_length",
            serious=False,
        )
    if plan.actual_sag == 0.0:
        yield Remark(
            "strand_taut",
            f"{plan.name}: it would hang taut; give it more sag or shorter repeats",
        )
