"""What a pattern of several pieces says, block by block."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
import sample_designs
from garments import basis, hat, measure, two_panels

from frogless import draft
from frogless.errors import InputError
from frogless.plan.model import SectionPlan
from frogless.publish import front, garment, garment_pages
from frogless.publish.blocks import Bullets, Heading, Instruction, Note, Paragraph, Table, Terms
from frogless.publish.drafted import Drafted
from frogless.rows.nodes import Base, Piece


@pytest.fixture
def top(tmp_path: Path) -> Drafted:
    """Front and back, joined at one side."""
    found = basis(tmp_path, "top", "front", "back")
    return draft.carry_through(found, two_panels(found))


@pytest.fixture
def crown(tmp_path: Path) -> Drafted:
    """A hat from a ring."""
    found = basis(tmp_path, "hat", "hat")
    return draft.carry_through(found, hat(found))


def straight(drafted: Drafted, first: int, last: int) -> SectionPlan:
    """A section of the first piece without shaping."""
    gauge = drafted.plan.gauges["front"]
    because = drafted.plan.main.measures[0].because
    return SectionPlan(
        "front", "double_crochet", 3.5, gauge, first, last, 85, 85, None, (), 0.0, because
    )  # fmt: skip


def test_every_measure_stands_in_the_table(top: Drafted) -> None:
    """With what was wanted, and the stitches or rows that give it."""
    (table,) = garment.measures_table(top)
    assert isinstance(table, Table)
    assert ("front", "width at the bust", "53 cm", "53 cm", "85 stitches") in table.rows
    assert ("back", "length", "44.5 cm", "–", "40 rows") in table.rows


def test_there_is_no_table_without_measures(top: Drafted) -> None:
    """Nor an empty one."""
    bare = tuple(replace(piece, measures=()) for piece in top.plan.pieces)
    assert list(garment.measures_table(replace(top, plan=replace(top.plan, pieces=bare)))) == []


def test_an_edge_is_told_without_a_count(top: Drafted) -> None:
    """It is made of stitches and row ends both."""
    edge = measure("neck edge", "edge", 310.0, 60)
    assert garment.measured(top, edge) == "neck edge 31 cm"


def test_edges_of_one_length_are_told_once(top: Drafted) -> None:
    """As they are shown."""
    (join,) = top.plan.joins
    same = replace(join, second_length=join.first_length)
    assert garment.joined(top, same) == "front left side and back right side, 44.5 cm each"


def test_pieces_and_joins_have_headings_in_the_order_worked(top: Drafted) -> None:
    """Then the seam, after what its edges measure."""
    blocks = garment.garment_instructions(top)
    heads = [block.text for block in blocks if isinstance(block, Heading)]
    assert heads == ["Front", "Back", "Joining"]
    assert Paragraph("Worked in rows, turned.") in blocks
    *_, told, seam = blocks
    assert isinstance(told, Paragraph)
    assert "ease in front left side" in told.text
    assert isinstance(seam, Instruction)
    assert seam.label == "Seam left side"


@pytest.mark.parametrize(("last", "length"), [(20, "22 cm"), (40, "44.5 cm")])
def test_a_section_ends_with_a_check_of_width_and_length(
    top: Drafted, last: int, length: str
) -> None:
    """20 and 40 rows of 1.11 cm."""
    front = replace(top.plan.main, sections=(straight(top, 1, last),))
    plan = replace(top.plan, pieces=(front, *top.plan.pieces[1:]))
    blocks = garment.garment_instructions(replace(top, plan=plan))
    (check,) = [block for block in blocks if isinstance(block, Note)]
    assert check.text == f"After row {last}: 85 dc, 53 cm wide and {length} long."


def test_length_is_told_from_the_beginning_when_worked_upwards(top: Drafted) -> None:
    """Depths from the top grow less: 20 of 40 rows are half of it."""
    main = top.plan.main
    high = top.plan.gauges["front"].height.value
    depths = tuple(high * max(40 - (n - 1), 0) if n else high * 40 for n in range(41))
    front = replace(main, sections=(straight(top, 1, 20),), depths=depths)
    plan = replace(top.plan, pieces=(front, *top.plan.pieces[1:]))
    blocks = garment.garment_instructions(replace(top, plan=plan))
    (check,) = [block for block in blocks if isinstance(block, Note)]
    assert "22 cm long" in check.text


def test_a_turning_chain_is_told_once_for_all_rows(top: Drafted) -> None:
    """Of two pieces in one stitch."""
    (bullets,) = [b for b in garment_pages.before(top) if isinstance(b, Bullets)]
    told = [line for line in bullets.items if line.startswith("A chain of 2")]
    assert told == [
        "A chain of 2 at the beginning of a row of dc does not count as a stitch, in text or counts."
    ]


def test_why_begins_a_measure_with_what_was_wanted(top: Drafted) -> None:
    """And leaves edges to the table."""
    front = replace(
        top.plan.main,
        measures=(*top.plan.main.measures, measure("neck edge", "edge", 310.0, 0)),
    )
    plan = replace(top.plan, pieces=(front, *top.plan.pieces[1:]))
    (terms,) = [b for b in garment_pages.why(replace(top, plan=plan)) if isinstance(b, Terms)]
    told = dict(terms.items)
    assert told["front, width at the bust"].startswith("53 cm wanted")
    assert "front, neck edge" not in told


def test_the_glance_tells_openings_and_time(crown: Drafted) -> None:
    """The brim of the hat, and how long it takes; no landmark is made up."""
    blocks = (*garment_pages.glance(crown), *front.wearing(crown))
    figures, wearing = [block for block in blocks if isinstance(block, Bullets)]
    assert any(line.startswith("Going on: The brim of 56 cm (hat)") for line in wearing.items)
    assert any(line.startswith("Working time") for line in figures.items)
    assert len([block for block in blocks if isinstance(block, Table)]) == 1


def begun_on(top: Drafted, *names: str) -> Piece:
    """A band that is begun along the last rows of pieces."""
    rows = top.plan.program.pieces[0].rows[1:2]
    return Piece("band", True, rows, tuple(Base(name, "last_row") for name in names))


@pytest.mark.parametrize(("names", "told"), [(("front", "back"), True), (("front",), False)])
def test_seams_come_before_a_band_that_goes_over_them(
    top: Drafted, names: tuple[str, ...], told: bool
) -> None:
    """A neckband goes round front and back: they have to hang together first."""
    program = top.plan.program
    both = replace(program, pieces=(*program.pieces, begun_on(top, *names)))
    found = garment.garment_instructions(replace(top, plan=replace(top.plan, program=both)))
    texts = [block.text for block in found if isinstance(block, Paragraph)]
    assert any(text.startswith("It goes on from one piece to the next") for text in texts) is told


def test_sleeve_begun_on_what_is_not_sewn_needs_no_seam(top: Drafted) -> None:
    """As those of a yoke."""
    program = top.plan.program
    both = replace(program, pieces=(*program.pieces, begun_on(top, "front", "back")), seams=())
    found = garment.garment_instructions(replace(top, plan=replace(top.plan, program=both)))
    texts = [block.text for block in found if isinstance(block, Paragraph)]
    assert not any(text.startswith("It goes on from one piece") for text in texts)


BODY = sample_designs.body(waist_girth="64 cm", head_girth="56 cm")
HAT = """format = "frogless-design/1"
title = "Cap"
[garment]
kind = "hat"
[work]
stitch = "double_crochet"
rounds = "joined"
turning_chain = 3
turning_chain_counts = true
[[piece]]
construction = "disc"
name = "crown"
girth = "50 cm"
edging = { pattern = "fringe", hook = "3 mm", parameters = { every = 5 } }
"""


def test_edging_of_a_piece_is_told_before_its_rows(tmp_path: Path) -> None:
    """As that of a skirt: what it is, its hook, and what it is worked over; 50 cm are 100 of 5 mm."""
    made = draft.develop(sample_designs.basis(tmp_path, HAT, BODY, sample_designs.swatch(20, 10)))
    blocks = list(garment.garment_instructions(made))
    at = next(
        i for i, one in enumerate(blocks) if isinstance(one, Heading) and one.text == "Edging"
    )
    said = blocks[at + 1]
    assert isinstance(said, Paragraph)
    assert said.text.startswith("Fringe with the 3 mm hook, over 100 stitches: 20 repeats of 5.")


def test_fault_in_the_edging_of_a_piece_is_told_with_its_line(tmp_path: Path) -> None:
    """In the piece, not at the top of the file, where no edging is."""
    text = HAT.replace("every = 5", "every = 50")
    found = sample_designs.basis(tmp_path, text, BODY, sample_designs.swatch(20, 10))
    with pytest.raises(InputError, match=r"toml:14 piece\[1\].edging.parameters: \"50\" is not"):
        draft.develop(found)
