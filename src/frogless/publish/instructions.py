"""The instructions: every piece with its rows, what each section does, and what the tape should say."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.fit.flare import describe_fullness, flare_sentence
from frogless.plan.model import BandPlan, CordPlan, ElasticPlan, Option, SectionPlan, StrandPlan
from frogless.publish.blocks import Block, Bullets, Heading, Instruction, Note, Paragraph
from frogless.publish.drafted import Drafted
from frogless.publish.front import edging_name
from frogless.publish.messages import say
from frogless.rows.nodes import Piece
from frogless.units import show_fine, show_length
from frogless.write.fold import Line
from frogless.write.pattern import WrittenPiece, write_pieces
from frogless.write.rhythm import rhythm_sentence


def instructions(drafted: Drafted) -> tuple[Block, ...]:
    """All pieces in the order worked."""
    program = drafted.plan.program
    written = write_pieces(program, drafted.stitches, drafted.dialect, drafted.language)
    blocks: list[Block] = [Heading(say(drafted, "instructions"))]
    for piece, words in zip(program.pieces, written, strict=True):
        blocks.extend(_piece(drafted, piece, words))
    return tuple(blocks)


def _piece(drafted: Drafted, piece: Piece, words: WrittenPiece) -> Iterator[Block]:
    """A piece: its heading, then section by section the lines, before them what they do, after them the check."""
    yield Heading(capital(piece.name), 2)
    yield Paragraph(capital(words.heading))
    yield from _how(drafted, piece)
    sections = {row.number: row.section for row in piece.rows}
    several = len(set(sections.values())) > 1
    current = ""
    for line in words.lines:
        section = sections[line.first_row]
        if section != current and several:
            yield from _before_section(drafted, section)
        current = section
        yield Instruction(line.label, line.text, line.count)
        if several:
            yield from _after_line(drafted, line)


def capital(text: str) -> str:
    """The text with its first letter as a capital."""
    return text[:1].upper() + text[1:]


def _before_section(drafted: Drafted, name: str) -> Iterator[Block]:
    yield Heading(capital(name), 3)
    planned = next((s for s in drafted.plan.sections if s.name == name), None)
    if planned is None:
        yield from _edging_intro(drafted)
        return
    yield Paragraph(_section_sentence(drafted, planned))
    if planned.chosen is not None:
        yield Paragraph(
            say(
                drafted, "flare", sentence=_flare(drafted, planned),
                stray=show_length(abs(planned.chosen.stray), drafted.units),
                depth=show_length(planned.chosen.stray_at, drafted.units),
            )
        )  # fmt: skip
        for other in planned.others[:1]:
            yield Note("hint", _other(drafted, planned, other))


def _flare(drafted: Drafted, planned: SectionPlan) -> str:
    """How full the section is; where it ends at the hip, also how many surveyed bodies that suits."""
    ends_at_hip = any(
        m.key == "hip_girth" and m.rounds == planned.last_round for m in drafted.plan.landmarks
    )
    if ends_at_hip or describe_fullness(planned.fullness) != "cone" or planned.fullness < 0:
        return flare_sentence(planned.fullness)
    return say(drafted, "cone", share=f"{planned.fullness:.2f}")


def _section_sentence(drafted: Drafted, planned: SectionPlan) -> str:
    rounds = planned.last_round - planned.first_round + 1
    chosen = planned.chosen
    if chosen is None:
        return say(drafted, "straight", rounds=rounds, count=planned.count_after)
    more = "add" if planned.count_after > planned.count_before else "less"
    return say(
        drafted, "shape", before=planned.count_before, after=planned.count_after, rounds=rounds,
        shapings=len(chosen.rhythm.rounds), points=chosen.points,
        add=say(drafted, f"{more}_{chosen.add}"),
        rhythm=rhythm_sentence(chosen.rhythm, planned.first_round - 1, drafted.language),
    )  # fmt: skip


def _other(drafted: Drafted, planned: SectionPlan, other: Option) -> str:
    return say(
        drafted, "other", points=other.points,
        rhythm=rhythm_sentence(other.rhythm, planned.first_round - 1, drafted.language),
        stray=show_length(abs(other.stray), drafted.units),
    )  # fmt: skip


def _after_line(drafted: Drafted, line: Line) -> Iterator[Block]:
    """At the end of a section: depth, girth and count to check on the tape."""
    for planned in drafted.plan.sections:
        if line.first_row <= planned.last_round <= line.last_row:
            depth = drafted.plan.depths[planned.last_round]
            girth = planned.count_after * planned.gauge.width.value
            units = drafted.units
            text = say(
                drafted, "check_section", round=planned.last_round, depth=show_length(depth, units),
                girth=show_length(girth, units), flat=show_length(girth / 2, units),
                count=f"{planned.count_after} {drafted.short(planned.stitch)}",
            )  # fmt: skip
            grown = drafted.basis.growth
            if grown is not None and grown.value > 0:
                worked = show_length(depth / (1 + grown.value), units)
                text += say(drafted, "check_worked", depth=worked)
            yield Note("check", text)


def _edging_intro(drafted: Drafted) -> Iterator[Block]:
    plan = drafted.plan.edging
    if plan is None:
        return
    key = "edging_intro" if plan.multiple > 1 else "edging_intro_one"
    yield Paragraph(
        say(
            drafted, key, name=capital(edging_name(drafted)), base=plan.base_count, repeats=plan.repeats,
            multiple=plan.multiple,
        )
    )  # fmt: skip
    if plan.correction:
        yield Paragraph(say(drafted, "edging_correction", hem=plan.hem_count, base=plan.base_count))


def _how(drafted: Drafted, piece: Piece) -> Iterator[Block]:
    """What to do besides the rows of a trim's piece."""
    waist = drafted.plan.waist
    main = drafted.plan.program.pieces[0]
    if piece is main and isinstance(waist, CordPlan):
        yield Bullets(tuple(_cord(drafted, waist)))
    elif isinstance(waist, ElasticPlan) and piece.name == "elastic cover":
        yield Bullets(tuple(_elastic(drafted, waist)))
    elif isinstance(waist, BandPlan) and piece.name == "waistband":
        girth = show_length(waist.girth.value, drafted.units)
        yield Bullets((say(drafted, "band_1", girth=girth), say(drafted, "band_2")))
    for strand in drafted.plan.strands:
        if strand.name == piece.name:
            yield Bullets(tuple(_strand(drafted, strand)))


def _elastic(drafted: Drafted, plan: ElasticPlan) -> Iterator[str]:
    units = drafted.units
    yield say(
        drafted, "elastic_1", cut=show_length(plan.cut, units), lap=show_length(plan.lap, units),
        ring=show_length(plan.finished, units),
    )  # fmt: skip
    yield say(drafted, "elastic_2", quarter=_about(plan.base_count / 4))
    yield say(
        drafted, "elastic_3", n=plan.stitches_in_each, stitch=drafted.short("single_crochet"),
        total=plan.cover_count,
    )  # fmt: skip


def _about(value: float) -> str:
    return f"{value:g}" if value == int(value) else f"about {round(value)}"


def _cord(drafted: Drafted, plan: CordPlan) -> Iterator[str]:
    yield say(drafted, "cord_1", round=plan.eyelet_round, eyelets=len(plan.gaps))
    yield say(drafted, "cord_2", cord=show_length(plan.cord, drafted.units))
    if drafted.basis.design.work.join_at != "centre back":
        yield say(drafted, "cord_join_side", count=len(plan.gaps) // 4)


def _strand(drafted: Drafted, plan: StrandPlan) -> Iterator[str]:
    units = drafted.units
    key = "strand_1" if plan.yarn_plies else "strand_1_unknown"
    yield say(
        drafted, key, cut=show_length(plan.cut_yarn, units), plies=plan.plies, of=plan.yarn_plies
    )
    yield say(
        drafted, "strand_2", beads=plan.beads, spare=plan.spare_beads,
        chains=plan.chains, tail=show_length(plan.tails, units), hook=show_fine(plan.hook, units),
    )  # fmt: skip
    yield say(drafted, "strand_hooks", plies=plan.plies)
    yield say(
        drafted, "strand_3", length=show_length(plan.length.value, units),
        sag=show_length(plan.actual_sag, units), here=_point(drafted, plan.from_stitch),
        there=_point(drafted, plan.to_stitch),
    )  # fmt: skip


def _point(drafted: Drafted, stitch: int) -> str:
    if stitch == 0:
        return say(drafted, "strand_at_front")
    return say(drafted, "strand_at_left" if stitch > 0 else "strand_at_right", n=abs(stitch))
