"""Going on: the opening against the widest girth."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from one_piece import alter

from frogless.body.measurements import Body
from frogless.errors import InputError
from frogless.fit.going_on import going_on
from frogless.plan.model import BandPlan, CordPlan, ElasticPlan, Plan

PlanMaker = Callable[..., Plan]
BodyMaker = Callable[..., Body]


def test_it_passes_when_the_measured_stretch_is_enough(skirt: PlanMaker, body: BodyMaker) -> None:
    """84.4 cm at 35 % reaches 114 cm and passes 112, with no ways out to offer."""
    found = going_on(skirt(), stretch=0.35, start_kind="foundation", body=body())
    assert (found.verdict, found.short, found.ways_out) == ("passes", 0.0, ())
    assert found.measured


def test_it_does_not_pass_when_the_measured_stretch_is_too_little(
    skirt: PlanMaker, body: BodyMaker
) -> None:
    """Measured and short is no longer uncertain."""
    found = going_on(skirt(), stretch=0.2, start_kind="foundation", body=body())
    assert found.verdict == "does not pass"
    assert found.short == pytest.approx(1120 - 1.2 * 152 * 100 / 18)


def test_it_is_uncertain_when_a_foundation_edge_was_not_measured(
    skirt: PlanMaker, body: BodyMaker
) -> None:
    """33 % is within what bodies ask, and nobody measured it: a swatch has to tell."""
    found = going_on(skirt(), stretch=None, start_kind="foundation", body=body())
    assert found.verdict == "uncertain"
    assert (found.stretch, found.measured) == (0.0, False)
    assert found.needed_stretch == pytest.approx(0.326, abs=0.001)
    assert any("1.33 times its length" in way for way in found.ways_out)


def test_it_does_not_pass_when_an_unmeasured_edge_would_need_more_than_is_reasonable(
    skirt: PlanMaker, body: BodyMaker
) -> None:
    """45 % is more than 19 bodies in 20 ask for."""
    plan = skirt(hip_girth=1225.0)
    found = going_on(plan, stretch=None, start_kind="foundation", body=body())
    assert found.verdict == "does not pass"


def test_it_does_not_pass_when_a_chain_edge_is_short_and_unmeasured(
    skirt: PlanMaker, body: BodyMaker
) -> None:
    """A chain counts for nothing, and foundation stitches are a way out."""
    found = going_on(skirt(chain=True), stretch=None, start_kind="chain", body=body())
    assert found.verdict == "does not pass"
    assert any(way.startswith("Begin with foundation stitches") for way in found.ways_out)


def test_it_is_uncertain_when_only_the_fabric_above_a_chain_was_measured(
    skirt: PlanMaker, body: BodyMaker
) -> None:
    """Enough stretch in the swatch says too little of a chain edge."""
    found = going_on(skirt(chain=True), stretch=0.4, start_kind="chain", body=body())
    assert found.verdict == "uncertain"
    assert any("chain edge stretches less" in reason for reason in found.reasons)


def test_it_passes_unstretched_when_the_opening_is_wider_than_the_hips(
    skirt: PlanMaker, body: BodyMaker
) -> None:
    """A gathered waist of 208 stitches needs no stretch, even of a chain."""
    plan = skirt(counts=(208,) * 30)
    found = going_on(plan, stretch=None, start_kind="chain", body=body())
    assert (found.verdict, found.needed_stretch) == ("passes", 0.0)


def test_the_widest_is_the_high_hip_when_that_is_larger(skirt: PlanMaker, body: BodyMaker) -> None:
    """Some bodies are widest above the hip."""
    wide = body(high_hip_girth=1180.0)
    found = going_on(skirt(), stretch=0.5, start_kind="foundation", body=wide)
    assert (found.widest_at, found.widest) == ("high_hip_girth", 1180.0)


def test_the_opening_is_the_narrowest_round_above_the_hip_when_the_start_is_wider(
    skirt: PlanMaker, body: BodyMaker
) -> None:
    """A nipped-in round below the start is what has to pass; one below the hip is not."""
    counts = (180, 160, *(200,) * 30, 100)
    found = going_on(skirt(counts=counts), stretch=0.3, start_kind="foundation", body=body())
    assert found.opening == pytest.approx(160 * 100 / 18)


def test_it_goes_over_the_head_when_the_shoulders_are_narrower(
    skirt: PlanMaker, body: BodyMaker
) -> None:
    """Whichever way passes is named."""
    found = going_on(
        skirt(),
        stretch=0.25,
        start_kind="foundation",
        body=body(shoulder_girth=1040.0, bust_girth=980.0),
    )
    assert (found.verdict, found.over, found.widest_at) == ("passes", "head", "shoulder_girth")


def test_the_bust_counts_over_the_head_when_it_is_larger_than_the_shoulders(
    skirt: PlanMaker, body: BodyMaker
) -> None:
    """The larger of the two is what the waist travels over."""
    found = going_on(
        skirt(),
        stretch=0.25,
        start_kind="foundation",
        body=body(shoulder_girth=1000.0, bust_girth=1050.0),
    )
    assert (found.widest_at, found.verdict) == ("bust_girth", "passes")


def test_over_the_feet_is_told_when_the_shoulders_need_more(
    skirt: PlanMaker, body: BodyMaker
) -> None:
    """When neither passes, the nearer one is reported."""
    found = going_on(
        skirt(), stretch=0.1, start_kind="foundation", body=body(shoulder_girth=1300.0)
    )
    assert (found.over, found.verdict) == ("feet", "does not pass")


def test_shoulders_are_asked_for_when_nobody_measured_them(
    skirt: PlanMaker, body: BodyMaker
) -> None:
    """Over the head may be the way out."""
    found = going_on(skirt(), stretch=0.1, start_kind="foundation", body=body())
    assert any("shoulder_girth" in way for way in found.ways_out)


def test_a_placket_ends_where_everything_passes_when_the_waist_is_too_tight(
    skirt: PlanMaker, body: BodyMaker
) -> None:
    """At 20 % 93.3 cm passes: 168 stitches stand from round 4 on, so it is open for 3."""
    found = going_on(skirt(), stretch=0.2, start_kind="foundation", body=body())
    placket = next(way for way in found.ways_out if "placket" in way)
    assert "3 cm" in placket
    assert "through round 3" in placket


def test_no_placket_is_offered_when_even_the_hip_is_too_tight(
    skirt: PlanMaker, body: BodyMaker
) -> None:
    """Opening the join above the hip helps nobody then."""
    plan = skirt(counts=(152,) * 31)
    found = going_on(plan, stretch=0.2, start_kind="foundation", body=body())
    assert not any("placket" in way for way in found.ways_out)


def test_the_elastic_makes_it_uncertain_when_it_has_to_stretch_beyond_comfort(
    skirt: PlanMaker, body: BodyMaker, elastic: Callable[..., ElasticPlan]
) -> None:
    """Knitted elastic at 1.48 lies between the usual 1.4 and the longest 1.5."""
    plan = skirt(waist=elastic())
    found = going_on(plan, stretch=0.4, start_kind="foundation", body=body())
    assert found.verdict == "uncertain"
    assert any("1.48 times" in reason for reason in found.reasons)
    assert any("82.5 cm" in way for way in found.ways_out)


def test_a_finish_that_opens_is_offered_when_no_elastic_could_hold_the_waist(
    skirt: PlanMaker, body: BodyMaker, elastic: Callable[..., ElasticPlan]
) -> None:
    """A ring of 80 cm passes 112 and does not hold a waist of 70; one of 63 has to be forced."""
    plan = skirt(waist=elastic(finished=630.0), waist_girth=700.0)
    found = going_on(plan, stretch=0.4, start_kind="foundation", body=body())
    assert found.verdict == "uncertain"
    assert "ring of 80 cm" in found.ways_out[-1]
    assert "drawcord" in found.ways_out[-1]


def test_a_woven_elastic_stops_it_when_it_has_to_stretch_beyond_all_use(
    skirt: PlanMaker, body: BodyMaker, elastic: Callable[..., ElasticPlan]
) -> None:
    """Woven elastic is pulled on to 1.6 times at most; knitted goes to 2."""
    plan = skirt(waist=elastic("woven", finished=690.0))
    found = going_on(plan, stretch=0.4, start_kind="foundation", body=body())
    assert found.verdict == "does not pass"
    assert "1.62 times" in found.reasons[-1]


def test_a_softer_elastic_is_offered_when_a_woven_one_has_to_be_forced(
    skirt: PlanMaker, body: BodyMaker, elastic: Callable[..., ElasticPlan]
) -> None:
    """Woven elastic is worn to 1.3 and pulled on to 1.6; knitted is worn to 1.48."""
    plan = skirt(waist=elastic("woven"))
    found = going_on(plan, stretch=0.4, start_kind="foundation", body=body())
    assert found.verdict == "uncertain"
    assert "Take a knitted elastic, which stretches further." in found.ways_out


@pytest.mark.parametrize(
    ("finished", "verdict"), [(800.0, "passes"), (700.0, "uncertain"), (550.0, "does not pass")]
)
def test_the_elastic_stops_it_only_beyond_what_it_can_be_pulled_to(
    skirt: PlanMaker,
    body: BodyMaker,
    elastic: Callable[..., ElasticPlan],
    finished: float,
    verdict: str,
) -> None:
    """Knitted: comfortable to 1.4 times, pulled on for a moment to 2."""
    plan = skirt(waist=elastic(finished=finished))
    found = going_on(plan, stretch=0.4, start_kind="foundation", body=body())
    assert found.verdict == verdict


def test_the_elastic_is_no_matter_when_it_stretches_far_enough(
    skirt: PlanMaker, body: BodyMaker, elastic: Callable[..., ElasticPlan]
) -> None:
    """A ring of 82 cm needs 1.37."""
    plan = skirt(waist=elastic(finished=820.0))
    assert going_on(plan, stretch=0.4, start_kind="foundation", body=body()).verdict == "passes"


def test_the_cord_stops_it_when_it_is_shorter_than_the_hips(
    skirt: PlanMaker, body: BodyMaker, cord: Callable[..., CordPlan]
) -> None:
    """A closed drawcord opens to its own length and no further."""
    plan = skirt(waist=cord(1000.0))
    found = going_on(plan, stretch=0.4, start_kind="foundation", body=body())
    assert found.verdict == "does not pass"
    assert any("at least 142 cm" in way for way in found.ways_out)


def test_the_cord_is_no_matter_when_it_is_long_enough(
    skirt: PlanMaker, body: BodyMaker, cord: Callable[..., CordPlan]
) -> None:
    """154 cm opens over 112."""
    plan = skirt(waist=cord())
    assert going_on(plan, stretch=0.4, start_kind="foundation", body=body()).verdict == "passes"


@pytest.mark.parametrize(("girth", "verdict"), [(700.0, "uncertain"), (1150.0, "passes")])
def test_the_band_makes_it_uncertain_when_its_rib_has_to_stretch(
    skirt: PlanMaker,
    body: BodyMaker,
    band: Callable[..., BandPlan],
    girth: float,
    verdict: str,
) -> None:
    """Nobody measured the rib; a band wider than the hips needs no stretch."""
    plan = skirt(waist=band(girth))
    assert going_on(plan, stretch=0.4, start_kind="foundation", body=body()).verdict == verdict


def test_gathering_is_offered_without_a_cut_when_no_waist_is_known(
    skirt: PlanMaker, body: BodyMaker
) -> None:
    """Without a waist girth there is no length of elastic to state."""
    plan = skirt()
    plan = alter(plan, landmarks=plan.main.landmarks[1:])
    found = going_on(plan, stretch=0.2, start_kind="foundation", body=body())
    assert found.ways_out[0].endswith("gather them with elastic.")


def test_the_elastic_of_the_plan_is_told_when_gathering_is_the_way_out(
    skirt: PlanMaker, body: BodyMaker, elastic: Callable[..., ElasticPlan]
) -> None:
    """The plan's own cut is repeated, not another one worked out."""
    plan = skirt(waist=elastic(finished=800.0))
    found = going_on(plan, stretch=0.2, start_kind="foundation", body=body())
    assert "cut 82.5 cm" in found.ways_out[0]


def test_sentences_are_in_inches_when_asked_for(skirt: PlanMaker, body: BodyMaker) -> None:
    """33 1/4 in is 84.4 cm."""
    found = going_on(skirt(), stretch=0.2, start_kind="foundation", body=body(), units="in")
    assert "33 1/4 in" in found.reasons[0]


def test_it_passes_when_no_round_is_closed(skirt: PlanMaker, body: BodyMaker) -> None:
    """A piece that opens all the way goes round any body."""
    plan = skirt(closed=False)
    assert going_on(plan, stretch=None, start_kind="chain", body=body()).verdict == "passes"


def test_a_missing_hip_is_refused_when_nothing_is_known_of_it(
    skirt: PlanMaker, body: BodyMaker
) -> None:
    """Nobody can say whether it goes on."""
    plan = skirt()
    plan = alter(plan, landmarks=plan.main.landmarks[:1])
    with pytest.raises(InputError, match="hip_girth is not given"):
        going_on(plan, stretch=0.2, start_kind="chain", body=body())


def test_no_placket_is_offered_when_the_rounds_have_no_join(
    skirt: PlanMaker, body: BodyMaker
) -> None:
    """A spiral has nothing that could be left open."""
    plan = skirt(joined=False)
    found = going_on(plan, stretch=0.2, start_kind="foundation", body=body())
    assert found.verdict == "does not pass"
    assert not any("join" in way for way in found.ways_out)


def test_narrowest_round_is_named_when_it_lies_below_the_start(
    skirt: PlanMaker, body: BodyMaker
) -> None:
    """More stitches at the start would not help."""
    plan = skirt(counts=(208, 152, *(208,) * 59))
    found = going_on(plan, stretch=0.1, start_kind="chain", body=body())
    assert found.ways_out[0].startswith("Have 184 stitches (102 cm) in round 1, 1 cm below the top")
    assert not any(way.startswith("Begin with") for way in found.ways_out)


def test_widest_part_and_shortfall_are_named_truly(skirt: PlanMaker, body: BodyMaker) -> None:
    """The high hip is no hip; what is missing is told in cm."""
    someone = body(high_hip_girth=1200.0)
    (reason, *_) = going_on(skirt(), stretch=0.2, start_kind="foundation", body=someone).reasons
    assert "to pass the high hip (120 cm)" in reason
    assert reason.endswith("with comfort: 18.5 cm short.")


def test_tight_elastic_is_told_with_what_would_be_easy(
    skirt: PlanMaker, body: BodyMaker, elastic: Callable[..., ElasticPlan]
) -> None:
    """Worn to 1.4 and pulled to 2; a longer ring is named with what to cut."""
    plan = skirt(waist=elastic("braided"))
    found = going_on(plan, stretch=0.4, start_kind="foundation", body=body())
    assert "will be tight to pull on" in found.reasons[-1]
    assert "for a moment to about 2 (from memory)" in found.reasons[-1]
    assert "Take a knitted elastic, which stretches further." in found.ways_out
    assert any("Cut the elastic 82.5 cm long (a ring of 80 cm)" in way for way in found.ways_out)
