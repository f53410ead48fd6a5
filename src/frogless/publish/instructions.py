"""The instructions: every piece with its rows, what each section does, what the tape should say."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.fit.flare import describe_fullness
from frogless.plan.model import CordPlan, EdgingPlan, SectionPlan
from frogless.publish import patterned
from frogless.publish.blocks import Block, Heading, Instruction, Note, Paragraph
from frogless.publish.drafted import Drafted, is_closed, waist_of
from frogless.publish.front import name_of, stray
from frogless.publish.materials import hook_size
from frogless.publish.messages import say
from frogless.publish.remarks import notes_at
from frogless.publish.trims import after_rows, before_rows, begins_on_chain, cord, eyelets
from frogless.rows.nodes import Piece
from frogless.units import show_length
from frogless.write.fold import Line
from frogless.write.pattern import WrittenPiece, write_pieces
from frogless.write.rhythm import rhythm_sentence

#: A chain of more than this, joined into a ring, is easily twisted (common practice).
LONG_CHAIN = 60


def instructions(drafted: Drafted) -> tuple[Block, ...]:
    """All pieces in the order worked, each under a heading of its own."""
    program = drafted.plan.program
    written = write_pieces(program, drafted.stitches, drafted.dialect, drafted.language)
    blocks: list[Block] = []
    for piece, words in zip(program.pieces, written, strict=True):
        blocks.append(Heading(capital(piece.name)))
        if piece is program.pieces[0]:
            blocks.extend(_main(drafted, piece, words))
            blocks.extend(cord(drafted))
        else:
            blocks.extend(before_rows(drafted, piece))
            blocks.extend(_row(line) for line in words.lines)
            blocks.extend(after_rows(drafted, piece))
    return tuple(blocks)


def capital(text: str) -> str:
    """The text with its first letter as a capital."""
    return text[:1].upper() + text[1:]


def _main(drafted: Drafted, piece: Piece, words: WrittenPiece) -> Iterator[Block]:
    """Section by section: what it does, its rows, and what to check on the tape."""
    join = say(drafted, f"join_{drafted.join_at}")
    yield Paragraph(say(drafted, "begin", join=join))
    first = piece.rows[0]
    if begins_on_chain(drafted) and first.count > LONG_CHAIN and first.end.join != "none":
        yield Paragraph(say(drafted, "long_chain"))
    sections = {row.number: row.section for row in piece.rows}
    current = ""
    for line in words.lines:
        section = sections[line.first_row]
        if section != current:
            yield from _before_section(drafted, section)
        current = section
        yield _row(line)
        yield from _after_line(drafted, line)


def _row(line: Line) -> Instruction:
    return Instruction(line.label, line.text, line.count)


def _before_section(drafted: Drafted, name: str) -> Iterator[Block]:
    yield Heading(capital(name), 2)
    planned = next((s for s in drafted.plan.main.sections if s.name == name), None)
    if planned is None:
        yield from _edging_intro(drafted)
        return
    yield Paragraph(" ".join(section_sentences(drafted, drafted.plan.main.name, planned)))
    waist = waist_of(drafted)
    if isinstance(waist, CordPlan) and _holds(planned, waist.eyelet_round):
        yield from eyelets(drafted, waist)


def _holds(planned: SectionPlan, round_: int) -> bool:
    return planned.first_round <= round_ <= planned.last_round


def section_sentences(drafted: Drafted, piece: str, planned: SectionPlan) -> Iterator[str]:
    """Counts, rhythm, how what is worked round lies, and where it leaves its smooth outline."""
    rounds = planned.last_round - max(planned.first_round, 1) + 1
    chosen, closed = planned.chosen, is_closed(drafted, piece)
    flat = "" if closed else "_flat"
    if planned.pattern is not None:
        yield from patterned.sentences(drafted, planned, planned.pattern, closed=closed)
        if chosen is None:
            return
    if chosen is None:
        yield _without_rhythm(drafted, piece, planned, rounds)
        return
    more = "add" if planned.count_after > planned.count_before else "less"
    yield say(
        drafted, f"shape{flat}", before=planned.count_before, after=planned.count_after, rounds=rounds,
        points=chosen.points, add=say(drafted, f"{more}_{chosen.add}"),
        rhythm=rhythm_sentence(
            chosen.rhythm, planned.first_round - 1, drafted.language, closed=closed,
        ),
    )  # fmt: skip
    if closed:
        yield lies(drafted, planned)
    yield from stray(drafted, chosen, "stray")


def _without_rhythm(drafted: Drafted, piece: str, planned: SectionPlan, rounds: int) -> str:
    """Straight, where every row has as many stitches; else shaped in a way that its rows tell."""
    counts = [
        row.count
        for part in drafted.plan.program.pieces
        if part.name == piece or part.name.startswith(f"{piece}, ")
        for row in part.rows
        if max(planned.first_round, 1) <= row.number <= planned.last_round
    ]
    kept = {planned.count_before, planned.count_after, *counts}
    one = "_one" if rounds == 1 else ""
    flat = "" if is_closed(drafted, piece) else "_flat"
    if len(kept) == 1:
        return say(drafted, f"straight{one}{flat}", rounds=rounds, count=planned.count_after)
    first = counts[0] if counts else planned.count_before
    return say(
        drafted, f"as_told{one}{flat}", rounds=rounds, first=first, last=planned.count_after
    )  # fmt: skip


def lies(drafted: Drafted, planned: SectionPlan) -> str:
    """What a section looks like, worked round, in plain words."""
    what = describe_fullness(planned.fullness)
    way = ("_narrower" if planned.fullness < 0 else "_wider") if what == "cone" else ""
    return say(drafted, f"lies_{what}{way}")


def _after_line(drafted: Drafted, line: Line) -> Iterator[Block]:
    """At the end of a section: the count, and the girth and the length to find on the tape."""
    for planned in drafted.plan.main.sections:
        if line.first_row <= planned.last_round <= line.last_row:
            yield Note("check", _check(drafted, planned), say(drafted, "note_check"))


def _check(drafted: Drafted, planned: SectionPlan) -> str:
    units = drafted.units
    depth = drafted.plan.main.depths[planned.last_round]
    girth = planned.girth_after.value
    flat, worn = show_length(depth / stretched(drafted), units), show_length(depth, units)
    text = say(
        drafted, "check_section", round=planned.last_round,
        count=patterned.check_count(drafted, planned),
        flat=show_length(girth / 2, units), girth=show_length(girth, units),
        depth=flat,
    )  # fmt: skip
    return text if flat == worn else text + say(drafted, "check_worn", depth=worn)


def stretched(drafted: Drafted) -> float:
    """Worn length over the length lying flat."""
    return 1 + (drafted.basis.growth.value if drafted.basis.growth else 0.0)


def _edging_intro(drafted: Drafted) -> Iterator[Block]:
    plan = drafted.plan.main.edging
    if plan is not None:
        yield from edging_intro(drafted, plan)
        yield from notes_at(drafted, "edging")


def edging_intro(drafted: Drafted, plan: EdgingPlan) -> Iterator[Block]:
    """What an edging is worked with and over, and what its first round changes."""
    key = "edging_intro" if plan.multiple > 1 else "edging_intro_one"
    told = say(
        drafted, key, name=capital(name_of(drafted, plan)), hook=hook_size(drafted, plan.hook),
        base=plan.base_count, repeats=plan.repeats, multiple=plan.multiple,
    )  # fmt: skip
    if plan.correction:
        correction = say(drafted, "edging_correction", hem=plan.hem_count, base=plan.base_count)
        told = f"{told} {correction}"
    yield Paragraph(told)
