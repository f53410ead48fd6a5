"""The front and the back of a pattern of several pieces."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.fit.model import LandmarkFit
from frogless.plan.model import Landmark, PiecePlan
from frogless.publish import colours, left_handed
from frogless.publish.authored import authored
from frogless.publish.back import why_yarns
from frogless.publish.blocks import Block, Bullets, Heading, Paragraph, Table, Terms
from frogless.publish.drafted import Drafted
from frogless.publish.front import edgings, estimated, markers, time
from frogless.publish.garment import joined, measures_table
from frogless.publish.landmark_cells import body_cell, ease_cell
from frogless.publish.messages import say
from frogless.publish.reasons_landmarks import landmark_reasons
from frogless.publish.reasons_model import Asked
from frogless.publish.reasons_names import titled
from frogless.publish.reasons_pieces import join_entries, measure_reason, measures
from frogless.publish.reasons_told import why_section
from frogless.publish.reasons_trims import trim_reasons
from frogless.publish.remarks import notes_at
from frogless.rows.nodes import Start
from frogless.rows.walk import stitch_keys
from frogless.units import show_length


def glance(drafted: Drafted) -> tuple[Block, ...]:
    """Girths against the body, every finished measurement, and what a maker asks first."""
    return (
        Heading(say(drafted, "glance")),
        *landmarks_table(drafted),
        *measures_table(drafted),
        Bullets(tuple(figure.text for figure in figures(drafted))),
    )


def landmarks_table(drafted: Drafted) -> Iterator[Table]:
    """At each landmark body, garment and ease, and the stitches; nothing when there are none."""
    pairs = tuple(zip(drafted.fit.landmarks, drafted.plan.landmarks, strict=True))
    if pairs:
        keys = ("at", "piece", "body", "garment", "ease", "stitches")
        header = tuple(say(drafted, key) for key in keys)
        rows = tuple(_landmark_row(drafted, fit, mark) for fit, mark in pairs)
        yield Table(say(drafted, "glance_caption"), header, rows)


def _landmark_row(drafted: Drafted, fit: LandmarkFit, mark: Landmark) -> tuple[str, ...]:
    return (
        drafted.phrases.measurement(fit.at), fit.piece, body_cell(drafted, fit),
        show_length(fit.garment, drafted.units), ease_cell(drafted, fit), str(mark.count),
    )  # fmt: skip


def figures(drafted: Drafted) -> Iterator[Asked]:
    """Edgings, joins, what was estimated, time; each with the key of its reason."""
    yield from edgings(drafted)
    for n, join in enumerate(drafted.plan.joins, start=1):
        told = say(drafted, "glance_join", name=join.name, told=joined(drafted, join))
        yield Asked(told, f"join.{n}")
    yield from estimated(drafted)
    yield Asked(time(drafted), "time")


def before(drafted: Drafted) -> tuple[Block, ...]:
    """How to read the rows."""
    lines = [
        *left_handed.line(drafted),
        *_turning_chains(drafted),
        say(drafted, "brackets"),
        *markers(drafted),
        say(drafted, "lengths"),
        *(authored(drafted, note) for note in drafted.basis.design.notes),
    ]
    return (
        Heading(say(drafted, "before")),
        Bullets(tuple(lines)),
        *left_handed.notes(drafted),
        *notes_at(drafted, "before"),
    )


def _turning_chains(drafted: Drafted) -> Iterator[str]:
    """Each chain that rows of a stitch begin with, and whether it counts, once."""
    found: dict[tuple[str, Start], None] = {}
    for piece in drafted.plan.program.pieces:
        for row in piece.rows:
            keys = [k for k in stitch_keys(row.body) if drafted.stitches[k].kind == "stitch"]
            if row.start.chains and len(keys) == 1:
                found[keys[0], Start(row.start.chains, row.start.counts)] = None
    for stitch, start in found:
        key = "chain_counts" if start.counts else "chain_does_not_count"
        yield say(drafted, key, n=start.chains, stitch=drafted.short(stitch))


def finishing(drafted: Drafted) -> tuple[Block, ...]:
    """Ends, and blocking to the finished measurements."""
    ends = say(drafted, "finish_ends_in" if drafted.units == "in" else "finish_ends")
    return (
        Heading(say(drafted, "finishing")),
        Bullets((*colours.ends(drafted), ends, say(drafted, "finish_block"))),
    )


def why(drafted: Drafted) -> tuple[Block, ...]:
    """Every planned number of every piece with its because, then joins and yarn."""
    items = [item for piece in drafted.plan.pieces for item in _why_piece(drafted, piece)]
    reasons = (tell() for _, tell in join_entries(drafted))
    items += [(reason.title, reason.sentence) for reason in reasons]
    items += why_yarns(drafted)
    return (
        Heading(say(drafted, "why")),
        Paragraph(say(drafted, "why_intro")),
        Terms(tuple(items)),
    )


def _why_piece(drafted: Drafted, piece: PiecePlan) -> Iterator[tuple[str, str]]:
    for title, sentence in _numbers(drafted, piece):
        if sentence:
            yield title, sentence


def _numbers(drafted: Drafted, piece: PiecePlan) -> Iterator[tuple[str, str]]:
    for whose, reason in landmark_reasons(drafted):
        if whose is piece:
            yield reason.title, reason.sentence
    for key, whose, measure in measures(drafted):
        # What an edge measures follows from the others, and the table tells it.
        if whose is piece and measure.kind != "edge":
            reason = measure_reason(drafted, key, piece, measure)
            yield reason.title, reason.sentence
    told = {measure.because for measure in piece.measures}
    for section in piece.sections:
        # A straight section is as long as the piece for the same reason, which is not told twice.
        if section.chosen or (section.because.steps and section.because not in told):
            name = say(drafted, "why_section", name=section.name)
            yield titled(drafted, piece.name, name), why_section(drafted, section)
    for reason in trim_reasons(drafted, piece):
        yield titled(drafted, piece.name, reason.title), reason.sentence
