"""Sections in a stitch pattern that are shaped by plain columns between panels of repeats."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from frogless.errors import Impossible, InputError
from frogless.plan.basis import Basis
from frogless.plan.layout import Shaped
from frogless.plan.pattern_asked import Asked, Fabric, other_ways
from frogless.plan.pattern_growth import Grown, Made, aim_of, best_of, between
from frogless.plan.pattern_sections import span_of
from frogless.plan.patterned import BASE, Patterned, PatternRound
from frogless.plan.patterns import stands_in_columns
from frogless.plan.rhythm.engine import Task, solve
from frogless.plan.sections import GIVEN
from frogless.swatch import Gauge


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


def by_columns(basis: Basis, ask: Asked) -> Made:
    """The section as panels of whole repeats with plain columns between them, which grow.

    Raises:
        InputError: the repeats cannot stand beside plain stitches.
        Impossible: there is no room for so many columns, or they cannot grow so much.
    """
    fabric, aim, section = ask.fabrics[0], aim_of(ask), ask.section
    _check_columns(basis, ask, fabric)
    stitch = section.column_stitch or basis.work.stitch
    gauge = basis.gauge(stitch, f"{ask.key}.column_stitch", section.hook)
    gores = _gores(basis, ask, fabric, gauge)
    step = gores.columns * gauge.width.value
    ends = between(step, gores.girth(fabric, 0), aim, 1)
    rows = _whole_rows(ask, fabric)
    rounds = rows + 1 if (based := _begins_based(ask)) else rows
    give = max(gores.girth(fabric, gores.column) * fabric.gauge.width.relative, gauge.width.value)
    found = [
        one
        for end in ends
        if (one := _column_rhythm(ask, gores, fabric, end, rounds, give, based=based))
    ]
    if not found:
        raise _notby_columns(basis, ask, fabric, gores, rounds)
    best = best_of(found, give)
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
    narrow = min(begin.wanted, aim_of(ask).wanted)
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
) -> Grown | None:
    aim, change = aim_of(ask), end - gores.column
    off = abs(gores.girth(fabric, end) - aim.wanted)
    if change == 0:
        return Grown(end, 0, off, None, rounds)
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
    return None if solution is None else Grown(end, step, off, solution, rounds, task)


def _column_rounds(
    gores: _Gores, best: Grown, rounds: int, *, based: bool
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


def _notby_columns(
    basis: Basis, ask: Asked, fabric: Fabric, gores: _Gores, rounds: int
) -> Impossible:
    aim, add = aim_of(ask), ask.section.add
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
