"""Patterns of several pieces: their measurements, their instructions, how they are joined."""

from __future__ import annotations

from collections.abc import Iterator, Set

from frogless.plan.edging import EDGING
from frogless.plan.model import JoinPlan, Measure, PiecePlan, SectionPlan
from frogless.publish import patterned
from frogless.publish.blocks import Block, Bullets, Heading, Instruction, Note, Paragraph, Table
from frogless.publish.drafted import Drafted
from frogless.publish.instructions import capital, edging_intro, section_sentences
from frogless.publish.messages import say
from frogless.publish.trims import after_rows, before_rows
from frogless.rows.nodes import Base, Piece, Program, Seam
from frogless.units import as_shown, show_length
from frogless.write.fold import Line
from frogless.write.pattern import (
    WrittenPiece,
    rounds_of,
    write_numbering_note,
    write_pieces,
    write_seam,
)


def measures_table(drafted: Drafted) -> Iterator[Table]:
    """The finished measurements of every piece; nothing when none is stated."""
    rows = tuple(
        _measure_row(drafted, piece, measure)
        for piece in drafted.plan.pieces
        for measure in piece.measures
    )
    if rows:
        keys = ("piece", "measure", "finished", "wanted", "worked")
        header = tuple(say(drafted, key) for key in keys)
        yield Table(say(drafted, "measures_caption"), header, rows)


def _measure_row(drafted: Drafted, piece: PiecePlan, measure: Measure) -> tuple[str, ...]:
    wanted = say(drafted, "none")
    if measure.wanted is not None:
        wanted = show_length(measure.wanted, drafted.units)
    got = show_length(measure.got.value, drafted.units)
    return piece.name, measure.name, got, wanted, counted(drafted, measure) or say(drafted, "none")


def counted(drafted: Drafted, measure: Measure) -> str:
    """What gives a measurement: "85 stitches", "40 rows"; "" for an edge, which is both."""
    if not measure.count or measure.kind == "edge":
        return ""
    key = "measure_rows" if measure.kind == "length" else "measure_stitches"
    return say(drafted, key, count=measure.count)


def measured(drafted: Drafted, measure: Measure) -> str:
    """ "width at the bust 53 cm (85 stitches)"."""
    length, many = show_length(measure.got.value, drafted.units), counted(drafted, measure)
    key = "measured_counted" if many else "measured"
    return say(drafted, key, name=measure.name, length=length, counted=many)


def joined(drafted: Drafted, join: JoinPlan) -> str:
    """Both edges with their lengths, and which of them is eased in."""
    units, lengths = drafted.units, (join.first_length.value, join.second_length.value)
    first, second = (show_length(length, units) for length in lengths)
    if first == second:
        return say(
            drafted, "join_same", first=join.first, second=join.second, length=first
        )  # fmt: skip
    # The difference is that of the lengths as they are shown.
    off = abs(as_shown(lengths[0], units) - as_shown(lengths[1], units))
    return say(
        drafted, "join_eased", first=join.first, second=join.second, first_length=first,
        second_length=second, longer=join.first if lengths[0] > lengths[1] else join.second,
        off=show_length(off, units),
    )  # fmt: skip


def garment_instructions(drafted: Drafted) -> tuple[Block, ...]:
    """Every piece in the order worked, each under its heading, then the joins."""
    program = drafted.plan.program
    written = write_pieces(program, drafted.stitches, drafted.dialect, drafted.language)
    numbering = write_numbering_note(program, drafted.language)
    blocks: list[Block] = [Paragraph(numbering)] if numbering else []
    for piece, words in zip(program.pieces, written, strict=True):
        blocks.append(Heading(capital(piece.name)))
        blocks.extend(_piece(drafted, piece, words))
    return (*blocks, *_joining(drafted))


def _piece(drafted: Drafted, piece: Piece, words: WrittenPiece) -> Iterator[Block]:
    plan = drafted.plan.piece(piece.name)
    if plan is not None and plan.number_made > 1:
        yield Paragraph(say(drafted, "make", number=plan.number_made))
    # The heading above has its name already.
    yield Paragraph(capital(words.heading.removeprefix(f"{piece.name}: ")))
    if _crosses_seams(piece, drafted.plan.program):
        yield Paragraph(say(drafted, "join_first"))
    if plan is None:
        yield from before_rows(drafted, piece)
        yield from (_row(line) for line in words.lines)
        yield from after_rows(drafted, piece)
        return
    if plan.measures:
        yield Bullets(tuple(capital(measured(drafted, one)) for one in plan.measures))
    yield from _rows(drafted, piece, plan, words)


def _crosses_seams(piece: Piece, program: Program) -> bool:
    """Whether it is begun along several pieces that are sewn to each other."""
    along = {base.piece for base in piece.bases}
    sewn = ((s.first, s.second) for s in program.seams if s.first[0].piece != s.second[0].piece)
    return len(along) > 1 and any(all(_touches(edge, along) for edge in both) for both in sewn)


def _touches(edge: tuple[Base, ...], along: Set[str]) -> bool:
    return any(base.piece in along for base in edge)


def _rows(drafted: Drafted, piece: Piece, plan: PiecePlan, words: WrittenPiece) -> Iterator[Block]:
    """Section by section: what it does, its rows, and what to check on the tape."""
    sections = {row.number: row.section for row in piece.rows}
    current = piece.name
    for line in words.lines:
        section = sections[line.first_row]
        if section != current:
            yield Heading(capital(section), 2)
            yield from _intro(drafted, plan, section)
        current = section
        yield _row(line)
        for planned in plan.sections:
            if line.first_row <= planned.last_round <= line.last_row:
                text = _check(drafted, piece, plan, planned)
                yield Note("check", text, say(drafted, "note_check"))


def _intro(drafted: Drafted, plan: PiecePlan, name: str) -> Iterator[Block]:
    planned = next((one for one in plan.sections if one.name == name), None)
    if planned is not None:
        yield Paragraph(" ".join(section_sentences(drafted, plan.name, planned)))
    elif plan.edging is not None and name == EDGING:
        yield from edging_intro(drafted, plan.edging)


def _check(drafted: Drafted, piece: Piece, plan: PiecePlan, planned: SectionPlan) -> str:
    """The count at the end of a section, and what the tape should say there."""
    length = _worked(piece, plan, planned)
    return say(
        drafted, "check_around" if piece.closed else "check_across", round=planned.last_round,
        count=patterned.check_count(drafted, planned),
        girth=show_length(planned.girth_after.value, drafted.units),
        depth=show_length(length, drafted.units),
    )  # fmt: skip


def _worked(piece: Piece, plan: PiecePlan, planned: SectionPlan) -> float:
    """How long the piece is at the end of a section, mm, from where it was begun.

    Depths are those of lower edges as worn: of a piece worked upwards they grow less.
    """
    at = next((i for i, row in enumerate(piece.rows) if row.number == planned.last_round), -1)
    if not 0 <= at < len(plan.depths):
        return 0.0
    high = planned.gauge.height.value
    up = plan.depths[-1] < plan.depths[0]
    return plan.depths[0] - plan.depths[at] + high if up else plan.depths[at]


def _row(line: Line) -> Instruction:
    return Instruction(line.label, line.text, line.count)


def _joining(drafted: Drafted) -> Iterator[Block]:
    """The seams in their order, each with what both edges measure."""
    seams = drafted.plan.program.seams
    if not seams:
        return
    yield Heading(say(drafted, "joining"))
    yield Paragraph(say(drafted, "joining_intro"))
    for seam in seams:
        yield from _seam(drafted, seam)


def _seam(drafted: Drafted, seam: Seam) -> Iterator[Block]:
    for join in drafted.plan.joins:
        if join.name == seam.name:
            yield Paragraph(capital(joined(drafted, join)) + ".")
    rounds = rounds_of(drafted.plan.program)
    line = write_seam(seam, drafted.stitches, drafted.dialect, drafted.language, rounds)
    yield Instruction(line.label, line.text, line.count)
