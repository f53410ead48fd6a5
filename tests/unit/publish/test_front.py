"""The sizes at a glance, and what to know before the start."""

from __future__ import annotations

from dataclasses import replace

import pytest
from examples import Example
from one_piece import alter
from published import part, published, shown, text_of

from frogless.plan.model import CordPlan, ElasticPlan
from frogless.publish.blocks import Bullets, Table
from frogless.publish.front import (
    before,
    edging_name,
    glance,
    greatest_stray,
    is_gathered,
    stray,
)
from frogless.rows.nodes import Together
from frogless.units import Units, show_length, show_signed


@pytest.mark.parametrize(
    ("length", "units", "told"),
    [(40, "cm", "+4 cm"), (-13, "in", "−1/2 in"), (0.4, "cm", "0 cm"), (-2, "in", "0 in")],
)
def test_length_has_its_sign(length: float, units: Units, told: str) -> None:
    """With a real minus, and without a sign where nothing is left after rounding."""
    assert show_signed(length, units) == told


def test_waist_is_called_ungathered_when_something_draws_it_in() -> None:
    """84.5 cm drawn in to a ring of 69 cm; a ring as wide as the edge gathers nothing."""
    drafted = shown(Example())
    waist = drafted.plan.main.waist
    assert isinstance(waist, ElasticPlan)
    assert is_gathered(drafted)
    wide = replace(waist, finished=drafted.plan.main.landmarks[0].garment.value)
    assert not is_gathered(replace(drafted, plan=alter(drafted.plan, waist=wide)))
    assert not is_gathered(replace(drafted, plan=alter(drafted.plan, waist=None)))
    cord = shown(Example("whirl-skirt"))
    assert isinstance(cord.plan.main.waist, CordPlan)
    assert is_gathered(cord)


def test_greatest_stray_says_how_far_which_way_and_where() -> None:
    """The worst of all sections, in the reader's units."""
    drafted = shown(Example())
    chosen = [s.chosen for s in drafted.plan.main.sections if s.chosen]
    worst = max(chosen, key=lambda option: abs(option.stray))
    way = "wider" if worst.stray > 0 else "narrower"
    far = show_length(abs(worst.stray), "cm")
    (told,) = greatest_stray(drafted)
    assert told.text.startswith(f"Between these places it is at most {far} {way} than wanted")
    assert told.key == "section.skirt.2.stray"
    assert list(stray(drafted, replace(worst, stray=1.0), "glance_stray")) == []
    (wider,) = stray(drafted, replace(worst, stray=20.0), "glance_stray")
    assert "2 cm wider" in wider


def test_length_counts_the_edging_and_the_band() -> None:
    """From the waist edge to the hem, with the edging, and what stands above the edge."""
    told = text_of(part(published(Example("procession-skirt")), "At a glance"))
    assert "rounds; worn, it hangs 73" in told
    assert "with the edging; the band stands 5 cm above the waist edge" in told


def test_verdict_stands_with_the_ease_it_is_about() -> None:
    """Only where it is not as it should be."""
    drafted = shown(Example())
    marks = (*drafted.fit.landmarks[:2], replace(drafted.fit.landmarks[2], verdict="tight"))
    fit = replace(drafted.fit, landmarks=(*marks, drafted.fit.landmarks[3]))
    from_tight = part(published(Example()), "At a glance")
    assert "tight" not in text_of(next(b for b in from_tight if isinstance(b, Table)))
    (table,) = (b for b in glance(replace(drafted, fit=fit)) if isinstance(b, Table))
    assert table.rows[2][3].endswith(", tight")


def test_estimates_are_named_and_marked() -> None:
    """Dancer 4's lengths come from her stature."""
    told = text_of(part(published(Example("rehearsal-skirt", "dancer-4")), "At a glance"))
    assert "Estimated, not measured: waist to hip 19 cm." in told


@pytest.mark.parametrize(
    ("design", "told"),
    [
        ("ring-dance-skirt", "The turning chain of 2 does not count as a stitch"),
        ("rehearsal-skirt", "The turning chain of 3 counts as the first dc of the round"),
        ("procession-skirt", "in a spiral, right side always facing"),
        ("whirl-skirt", "measure how far the join has moved from center back"),
    ],
)
def test_way_of_working_is_told_before_the_start(design: str, told: str) -> None:
    """Turned, not turned or in a spiral; a spiral has no turning chain to speak of."""
    said = text_of(part(published(Example(design)), "Before you start"))
    assert told in said
    assert ("turning chain" in said) == (design != "procession-skirt")


def test_designers_notes_stand_before_the_start() -> None:
    """As they were written."""
    blocks = part(published(Example()), "Before you start")
    (bullets,) = (b for b in blocks if isinstance(b, Bullets))
    assert set(shown(Example()).basis.design.notes) <= set(bullets.items)


def test_edging_is_called_in_the_dialect() -> None:
    """Nothing to call when there is none."""
    drafted = shown(Example())
    assert edging_name(drafted) == "picot edging"
    assert edging_name(replace(drafted, plan=alter(drafted.plan, edging=None))) == ""


@pytest.mark.parametrize(
    ("design", "told"),
    [
        ("ring-dance-skirt", "work up to the marked stitch, work the increase into it"),
        ("procession-skirt", "after ten rounds measure how far it has moved from center back"),
        ("procession-skirt", "the slip stitch at the very end evens it out"),
        ("rehearsal-skirt", "from the join over the back first, then over the front"),
        ("whirl-skirt", "Left-handed: work as written"),
    ],
)
def test_before_you_start_tells_what_markers_joins_and_hands_need(design: str, told: str) -> None:
    """What a marker is for, how a spiral drifts and ends, which way the rounds go."""
    assert told in text_of(part(published(Example(design)), "Before you start"))


def test_marker_of_a_decrease_stands_in_one_of_the_two() -> None:
    """A skirt that narrows is told what its markers mean there."""
    drafted = shown(Example())
    program = drafted.plan.program
    skirt, *others = program.pieces
    body = (Together("double_crochet", 2),)
    rows = tuple(replace(row, body=body) if row.marks else row for row in skirt.rows)
    pieces = (replace(skirt, rows=rows), *others)
    plan = replace(drafted.plan, program=replace(program, pieces=pieces))
    drafted = replace(drafted, plan=plan)
    assert "work the increase into it" not in text_of(before(drafted))
    assert "the marked stitch is one of those that are worked together" in text_of(before(drafted))


def test_tall_spiral_is_told_how_to_taper_its_step() -> None:
    """A slip stitch does not even out a step as high as a half double crochet."""
    drafted = shown(Example("procession-skirt"))
    design = drafted.basis.design
    work = design.work.model_copy(update={"stitch": "half_double_crochet"})
    basis = replace(drafted.basis, design=design.model_copy(update={"work": work}))
    told = text_of(before(replace(drafted, basis=basis)))
    assert "with sl st, sc in place of its first 2 hdc" in told
    assert "evens it out" not in told
