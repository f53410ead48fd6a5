"""How much yarn: stitch by stitch from the fabric, with tails, seams and trims, and what to buy."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from frogless.because import Because, Step
from frogless.fabric.model import Fabric
from frogless.plan.colours import ends_made
from frogless.plan.model import CordPlan, ElasticPlan, Plan
from frogless.rows.colours import colours_of
from frogless.stitches.model import Stitch
from frogless.swatch import Gauge, Swatch, Yarn, mass_per_stitch
from frogless.tally.carried import carried_length
from frogless.tally.catches import (
    PartWork,
    catches_of,
    crocheted,
    main_colour,
    main_gauge,
    times_made,
    times_seamed,
    works,
)
from frogless.tally.model import YarnNeed
from frogless.tally.scale import Scale, scale
from frogless.units import Measured

# mm at each start and end, and twice at each change of ball: common practice, from memory.
TAIL = 150.0
# Percent over the need before whole balls are counted: common practice, 10 to 15.
MARGIN = 10.0
# mm of yarn per mm of crocheted cord: a chain takes 5.1 (one measurement; 4 to 8 in use), and the
# slip stitches worked back along it catch the yarn as often, so as much again (derived).
CORD_YARN = Measured(10.2, 1.6)


@dataclass(frozen=True, slots=True)
class _Sources:
    """What the yarn of one colour is worked out from.

    Args:
        alike: swatches of its yarn, its own first.
    """

    fabric: Fabric
    plan: Plan
    main: Gauge
    stitches: Mapping[str, Stitch]
    alike: tuple[Swatch, ...]
    by: Scale

    @property
    def swatch(self) -> Swatch:
        """The one in the yarn that is told."""
        return self.alike[0]


@dataclass(frozen=True, slots=True)
class _Extra:
    """Yarn that is no stitch of the fabric: a part's name, mm, and its relative uncertainty."""

    name: str
    length: float
    relative: float = 0.1


def yarn(
    fabric: Fabric,
    plan: Plan,
    swatch: Swatch,
    stitches: Mapping[str, Stitch],
    others: tuple[Swatch, ...] = (),
) -> tuple[YarnNeed, ...]:
    """The yarn of the whole garment by colour, with its 95 % interval and what each part takes.

    A stitch before a change is of the colour it is begun in. A colour is of the yarn of the swatch
    that names it, all others of the first swatch's.

    Args:
        fabric: of the plan's program. stitches: the dictionary it was expanded with.
        others: further swatches, of which those of the same yarn that were weighed count, and those
            of a colour.

    Source: yarn in proportion to catches · width (one maker's ravelled rows); grams by the swatch's
    mass or else by the cover model, K = 1.3 for solid fabric; see `tally.scale`. A part in another
    stitch that was weighed goes by the grams of that stitch.
    """
    parts = works(fabric, plan, stitches, main_gauge(plan, swatch))
    needs = []
    for letter in colours_of(plan.program) or ("",):
        own = _swatch_of(letter, swatch, others)
        main = main_gauge(plan, own)
        alike = (own, *(one for one in others if one.yarn == own.yarn and one != own))
        by = scale(own, main, stitches, mass_per_stitch(own, own.stitch))
        sources = _Sources(fabric, plan, main, stitches, alike, by)
        needs.append(_of_colour(letter, parts, sources))
    return tuple(needs)


def _swatch_of(letter: str, swatch: Swatch, others: tuple[Swatch, ...]) -> Swatch:
    """The swatch in the yarn of a colour: its own, else the first that is of no colour alone."""
    all_of_them = (swatch, *others)
    its_own = (one for one in all_of_them if letter and one.colour == letter)
    of_none = next((one for one in all_of_them if not one.colour), swatch)
    return next(its_own, of_none)


def _of_colour(letter: str, parts: tuple[PartWork, ...], found: _Sources) -> YarnNeed:
    """The yarn of one colour."""
    main, by = found.main, found.by
    mine = tuple(
        _by_own_mass(part, main, found.alike, found.stitches, by)
        for part in parts
        if part.colour == letter
    )
    made = sum(part.work for part in mine)
    extras = _extras(letter, made * by.length, found)
    mass = _total(made * by.mass, by.mass_relative, mine, main, by, by.mass)
    length = _total(made * by.length, by.length_relative, mine, main, by, by.length)
    for extra in extras:
        grams = extra.length * by.tex.value / 1e6
        mass = mass.plus(Measured(grams, grams * math.hypot(extra.relative, by.tex.relative)))
        length = length.plus(Measured(extra.length, extra.length * extra.relative))
    by_part = (
        *((part.name, part.work * by.mass) for part in mine),
        *((extra.name, extra.length * by.tex.value / 1e6) for extra in extras),
    )
    need = _need(found.swatch, mass, length, tuple(by_part), by)
    return replace(need, colour=letter, ends=ends_made(found.plan)[letter] if letter else 0)


def _by_own_mass(
    part: PartWork,
    main: Gauge,
    swatches: Iterable[Swatch],
    stitches: Mapping[str, Stitch],
    by: Scale,
) -> PartWork:
    """A part in a stitch that was weighed itself: its work in mm of the main stitch's yarn."""
    stitch = part.gauge.stitch
    if stitch == main.stitch or part.gauge.estimated:
        return part
    weighed = (mass_per_stitch(one, stitch) for one in swatches)
    grams = next((found for found in weighed if found is not None), None)
    if grams is None:
        return part
    own = grams.value / (catches_of(stitch, stitches) * part.gauge.width.value)
    return replace(part, work=part.work * own / by.mass, weighed=grams.relative)


def margin_of(mass: Measured, length: Measured) -> float:
    """What is bought over the need, in whole percent: the usual, or up to the 95 % interval's end.

    >>> margin_of(Measured(100.0, 10.0), Measured(100.0, 5.0))
    20
    """
    ends = (one.interval()[1] / one.value for one in (mass, length) if one.value)
    return max(MARGIN, math.ceil(100 * (max(ends, default=1.0) - 1) - 1e-9))


def balls_to_buy(label: Yarn, mass: float, length: float, margin_percent: float) -> int | None:
    """Whole balls that hold the need and its margin; None when the label says neither g nor length.

    Source: margin 10 to 15 %, whole balls of one dye lot: common practice.
    """
    more = 1 + margin_percent / 100
    if label.ball_mass:
        return math.ceil(mass * more / label.ball_mass - 1e-9)
    if label.ball_length:
        return math.ceil(length * more / label.ball_length - 1e-9)
    return None


def _total(
    value: float,
    relative: float,
    parts: Iterable[PartWork],
    main: Gauge,
    by: Scale,
    per_work: float,
) -> Measured:
    """Yarn of all parts: the scale is one error for all, each gauge's width one for its own."""
    own: dict[str, float] = {}
    widths: dict[str, float] = {}
    for part in parts:
        if part.weighed is not None:
            own[part.name] = part.work * per_work
            widths[part.name] = part.weighed
            continue
        if by.weighed and math.isclose(part.gauge.width.value, main.width.value):
            continue  # what was weighed is counted, so its width does not matter
        key = f"{part.gauge.stitch} {part.gauge.width.value}"
        own[key] = own.get(key, 0.0) + part.work * per_work
        against = main.width.relative if by.weighed else 0.0
        widths[key] = math.hypot(part.gauge.width.relative, against)
    spread = math.hypot(value * relative, *(own[key] * widths[key] for key in own))
    return Measured(value, spread)


def _extras(letter: str, length: float, found: _Sources) -> tuple[_Extra, ...]:
    """Yarn of one colour outside the stitches: trims, what is carried, and the tails of it all."""
    plan, label = found.plan, found.swatch.yarn
    extras = list(_trims(plan, found.main, found.stitches)) if letter == main_colour(plan) else []
    extras.append(
        _Extra("carried yarn", carried_length(letter, found.fabric, plan, found.main), 0.2)
    )
    length += sum(extra.length for extra in extras)
    changes = max(0, math.ceil(length / label.ball_length) - 1) if label.ball_length else 0
    ends = _ends(letter, found) + 2 * changes
    extras.append(_Extra("tails", ends * TAIL, 0.2))
    return tuple(extra for extra in extras if extra.length > 0)


def _ends(letter: str, found: _Sources) -> int:
    """Ends of one colour: of its pieces, of every cut, and of the seams of the first colour."""
    plan = found.plan
    seamed = sum(times_seamed(plan, seam) for seam in plan.program.seams)
    if letter:
        return ends_made(plan)[letter] + (2 * seamed if letter == main_colour(plan) else 0)
    made = sum(times_made(plan, name) for name, _ in crocheted(found.fabric, plan))
    return 2 * (made + seamed)


def _trims(plan: Plan, main: Gauge, stitches: Mapping[str, Stitch]) -> Iterable[_Extra]:
    for piece in plan.pieces:
        if piece.edging is not None and piece.edging.fringe_yarn:
            yield _Extra("fringe", piece.edging.fringe_yarn * times_made(plan, piece.name), 0.02)
        if isinstance(piece.waist, ElasticPlan):
            yield _Extra("round the elastic", _round_elastic(piece.waist, main, stitches), 0.3)
        if isinstance(piece.waist, CordPlan):
            yield _Extra("cord", piece.waist.cord * CORD_YARN.value, CORD_YARN.relative)
    for strand in (strand for piece in plan.pieces for strand in piece.strands):
        yield _Extra(strand.name, strand.cut_yarn, 0.1)


def _round_elastic(elastic: ElasticPlan, main: Gauge, stitches: Mapping[str, Stitch]) -> float:
    """What a cover takes over plain single crochet: three legs of each stitch are as long as the
    elastic is wide, where a plain one's are as long as the stitch is high. Derived, not measured.
    """
    single = stitches.get("single_crochet")
    tall = stitches.get(main.stitch)
    share = single.height.typical / tall.height.typical if single and tall else 0.5
    return elastic.cover_count * 3 * max(0.0, elastic.width - main.height.value * share)


def _need(
    swatch: Swatch,
    mass: Measured,
    length: Measured,
    by_part: tuple[tuple[str, float], ...],
    by: Scale,
) -> YarnNeed:
    low, high = length.interval()
    label = swatch.yarn
    margin = margin_of(mass, length)
    balls = balls_to_buy(label, mass.value, length.value, margin)
    steps = (*by.steps, Step("yarn_mass", mass.value, "g"), Step("margin", margin, "", "percent"))
    note = "rounded up to whole balls"
    if margin > MARGIN:
        note = f"to the upper end of what it may take, {note}"
    bought = () if balls is None else (Step("balls", balls, "", note),)
    return YarnNeed(
        name=label.name or swatch.name,
        mass=mass,
        length=length,
        length_low=max(0.0, low),
        length_high=high,
        margin_percent=margin,
        balls=balls,
        by_part=by_part,
        calibrated=by.weighed,
        because=Because((*steps, *bought)),
        swatch=swatch,
    )
