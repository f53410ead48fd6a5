"""Why an edging has its stitches, and elastic, cord, band and strand their length."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from frogless.plan.model import (
    BandPlan,
    CordPlan,
    EdgingPlan,
    ElasticPlan,
    PiecePlan,
    StrandPlan,
)
from frogless.plan.strand import YARN_PER_CHAIN_LENGTH
from frogless.publish.drafted import Drafted
from frogless.publish.messages import say
from frogless.publish.reasons_model import Entry, Reason, ReasonStep, reasoned
from frogless.publish.reasons_names import piece_keys, titled
from frogless.publish.reasons_steps import after_count, line, steps_of, until_count
from frogless.publish.reasons_told import edging_because, told_because, why_strand
from frogless.units import show_length

Waist = ElasticPlan | CordPlan | BandPlan

WAISTS = {ElasticPlan: "why_elastic", CordPlan: "why_cord", BandPlan: "why_band"}


def trim_entries(drafted: Drafted) -> Iterator[Entry]:
    """Edging, waist and strands of every piece."""
    keys = piece_keys(drafted)
    for piece in drafted.plan.pieces:
        own = keys[piece.name]
        if piece.edging is not None:
            yield from _edging(drafted, f"edging.{own}", piece, piece.edging)
        if piece.waist is not None:
            yield from _waist(drafted, f"waist.{own}", piece, piece.waist)
        for n, strand in enumerate(piece.strands, start=1):
            yield from _strand(drafted, f"strand.{own}.{n}", strand)


def trim_reasons(drafted: Drafted, piece: PiecePlan) -> Iterator[Reason]:
    """The reasons of a piece's edging, waist and strands, as the back of the pattern tells them."""
    own = piece_keys(drafted)[piece.name]
    if piece.edging is not None:
        yield edging_reason(drafted, f"edging.{own}", piece, piece.edging)
    if piece.waist is not None:
        yield waist_reason(drafted, f"waist.{own}", piece, piece.waist)
    for n, strand in enumerate(piece.strands, start=1):
        yield strand_reason(drafted, f"strand.{own}.{n}", strand)


def _edging(drafted: Drafted, key: str, piece: PiecePlan, plan: EdgingPlan) -> Iterator[Entry]:
    yield key, partial(edging_reason, drafted, key, piece, plan)
    if plan.multiple > 1:
        yield f"{key}.repeats", partial(_repeats, drafted, key, piece, plan)


def edging_reason(drafted: Drafted, key: str, piece: PiecePlan, plan: EdgingPlan) -> Reason:
    """Why an edging stands on its stitches."""
    because = edging_because(plan)
    landed = until_count(because, plan.base_count)
    steps = list(steps_of(drafted, landed or because))
    if landed is None:
        steps.append(line(drafted, "edging_base", str(plan.base_count)))
    makes = told_because(drafted, after_count(because, plan.base_count))
    notes = (say(drafted, "reason_then", told=makes),) if makes else ()
    title = titled(drafted, piece.name, say(drafted, "why_edging"))
    return reasoned(key, title, steps, told_because(drafted, because), notes)


def _repeats(drafted: Drafted, key: str, piece: PiecePlan, plan: EdgingPlan) -> Reason:
    steps = [line(drafted, "edging_base", str(plan.base_count))]
    if plan.offset:
        steps.append(line(drafted, "edging_offset", str(plan.offset)))
    steps.append(line(drafted, "edging_repeats", str(plan.repeats), multiple=plan.multiple))
    title = say(drafted, "reason_repeats", name=say(drafted, "why_edging"))
    return reasoned(f"{key}.repeats", titled(drafted, piece.name, title), steps)


def _waist(drafted: Drafted, key: str, piece: PiecePlan, plan: Waist) -> Iterator[Entry]:
    yield key, partial(waist_reason, drafted, key, piece, plan)
    for name, steps in _parts(drafted, plan):
        title = titled(drafted, piece.name, say(drafted, f"reason_{name}"))
        yield f"{key}.{name}", partial(reasoned, f"{key}.{name}", title, steps)


def waist_reason(drafted: Drafted, key: str, piece: PiecePlan, plan: Waist) -> Reason:
    """Why elastic and cord are cut to their length, and a band has its rows."""
    steps = list(steps_of(drafted, plan.because))
    match plan:
        case ElasticPlan(cut=length) | CordPlan(cord=length):
            shown = show_length(length, drafted.units)
            if not steps or steps[-1].value_text != shown:
                steps.append(line(drafted, "cut", shown))
        case BandPlan(rows=rows):
            landed = until_count(plan.because, rows, "rows")
            steps = list(steps_of(drafted, landed)) if landed else steps
            if landed is None:
                steps.append(line(drafted, "band_rows", str(rows)))
    name = "why_waist" if drafted.of_pieces else WAISTS[type(plan)]
    told = told_because(drafted, plan.because)
    return reasoned(key, titled(drafted, piece.name, say(drafted, name)), steps, told)


def _parts(drafted: Drafted, plan: Waist) -> Iterator[tuple[str, tuple[ReasonStep, ...]]]:
    """Further numbers of what finishes a waist, each with its steps."""
    units = drafted.units
    match plan:
        case ElasticPlan():
            ring = show_length(plan.finished, units)
            lap = show_length(plan.lap, units)
            yield "lap", (line(drafted, "lap_asked", lap),)
            yield (
                "ring",
                (
                    line(drafted, "cut", show_length(plan.cut, units)),
                    line(drafted, "less_lap", lap),
                    line(drafted, "ring", ring),
                ),
            )
            stretch = f"{plan.needed_stretch:.2f}"
            widest = show_length(plan.finished * plan.needed_stretch, units)
            yield (
                "stretch",
                (
                    line(drafted, "ring", ring),
                    line(drafted, "passed", widest),
                    line(drafted, "stretch_needed", stretch),
                ),
            )
            yield (
                "cover",
                (
                    line(drafted, "waist_stitches", str(plan.base_count)),
                    line(drafted, "in_each", str(plan.stitches_in_each)),
                    line(drafted, "row_count", str(plan.cover_count)),
                ),
            )
        case CordPlan():
            whole = line(drafted, "waist_stitches", str(sum(plan.gaps)))
            yield "eyelets", (whole, line(drafted, "eyelets", str(len(plan.gaps))))
        case BandPlan():
            girth = line(drafted, "girth", show_length(plan.girth.value, units))
            yield "band_girth", (line(drafted, "band_rows", str(plan.rows)), girth)


def _strand(drafted: Drafted, key: str, plan: StrandPlan) -> Iterator[Entry]:
    yield key, partial(strand_reason, drafted, key, plan)
    yield f"{key}.beads", partial(_beads, drafted, key, plan)
    yield f"{key}.chains", partial(_chains, drafted, key, plan)


def strand_reason(drafted: Drafted, key: str, plan: StrandPlan) -> Reason:
    """Why so much yarn is cut for a strand: what hangs, in chains, and its tails."""
    units = drafted.units
    steps = (
        *steps_of(drafted, plan.because),
        line(drafted, "yarn_of_chains", f"{YARN_PER_CHAIN_LENGTH:g}"),
        line(drafted, "two_tails", show_length(plan.tails, units)),
        line(drafted, "cut", show_length(plan.cut_yarn, units)),
    )
    return reasoned(key, plan.name, steps, why_strand(drafted, plan))


def _beads(drafted: Drafted, key: str, plan: StrandPlan) -> Reason:
    steps = (
        line(drafted, "beads", str(plan.beads)),
        line(drafted, "spare_beads", str(plan.spare_beads)),
        line(drafted, "strung", str(plan.beads + plan.spare_beads)),
    )
    return reasoned(f"{key}.beads", say(drafted, "reason_beads", name=plan.name), steps)


def _chains(drafted: Drafted, key: str, plan: StrandPlan) -> Reason:
    steps = (
        line(drafted, "strand_repeats", str(plan.repeats)),
        line(drafted, "chains_between", str(plan.chains_between)),
        line(drafted, "strand_chains", str(plan.chains)),
    )
    return reasoned(f"{key}.chains", say(drafted, "reason_chains", name=plan.name), steps)
