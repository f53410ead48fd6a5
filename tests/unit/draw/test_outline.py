"""The outline round by round, and where shaping points run."""

from __future__ import annotations

from dataclasses import replace

import pytest
from one_piece import alter
from sample_plans import Sample, Stretch, build, circle, flared, long, pegged, straight, tiny

from frogless.draw.outline import (
    edging_height,
    fold,
    girth_at,
    is_front,
    levels,
    shaping_lines,
    shaping_rounds,
    wanted_at,
    wanted_profile,
)
from frogless.plan.model import Plan
from frogless.rows.nodes import Into, Piece, Program, Repeat, Skip, Start, Together, Work


def test_every_round_has_its_level(any_plan: Plan) -> None:
    """Rounds run from 0 to the hem; the last level has the count that the last section ends on."""
    shape = levels(any_plan)
    assert [level.round for level in shape] == list(range(any_plan.sections[-1].last_round + 1))
    assert shape[-1].count == any_plan.sections[-1].count_after
    assert shape[0].count == any_plan.sections[0].count_before


def test_levels_meet_the_counts_of_the_landmarks(any_plan: Plan) -> None:
    """At the rounds of a landmark the outline has its count, girth and depth."""
    shape = levels(any_plan)
    for mark in any_plan.landmarks:
        level = shape[mark.rounds]
        assert level.count == mark.count
        assert level.girth == pytest.approx(mark.garment.value)
        assert level.depth == pytest.approx(mark.depth)


def test_levels_meet_the_counts_of_the_rows(any_plan: Plan) -> None:
    """The row program and the section plans tell of the same rounds."""
    rows = any_plan.program.pieces[0].rows
    assert [level.count for level in levels(any_plan)] == [row.count for row in rows]


def test_shaping_rounds_are_numbered_through_the_piece() -> None:
    """The second section's third round is round 13 when ten lie above."""
    found = [shaping_rounds(section) for section in build(flared()).sections]
    assert found[:2] == [(1, 4, 7, 10), (13, 16, 19)]
    assert shaping_rounds(build(straight()).sections[1]) == ()


def test_levels_fall_when_a_section_decreases() -> None:
    """From hip 194 to hem 178 by four at a time."""
    counts = [level.count for level in levels(build(pegged()))][22:]
    assert sorted(set(counts), reverse=True) == [194, 190, 186, 182, 178]


def test_top_edge_is_added_when_the_foundation_has_a_height() -> None:
    """A foundation 8 mm high begins at depth 0 all the same."""
    plan = build(tiny())
    deeper = alter(plan, depths=tuple(depth + 8 for depth in plan.main.depths))
    first, second, *_ = levels(deeper)
    assert (first.depth, second.depth) == (0.0, 8.0)
    assert first.girth == second.girth


def test_girth_runs_straight_between_rounds() -> None:
    """Half way between two lower edges the girth is half way; beyond the ends it stays."""
    shape = levels(build(flared()))
    assert girth_at(shape, 5.0) == pytest.approx((shape[0].girth + shape[1].girth) / 2)
    assert girth_at(shape, -50.0) == shape[0].girth
    assert girth_at(shape, 5000.0) == shape[-1].girth


def test_wanted_girth_runs_straight_between_landmarks() -> None:
    """Half way from high hip (101 cm) to hip (116 cm) 108.5 cm are wanted."""
    assert wanted_at(build(flared()), 150.0) == pytest.approx(1085.0)


def test_wanted_girth_keeps_still_over_a_straight_section() -> None:
    """A high waist is wanted straight down to the natural waist, not on its way to the hip."""
    depths, girths = zip(*wanted_profile(build(long())), strict=True)
    assert girths[:2] == (752.0, 752.0)
    assert depths == pytest.approx([0.0, 48.0, 144.0, 252.0, 1044.0])


def test_wanted_girth_holds_from_the_hip_when_the_hip_lies_between_two_rounds() -> None:
    """A hip 4 mm below the last shaped round: from there straight down, without a step back."""
    plan = build(straight())
    waist, hip, hem = plan.main.landmarks
    deeper = alter(plan, landmarks=(waist, replace(hip, depth=hip.depth + 4), hem))
    assert [girth for _, girth in wanted_profile(deeper)] == [964.0, 1015.0, 1015.0]


def test_wanted_girth_ends_on_the_worked_one_when_no_landmark_is_met() -> None:
    """Where a shaped section ends between landmarks the plan has no other girth to show."""
    plan = build(flared())
    marks = (plan.main.landmarks[0], *plan.main.landmarks[2:])
    profile = wanted_profile(alter(plan, landmarks=marks))
    assert profile[1] == pytest.approx((100.0, 184 * 100 / 18))


def test_counted_turning_chain_is_the_first_stitch() -> None:
    """The body goes on after the chain: the same row stands one stitch further round."""
    plan = build(tiny())
    rows = plan.program.pieces[0].rows
    counted = tuple(replace(row, start=Start(3, counts=True)) for row in rows)
    program = Program((Piece("skirt", closed=True, rows=counted),))
    plain = shaping_lines(plan)[2].stands[0][1]
    moved = shaping_lines(replace(plan, program=program))[2].stands[0][1]
    assert 0 < moved - plain < 1 / 60


def test_edging_height_comes_from_its_rounds() -> None:
    """Two rounds of 12 mm; nothing without an edging; depths decide when they go that far."""
    plan = build(circle())
    assert edging_height(plan) == pytest.approx(24.0)
    assert edging_height(alter(plan, edging=None)) == 0.0
    longer = alter(plan, depths=(*plan.main.depths, 461.0, 470.0))
    assert edging_height(longer) == pytest.approx(20.0)


def test_shaping_points_keep_their_line_when_rounds_are_turned() -> None:
    """Each of the eight points stays within two stitches of one place, though rounds alternate."""
    for line in shaping_lines(build(flared())):
        places = [turns for _, turns in line.stands]
        assert max(places) - min(places) < 2 / 152


def test_shaping_points_mirror_about_centre_front() -> None:
    """Eight points make four pairs, four of them on the front."""
    lines = shaping_lines(build(flared()))[:8]
    firsts = sorted(line.stands[0][1] for line in lines)
    assert firsts == pytest.approx([-turns for turns in reversed(firsts)], abs=2 / 152)
    assert sum(is_front(turns) for turns in firsts) == 4


def test_shaping_points_move_a_quarter_when_the_join_is_at_the_side() -> None:
    """One and the same row stands a quarter turn away."""
    plan = build(straight())
    back = shaping_lines(plan, "centre back")[0].stands[0][1]
    places = {fold(line.stands[0][1] - 0.25) for line in shaping_lines(plan, "left side")}
    assert any(abs(fold(back + 0.5 - place)) < 0.01 for place in places)


def test_shaping_points_keep_their_line_where_it_crosses_centre_back() -> None:
    """Six points joined at a side: one stands at centre back, now a stitch left, now right of it."""
    sample = Sample(110, 10.0, 20.0, (Stretch("hip_girth", 9, 140, 6, (1, 2, 5, 6, 9), 1400.0),))
    lines = shaping_lines(build(sample), "left side")
    assert len(lines) == 6
    for line in lines:
        first = line.stands[0][1]
        assert max(abs(fold(turns - first)) for _, turns in line.stands) < 2 / 110


def test_work_runs_to_the_wearers_right_when_worked_from_the_waist_down() -> None:
    """A quarter of the way from centre back is the right side; in a wrong-side round the left."""
    plan = build(tiny())
    quarter = (Work("sc", 14), Into((Work("sc", 2),)), Work("sc", 45))
    section = plan.main.sections[0]
    assert section.chosen is not None
    lone = replace(section, chosen=replace(section.chosen, points=1))
    places = []
    for side in ("RS", "WS"):
        rows = tuple(
            replace(row, body=quarter, side=side) if row.number == 1 else row
            for row in plan.program.pieces[0].rows
        )
        program = Program((Piece("skirt", closed=True, rows=rows),))
        line = shaping_lines(alter(replace(plan, program=program), sections=(lone,)))[0]
        places.append(line.stands[0][1])
    assert places == pytest.approx([-0.25, 0.25], abs=0.01)


def test_shaping_is_found_in_groups_and_decreases() -> None:
    """Repeated groups are unrolled; a decrease is a point; skipped places make no stitch."""
    plan = build(pegged())
    section = plan.main.sections[1]
    assert section.chosen is not None
    body = (Repeat((Work("dc", 20), Together("dc", 2), Skip(), Work("dc", 23)), 4),)
    rows = tuple(replace(row, body=body) for row in plan.program.pieces[0].rows)
    program = Program((Piece("skirt", closed=True, rows=rows),))
    lines = shaping_lines(alter(replace(plan, program=program), sections=(section,)))
    expected = [(i * 44 + 20.5) / 176 - 0.5 for i in range(4)]
    right_side = next(depth for depth, _ in lines[0].stands if round(depth / 9.1) % 2)
    found = [turns for line in lines for depth, turns in line.stands if depth == right_side]
    assert found == pytest.approx(expected)


def test_points_lie_evenly_when_the_program_does_not_say() -> None:
    """Without rows the points are spread from half a gap after the join."""
    plan = replace(build(tiny()), program=Program(()))
    firsts = [line.stands[0][1] for line in shaping_lines(plan)[:6]]
    assert firsts == pytest.approx([-5 / 12, -3 / 12, -1 / 12, 1 / 12, 3 / 12, 5 / 12])


def test_lines_span_their_section() -> None:
    """A marker is carried from the section's first round to its last."""
    line = shaping_lines(build(flared()))[-1]
    assert (line.top, line.bottom) == pytest.approx((200.0, 600.0))
