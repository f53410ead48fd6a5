"""Counts and rhythms decided together."""

from __future__ import annotations

import pytest
from sample_designs import Made, body, section, swatch, table

from frogless.draft import develop
from frogless.plan.make import plan
from frogless.plan.model import Plan


def hip(**keys: object) -> str:
    """A section shaped to the hip."""
    return section("to the hip", shape="shaped", to="hip", ease="4 cm", **keys)


def hem(girth: str = "142 cm", **keys: object) -> str:
    """A section shaped to the hem."""
    return section("to the hem", shape="shaped", to="hem", girth=girth, **keys)


def points(planned: Plan) -> list[int | None]:
    """Shaping points of each section."""
    return [s.chosen.points if s.chosen else None for s in planned.sections]


def test_open_sections_share_their_points_so_that_lines_run_through(made: Made) -> None:
    """Both "auto" take one number."""
    first, second = points(plan(made(hip(), hem())))
    assert first == second
    assert first in (4, 6, 8)


def test_open_section_follows_the_one_that_is_fixed(made: Made) -> None:
    """A number that the author gave for one section runs through the other."""
    assert points(plan(made(hip(points=6), hem()))) == [6, 6]
    assert points(plan(made(hip(), hem(points=8)))) == [8, 8]


def test_list_of_points_is_chosen_from(made: Made) -> None:
    """Both sections take the same one of those that both allow."""
    assert points(plan(made(hip(points=(4, 8)), hem(points=(8, 12))))) == [8, 8]
    assert points(plan(made(hip(points=(5,)), hem(points=(7,))))) == [5, 7]
    taken = points(plan(made(hip(points=(5, 10)), hem(points=(7, 14)))))
    assert taken[0] in (5, 10)
    assert taken[1] in (7, 14)


def test_odd_number_of_points_is_planned_as_asked(made: Made) -> None:
    """Five points, symmetric about the join."""
    known = made(hip(points=5), hem(points=5))
    assert points(plan(known)) == [5, 5]
    develop(made(hip(points=3), hem(points=3), start='with = "chain"\ngirth = "114 cm"'))


def test_two_points_are_not_taken_for_a_flared_skirt_unasked(made: Made) -> None:
    """They make corners; asked for, they are taken."""
    assert 2 not in points(plan(made(hip(), hem("220 cm"))))
    straight = plan(made(hip(), hem("120 cm")))
    assert set(points(straight)) <= {2, 4, 6, 8, None}


def test_more_points_than_usual_are_taken_when_only_they_reach(made: Made) -> None:
    """Nearly a full circle."""
    circle = made(
        section("circle", shape="shaped", to="hem", girth="330 cm"),
        length="45 cm",
        person=body(waist_girth="70 cm", hip_girth="95 cm", waist_to_hip="20 cm"),
        sample=swatch(20, 10),
    )
    assert points(plan(circle)) == [12]


def test_two_stitches_at_a_point_are_one_shaping(made: Made) -> None:
    """add = 2 at four points is eight in a round."""
    planned = plan(made(hip(points=4, add=2), hem(points=4, add=2)))
    for one in planned.sections:
        assert one.chosen is not None
        rounds = len(one.chosen.rhythm.rounds)
        assert one.count_after - one.count_before == 8 * rounds


def test_counts_divide_by_the_points_when_they_are_about_as_near(made: Made) -> None:
    """152, 208 and 256 for eight points."""
    planned = plan(made(hip(points=8), hem(points=8)))
    assert [m.count for m in planned.landmarks] == [152, 208, 256]


def test_multiple_binds_at_the_hem_only(made: Made) -> None:
    """Ten under the hem's count, not under the hip's."""
    picots = table("edging", pattern="picot_group", hook="2.25 mm", parameters={"singles": 10})
    planned = plan(made(hip(points=4), hem(points=4), tables=(picots,)))
    counts = {m.key: m.count for m in planned.landmarks}
    assert counts["hem"] % 10 == 0
    assert counts["hip_girth"] % 10 != 0


def test_closest_rhythm_is_taken_when_nothing_is_indifferent(made: Made) -> None:
    """Two clauses rather than one, where the body leaves both room."""
    roomy = 'with = "chain"\ngirth = "waist_girth"\nease = "4 cm"'
    simple, close = (
        plan(made(hip(points=8, indifference=give), hem(points=8), start=roomy))
        for give in ("5 cm", "0 cm")
    )
    assert simple.sections[0].chosen is not None
    assert close.sections[0].chosen is not None
    assert simple.sections[0].chosen.rhythm.clause_count == 1
    assert abs(close.sections[0].chosen.stray) < abs(simple.sections[0].chosen.stray)
    assert close.sections[0].others == () or all(o.points == 4 for o in close.sections[0].others)


def test_rhythm_stays_above_the_body_between_its_landmarks(made: Made) -> None:
    """The closest one would leave 84.4 cm at round 1, where the body measures 85.4."""
    planned = plan(made(hip(points=8, indifference="0 cm"), hem(points=8)))
    chosen = planned.sections[0].chosen
    assert chosen is not None
    width = planned.sections[0].gauge.width.value
    counts = [row.count for row in planned.program.pieces[0].rows[:21]]
    body = [840 + 14 * r for r in range(21)]
    assert all(n * width >= least for n, least in list(zip(counts, body, strict=True))[1:20])
    assert any(o.rhythm.first == 2 for o in planned.sections[0].others)


def test_body_that_no_rhythm_keeps_all_the_way_is_kept_at_its_landmarks(made: Made) -> None:
    """One shaping every 5th round cannot follow it from the first round on."""
    planned = plan(made(hip(points=8, add=2, every=5), hem(points=8)))
    assert planned.landmarks[1].garment.value >= 1120


def test_fixed_rhythm_is_kept(made: Made) -> None:
    """Every 2nd round, and no other rhythm is offered beside it."""
    planned = plan(made(hip(points=8, every=2), hem(points=8)))
    chosen = planned.sections[0].chosen
    assert chosen is not None
    assert [c.every for c in chosen.rhythm.clauses] == [(2,)]
    assert planned.sections[0].others == ()


def test_section_that_needs_no_shaping_has_none(made: Made) -> None:
    """A hem as wide as the hip."""
    planned = plan(made(hip(points=4), hem("116 cm", points=4)))
    assert planned.sections[1].chosen is None
    assert planned.sections[1].fullness == 0


def test_section_of_one_round_is_shaped_in_it(made: Made) -> None:
    """Waist to hip in a single round of a stitch as high as the hip is deep."""
    thick = swatch(10, 4, width="10 cm", height="72 cm")
    start = 'with = "chain"\ngirth = "hip_girth"'
    known = made(hip(points=4), hem("124 cm", points=4), sample=thick, length="72 cm", start=start)
    planned = plan(known)
    first = planned.sections[0]
    assert (first.first_round, first.last_round) == (1, 1)
    assert first.chosen is not None
    assert first.chosen.rhythm.rounds == (1,)


@pytest.mark.parametrize("rounds", ["joined and turned", "joined", "spiral"])
def test_shaping_begins_right_after_the_foundation(made: Made, rounds: str) -> None:
    """Into the chain or the foundation stitches, in every manner of working."""
    for begun in ("chain", "foundation_double_crochet"):
        known = made(
            hip(points=8, indifference="5 cm"),
            hem(points=8),
            start=f'with = "{begun}"\ngirth = "hip_girth / 1.1"',
            work=f'rounds = "{rounds}"\nturning_chain = 3\nturning_chain_counts = true',
            sample=swatch(27, 15, width="15 cm", height="15 cm", more='stretched_width = "18 cm"'),
        )
        planned = plan(known)
        assert planned.sections[0].chosen is not None
        develop(known)


def test_narrowing_leads_to_a_hem_below_the_hip(made: Made) -> None:
    """Four rounds of decreases; the markers lead through them."""
    known = made(
        hip(points=4),
        hem("100 cm", points=4, add=2),
        start='with = "chain"\ngirth = "hip_girth"',
    )
    planned = plan(known)
    assert planned.landmarks[-1].count < planned.landmarks[1].count
    assert planned.sections[1].fullness < 0
    develop(known)


def test_hip_smaller_than_the_waist_is_narrowed_to(made: Made) -> None:
    """A body that is widest at its waist."""
    person = body(waist_girth="118 cm", hip_girth="112 cm", waist_to_hip="20 cm")
    known = made(
        section("to the hip", shape="shaped", to="hip", ease="2 cm", points=4),
        hem("130 cm", points=4),
        person=person,
    )
    planned = plan(known)
    assert planned.sections[0].count_after < planned.sections[0].count_before
    develop(known)


def test_nearest_counts_win_over_a_closer_rhythm(made: Made) -> None:
    """Six points would begin with 154 stitches, 1.6 cm wide of what is wanted."""
    planned = plan(made(hip(), hem()))
    first = planned.landmarks[0]
    assert abs(first.garment.value - first.wanted) <= first.garment.uncertainty + 5.6


def test_usual_points_are_taken_before_more_when_counts_give_way(made: Made) -> None:
    """A belly wider than the hip: eight points reach it, inside the ease that is allowed."""
    person = body(
        waist_girth="104 cm",
        hip_girth="110 cm",
        waist_to_hip="20 cm",
        high_hip_girth="116 cm",
        waist_to_high_hip="9 cm",
    )
    wide = section(
        "to the hip", shape="shaped", to="hip", ease="4 cm", ease_allowed=("0 cm", "12 cm")
    )
    start = 'with = "chain"\ngirth = "waist_girth"\nease = "2 cm"\nease_allowed = ["0 cm", "14 cm"]'
    taken = points(plan(made(wide, hem("170 cm"), person=person, start=start)))
    assert max(k for k in taken if k) <= 8


@pytest.mark.parametrize(("asked", "others"), [(4, {4}), (12, {12}), ((4, 8), {4, 8})])
def test_only_points_that_the_design_allows_are_offered(
    made: Made, asked: object, others: set[int]
) -> None:
    """Half as many are offered only where the design has them; each strays visibly less."""
    planned = plan(made(hip(points=asked), hem(points=asked)))
    for one in planned.sections:
        assert one.chosen is not None
        assert {o.points for o in one.others} <= others
        assert all(abs(o.stray) <= abs(one.chosen.stray) - 5 for o in one.others)
