"""Where a skirt passes the body, and what the body asks for there."""

from __future__ import annotations

import pytest
from sample_designs import Made, body, section

from frogless.draft import develop
from frogless.errors import Impossible
from frogless.plan.basis import Basis
from frogless.plan.landmarks import marks, with_landmarks
from frogless.plan.make import plan
from frogless.plan.sections import spans, start_target

HIP = section("to the hip", shape="shaped", to="hip", ease="4 cm")
HEM = section("to the hem", shape="shaped", to="hem", girth="142 cm")
STRAIGHT = section("to the hem", to="hem")
FULL = {"waist_girth": "84 cm", "hip_girth": "112 cm", "waist_to_hip": "20 cm"}
HIGH = {"high_hip_girth": "104 cm", "waist_to_high_hip": "10 cm"}
TIGHT = "107.2 cm"
OPEN = 'with = "chain"\ngirth = "hip_girth"\nease = "2 cm"'


def test_landmarks_are_those_that_were_measured_and_lie_on_the_skirt(made: Made) -> None:
    """The high hip too when the body file has it."""
    keys = ["waist_girth", "hip_girth", "hem"]
    assert [m.key for m in plan(made(HIP, HEM)).landmarks] == keys
    high = plan(made(HIP, HEM, person=body(**FULL, **HIGH))).landmarks
    assert [m.key for m in high] == ["waist_girth", "high_hip_girth", "hip_girth", "hem"]
    assert [m.rounds for m in high] == [0, 10, 20, 60]


def test_profile_runs_through_the_high_hip_with_its_share_of_the_ease(made: Made) -> None:
    """Half way down, half of the 4 cm: 106, not the straight line's 100."""
    known = made(HIP, HEM, person=body(**FULL, **HIGH))
    hip, _ = with_landmarks(known, start_target(known), spans(known))
    assert hip.knots == ((pytest.approx(100), pytest.approx(1060)),)
    assert hip.floors[0].least == 1040
    mark = next(m for m in plan(known).landmarks if m.key == "high_hip_girth")
    assert mark.wanted == pytest.approx(1060)
    assert mark.garment.value >= 1040


def snug(made: Made, *, high: str, points: int, least: str = "2 cm") -> Basis:
    """A skirt with at least `least` of ease at the hip and none asked for at the waist."""
    person = body(**FULL, high_hip_girth=high, waist_to_high_hip="10 cm")
    keys = {"shape": "shaped", "to": "hip", "ease": "4 cm"}
    hip = section("to the hip", ease_allowed=(least, "7 cm"), points=points, **keys)
    start = 'with = "chain"\ngirth = "waist_girth"\nease_allowed = ["0 cm", "2 cm"]'
    return made(hip, STRAIGHT, start=start, person=person)


def test_high_hip_keeps_its_share_of_the_ease_asked_for_at_the_hip(made: Made) -> None:
    """Half way down half of the 2 cm, and as much is shown as allowed."""
    known = snug(made, high="104 cm", points=8)
    span, _ = with_landmarks(known, start_target(known), spans(known))
    assert [(f.least, f.asked) for f in span.floors] == [(1050, 1050)]
    made_up = plan(known)
    mark = next(m for m in made_up.landmarks if m.key == "high_hip_girth")
    assert mark.low == 1050 <= mark.garment.value
    assert "ease_on_the_way" not in {r.name for r in made_up.remarks}


def test_gathered_start_asks_for_no_more_at_the_high_hip_than_the_hip_does(made: Made) -> None:
    """Eight centimetres at the start are no ease of the high hip."""
    keys = {"shape": "shaped", "to": "hip", "ease": "2 cm", "ease_allowed": ("1 cm", "5 cm")}
    start = 'with = "chain"\ngirth = "waist_girth"\nease = "9 cm"\nease_allowed = ["8 cm", "12 cm"]'
    hip = section("to the hip", **keys)
    known = made(hip, STRAIGHT, start=start, person=body(**FULL, **HIGH))
    span, _ = with_landmarks(known, start_target(known), spans(known))
    assert span.floors[0].asked == 1050


def test_less_ease_than_asked_on_the_way_is_said_and_never_less_than_the_body(made: Made) -> None:
    """Shaping every round does not reach the ease at the high hip, only the body."""
    planned = plan(snug(made, high=TIGHT, points=4))
    mark = next(m for m in planned.landmarks if m.key == "high_hip_girth")
    assert mark.body is not None
    assert mark.low == mark.body.value <= mark.garment.value < mark.body.value + 10
    (remark,) = (r for r in planned.remarks if r.name == "ease_on_the_way")
    assert remark.serious
    assert remark.sentence.startswith("the high hip gets ")
    assert "at least 1 cm is asked for" in remark.sentence


def test_opening_wider_than_the_high_hip_is_not_drawn_in(made: Made) -> None:
    """A skirt that is gathered into its waist does not dip on its way to the hip."""
    start = 'with = "chain"\ngirth = "114 cm"'
    known = made(HIP, HEM, person=body(**FULL, **HIGH), start=start)
    hip, _ = with_landmarks(known, start_target(known), spans(known))
    assert hip.knots[0][1] == 1140


def test_straight_skirt_is_as_wide_as_the_hips_it_passes(made: Made) -> None:
    """The nearest count would be a little too narrow; the next one is taken."""
    start = 'with = "chain"\ngirth = "hip_girth"'
    person = body(waist_girth="84 cm", hip_girth="111.8 cm", waist_to_hip="20 cm")
    known = made(STRAIGHT, start=start, person=person)
    hip = next(m for m in plan(known).landmarks if m.key == "hip_girth")
    assert hip.count == 202
    assert 201 * 100 / 18 < 1118 <= hip.garment.value
    develop(known)


def test_straight_skirt_narrower_than_the_hips_is_refused_with_what_is_short(made: Made) -> None:
    """Not by the proof at the end, but by the planner with ways out."""
    start = 'with = "chain"\ngirth = "hip_girth - 6 cm"'
    with_stretch = made(STRAIGHT, start=start)
    with pytest.raises(Impossible) as refused:
        plan(with_stretch)
    assert 'section "to the hem": the body is 112 cm at the hip' in str(refused.value)
    assert refused.value.short == pytest.approx(1120 - 191 * 100 / 18)
    assert any('ends with to = "hip"' in way for way in refused.value.ways_out)
    assert any('ease = "-6 cm"' in way for way in refused.value.ways_out)


def test_skirt_that_is_to_lie_close_may_be_narrower_than_the_hips(made: Made) -> None:
    """Negative ease at the start says so."""
    start = 'with = "chain"\ngirth = "hip_girth"\nease = "-6 cm"'
    hip = next(m for m in plan(made(STRAIGHT, start=start)).landmarks if m.key == "hip_girth")
    assert hip.garment.value < 1120
    assert hip.low == 1120 - 60


def test_flare_from_the_waist_has_to_pass_the_hip_on_its_way(made: Made) -> None:
    """One section from waist to hem keeps the hip; one too slow for it is refused."""
    fast = section("flare", shape="shaped", to="hem", girth="180 cm")
    hip = next(m for m in plan(made(fast)).landmarks if m.key == "hip_girth")
    assert hip.garment.value >= 1120
    slow = section("flare", shape="shaped", to="hem", girth="116 cm", points=2)
    with pytest.raises(Impossible, match="the body is 112 cm at the hip"):
        plan(made(slow))


def test_flare_gives_way_to_the_hip_within_its_allowed_ease(made: Made) -> None:
    """The hem's nearest count leaves the hip too narrow; a wider one that is allowed does not."""
    person = body(waist_girth="84 cm", hip_girth="108 cm", waist_to_hip="20 cm")
    keys = {"shape": "shaped", "to": "hem", "girth": "128 cm", "points": 2}
    known = made(
        section("flare", ease_allowed=("-12 cm", "12 cm"), **keys), person=person, length="34 cm"
    )
    hip = next(m for m in plan(known).landmarks if m.key == "hip_girth")
    assert hip.garment.value >= 1080 - 120


def test_waist_on_the_way_lies_where_it_is_on_the_body(made: Made) -> None:
    """A top edge 4 cm above the waist: the waist is passed at round 4, the hip at 24."""
    start = f'{OPEN}\nabove_waist = "4 cm"'
    known = made(HIP, HEM, start=start)
    top, waist, hip, _ = plan(known).landmarks
    assert (top.key, top.rounds, top.depth, top.body) == ("top_edge", 0, 0, None)
    assert top.count == plan(known).program.pieces[0].rows[0].count
    assert (waist.key, waist.rounds, waist.depth) == ("waist_girth", 4, pytest.approx(40))
    assert (hip.rounds, hip.depth) == (24, pytest.approx(240))
    develop(known)


def test_skirt_that_ends_at_the_hip_still_passes_it(made: Made) -> None:
    """Its last round is the hip's."""
    known = made(section("all", shape="shaped", to="hem", girth="116 cm"), length="20 cm")
    (mark,) = marks(known, spans(known))
    assert (mark.key, mark.round, mark.ends_here) == ("hip_girth", 20, False)


def test_landmark_below_the_hem_is_left_out(made: Made) -> None:
    """A skirt of 18 cm has no hip."""
    known = made(section("all", shape="shaped", to="hem", girth="110 cm"), length="18 cm")
    assert marks(known, spans(known)) == ()


def test_because_of_a_landmark_leads_from_the_body_to_the_stitches(made: Made) -> None:
    """Body, ease, wanted, gauge, exact, landed, girth, off, depth."""
    hip = next(m for m in plan(made(HIP, HEM)).landmarks if m.key == "hip_girth")
    steps = {s.what: s for s in hip.because.steps}
    assert list(steps)[:3] == ["hip_girth", "ease", "wanted"]
    assert steps["ease"].value == pytest.approx(40)
    assert steps["landed"].value == hip.count
    assert steps["landed"].note.startswith("multiple of")
