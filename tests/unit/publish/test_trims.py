"""Elastic, cord, band and strands: what to cut, how to do it, in which order."""

from __future__ import annotations

from dataclasses import replace

import pytest
from examples import Example
from one_piece import alter
from published import part, published, shown, text_of

from frogless.fit.model import Caution
from frogless.plan.model import ElasticPlan
from frogless.publish.blocks import Bullets, Heading, Instruction, Paragraph
from frogless.publish.instructions import instructions
from frogless.publish.trims import cord, quarter


def kinds(design: str, heading: str) -> list[str]:
    """The kinds of blocks of a part."""
    return [type(b).__name__ for b in part(published(Example(design)), heading)]


@pytest.mark.parametrize(("count", "told"), [(152, "38"), (110, "27–28"), (3, "0–1"), (0, "0")])
def test_quarter_of_a_count_is_whole_or_between_two(count: int, told: str) -> None:
    """So that four pins share any edge out."""
    assert quarter(count) == told


def test_elastic_is_cut_sewn_pinned_and_covered_in_that_order() -> None:
    """The gap is closed before something is worked over it; the row comes last."""
    blocks = part(published(Example()), "Elastic cover")
    (steps,) = (b for b in blocks if isinstance(b, Bullets))
    told = [step.replace("\u00a0", " ") for step in steps.items]
    assert [t.split()[0] for t in told] == ["With", "Cut", "Mark", "With"]
    assert "Cut 71.5 cm of elastic. Lap the ends by 2.5 cm" in told[1]
    assert "a ring of 69 cm" in told[1]
    assert "(38 stitches each)" in told[2]
    assert "2 sc in each stitch, 304 in all" in told[3]
    assert "at center back" in told[3]
    assert isinstance(blocks[-1], Instruction)


def test_cover_of_one_stitch_each_is_told_without_a_number() -> None:
    """ "1 sc in each stitch" would be said by the row alone."""
    drafted = shown(Example())
    waist = drafted.plan.main.waist
    assert isinstance(waist, ElasticPlan)
    one = replace(waist, stitches_in_each=1, cover_count=152)
    told = text_of(instructions(replace(drafted, plan=alter(drafted.plan, waist=one))))
    assert "finish above it, 152 sc in all." in told


def test_cord_comes_after_the_skirt_and_its_eyelets_before_their_round() -> None:
    """Which round has them is known before it is worked; the cord is threaded when all is done."""
    blocks = instructions(shown(Example("whirl-skirt", "dancer-2")))
    eyelets = next(
        i for i, b in enumerate(blocks) if isinstance(b, Paragraph) and "eyelets" in b.text
    )
    round_2 = next(
        i for i, b in enumerate(blocks) if isinstance(b, Instruction) and b.label == "Rnd 2 (RS)"
    )
    heading = next(
        i for i, b in enumerate(blocks) if isinstance(b, Heading) and b.text == "Drawcord"
    )
    assert eyelets < round_2 < heading
    told = text_of(blocks[heading + 1])
    assert "a cord of 145 cm" in told
    assert "(the 10th and the 11th from the join)" in told
    assert list(cord(shown(Example()))) == []


def test_cord_of_a_child_has_no_knots() -> None:
    """What the caution forbids is not asked for further down."""
    drafted = shown(Example("whirl-skirt"))
    forbids = Caution("child_cord", "No knots.", "a rule")
    fit = replace(drafted.fit, cautions=(forbids, *drafted.fit.cautions))
    assert "Knot both ends" in text_of(tuple(cord(drafted)))
    told = text_of(tuple(cord(replace(drafted, fit=fit))))
    assert "Make no knots" in told
    assert "Knot both ends" not in told


def test_eyelets_are_counted_from_the_side_when_the_join_is_there() -> None:
    """Centre front is then a quarter away."""
    drafted = shown(Example("whirl-skirt", "dancer-2"))
    work = drafted.basis.design.work.model_copy(update={"join_at": "left side"})
    design = drafted.basis.design.model_copy(update={"work": work})
    at_side = replace(drafted, basis=replace(drafted.basis, design=design))
    assert "(the 5th and the 6th from the join, counted towards the front)" in text_of(
        tuple(cord(at_side))
    )


def test_band_is_worked_closed_and_put_on_in_that_order() -> None:
    """Each seam under the sentence that says how to lay it."""
    assert kinds("procession-skirt", "Waistband") == [
        "Paragraph", "Instruction", "Instruction", "Instruction", "Instruction",
        "Heading", "Bullets", "Instruction", "Paragraph", "Instruction", "Paragraph",
    ]  # fmt: skip
    told = text_of(part(published(Example("procession-skirt")), "Waistband"))
    assert "All 124 rows should measure 65 cm, not pulled." in told
    assert "46 stitches of the skirt to 31 row ends of the band" in told
    assert "each quarter of 31 row ends takes 46: " in told


def test_strand_is_cut_threaded_worked_and_sewn_on_in_that_order() -> None:
    """Plies, beads, hook, tails; then its length, its sag and where it hangs."""
    assert kinds("ring-dance-skirt", "Front strand") == [
        "Note", "Note", "Bullets", "Instruction", "Paragraph",
    ]  # fmt: skip
    told = text_of(part(published(Example()), "Front strand"))
    assert "keep 2 of 4" in told
    assert "8, and 2 to spare" in told
    assert "160 chains in all" in told
    assert "one end 19 stitches to the wearer's right of center front" in told
    assert "the other 19 stitches to the wearer's left" in told
    assert "Center front is 76 stitches from the join." in told


def test_strand_says_what_it_does_not_know() -> None:
    """A yarn whose label does not count its plies; a point at centre front."""
    drafted = shown(Example())
    strand = replace(drafted.plan.main.strands[0], yarn_plies=None, from_stitch=0)
    told = text_of(instructions(replace(drafted, plan=alter(drafted.plan, strands=(strand,)))))
    assert "keep 2, and wind up the rest" in told
    assert "one end at center front" in told


def test_chain_start_has_no_gap_to_close_but_may_twist() -> None:
    """The foot of a foundation stitch gapes at the join; a bare chain is laid flat instead."""
    said = text_of(published(Example("procession-skirt")).blocks)
    assert "close the gap at the foot" not in said
    assert "lay it flat along a ruler" in said
