"""Sections whose girths on the way the author draws."""

from __future__ import annotations

import pytest
from sample_designs import Made, body, section

from frogless.draft import develop
from frogless.errors import InputError
from frogless.plan.make import plan
from frogless.plan.sections import spans

HEM = section("to the hem", to="hem")
NOBODY = body(waist_girth="84 cm", hip_girth="112 cm")
WIDE = 'with = "chain"\ngirth = "114 cm"'


def point(at: str, girth: str) -> dict[str, str]:
    """A point of a profile."""
    return {"at": f'"{at}"', "girth": f'"{girth}"'}


def drawn(*points: dict[str, str], girth: str = "140 cm", **keys: object) -> str:
    """From the start to a girth over 40 cm, through points."""
    return section(
        "sweep", shape="shaped", length="40 cm", girth=girth, through=list(points), **keys
    )


def test_profile_runs_through_the_points(made: Made) -> None:
    """Wide at once, then slowly."""
    known = made(drawn(point("10 cm", "130 cm")), HEM, start=WIDE, person=NOBODY)
    first, _ = spans(known)
    profile = first.profile(1140)
    assert profile[10] == pytest.approx(1300)
    assert profile[40] == pytest.approx(1400)
    planned = plan(known).sections[0]
    assert planned.chosen is not None
    early = [r for r in planned.chosen.rhythm.rounds if r <= 10]
    assert len(early) >= len(planned.chosen.rhythm.rounds) / 2


def test_section_that_turns_is_planned_in_parts(made: Made) -> None:
    """In to 104 cm, out to 140: each part has a rhythm of its own, and all is proven."""
    known = made(drawn(point("15 cm", "104 cm")), HEM, start=WIDE, person=NOBODY)
    into, out, _ = plan(known).sections
    assert (into.name, out.name) == ("sweep (1)", "sweep (2)")
    assert into.count_after < into.count_before
    assert out.count_after > out.count_before
    assert into.last_round == 15
    assert out.last_round == 40
    assert into.count_after * 100 / 18 == pytest.approx(1040, abs=25)
    with_stretch = made(
        drawn(point("15 cm", "126 cm"), girth="118 cm"), HEM, start=WIDE, person=NOBODY
    )
    found = develop(with_stretch)
    assert [s.name for s in found.plan.sections][:2] == ["sweep (1)", "sweep (2)"]


def test_points_between_turns_stay_in_their_part(made: Made) -> None:
    """One before the turn, one after it."""
    points = (point("5 cm", "124 cm"), point("12 cm", "130 cm"), point("30 cm", "122 cm"))
    first, second, _ = spans(made(drawn(*points, girth="120 cm"), HEM, start=WIDE, person=NOBODY))
    assert first.knots == ((50.0, 1240.0),)
    assert second.knots == ((300.0, 1220.0),)
    assert second.start_depth == pytest.approx(120)


def test_plain_stretch_keeps_its_depth_in_a_part(made: Made) -> None:
    """From 20 to 24 cm below the top of the whole section."""
    keys = {"plain": [{"from": '"20 cm"', "to": '"24 cm"'}]}
    first, second, _ = spans(
        made(drawn(point("15 cm", "104 cm"), **keys), HEM, start=WIDE, person=NOBODY)
    )
    assert first.plain == ()
    assert second.plain == (6, 7, 8, 9)


@pytest.mark.parametrize("depths", [("50 cm",), ("20 cm", "10 cm"), ("0 cm",)])
def test_points_out_of_order_or_outside_are_refused(made: Made, depths: tuple[str, ...]) -> None:
    """By the one that is wrong."""
    points = [point(at, "120 cm") for at in depths]
    with pytest.raises(InputError, match="write the points from the top down") as refused:
        plan(made(drawn(*points), HEM, start=WIDE, person=NOBODY))
    assert refused.value.faults[0].place.key == f"section[1].through[{len(depths)}].at"


def test_drawn_profile_takes_the_place_of_the_high_hip(made: Made) -> None:
    """What the author draws stays as it is."""
    person = body(
        waist_girth="84 cm",
        hip_girth="112 cm",
        waist_to_hip="20 cm",
        high_hip_girth="104 cm",
        waist_to_high_hip="10 cm",
    )
    hip = {"shape": "shaped", "to": "hip", "ease": "4 cm"}
    own = section("to the hip", through=[point("8 cm", "106 cm")], **hip)
    planned = plan(made(own, HEM, person=person)).sections[0]
    assert planned.profile[1] == pytest.approx((80, 1060))
    usual = plan(made(section("to the hip", **hip), HEM, person=person)).sections[0]
    assert usual.profile[1] == pytest.approx((100, 1060))
