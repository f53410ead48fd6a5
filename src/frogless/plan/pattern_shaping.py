"""Sections in a stitch pattern that grow on their way: by whole repeats, or by plain columns."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np

from frogless.because import Step
from frogless.errors import Impossible, InputError
from frogless.plan.basis import Basis
from frogless.plan.layout import Shaped
from frogless.plan.pattern_sections import (
    MOST_ADDED,
    Asked,
    Fabric,
    kept,
    other_ways,
    repeats_through,
    span_of,
)
from frogless.plan.patterned import BASE, Patterned, PatternRound, banded
from frogless.plan.patterns import stands_in_columns
from frogless.plan.rhythm.engine import Solution, Task, solve
from frogless.plan.sections import GIVEN, Span, Target
from frogless.swatch import Gauge

Made = tuple[tuple[Span, ...], tuple[Shaped | None, ...]]


@dataclass(frozen=True, slots=True)
class _Grown:
    """One way to grow: where it ends, and the rhythm that leads there.

    Args:
        off: of the girth at the end from the wanted one, mm.
        step: repeats at each border, or stitches in each column.
    """

    end: int
    step: int
    off: float
    solution: Solution | None
    units: int
    task: Task | None = None

    def key(self) -> tuple[int, float, float, int]:
        """Fewest clauses, least stray, least squares, fewest repeats at once."""
        if self.solution is None:
            return (0, 0.0, 0.0, 0)
        return (*self.solution.key()[:3], self.step)


def made_section(basis: Basis, ask: Asked) -> Made:
    """The section in whichever way it is shaped.

    Raises:
        InputError, Impossible: it cannot be shaped so; says what can be had.
    """
    if ask.shape_by == "repeats":
        return _by_repeats(basis, ask)
    if ask.shape_by == "columns":
        return _by_columns(basis, ask)
    found = kept(basis, ask)
    return found, (None,) * len(found)


def _best(found: Sequence[_Grown], give: float) -> _Grown:
    off = min(one.off for one in found) + give + 1e-9
    near = [one for one in found if one.off <= off]
    stray = min(one.solution.stray if one.solution else 0.0 for one in near) + give + 1e-9
    return min(
        (one for one in near if (one.solution.stray if one.solution else 0.0) <= stray),
        key=_Grown.key,
    )


def _by_repeats(basis: Basis, ask: Asked) -> Made:
    fabric, aim = ask.fabrics[0], _aim(ask)
    n = repeats_through(basis, replace(ask, target=None))
    ends = _between(fabric.repeat, fabric.girth(0), aim, max(fabric.pattern.way.least, 1))
    based = _is_based(ask, fabric, n)
    found = [one for end in ends for one in _borders(basis, ask, fabric, n, end, based)]
    if not found:
        raise _not_by_repeats(basis, ask, fabric, n)
    best = _best(found, _indifference(basis, ask, fabric.gauge, n))
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


def _aim(ask: Asked) -> Target:
    if ask.target is None:  # checked before: what is shaped has a girth
        raise TypeError("a section that is not shaped")
    return ask.target


def _between(step: float, rest: float, aim: Target, least: int) -> list[int]:
    """Numbers of repeats, or of stitches in each column, whose girth is allowed."""
    first = max(math.ceil((aim.low - rest) / step - 1e-9), least)
    last = math.floor((aim.high - rest) / step + 1e-9)
    return list(range(first, last + 1))


def _is_based(ask: Asked, fabric: Fabric, n: int) -> bool:
    below = ask.below
    if below.is_first:
        return bool(below.begun)
    return below.section is not None or below.count != fabric.pattern.way.places(n)


def _borders(
    basis: Basis, ask: Asked, fabric: Fabric, n: int, end: int, based: bool
) -> Iterator[_Grown]:
    """Every even division of the change into borders, with the best rhythm of each."""
    aim, way = _aim(ask), fabric.pattern.way
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
            yield _Grown(end, 0, off, None, units)
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
            yield _Grown(end, step, off, solution, units, task)


def _divisors(number: int) -> list[int]:
    return [k for k in range(1, number + 1) if number % k == 0]


def _indifference(basis: Basis, ask: Asked, gauge: Gauge, repeats: int) -> float:
    if ask.section.indifference is not None:
        return basis.length(ask.section.indifference, f"{ask.key}.indifference")
    girth = ask.fabrics[0].girth(repeats)
    return max(girth * gauge.width.relative, gauge.width.value)


def _bands(best: _Grown, n: int, fabric: Fabric) -> tuple[tuple[int, int], ...]:
    """(repeats, rows) of each band between borders."""
    at = best.solution.rhythm.rounds if best.solution else ()
    way = fabric.pattern.way
    edges = (1, *at, best.units + 1)
    sign = 1 if best.end > n else -1
    return tuple(
        (n + sign * i * best.step, way.setup + way.period * (below - above))
        for i, (above, below) in enumerate(pairwise(edges))
    )


def _not_by_repeats(basis: Basis, ask: Asked, fabric: Fabric, n: int) -> Impossible:
    aim, way = _aim(ask), fabric.pattern.way
    period = way.period * fabric.height
    units = max(math.floor((ask.length - ask.base) / (period + ask.base)), 0)
    sign = 1 if aim.wanted > fabric.girth(n) else -1
    reach = n
    for _ in range(max(units - 1, 0)):
        reach += sign * max(int(MOST_ADDED * reach), 1)
    have = _between(fabric.repeat, fabric.girth(0), aim, 1)
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


@dataclass(frozen=True, slots=True)
class _Gores:
    """Panels of repeats with a plain column after each.

    Args:
        panel: repeats in a panel. column: stitches in a column where the section begins.
    """

    columns: int
    panel: int
    column: int
    gauge: Gauge

    def girth(self, fabric: Fabric, column: int) -> float:
        """With so many stitches in each column, mm."""
        return self.columns * (self.panel * fabric.repeat + column * self.gauge.width.value)


def _by_columns(basis: Basis, ask: Asked) -> Made:
    fabric, aim, section = ask.fabrics[0], _aim(ask), ask.section
    _check_columns(basis, ask, fabric)
    stitch = section.column_stitch or basis.work.stitch
    gauge = basis.gauge(stitch, f"{ask.key}.column_stitch", section.hook)
    gores = _gores(basis, ask, fabric, gauge)
    step = gores.columns * gauge.width.value
    ends = _between(step, gores.girth(fabric, 0), aim, 1)
    rows = _whole_rows(ask, fabric)
    rounds = rows + 1 if (based := _begins_based(ask)) else rows
    give = max(gores.girth(fabric, gores.column) * fabric.gauge.width.relative, gauge.width.value)
    found = [
        one
        for end in ends
        if (one := _column_rhythm(ask, gores, fabric, end, rounds, give, based=based))
    ]
    if not found:
        raise _not_by_columns(basis, ask, fabric, gores, rounds)
    best = _best(found, give)
    worked = Patterned(
        fabric.pattern,
        section.base_stitch,
        PatternRound(BASE, gores.columns * gores.panel, gores.column),
        tuple(_column_rounds(gores, best, rounds, based=based)),
        columns=gores.columns,
        column=gauge,
        shape_by="columns",
    )
    named = section.model_copy(update={"points": gores.columns})
    span = span_of(ask, fabric, worked, named, ask.at.depth, ask.end, ask.at.rounds, last=True)
    if best.solution is None or best.task is None:
        return (span,), (None,)
    shaped = Shaped(gores.columns, section.add, best.solution, best.task, best.task)
    return (span,), (shaped,)


def _begins_based(ask: Asked) -> bool:
    """Columns begin with a base round wherever there is something to correct."""
    return not ask.below.is_first or bool(ask.below.begun)


def _check_columns(basis: Basis, ask: Asked, fabric: Fabric) -> None:
    if stands_in_columns(fabric.pattern.way, basis.stitches):
        return
    able = ", ".join(_able(basis))
    raise InputError(
        f'the rounds of "{fabric.pattern.key}" cannot stand beside plain columns: their repeats move '
        "from round to round, or are framed, or change colour. These can: "
        f"{able or 'none of the patterns known'}. Or: {'; '.join(other_ways(ask))}",
        basis.place(f"{ask.key}.shape_by"),
    )


def _able(basis: Basis) -> Iterator[str]:
    for key in basis.library.keys:
        try:
            found = basis.library.find(key, True, {})
        except InputError:
            continue
        if stands_in_columns(found.way, basis.stitches):
            yield key


def _gores(basis: Basis, ask: Asked, fabric: Fabric, gauge: Gauge) -> _Gores:
    """As many repeats in a panel as there is room for, and a stitch or more in each column."""
    k, begin = int(ask.section.columns or 0), ask.below.girth
    width = gauge.width.value
    narrow = min(begin.wanted, _aim(ask).wanted)
    most = math.floor((narrow / k - width) / fabric.repeat + 1e-9)
    made = [
        _Gores(k, m, max(round((begin.wanted / k - m * fabric.repeat) / width), 1), gauge)
        for m in (most, most + 1)
        if m >= fabric.pattern.way.least
    ]
    fits = [
        one
        for one in made
        if begin.low - GIVEN <= one.girth(fabric, one.column) <= begin.high + GIVEN
    ]
    if not fits:
        raise Impossible(
            f'section "{ask.section.name}": {basis.show(begin.wanted)} do not hold {k} panels of a '
            f"repeat of {basis.show(fabric.repeat)} with a plain stitch between them",
            basis.place(f"{ask.key}.columns"),
            ways_out=("fewer columns", "smaller repeats", *other_ways(ask)),
            requirements=("columns", "girth"),
        )
    return min(
        fits,
        key=lambda one: (round(abs(one.girth(fabric, one.column) - begin.wanted), 4), -one.panel),
    )


def _whole_rows(ask: Asked, fabric: Fabric) -> int:
    way = fabric.pattern.way
    room = ask.length - (ask.base if _begins_based(ask) else 0.0) - way.setup * fabric.height
    times = max(math.floor(room / (way.period * fabric.height) + 0.5 + 1e-9), 1)
    return way.setup + way.period * times


def _column_rhythm(
    ask: Asked,
    gores: _Gores,
    fabric: Fabric,
    end: int,
    rounds: int,
    give: float,
    *,
    based: bool,
) -> _Grown | None:
    aim, change = _aim(ask), end - gores.column
    off = abs(gores.girth(fabric, end) - aim.wanted)
    if change == 0:
        return _Grown(end, 0, off, None, rounds)
    step = ask.section.add
    if change % step:
        return None
    task = Task(
        wanted=np.linspace(ask.below.girth.wanted, aim.wanted, rounds + 1),
        before=gores.girth(fabric, gores.column),
        step=math.copysign(step * gores.columns * gores.gauge.width.value, change),
        shapings=abs(change) // step,
        indifference=give,
        clauses=ask.section.clauses,
        forbidden=(1,) if based else (),
    )
    solution = solve(task)
    return None if solution is None else _Grown(end, step, off, solution, rounds, task)


def _column_rounds(
    gores: _Gores, best: _Grown, rounds: int, *, based: bool
) -> Iterator[PatternRound]:
    repeats, column = gores.columns * gores.panel, gores.column
    at = best.solution.rhythm.rounds if best.solution else ()
    sign = 1 if best.end > gores.column else -1
    for number in range(1, rounds + 1):
        if based and number == 1:
            yield PatternRound(BASE, repeats, column)
            continue
        column += sign * best.step if number in at else 0
        yield PatternRound(number - 1 - int(based), repeats, column)


def _not_by_columns(
    basis: Basis, ask: Asked, fabric: Fabric, gores: _Gores, rounds: int
) -> Impossible:
    aim, add = _aim(ask), ask.section.add
    sign = 1 if aim.wanted > gores.girth(fabric, gores.column) else -1
    reach = max(gores.column + sign * add * rounds, 1)
    return Impossible(
        f'section "{ask.section.name}": {gores.columns} columns of {gores.column} stitches '
        f"({basis.show(gores.girth(fabric, gores.column))}) cannot become {basis.show(aim.low)} to "
        f"{basis.show(aim.high)} in {rounds} rounds by {add} in each column; "
        f"{basis.show(gores.girth(fabric, reach))} can be reached",
        basis.place(f"{ask.key}.girth"),
        short=abs(gores.girth(fabric, reach) - aim.wanted),
        ways_out=(
            *((f"add = {add + 1}",) if add < 4 else ()),
            "more columns, a longer section, or a wider allowed ease",
            *other_ways(ask),
        ),
        requirements=("columns", "rounds", "ease_allowed"),
    )
