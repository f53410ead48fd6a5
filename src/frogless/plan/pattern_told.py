"""What is told of a section in a stitch pattern: its bands, its counts, what it measures."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import groupby

from frogless.plan.model import PatternBand, PatternPlan
from frogless.plan.pattern_rounds import pattern_rows
from frogless.plan.patterned import BASE, Patterned
from frogless.plan.sections import Span
from frogless.rows.count import left
from frogless.stitches.load import leaves
from frogless.stitches.model import Stitch


def pattern_plan(span: Span, stitches: Mapping[str, Stitch]) -> PatternPlan | None:
    """The pattern of a section, planned; None of a section in a plain stitch."""
    worked = span.worked
    if worked is None:
        return None
    pattern, way, width = worked.pattern, worked.pattern.way, span.gauge.width
    last, ends = pattern_rows(worked, stitches)[-1], worked.rounds[-1]
    return PatternPlan(
        key=pattern.key,
        names=tuple((dialect, name) for dialect, name in pattern.names.items()),
        parameters=tuple(sorted(pattern.parameters.items())),
        multiple=way.multiple,
        offset=way.offset,
        row_repeat=way.period,
        setup=way.setup,
        shape_by=worked.shape_by,
        base_stitch=worked.base_stitch,
        based=tuple(
            span.rounds_above + number
            for number, one in enumerate(worked.rounds, 1)
            if one.row == BASE
        ),
        bands=tuple(_bands(worked, span.rounds_above)),
        left=last.count if last is not None else worked.base_count(ends),
        girth_before=worked.girth(width, worked.before),
        girth_after=worked.girth(width, ends),
        columns=worked.columns,
        column_stitch=worked.column.stitch if worked.column else "",
        repeat_leaves=tuple(left(row.repeat, leaves(stitches)) for row in way.rows),
    )


def _bands(worked: Patterned, above: int) -> Iterator[PatternBand]:
    number = above
    before = worked.before
    for is_base, run in groupby(worked.rounds, key=lambda one: one.row == BASE):
        rounds = tuple(run)
        if is_base:
            before = rounds[-1]
        else:
            yield PatternBand(
                under=number,
                first_round=number + 1,
                last_round=number + len(rounds),
                base=worked.base_count(before),
                repeats=before.repeats,
                column=before.column,
                goes_on=rounds[0].row > 0,
            )
        number += len(rounds)
