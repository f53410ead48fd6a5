"""Becauses in one sentence."""

from __future__ import annotations

import pytest

from frogless.because import Because, Step
from frogless.write.because import because_sentence
from frogless.write.messages import PHRASES, PLURALS

HIP = (
    Step("hip_girth", 1120),
    Step("ease", 40),
    Step("wanted", 1160),
    Step("gauge", 18, "stitches per 10 cm"),
    Step("exact", 208.8, "stitches"),
    Step("landed", 208, "stitches", "multiple of 8"),
    Step("girth", 208 / 0.18),
    Step("off", 208 / 0.18 - 1160),
)


def test_chain_from_body_to_count_is_one_sentence() -> None:
    """Body, ease, gauge, exact value, what it was landed on and how far off."""
    assert because_sentence(Because(HIP), "cm") == (
        "hip 112 cm + ease 4 cm = 116 cm wanted; at 18 stitches in 10 cm that is 208.8; "
        "rounded to 208 (multiple of 8) = 115.5 cm, 0.5 cm less"
    )


def test_inches_are_shown_with_the_gauge_over_four_inches() -> None:
    """18 in 10 cm are 18.288 in 4 in; 45.67 in of them are 208.8."""
    assert because_sentence(Because(HIP), "in") == (
        "hip 44.09 in + ease 1.57 in = 45.67 in wanted; at 18.29 stitches in 4 in that is "
        "208.8; rounded to 208 (multiple of 8) = 45 1/2 in, 1/4 in less"
    )


@pytest.mark.parametrize(
    ("step", "expected"),
    [
        (Step("waist_to_hip", 200, estimated=True, note="from stature"),
         "waist to hip 20 cm (estimated: from stature)"),
        (Step("waist_to_hip", 200, estimated=True, note="estimated from stature"),
         "waist to hip 20 cm (estimated from stature)"),
        (Step("hip_girth", 1120, estimated=True), "hip 112 cm (estimated)"),
        (Step("ease", -20), "\u2212 ease 2 cm"),
        (Step("formula", 840, note="waist_girth + 2 cm"), "waist + 2 cm = 84 cm"),
        (Step("formula", 840), "by the formula 84 cm"),
        (Step("formula", 840, note="84 cm"), "84 cm as asked"),
        (Step("exact", 208.8, "stitches"), "exactly 208.8"),
        (Step("row_gauge", 9.5, "rows per 10 cm"), "at 9.5 rows in 10 cm"),
        (Step("landed", 20, "rows"), "rounded to 20"),
        (Step("landed", 98, "rows", "even number"), "rounded to 98 (even number)"),
        (Step("off", 1), "as it should be"),
        (Step("off", 12), "1 cm more"),
        (Step("growth", 0.08, "ratio"), "grows by 8 % when it hangs"),
        (Step("stretch", 1.48, "ratio"), "stretches to 148 % of its length"),
        (Step("percent", 90, ""), "90 %"),
        (Step("shapings", 7, "rows"), "in 7 shaping rounds"),
        (Step("points", 1, ""), "at 1 shaping point"),
        (Step("repeats", 32, ""), "32 repeats"),
        (Step("lap", 25), "lap 2.5 cm"),
        (Step("cut", 780, note="with the lap"), "cut 78 cm (with the lap)"),
        (Step("sag", 50), "sag 5 cm"),
        (Step("ring", 690), "a ring of 69 cm"),
        (Step("worked", 30), "\u2212 3 cm already worked"),
        (Step("change", 40, "stitches"), "40 stitches to add"),
        (Step("change", -1, "stitches"), "1 stitch to take away"),
        (Step("indifference", 15), "differences under 1.5 cm cannot be seen on the tape"),
        (Step("stray", -35), "strays at most 3.5 cm from the wanted girth"),
        (Step("one_stitch", 23.7, "", "mg, weighed"), "a stitch takes 23.7 mg, weighed"),
        (Step("yarn_diameter", 1, "", "mm, from tex and fibre", estimated=True),
         "the yarn is 1 mm thick, from tex and fibre (estimated)"),
        (Step("tex", 400, "", "g per km"), "the yarn is 400 g per km"),
        (Step("depth", 210), "21 cm below the waist edge"),
        (Step("depth", 0), ""),
        (Step("yarn_mass", 262.9, "g"), "263 g in all"),
        (Step("margin", 10, "", "percent"), "10 % to spare"),
        (Step("balls", 6, ""), "6 balls"),
        (Step("phase_of_moon", 3.25, "g"), "phase of moon 3.3 g"),
        (Step("ratio_of_things", 2.0, "ratio"), "ratio of things 2"),
    ],
)  # fmt: skip
def test_step_is_said_by_its_word(step: Step, expected: str) -> None:
    """A word that is not known is said by its key, its value and its unit."""
    assert because_sentence(Because((step,)), "cm") == expected


def test_formula_is_not_said_twice_when_it_is_what_is_wanted() -> None:
    """One number, one time."""
    formula = Step("formula", 1080, note="hip_girth + 2 cm")
    assert because_sentence(Because((formula, Step("wanted", 1080))), "cm") == (
        "hip + 2 cm = 108 cm wanted"
    )
    assert because_sentence(Because((formula, Step("wanted", 1100))), "cm") == (
        "hip + 2 cm = 108 cm = 110 cm wanted"
    )


def test_measurement_as_wanted_is_said_once() -> None:
    """What is asked for or measured is not wanted a second time."""
    same = (Step("waist_girth", 840), Step("wanted", 840))
    assert because_sentence(Because(same), "cm") == "waist 84 cm, without ease"
    asked = (Step("formula", 1420, note="142 cm"), Step("wanted", 1420))
    assert because_sentence(Because(asked), "cm") == "142 cm as asked"


def test_girth_that_differs_only_as_shown_is_not_called_the_same() -> None:
    """37 1/4 and 37 1/2 in may be less than a quarter apart."""
    steps = (Step("wanted", 948.0), Step("girth", 949.5), Step("off", 1.5))
    assert because_sentence(Because(steps), "in") == (
        "37.32 in wanted = 37 1/2 in, too close to tell on the tape"
    )


def test_small_lengths_that_are_added_up_are_told_finer() -> None:
    """Else the sums would not add up."""
    steps = (Step("waist_to_hip", 210), Step("worked", 6.2))
    assert because_sentence(Because(steps), "cm") == "waist to hip 21 cm − 0.62 cm already worked"
    assert because_sentence(Because(steps[1:]), "in") == "− 0.24 in already worked"


def test_allowance_is_taken_from_what_stands_before_it() -> None:
    """Signs tie a step to the one before."""
    steps = (Step("waist_girth", 840), Step("allowance", 30), Step("lap", 25), Step("cut", 835))
    assert because_sentence(Because(steps), "cm") == (
        "waist 84 cm \u2212 allowance 3 cm + lap 2.5 cm = 83.5 cm to cut"
    )


def test_cord_is_as_long_as_the_longer_of_its_two_reasons() -> None:
    """Tied at the waist, or opened over the hips."""
    steps = (
        *(Step("waist_girth", 750), Step("tie_ends", 700)),
        *(Step("widest", 1060), Step("spare_ends", 300), Step("cut", 1450)),
    )
    assert because_sentence(Because(steps), "cm") == (
        "waist 75 cm + two ends to tie, 70 cm; or the widest girth 106 cm + two ends to hold, "
        "30 cm; the longer of the two, 145 cm, to cut"
    )


def test_repeats_of_an_edging_are_told_with_their_width() -> None:
    """How wide a repeat is, how often it goes into the hem, and the stitches of so many whole ones."""
    steps = (
        *(Step("hem", 1378), Step("repeat", 22.2), Step("exact", 62.07, "ratio")),
        *(Step("landed", 248, "stitches", "62 × 4"), Step("repeats", 62, "")),
        *(Step("girth", 1378), Step("off", 0)),
    )
    assert because_sentence(Because(steps), "cm") == (
        "hem 137.8 cm; a repeat of 2.22 cm: exactly 62.1 repeats; rounded to 248 (62 × 4); "
        "62 repeats = 138 cm, as it should be"
    )


@pytest.mark.parametrize(
    "what",
    [
        *("wanted", "girth", "length", "allowance", "lap", "cut", "sag", "span", "tails"),
        *("growth", "stretch", "percent", "shapings", "points", "repeats", "gauge", "row_gauge"),
    ],
)
def test_every_word_of_the_planner_has_its_phrase(what: str) -> None:
    """A phrase that is missing would fail only when such a step is met."""
    assert f"because_{what}" in {*PHRASES, *PLURALS}
    assert because_sentence(Because((Step(what, 1),)), "cm")


def test_nothing_to_say_is_said_with_nothing() -> None:
    """An empty because."""
    assert because_sentence(Because(), "cm") == ""
