"""The plan of a skirt as a whole, and what its maker should know of it."""

from __future__ import annotations

import pytest
from sample_designs import Made, body, section, table

from frogless.draft import develop
from frogless.errors import InputError
from frogless.plan.make import plan
from frogless.plan.model import Plan

HIP = section("to the hip", shape="shaped", to="hip", ease="4 cm", points=8)
HEM = section("to the hem", shape="shaped", to="hem", girth="142 cm", points=8)
STRAIGHT = section("to the hem", to="hem")


def named(planned: Plan) -> dict[str, str]:
    """Remarks by name."""
    return {remark.name: remark.sentence for remark in planned.remarks}


def test_every_row_has_a_depth_and_every_section_a_gauge(made: Made) -> None:
    """The edging's and the trims' too."""
    tables = (
        table("edging", pattern="picot_group", hook="2 mm"),
        table("waist", kind="covered elastic", width="6 mm"),
    )
    planned = plan(made(HIP, HEM, tables=tables))
    rows = planned.program.pieces[0].rows
    assert len(planned.main.depths) == len(rows)
    assert list(planned.main.depths) == sorted(planned.main.depths)
    used = {row.section for piece in planned.program.pieces for row in piece.rows}
    assert used <= set(planned.gauges)


def test_sections_follow_each_other_without_a_gap(made: Made) -> None:
    """Rounds and counts of each begin where those of the last one ended."""
    planned = plan(made(section("band", length="3 cm"), HIP, HEM))
    for above, below in zip(planned.sections, planned.sections[1:], strict=False):
        assert below.first_round == above.last_round + 1
        assert below.count_before == above.count_after


def test_fullness_is_that_of_the_section(made: Made) -> None:
    """56 stitches in 20 rounds of 10 mm: 2.8 · 5.56 / 62.8."""
    hip = plan(made(HIP, HEM)).sections[0]
    assert hip.fullness == pytest.approx(2.8 * 5.5556 / 62.83, rel=1e-3)


def test_stray_is_told_with_its_sign_and_depth(made: Made) -> None:
    """The rhythm's own girths, round by round."""
    planned = plan(made(HIP, HEM))
    counts = [row.count for row in planned.program.pieces[0].rows]
    for one in planned.sections:
        chosen, ((d1, g1), (d2, g2)) = one.chosen, one.profile
        assert chosen is not None
        at = planned.main.depths.index(pytest.approx(chosen.stray_at))
        wanted = g1 + (g2 - g1) * (planned.main.depths[at] - d1) / (d2 - d1)
        assert counts[at] * one.gauge.width.value - wanted == pytest.approx(chosen.stray)


def test_what_was_not_measured_is_remarked_on(made: Made) -> None:
    """The high hip, where the hip lies, the hang test."""
    known = made(HIP, HEM)
    assert {"hang_test", "high_hip"} <= set(named(plan(known)))
    measured = body(
        waist_girth="84 cm",
        hip_girth="112 cm",
        waist_to_hip="20 cm",
        high_hip_girth="104 cm",
        waist_to_high_hip="10 cm",
    )
    assert "high_hip" not in named(plan(made(HIP, HEM, person=measured)))
    unknown = body(waist_girth="84 cm", hip_girth="112 cm")
    start = 'with = "chain"\ngirth = "hip_girth + 4 cm"'
    assert "hip_depth" in named(plan(made(STRAIGHT, person=unknown, start=start)))


@pytest.mark.parametrize(
    ("points", "told"),
    [(2, "lie at centre front and back"), (3, "lie even to the join"), (4, None)],
)
def test_join_at_a_side_shifts_the_points(made: Made, points: int, told: str | None) -> None:
    """Two of them to the middle, an odd number out of symmetry; four stay even on both sides."""
    work = 'rounds = "joined"\nturning_chain = 3\njoin_at = "left side"'
    hip = HIP.replace("points = 8", f"points = {points}")
    start = 'with = "chain"\ngirth = "hip_girth / 1.1"'
    found = named(plan(made(hip, STRAIGHT, work=work, start=start))).get("side_join_points")
    assert (found is None) == (told is None)
    if told is not None:
        assert found is not None
        assert told in found


def test_two_points_are_not_taken_unasked_when_the_join_is_at_a_side(made: Made) -> None:
    """They would lie at centre front and back."""
    work = 'rounds = "joined"\nturning_chain = 3\njoin_at = "left side"'
    open_ = section("to the hip", shape="shaped", to="hip", ease="4 cm")
    planned = plan(
        made(open_, STRAIGHT, work=work, start='with = "chain"\ngirth = "hip_girth / 1.1"')
    )
    assert planned.sections[0].chosen is not None
    assert planned.sections[0].chosen.points != 2


@pytest.mark.parametrize("name", ["edging", "waistband", "elastic cover"])
def test_section_named_like_a_part_of_the_program_is_refused(made: Made, name: str) -> None:
    """Two parts of one name cannot be told apart."""
    with pytest.raises(InputError, match="another part of the pattern"):
        plan(made(section(name, length="3 cm"), HIP, HEM))


def test_sections_need_names_of_their_own(made: Made) -> None:
    """The second of two is refused."""
    with pytest.raises(InputError, match="is the name of section 1 too"):
        plan(made(section("to the hip", length="3 cm"), HIP, HEM))


@pytest.mark.parametrize("name", ['a: "b" (c) [d]', "Rnd 3: dc", "Hüfte – Saum", "x" * 60])
def test_names_may_be_anything_that_stands_on_one_line(made: Made, name: str) -> None:
    """The text reads back whatever a section is called."""
    quoted = name.replace('"', '\\"')
    develop(
        made(
            section(quoted, length="3 cm"),
            STRAIGHT,
            start='with = "chain"\ngirth = "hip_girth + 4 cm"',
        )
    )


@pytest.mark.parametrize(
    ("key", "value"),
    [("length", "-60 cm"), ("length", "0 cm"), ("length", "60"), ("length", "no_such_length")],
)
def test_length_of_nothing_is_refused(made: Made, key: str, value: str) -> None:
    """Below zero, without a unit, or of an unknown name."""
    with pytest.raises(InputError) as refused:
        plan(made(HIP, HEM, **{key: value}))
    assert refused.value.faults[0].place.key == "garment.length"
