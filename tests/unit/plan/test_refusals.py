"""What cannot be had is refused by name, by how much, and with ways out that do."""

from __future__ import annotations

import re

import pytest
from sample_designs import Made, body, section, swatch, table

from frogless.draft import develop
from frogless.errors import Impossible
from frogless.plan.make import plan

PERSON = body(waist_girth="66 cm", hip_girth="98 cm", waist_to_hip="20 cm")
SAMPLE = swatch(34, 18, width="20 cm", height="20 cm")
STRAIGHT = section("to the hem", to="hem")


def hip(**keys: object) -> str:
    """From 66 to 100 cm in 18 rounds."""
    return section("to the hip", shape="shaped", to="hip", ease="2 cm", **keys)


def refusal(made: Made, *sections: str, **design: object) -> Impossible:
    """What the planner says of a design that cannot be."""
    known = made(*sections, person=PERSON, sample=SAMPLE, **design)
    with pytest.raises(Impossible) as refused:
        plan(known)
    return refused.value


def test_slow_rate_is_told_with_the_rounds_it_has(made: Made) -> None:
    """Two points every other round: nine rounds of two."""
    told = refusal(made, hip(points=2, every=2), STRAIGHT)
    assert "2 shaping points of 1 stitch every 2nd round give 9 shaping rounds in 18" in str(told)
    assert "170 (100 cm) are wanted: 40 stitches, 23.5 cm short" in str(told)
    assert told.faults[0].place.key == "section[1].points"


def test_one_point_is_told_in_the_singular(made: Made) -> None:
    """1 shaping point gives."""
    told = str(refusal(made, hip(points=1), STRAIGHT))
    assert "1 shaping point of 1 stitch every round gives 18 shaping rounds in 18" in told


@pytest.mark.parametrize("every", [1, 2, 3])
@pytest.mark.parametrize("points", [1, 2])
def test_way_out_by_points_or_stitches_is_one(made: Made, points: int, every: int) -> None:
    """What is offered as a key of the design has been tried, and plans."""
    told = refusal(made, hip(points=points, every=every), STRAIGHT)
    offered = [re.match(r'(points|add|every) = ("?\w+"?)', way) for way in told.ways_out]
    tried = 0
    for way in offered:
        if way is not None:
            keys: dict[str, object] = {"points": points, "every": every}
            keys[way[1]] = way[2].strip('"') if way[1] == "every" else int(way[2])
            planned = plan(made(hip(**keys), STRAIGHT, person=PERSON, sample=SAMPLE))
            assert planned.landmarks[1].garment.value >= 980
            tried += 1
    assert tried >= 1


def test_wider_start_is_offered_in_stitches(made: Made) -> None:
    """170 less the 18 that can be added are 152."""
    told = refusal(made, hip(points=2, every=2), STRAIGHT)
    assert any(way.startswith("a wider start: 152 stitches (89.5 cm)") for way in told.ways_out)


def test_longer_section_is_offered_where_it_is_within_reason(made: Made) -> None:
    """One shaping round more; not ten times the length."""
    near = refusal(made, hip(points=4, every=3, add=2), STRAIGHT)
    longer = next(way for way in near.ways_out if way.startswith("a longer section"))
    assert "19 rounds (21 cm) instead of 18 (20 cm), begun that much higher" in longer
    far = refusal(made, hip(points=1, every=3), STRAIGHT)
    assert not any(way.startswith("a longer section") for way in far.ways_out)


def test_too_many_points_for_the_stitches_are_refused(made: Made) -> None:
    """One in three at the closest."""
    told = refusal(made, hip(points=48), STRAIGHT)
    assert "48 shaping points need 144 stitches or more, one in 3 at the closest" in str(told)
    assert told.ways_out[0].startswith("at most ")


def test_no_whole_count_inside_the_allowed_ease_is_refused(made: Made) -> None:
    """Between 169 and 170 stitches there is none."""
    allowed = hip(ease_allowed=("1.5 cm", "1.9 cm")).replace('ease = "2 cm"', 'ease = "1.9 cm"')
    told = refusal(made, allowed, STRAIGHT)
    assert "no whole number of stitches lies between" in str(told)
    assert told.faults[0].place.key == "section[1].ease_allowed"


def test_steps_that_meet_no_girth_are_refused(made: Made) -> None:
    """Twelve stitches are 7 cm, and 2 cm are allowed at either end."""
    start = 'with = "chain"\ngirth = "waist_girth"\nease_allowed = ["-0.3 cm", "0.3 cm"]'
    told = refusal(made, hip(points=12, ease_allowed=("2 cm", "2.6 cm")), STRAIGHT, start=start)
    assert "with 12 shaping points the counts move in steps of 12 stitches (7 cm)" in str(told)


def test_multiple_that_the_hem_cannot_have_is_refused_when_nothing_may_adapt(made: Made) -> None:
    """And is met by the edging's first round when that may."""
    hem = section(
        "to the hem", shape="shaped", to="hem", girth="120 cm", ease_allowed=("0 cm", "1 cm")
    )
    keys = {"pattern": "picot_group", "hook": "2 mm", "parameters": {"singles": 24}}
    never = table("edging", correction_round="never", **keys)
    told = refusal(made, hip(), hem, tables=(never,))
    assert "the edging needs a multiple of 24" in str(told)
    known = made(hip(), hem, tables=(table("edging", **keys),), person=PERSON, sample=SAMPLE)
    edging = plan(known).main.edging
    assert edging is not None
    assert edging.correction != 0
    assert edging.base_count % 24 == 0


def test_straight_skirt_whose_edging_cannot_adapt_is_refused(made: Made) -> None:
    """No section is shaped: the start has to be the multiple, or nothing."""
    start = 'with = "chain"\ngirth = "hip_girth + 2 cm"\nease_allowed = ["0 cm", "1 cm"]'
    keys = {"pattern": "picot_group", "hook": "2 mm", "parameters": {"singles": 23}}
    never = table("edging", correction_round="never", **keys)
    told = refusal(made, STRAIGHT, start=start, tables=(never,))
    assert "the edging needs a multiple of 23" in str(told)


def test_straight_skirt_is_as_many_stitches_as_its_edging_needs(made: Made) -> None:
    """184 for the picots of eight, where 183.6 were wanted."""
    start = 'with = "chain"\ngirth = "hip_girth + 10 cm"'
    picots = table("edging", pattern="picot_group", hook="2 mm", parameters={"singles": 8})
    known = made(STRAIGHT, start=start, tables=(picots,), person=PERSON, sample=SAMPLE)
    planned = plan(known)
    assert [m.count for m in planned.landmarks] == [184, 184, 184]
    assert planned.main.edging is not None
    assert planned.main.edging.correction == 0


def test_opening_too_narrow_at_the_high_hip_is_blamed_on_its_section(made: Made) -> None:
    """The start is wide enough; the section that narrows is not."""
    known = made(
        section("to the high hip", shape="shaped", to="high hip", ease="2 cm", points=8),
        section("to the hip", shape="shaped", to="hip", ease="4 cm", points=8),
        section("to the hem", to="hem"),
        start='with = "chain"\ngirth = "hip_girth"\nease = "2 cm"',
        person=body(
            waist_girth="84 cm",
            hip_girth="112 cm",
            waist_to_hip="20 cm",
            high_hip_girth="92 cm",
            waist_to_high_hip="10 cm",
        ),
    )
    with pytest.raises(Impossible, match="it does not go on") as refused:
        develop(known)
    assert "section[1]" in str(refused.value).splitlines()[0]
