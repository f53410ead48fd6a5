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
        "hip 112 cm + ease 4 cm = 116 cm wanted; at 18 stitches in 10 cm 208.8; "
        "landed on a multiple of 8: 208 = 115.5 cm, 0.5 cm less"
    )


def test_inches_are_shown_with_the_gauge_over_four_inches() -> None:
    """18 in 10 cm are 18.3 in 4 in."""
    assert because_sentence(Because(HIP), "in") == (
        "hip 44 in + ease 1 1/2 in = 45 3/4 in wanted; at 18.3 stitches in 4 in 208.8; "
        "landed on a multiple of 8: 208 = 45 1/2 in, 1/4 in less"
    )


@pytest.mark.parametrize(
    ("step", "expected"),
    [
        (Step("waist_to_hip", 200, estimated=True, note="from stature"),
         "waist to hip 20 cm (estimated: from stature)"),
        (Step("hip_girth", 1120, estimated=True), "hip 112 cm (estimated)"),
        (Step("ease", -20), "\u2212 ease 2 cm"),
        (Step("formula", 840, note="waist_girth + 2 cm"), "waist_girth + 2 cm = 84 cm"),
        (Step("formula", 840), "by the formula 84 cm"),
        (Step("formula", 840, note="84 cm"), "84 cm as asked"),
        (Step("exact", 208.8, "stitches"), "exactly 208.8"),
        (Step("row_gauge", 9.5, "rows per 10 cm"), "at 9.5 rows in 10 cm"),
        (Step("landed", 20, "rows"), "landed on 20"),
        (Step("landed", 98, "rows", "even number"), "landed on 98 (even number)"),
        (Step("off", 1), "as wanted"),
        (Step("off", 12), "1 cm more"),
        (Step("growth", 0.08, "ratio"), "grows by 8 % when it hangs"),
        (Step("stretch", 1.48, "ratio"), "stretches to 148 % of its length"),
        (Step("percent", 90, ""), "90 %"),
        (Step("shapings", 7, "rows"), "7 shaping rounds"),
        (Step("points", 1, ""), "1 shaping point"),
        (Step("repeats", 32, ""), "32 repeats"),
        (Step("lap", 25), "lap 2.5 cm"),
        (Step("cut", 780, note="with the lap"), "cut 78 cm (with the lap)"),
        (Step("sag", 50), "sag 5 cm"),
        (Step("phase_of_moon", 3.25, "g"), "phase of moon 3.2 g"),
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
        "hip_girth + 2 cm = 108 cm wanted"
    )
    assert because_sentence(Because((formula, Step("wanted", 1100))), "cm") == (
        "hip_girth + 2 cm = 108 cm = 110 cm wanted"
    )


def test_allowance_is_taken_from_what_stands_before_it() -> None:
    """Signs tie a step to the one before."""
    steps = (Step("waist_girth", 840), Step("allowance", 30), Step("lap", 25), Step("cut", 835))
    assert because_sentence(Because(steps), "cm") == (
        "waist 84 cm \u2212 allowance 3 cm + lap 2.5 cm; cut 83.5 cm"
    )


@pytest.mark.parametrize(
    "what",
    [
        *("wanted", "girth", "length", "depth", "allowance", "lap", "cut", "sag", "span", "tails"),
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
