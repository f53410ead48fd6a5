"""What is told of a tube that was decided: its sections, its edging, its gauges."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace

from frogless.because import Because, Step
from frogless.plan import edging as edging_
from frogless.plan import flare, options, pattern_told
from frogless.plan.basis import Basis
from frogless.plan.model import SectionPlan
from frogless.plan.pieces.made import OfferedEdge
from frogless.plan.row_gauges import height_of
from frogless.plan.sections import Span
from frogless.plan.tube import Tube
from frogless.rows.nodes import Base, Piece, Row


def section_plans(tube: Tube) -> tuple[SectionPlan, ...]:
    """Every section, planned."""
    return tuple(_section_plan(tube, i) for i in range(len(tube.spans)))


def _section_plan(tube: Tube, i: int) -> SectionPlan:
    span, shaped = tube.spans[i], tube.layout.shaped[i]
    before, after = tube.layout.before(i), tube.layout.counts[i + 1]
    wanted = tube.wanted_before(i)
    first, last = span.rounds_above, span.rounds_above + span.rounds
    rise = tube.girth(last).value - _girth_before(tube, i)
    pattern = pattern_told.pattern_plan(span, tube.basis.stitches)
    return SectionPlan(
        name=span.section.name,
        stitch=span.worked.base_stitch if span.worked else span.gauge.stitch,
        hook=span.gauge.hook or tube.basis.hook,
        gauge=span.gauge,
        first_round=first + 1,
        last_round=last,
        count_before=before,
        count_after=after,
        chosen=options.chosen_option(span, shaped) if shaped else None,
        others=options.smoother(span, shaped) if shaped else (),
        fullness=rise / (2 * math.pi * span.rounds * span.height),
        because=_because_section(tube, i),
        profile=span.outline(wanted),
        floor=shaped.floor if shaped else (),
        evidence=options.evidence(span, shaped) if shaped else None,
        lines=flare.lines(span.section),
        based=_based(span),
        pattern=pattern,
    )


def _girth_before(tube: Tube, i: int) -> float:
    span = tube.spans[i]
    if span.worked is not None:
        return span.worked.girth(span.gauge.width, span.worked.before).value
    return tube.layout.before(i) * span.width


def _based(span: Span) -> str:
    if span.worked is not None:
        return span.worked.base_stitch if span.worked.is_based else ""
    return span.base_stitch


def girths(tube: Tube, rows: int) -> tuple[float, ...]:
    """What each round measures, mm, where some are in a stitch pattern; nothing where none is.

    Args:
        rows: there are, without an edging; one more than rounds, or as many begun on an edge.
    """
    if not any(span.worked for span in tube.spans):
        return ()
    first = tube.rounds + 1 - rows
    return tuple(tube.girth(r).value for r in range(first, tube.rounds + 1))


def _because_section(tube: Tube, i: int) -> Because:
    because, shaped = tube.spans[i].because, tube.layout.shaped[i]
    if shaped is None:
        return because
    return because.then(
        Step("change", tube.layout.counts[i + 1] - tube.layout.before(i), "stitches"),
        Step("points", shaped.points, ""),
        Step("shapings", len(shaped.chosen.rhythm.rounds), "rows"),
        Step("indifference", shaped.indifference),
        Step("stray", shaped.chosen.stray),
    )


def edging_work(tube: Tube) -> edging_.EdgingWork | None:
    """The edging on its last round, if the design has one."""
    choice = tube.basis.tube.edging
    if choice is None:
        return None
    last, count = tube.spans[-1], tube.counts[-1]
    gauge = last.gauge
    if last.worked is not None:  # columns are not as wide as the pattern between them
        gauge = replace(gauge, width=tube.girth(tube.rounds).times(1 / count))
    return edging_.plan_edging(tube.basis, choice, gauge, count, tube.rounds + 1)


def edging_depths(basis: Basis, hem: float, made: Sequence[Row]) -> tuple[float, ...]:
    """Depths below the hem: each edging round is as high as its tallest stitch."""
    depths = [hem]
    for row in made:
        depths.append(depths[-1] + height_of(basis, row))
    return tuple(depths[1:])


def offered(
    worked: Tube, piece: Piece, *, finished: bool, free: bool = True
) -> Iterator[OfferedEdge]:
    """The foundation's underside while it is free, and the last round where no edging closes it."""
    names = ("hem", "top") if worked.basis.tube.direction == "up" else ("top", "hem")
    first, last = worked.spans[0].gauge, worked.spans[-1].gauge
    if free and not piece.bases:
        n = worked.counts[0]
        base = Base(piece.name, "foundation", reverse=True)
        yield OfferedEdge(names[0], (base,), (n,), worked.girth(0), first, closed=True)
    if not finished:
        n = piece.rows[-1].count
        base, girth = Base(piece.name, "last_row"), worked.girth(worked.rounds)
        yield OfferedEdge(names[1], (base,), (n,), girth, last, closed=True)
