"""Notions."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from sample_plans import edging

from frogless.plan.model import CordPlan, EdgingBeadsPlan, ElasticPlan, Plan, StrandPlan
from frogless.rows.nodes import Row
from frogless.tally.model import Notion
from frogless.tally.notions import notions

Rows = Callable[..., tuple[Row, ...]]


def of(key: str, plan: Plan) -> list[Notion]:
    """The notions of one key."""
    return [notion for notion in notions(plan) if notion.key == key]


def test_each_size_of_hook_is_listed_once_when_several_are_used(
    plan: Callable[..., Plan], rows: Rows, strand: Callable[..., StrandPlan]
) -> None:
    """With what it is for, the strand's among them; a row without a size asks for none."""
    made = plan(
        rows(hook=4.0),
        rows(hook=2.25, section="edging"),
        rows(section="other"),
        strands=(strand(),),
    )
    hooks = of("hook", made)
    assert [hook.detail for hook in hooks] == ["4 mm: body", "2.25 mm: edging", "0.6 mm: strand"]
    assert all(hook.pieces == 1 for hook in hooks)


def test_markers_are_the_shaping_points_and_the_join_when_a_round_is_shaped(
    plan: Callable[..., Plan], rows: Rows
) -> None:
    """Eight and one; one alone in a tube."""
    assert of("marker", plan(rows(marks=(0,) * 8)))[0].pieces == 9
    assert of("marker", plan(rows()))[0].pieces == 1


def test_no_marker_is_asked_for_when_nothing_is_shaped_or_closed(
    plan: Callable[..., Plan], rows: Rows
) -> None:
    """A flat strip has no join."""
    made = plan(rows())
    flat = replace(made.program.pieces[0], closed=False)
    made = replace(made, program=replace(made.program, pieces=(flat,)))
    assert of("marker", made) == []


def test_the_elastic_is_told_with_its_cut_and_stretch_when_there_is_one(
    plan: Callable[..., Plan], rows: Rows, elastic: ElasticPlan
) -> None:
    """Width, kind, lap, and a warning where comfort ends; needle and thread with it."""
    made = plan(rows(), waist=elastic)
    (notion,) = of("elastic", made)
    assert notion.length == 781.0
    for words in ("2 cm wide", "knitted", "2.5 cm is the lap", "1.48 times", "try it"):
        assert words in notion.detail
    assert len(of("sewing_needle", made)) == 1


def test_no_warning_is_given_when_the_elastic_stretches_far_enough(
    plan: Callable[..., Plan], rows: Rows, elastic: ElasticPlan
) -> None:
    """Nothing to try before cutting."""
    easy = replace(elastic, needed_stretch=1.3)
    assert "try it" not in of("elastic", plan(rows(), waist=easy))[0].detail


def test_the_cord_is_told_with_its_yarn_when_there_is_one(
    plan: Callable[..., Plan], rows: Rows, cord: CordPlan
) -> None:
    """Four to eight times its length."""
    (notion,) = of("cord", plan(rows(), waist=cord))
    assert notion.length == 1540.0
    assert "20 eyelets" in notion.detail
    assert "6 m to 12 m" in notion.detail


@pytest.mark.parametrize(("hole", "words"), [(1.0, "and pass"), (0.8, "do not pass")])
def test_beads_are_told_with_hole_and_spares_when_a_strand_has_some(
    plan: Callable[..., Plan],
    rows: Rows,
    strand: Callable[..., StrandPlan],
    hole: float,
    words: str,
) -> None:
    """Twelve and two; two plies of 0.45 mm folded are 0.9 mm."""
    made = plan(rows(), strands=(strand(hole=hole),))
    (notion,) = of("bead", made)
    assert notion.pieces == 14
    assert words in notion.detail
    assert len(of("beading_needle", made)) == 1


def test_a_yarn_needle_and_a_tape_are_listed_when_nothing_else_is_needed(
    plan: Callable[..., Plan], rows: Rows
) -> None:
    """Every garment has ends to weave in and girths to check."""
    made = plan(rows())
    assert len(of("yarn_needle", made)) == len(of("tape_measure", made)) == 1
    assert of("sewing_needle", made) == of("beading_needle", made) == []


@pytest.mark.parametrize(
    ("hole", "thick", "told"),
    [
        (2.0, 0.9, "folded at the needle is about 1.8 mm and passes"),
        (1.5, 0.9, "and does not pass: take a larger hole"),
        (1.5, None, "the yarn passes it folded at the needle: try one first"),
    ],
)
def test_beads_of_an_edging_are_listed_with_what_their_hole_has_to_pass(
    plan: Callable[..., Plan], rows: Rows, hole: float, thick: float | None, told: str
) -> None:
    """Those to spare among them, and a needle that passes them."""
    beads = EdgingBeadsPlan(32, 4, 1, 3.0, hole, thick, (32,))
    made = plan(rows())
    edged = replace(made.main, edging=replace(edging(32, 8, 1420.0, 1), beads=beads))
    made = replace(made, pieces=(edged,))
    (bead,) = of("bead", made)
    assert bead.pieces == 36
    assert bead.detail.startswith("edging: 4 spare among them, about 3 mm across, hole ")
    assert told in bead.detail
    assert len(of("beading_needle", made)) == 1
