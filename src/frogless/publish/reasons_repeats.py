"""Counts that come of repeats: rows of stitch patterns, of edgings and of trims."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.plan.model import BandPlan, EdgingPlan, ElasticPlan, PatternPlan
from frogless.publish.drafted import Drafted, strands_of, waist_of
from frogless.publish.reasons_model import ReasonStep
from frogless.publish.reasons_steps import line
from frogless.rows.nodes import Piece, Row
from frogless.units import show_length


def pattern_steps(drafted: Drafted, plan: PatternPlan, row: Row) -> Iterator[ReasonStep]:
    """Of a row of a stitch pattern: its repeats, what each leaves, and what is left besides.

    A base row, which only makes the count for the repeats, is told from the row below instead.
    """
    band = next((b for b in plan.bands if b.first_round <= row.number <= b.last_round), None)
    if band is None or not band.repeats:
        return
    yield line(drafted, "repeats_of_pattern", str(band.repeats))
    each = row.count // band.repeats
    if plan.columns:
        nth = row.number - band.first_round
        rows = len(plan.repeat_leaves)
        each = plan.repeat_leaves[
            nth if nth < rows else plan.setup + (nth - plan.setup) % plan.row_repeat
        ]
    yield from _times(drafted, band.repeats, each, row.count, plan.columns)


def _times(
    drafted: Drafted, repeats: int, each: int, count: int, columns: int = 0
) -> Iterator[ReasonStep]:
    yield line(drafted, "each_leaves", str(each))
    if over := count - repeats * each:
        name = "left_in_columns" if columns else "left_besides"
        yield line(drafted, name, str(over), columns=columns)
    yield line(drafted, "places", str(count))


def edging_steps(drafted: Drafted, plan: EdgingPlan, row: Row) -> Iterator[ReasonStep]:
    """Of a round of an edging: the hem, what corrects it, and repeats times what each leaves."""
    if row.number == plan.first_round:
        yield line(drafted, "edge_count", str(plan.hem_count))
        if plan.correction:
            more = "corrected_more" if plan.correction > 0 else "corrected_less"
            yield line(drafted, more, str(abs(plan.correction)))
    yield line(drafted, "edging_base", str(plan.base_count))
    if plan.multiple > 1 and plan.repeats:
        yield line(drafted, "edging_repeats", str(plan.repeats), multiple=plan.multiple)
        yield from _times(drafted, plan.repeats, row.count // plan.repeats, row.count)
    else:
        yield line(drafted, "row_count", str(row.count))


def trim_steps(drafted: Drafted, piece: Piece, row: Row) -> Iterator[ReasonStep]:
    """Of a row of what is put on: cover of the elastic, waistband, strand."""
    waist = waist_of(drafted)
    strand = next((one for one in strands_of(drafted) if one.name == piece.name), None)
    if strand is not None:
        yield line(drafted, "strand_repeats", str(strand.repeats))
        yield line(drafted, "chains_between", str(strand.chains_between))
        yield line(drafted, "strand_chains", str(strand.chains))
        ends = "strand_ends" if row.count == strand.repeats + 1 else "row_count"
        yield line(drafted, ends, str(row.count))
    elif isinstance(waist, ElasticPlan) and piece.bases and row.count == waist.cover_count:
        yield line(drafted, "waist_stitches", str(waist.base_count))
        yield line(drafted, "in_each", str(waist.stitches_in_each))
        yield line(drafted, "row_count", str(waist.cover_count))
    elif isinstance(waist, BandPlan) and row.count == waist.row_stitches:
        yield line(drafted, "band_height", show_length(waist.height, drafted.units))
        yield line(drafted, "row_count", str(waist.row_stitches))
