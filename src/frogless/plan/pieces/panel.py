"""A flat piece worked in rows: decided, laid out in strips, and handed over with its edges."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

from frogless.because import Because, Step
from frogless.body.measurements import Measurement
from frogless.design.pieces.panel import PanelChoice
from frogless.errors import InputError, near_names
from frogless.plan.basis import Basis
from frogless.plan.model import Landmark, Option, PatternPlan, PiecePlan, SectionPlan
from frogless.plan.pieces.made import Made
from frogless.plan.pieces.panel_layout import Layout, Stage, lay_out
from frogless.plan.pieces.panel_offers import offered
from frogless.plan.pieces.panel_patterns import told
from frogless.plan.pieces.panel_rows import FOUNDATION, Strip, piece_of
from frogless.plan.pieces.panel_shape import measures_of, shape_of
from frogless.plan.pieces.panel_strips import Strips, strips_of
from frogless.rows.nodes import Piece
from frogless.swatch import Gauge


def plan_panel(basis: Basis, choice: PanelChoice, key: str, made: Mapping[str, Made]) -> Made:
    """A flat piece, planned.

    Raises:
        InputError: parts that do not go together, or are longer than the piece.
        Impossible: no whole stitches do what is asked.
    """
    panel = lay_out(basis, choice, key, made)
    strips = strips_of(panel)
    hook = choice.hook or panel.gauge.hook or basis.hook
    pieces = tuple(piece_of(strip, panel.spans, hook, basis.place(key)) for strip in strips.all)
    edges = offered(panel, strips)
    plans = tuple(
        PiecePlan(
            name=strip.name,
            construction="panel",
            counts=tuple(row.count for row in piece.rows),
            depths=_depths(panel, strip, piece),
            number_made=choice.make,
        )
        if strip is not strips.main
        else PiecePlan(
            name=strip.name,
            construction="panel",
            counts=tuple(row.count for row in piece.rows),
            girths=_widths(panel, strip, piece),
            depths=_depths(panel, strip, piece),
            number_made=choice.make,
            sections=tuple(_sections(panel, strip)),
            landmarks=tuple(_landmarks(panel, strips)),
            measures=measures_of(panel, strips, edges),
            shape=shape_of(panel, strips),
        )
        for strip, piece in zip(strips.all, pieces, strict=True)
    )
    return Made(pieces, plans, edges, gauges=_gauges(panel))


def _depths(panel: Layout, strip: Strip, piece: Piece) -> tuple[float, ...]:
    """The lower edge of each row as worn; for work that grows downwards, where the row ends."""
    total = panel.top_of(panel.last)
    by_number = {strip.number(row): row for row in range(strip.first, strip.last + 1)}
    found, row = [], strip.first - 1
    for made in piece.rows:
        row = by_number.get(made.number, row)
        if panel.choice.worked == "downwards":
            found.append(panel.top_of(max(row, 0)) if made.number else panel.foundation_height)
        else:
            found.append(total - panel.top_of(row - 1) if row > 0 and made.number else total)
    return tuple(found)


def _sections(panel: Layout, strip: Strip) -> Iterator[SectionPlan]:
    """Those whose rows all lie in the main piece, with the row below them."""
    parted = panel.split or panel.last + 1
    for stage in panel.stages:
        below = stage.first - 1
        if below < strip.first and not (below == 0 and strip.first == 1):
            continue
        if stage.last >= parted or _steps_in(panel, stage):
            continue
        yield SectionPlan(
            name=stage.name,
            stitch=stage.worked.base_stitch if stage.worked else stage.gauge.stitch,
            hook=panel.choice.hook or stage.gauge.hook or panel.basis.hook,
            gauge=stage.worked.gauge if stage.worked else stage.gauge,
            first_round=strip.number(below) + 1,
            last_round=strip.number(stage.last),
            count_before=stage.before,
            count_after=stage.after,
            chosen=_option(panel, stage),
            others=(),
            fullness=0.0,
            because=_because(panel, stage),
            pattern=_pattern(panel, strip, stage),
        )


def _pattern(panel: Layout, strip: Strip, stage: Stage) -> PatternPlan | None:
    if stage.worked is None:
        return None
    own = stage.before * panel.gauge.width.value
    return told(stage.worked, stage.before, strip.number(stage.first), own)


def _widths(panel: Layout, strip: Strip, piece: Piece) -> tuple[float, ...]:
    """What each row measures, mm, where some are in a stitch pattern."""
    stages = [stage for stage in panel.stages if stage.worked is not None]
    if not stages:
        return ()
    gauges = {strip.number(r): panel.gauges[r - 1] for r in range(strip.first, strip.last + 1)}
    found = []
    for row in piece.rows:
        wide = row.count * gauges.get(row.number, panel.gauge).width.value
        for stage in stages:
            if stage.worked and stage.first <= row.number <= stage.last:
                wide = stage.worked.width_of(row.number, stage.before * panel.gauge.width.value)
        found.append(wide)
    return tuple(found)


def _steps_in(panel: Layout, stage: Stage) -> bool:
    """Whether neck or shoulder take stitches in a stage's rows, so that it ends on fewer."""
    if panel.neck is None:
        return False
    return stage.last >= min(panel.neck.first, panel.last - len(panel.steps) + 2)


def _because(panel: Layout, stage: Stage) -> Because:
    """From the width wanted at its end, its length in rows, and how it is shaped."""
    own = stage.worked.gauge if stage.worked else stage.gauge
    height, rows = own.height.value, stage.last - stage.first + 1
    steps = [
        *stage.because.steps,
        Step("length", panel.top_of(stage.last) - panel.top_of(stage.first - 1)),
        Step("row_gauge", 100 / height, "rows per 10 cm"),
        Step("landed", rows, "rows"),
    ]
    if stage.after != stage.before:
        steps += [
            Step("change", stage.after - stage.before, "stitches"),
            Step("points", stage.points, ""),
            Step("shapings", len(stage.run.amounts), "rows"),
        ]
    if stage.run.solution is not None:
        stray = stage.run.solution.stray * stage.gauge.width.value
        steps.append(Step("stray", stray, note="at each edge"))
    return Because(tuple(steps))


def _option(panel: Layout, stage: Stage) -> Option | None:
    found = stage.run.solution
    if found is None:
        return None
    stray = found.worst * stage.gauge.width.value
    depth = panel.top_of(panel.last) - panel.top_of(stage.first - 1 + found.worst_round)
    return Option(stage.points, 1, found.rhythm, stray, depth)


def _landmarks(panel: Layout, strips: Strips) -> Iterator[Landmark]:
    """The girth of the body that the panel is a part of, met by so many of its widths."""
    choice, basis = panel.choice, panel.basis
    if choice.body is None:
        return
    place = basis.place(panel.where("body"))
    measured = basis.body.get(choice.body)
    if measured is None:
        raise InputError(_not_measured(choice.body, basis), place)
    row = min(r for r in (panel.armhole, panel.split, panel.last + 1) if r) - 1
    row = max(row, strips.main.first)
    count = strips.main.count_after(row)
    gauge = panel.gauges[row - 1]
    wanted = basis.length(choice.width, panel.where("width"))
    wanted = (wanted + basis.length(choice.ease, panel.where("ease"))) * choice.share
    yield Landmark(
        key=choice.body,
        depth=panel.top_of(panel.last) - panel.top_of(row),
        body=measured.value,
        estimated=measured.estimated,
        wanted=wanted,
        low=_bound(panel, measured, 0, -math.inf),
        high=_bound(panel, measured, 1, math.inf),
        rounds=strips.main.number(row),
        count=count,
        garment=gauge.width.times(count * choice.share),
        because=basis.because_formula(choice.width, panel.where("width")).then(
            Step("wanted", wanted), Step("landed", count, "stitches")
        ),
    )


def _bound(panel: Layout, measured: Measurement, which: int, none: float) -> float:
    allowed = panel.choice.ease_allowed
    if allowed is None:
        return none
    return measured.value.value + panel.basis.length(allowed[which], panel.where("ease_allowed"))


def _not_measured(key: str, basis: Basis) -> str:
    if key in basis.scope.wanting:
        return f'"{key}" is needed here and was not measured; measure it and add it to the body'
    near = near_names(key, [*basis.body.measurements, *basis.scope.wanting])
    return f'"{key}" is no measurement of the body{near}'


def _gauges(panel: Layout) -> Mapping[str, Gauge]:
    begun = panel.choice.made_of
    found = {FOUNDATION: panel.gauge if begun == "chain" else panel.basis.trim_gauge(begun)}
    return found | {s.name: s.worked.gauge if s.worked else s.gauge for s in panel.stages}
