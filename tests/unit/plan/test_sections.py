"""Sections measured: where they end, how many rounds, what they are wanted to follow."""

from __future__ import annotations

import pytest
from sample_designs import Made, section, swatch

from frogless.errors import InputError
from frogless.plan.make import plan
from frogless.plan.sections import foundation_height, spans, start_target

HIP = section("to the hip", shape="shaped", to="hip", ease="4 cm")
HEM = section("to the hem", shape="shaped", to="hem", girth="142 cm")


def test_sections_follow_each_other_down_to_the_hem(made: Made) -> None:
    """20 rounds to the hip, 40 more to the hem."""
    first, second = spans(made(HIP, HEM))
    assert (first.rounds_above, first.rounds, first.start_depth) == (0, 20, 0.0)
    assert (second.rounds_above, second.rounds) == (20, 40)
    assert second.start_depth == first.end_depth == pytest.approx(200)
    assert second.end_depth == pytest.approx(600)


def test_foundation_stitches_are_a_round_of_the_first_section(made: Made) -> None:
    """A chain has no height; a foundation double crochet is about as high as the stitch."""
    start = 'with = "foundation_double_crochet"\ngirth = "waist_girth"'
    known = made(section("band", length="3 cm"), HIP, HEM, start=start)
    high = foundation_height(known)
    assert 9 < high < 12
    band, hip, _ = spans(known)
    assert (band.start_depth, band.rounds) == (high, 2)
    assert hip.end_wanted == pytest.approx(200)
    assert foundation_height(made(HIP, HEM)) == 0.0


def test_growth_lowers_the_rounds_of_a_length(made: Made) -> None:
    """At 8 % a round is 10.8 mm as worn."""
    hung = 'state = "hung"\nrows = 15\nheight = "16.2 cm"'
    sample = swatch(27, 15, width="15 cm", height="15 cm", readings=(hung,))
    first, _ = spans(made(HIP, HEM, sample=sample))
    assert (first.height, first.rounds) == (pytest.approx(10.8), 19)


def test_of_two_numbers_of_rounds_equally_near_the_larger_is_taken(made: Made) -> None:
    """2.5 rounds are three, and 3.5 four."""
    for length, rounds in (("2.5 cm", 3), ("3.5 cm", 4)):
        assert spans(made(section("band", length=length), HIP, HEM))[0].rounds == rounds


def test_section_has_a_round_at_least(made: Made) -> None:
    """A band of 3 mm is one round of 10."""
    assert spans(made(section("band", length="3 mm"), HIP, HEM))[0].rounds == 1


def test_ease_on_a_body_does_not_turn_into_tightness_unasked(made: Made) -> None:
    """An inch either way of 112 + 1 cm would allow 110.5; no less than the body is."""
    easy, _ = spans(made(section("hip", shape="shaped", to="hip", ease="1 cm"), HEM))
    assert easy.target is not None
    assert (easy.target.low, easy.target.least_ease) == (1120, 0)
    close, _ = spans(made(section("hip", shape="shaped", to="hip", ease="-3 cm"), HEM))
    assert close.target is not None
    assert close.target.low == pytest.approx(1090 - 25.4)
    assert (close.target.least_ease, close.target.fuller) == (-30, False)


def test_ease_allowed_says_how_tight_it_may_be_on_the_way(made: Made) -> None:
    """From 2 cm less than the body: so much less is allowed at the high hip too."""
    allowed = section("hip", shape="shaped", to="hip", ease="0 cm", ease_allowed=("-2 cm", "3 cm"))
    hip, _ = spans(made(allowed, HEM))
    assert hip.target is not None
    assert (hip.target.low, hip.target.high) == (1100, 1150)
    assert hip.target.least_ease == -20


def test_hem_is_allowed_one_part_in_twenty_five(made: Made) -> None:
    """Half a step of the usual multiples fits in."""
    *_, hem = spans(made(HIP, HEM))
    assert hem.target is not None
    assert (hem.target.low, hem.target.high) == (pytest.approx(1363.2), pytest.approx(1476.8))


def test_start_is_wanted_as_its_formula_says(made: Made) -> None:
    """Girth and ease, an inch either way."""
    start = 'with = "chain"\ngirth = "waist_girth"\nease = "1 cm"'
    first = start_target(made(HIP, HEM, start=start))
    assert (first.wanted, first.low, first.high) == (850, 850 - 25.4, 850 + 25.4)
    assert [s.what for s in first.because.steps] == ["waist_girth", "ease"]


REFUSED = {
    "no hem": ((HIP,), {}, "section[1].to", 'has to end with to = "hem"'),
    "ends twice": (
        (section("hip", shape="shaped", to="hip", length="3 cm"), HEM),
        {},
        "section[1]",
        'needs either "to" or "length", and not both',
    ),
    "ends nowhere": ((section("hip", shape="shaped"), HEM), {}, "section[1]", "needs either"),
    "skirt above the hip": (
        (HIP, HEM),
        {"length": "18 cm"},
        "garment.length",
        "the skirt is 18 cm long",
    ),
    "hem at the hip": ((HIP, HEM), {"length": "20 cm"}, "garment.length", "only begins 20 cm"),
    "hip above a long band": (
        (section("band", length="25 cm"), HIP, HEM),
        {},
        "section[2].to",
        "would end 20 cm below the top edge, but it only begins at 25 cm",
    ),
    "band lower than its foundation": (
        (section("band", length="5 mm"), HIP, HEM),
        {"start": 'with = "foundation_double_crochet"\ngirth = "waist_girth"'},
        "section[1].length",
        "the foundation round alone is 1 cm high",
    ),
    "shaped to nothing": (
        (section("mid", shape="shaped", length="9 cm"), HEM),
        {},
        "section[1]",
        'needs a "girth" to be shaped to',
    ),
    "straight with a girth": (
        (section("mid", length="9 cm", girth="90 cm"), HEM),
        {},
        "section[1].girth",
        "is straight and has no use for girth",
    ),
    "straight with points": (
        (section("mid", length="9 cm", points=8), HEM),
        {},
        "section[1].points",
        'or write shape = "shaped"',
    ),
    "top edge below the waist": (
        (HIP, HEM),
        {"start": 'with = "chain"\ngirth = "waist_girth"\nabove_waist = "-3 cm"'},
        "start.above_waist",
        "would lie 3 cm below the waist",
    ),
    "ease upside down": (
        (section("hip", shape="shaped", to="hip", ease_allowed=("3 cm", "1 cm")), HEM),
        {},
        "section[1].ease_allowed",
        "write the smaller one first",
    ),
    "ease not allowed": (
        (
            section("hip", shape="shaped", to="hip", ease="5 cm", ease_allowed=("1 cm", "3 cm")),
            HEM,
        ),
        {},
        "section[1].ease",
        'lies outside what is allowed, "1 cm" to "3 cm"',
    ),
    "more rounds than anyone works": (
        (HIP, HEM),
        {"length": "9 m"},
        "section[2]",
        "would take 880 rounds; at most 400",
    ),
    "nothing left of the girth": (
        (section("hip", shape="shaped", to="hip", ease="-113 cm"), HEM),
        {},
        "section[1].ease",
        "leaves nothing of 112 cm",
    ),
}


@pytest.mark.parametrize("case", REFUSED)
def test_section_that_cannot_be_is_refused_where_it_stands(made: Made, case: str) -> None:
    """With the key, what was found and what to do."""
    sections, design, key, told = REFUSED[case]
    known = made(*sections, **design)
    with pytest.raises(InputError) as refused:
        plan(known)
    assert told in str(refused.value)
    assert refused.value.faults[0].place.key == key
