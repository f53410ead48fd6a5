"""Sections in a stitch pattern that are shaped by whole repeats, between their row repeats."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

import numpy as np

from frogless.because import Step
from frogless.errors import Impossible
from frogless.plan.basis import Basis
from frogless.plan.pattern_asked import Asked, Fabric, other_ways
from frogless.plan.pattern_growth import Grown, Made, aim_of, best_of, between
from frogless.plan.pattern_sections import repeats_through, span_of
from frogless.plan.patterned import BASE, Patterned, PatternRound, banded
from frogless.plan.rhythm.engine import Task, solve
from frogless.swatch import Gauge

# One increase in every third stitch is about the most that lies well (common practice): a base round
# within a section adds a third of its stitches at most.
MOST_ADDED = 1 / 3


def by_repeats(basis: Basis, ask: Asked) -> Made:
    """The section with whole repeats added or taken away between its row repeats.

    Raises:
        Impossible: no number of repeats is allowed, or its length holds too few row repeats.
    """
    fabric, aim = ask.fabrics[0], aim_of(ask)
    n = repeats_through(basis, replace(ask, target=None))
    ends = between(fabric.repeat, fabric.girth(0), aim, max(fabric.pattern.way.least, 1))
    based = _is_based(ask, fabric, n)
    found = [one for end in ends for one in _borders(basis, ask, fabric, n, end, based)]
    if not found:
        raise _notby_repeats(basis, ask, fabric, n)
    best = best_of(found, _indifference(basis, ask, fabric.gauge, n))
    section = Patterned(
        fabric.pattern,
        ask.section.base_stitch,
        PatternRound(BASE, n),
        banded(_bands(best, n, fabric), based=based),
        shape_by="repeats",
    )
    span = span_of(
        ask, fabric, section, ask.section, ask.at.depth, ask.end, ask.at.rounds, last=True
    )
    why = span.because
    if best.solution is not None:
        why = why.then(
            Step("change", (best.end - n) * fabric.pattern.way.multiple, "stitches"),
            Step("shapings", len(best.solution.rhythm.rounds), "rows"),
            Step("stray", best.solution.stray),
        )
    return (replace(span, because=why),), (None,)


def _is_based(ask: Asked, fabric: Fabric, n: int) -> bool:
    below = ask.below
    if below.is_first:
        return bool(below.begun)
    return below.section is not None or below.count != fabric.pattern.way.places(n)


def _borders(
    basis: Basis, ask: Asked, fabric: Fabric, n: int, end: int, based: bool
) -> Iterator[Grown]:
    """Every even division of the change into borders, with the best rhythm of each."""
    aim, way = aim_of(ask), fabric.pattern.way
    change, off = end - n, abs(fabric.girth(end) - aim.wanted)
    setup = way.setup * fabric.height
    for step in _divisors(abs(change)) if change else (0,):
        borders = abs(change) // step if step else 0
        if step > MOST_ADDED * min(n, end + step if change < 0 else n):
            continue
        room = ask.length - ask.base * based - setup - borders * (ask.base + setup)
        units = max(math.floor(room / (way.period * fabric.height) + 0.5 + 1e-9), 1)
        if units < borders + 1:
            continue
        if not borders:
            yield Grown(end, 0, off, None, units)
            continue
        task = Task(
            wanted=np.linspace(ask.below.girth.wanted, aim.wanted, units + 1),
            before=fabric.girth(n),
            step=math.copysign(step * fabric.repeat, change),
            shapings=borders,
            indifference=_indifference(basis, ask, fabric.gauge, n),
            clauses=ask.section.clauses,
            forbidden=(1,),
        )
        if solution := solve(task):
            yield Grown(end, step, off, solution, units, task)


def _divisors(number: int) -> list[int]:
    return [k for k in range(1, number + 1) if number % k == 0]


def _indifference(basis: Basis, ask: Asked, gauge: Gauge, repeats: int) -> float:
    if ask.section.indifference is not None:
        return basis.length(ask.section.indifference, f"{ask.key}.indifference")
    girth = ask.fabrics[0].girth(repeats)
    return max(girth * gauge.width.relative, gauge.width.value)


def _bands(best: Grown, n: int, fabric: Fabric) -> tuple[tuple[int, int], ...]:
    """(repeats, rows) of each band between borders."""
    at = best.solution.rhythm.rounds if best.solution else ()
    way = fabric.pattern.way
    edges = (1, *at, best.units + 1)
    sign = 1 if best.end > n else -1
    return tuple(
        (n + sign * i * best.step, way.setup + way.period * (below - above))
        for i, (above, below) in enumerate(pairwise(edges))
    )


def _notby_repeats(basis: Basis, ask: Asked, fabric: Fabric, n: int) -> Impossible:
    aim, way = aim_of(ask), fabric.pattern.way
    period = way.period * fabric.height
    units = max(math.floor((ask.length - ask.base) / (period + ask.base)), 0)
    sign = 1 if aim.wanted > fabric.girth(n) else -1
    reach = n
    for _ in range(max(units - 1, 0)):
        reach += sign * max(int(MOST_ADDED * reach), 1)
    have = between(fabric.repeat, fabric.girth(0), aim, 1)
    found = (
        f"no whole number of repeats lies between {basis.show(aim.low)} and {basis.show(aim.high)}"
        f" (a repeat is {basis.show(fabric.repeat)})"
        if not have
        else f"{n} repeats ({basis.show(fabric.girth(n))}) would have to become {have[0]}"
        + (f" to {have[-1]}" if have[-1] != have[0] else "")
        + f", and {basis.show(ask.length)} hold {units} row repeats of {basis.show(period)}, with "
        f"{max(units - 1, 0)} borders between them: {reach} repeats "
        f"({basis.show(fabric.girth(reach))}) can be reached"
    )
    return Impossible(
        f'section "{ask.section.name}" cannot be shaped by whole repeats: {found}',
        basis.place(f"{ask.key}.girth"),
        short=abs(aim.wanted - fabric.girth(reach)) if have else fabric.repeat / 2,
        ways_out=(
            "a wider allowed ease, or another girth",
            "a longer section, or a pattern of fewer rows",
            *other_ways(ask),
        ),
        requirements=("multiple", "ease_allowed", "rounds"),
    )
