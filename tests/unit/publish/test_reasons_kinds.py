"""Reasons of what is not a count of stitches: fit, pieces, trims, yarn, gauge, time."""

from __future__ import annotations

from dataclasses import replace

import pytest
from examples import TEXTS, Example, drafted
from one_piece import alter
from published import shown

from frogless.because import Because
from frogless.fit.model import GoingOn
from frogless.publish.drafted import Drafted
from frogless.publish.reasons import Reason, keys, reason
from frogless.publish.reasons_model import reasoned, slugs
from frogless.publish.reasons_rows import wanted_at
from frogless.units import Units

RING, CARDIGAN = Example(), Example("fiddler-cardigan")


def lines(found: Reason) -> list[str]:
    """The steps as a page would show them."""
    return [f"{step.text}: {step.value_text}" for step in found.steps]


@pytest.mark.parametrize(
    ("design", "key", "told"),
    [
        (
            "ring-dance-skirt",
            "fit.hip_girth",
            ["the garment measures: 106.5 cm", "− the body: 101 cm", "which leaves: +5.5 cm"],
        ),
        (
            "ring-dance-skirt",
            "waist.skirt",
            [
                "waist, measured: 72 cm",
                "− allowance: 3.17 cm",
                "a ring of (its cover 2.5 times as close as in the swatch): 68.83 cm",
                "+ lap: 2.5 cm",
                "to cut: 71.5 cm",
            ],
        ),
        (
            "ring-dance-skirt",
            "waist.skirt.cover",
            ["stitches of the waist edge: 152", "worked in each: 2", "stitches: 304"],
        ),
        (
            "ring-dance-skirt",
            "edging.skirt.repeats",
            ["stitches that the edging stands on: 248", "repeats of 4 stitches: 62"],
        ),
        (
            "ring-dance-skirt",
            "strand.skirt.1.beads",
            ["beads that are worked in: 8", "to spare: 2", "beads in all: 10"],
        ),
        (
            "ring-dance-skirt",
            "gauge.double_crochet",
            [
                "counted on the swatch “light cotton, washed”: 27 stitches over 15 cm",
                "in 10 cm: 18",
            ],
        ),
        (
            "whirl-skirt",
            "waist.skirt.eyelets",
            ["stitches of the waist edge: 152", "gaps, an even number, each with its eyelet: 20"],
        ),
        (
            "procession-skirt",
            "waist.skirt.band_girth",
            ["rows of the band: 124", "which makes: 65 cm"],
        ),
        (
            "torchlight-shawl",
            "edging.shawl.repeats",
            [
                "stitches that the edging stands on: 201",
                "− stitches over: 1",
                "repeats of 4 stitches: 50",
            ],
        ),
        (
            "fiddler-cardigan",
            "piece.back.width-above-the-armhole.worked",
            ["wanted: 37.5 cm", "at 18 stitches in 10 cm: 67.5", "worked as: 68 stitches"],
        ),
        (
            "fiddler-cardigan",
            "landmark.bust_girth.girth",
            ["stitches: 90", "with the other pieces, all round: 100 cm"],
        ),
        (
            "rosin-bag",
            "join.3",
            ["front hem: 36 cm", "back hem: 36 cm", "they differ, as shown, by: 0 cm"],
        ),
    ],
)
def test_number_is_told_step_by_step(design: str, key: str, told: list[str]) -> None:
    """Each with what the one before it leads to."""
    assert lines(reason(shown(Example(design)), key)) == told


def test_cord_is_the_longer_of_two_ways_to_reckon_it() -> None:
    """Tied round the waist, or held while the widest girth goes through."""
    found = reason(shown(Example("whirl-skirt")), "waist.skirt")
    assert found.steps[-1].text == "the longer of the two, to cut"


def test_yarn_is_told_as_finely_as_it_can_be_known() -> None:
    """Balls with what is to spare; weight and length about, with what they may be."""
    drafted = shown(RING)
    balls, mass, length = (reason(drafted, f"yarn.1{end}") for end in ("", ".mass", ".length"))
    need = drafted.tally.yarn[0]
    assert balls.number == str(need.balls)
    assert "+ to spare: 11 %" in lines(balls)
    assert mass.steps[-1].text == length.steps[-1].text
    assert length.number.endswith(" m")
    assert any("hands differ" in note for note in length.notes)
    parts = reason(drafted, "yarn.1.parts")
    assert len(parts.steps) > 2
    assert parts.number == mass.number


def test_yarn_whose_label_tells_no_ball_is_told_by_weight() -> None:
    """Then nobody can say how many to buy."""
    drafted = shown(RING)
    (need,) = drafted.tally.yarn
    loose = replace(drafted, tally=replace(drafted.tally, yarn=(replace(need, balls=None),)))
    assert reason(loose, "yarn.1").number == reason(drafted, "yarn.1.mass").number


def test_colours_are_named_by_their_letters() -> None:
    """As the rows name them."""
    drafted = shown(Example("torchlight-shawl"))
    assert reason(drafted, "yarn.b").title == "yarn, color B"


def going(drafted: Drafted, **changes: object) -> Drafted:
    """The same with another verdict on its opening."""
    one: GoingOn = replace(drafted.fit.going_on, **changes)  # type: ignore[arg-type]
    return replace(drafted, fit=replace(drafted.fit, going_on=one))


def test_going_on_sets_the_opening_against_what_has_to_pass() -> None:
    """The verdict is the last step; without an opening it is the only one."""
    drafted = shown(RING)
    found = reason(drafted, "going_on")
    assert found.steps[0].text == "the opening measures"
    assert found.number == "may pass"
    assert reason(going(drafted, verdict="passes"), "going_on").number == "passes"
    assert lines(reason(going(drafted, opening=0.0), "going_on")) == ["so it: may pass"]
    hat = reason(shown(Example("haymaker-hat")), "fit.brim")
    assert hat.title == "brim"


def test_ease_of_a_hem_without_a_body_is_not_asked_for() -> None:
    """There is nothing to compare it with."""
    drafted = shown(RING)
    assert "fit.hem" not in keys(drafted)
    assert "landmark.hem.girth" in keys(drafted)


@pytest.mark.parametrize(("units", "length"), [("cm", "101 cm"), ("in", "39 3/4 in")])
def test_measurement_says_where_it_is_used(units: Units, length: str) -> None:
    """And whether it was estimated, and from what."""
    found = reason(shown(RING, units=units), "body.hip_girth")
    assert found.number == length
    assert any("waist, hip, hem" in note for note in found.notes)
    drafted = shown(Example(body="dancer-4"))
    one = next(m for m in drafted.basis.body.measurements.values() if m.estimated)
    told = reason(drafted, f"body.{one.key}")
    assert told.number.endswith("(estimated)")
    assert told.steps[0].estimated
    assert one.source in told.steps[0].text


def test_length_and_time_end_with_what_the_glance_says() -> None:
    """Worn, from the waist edge to the hem; hours at two paces."""
    drafted = shown(RING)
    assert reason(drafted, "length").number == "56.5 cm"
    assert " to " in reason(drafted, "time").number
    assert "length" not in keys(shown(CARDIGAN))


def test_count_that_no_because_lands_on_is_told_all_the_same() -> None:
    """Its own line ends the chain."""
    drafted = shown(RING)
    marks = tuple(replace(m, because=Because()) for m in drafted.plan.main.landmarks)
    bare = replace(drafted, plan=alter(drafted.plan, landmarks=marks))
    assert lines(reason(bare, "landmark.hip_girth")) == ["stitches: 192"]
    assert lines(reason(bare, "landmark.hip_girth.wanted")) == ["wanted: 105 cm"]
    assert reason(bare, "row.skirt.0").number == "152"


def test_short_rounds_tell_the_part_that_they_work() -> None:
    """The round after them stands on the last whole one."""
    drafted = shown(Example("hayfield-pullover"))
    after = reason(drafted, "row.yoke.4")
    assert "stitches of the foundation below: 104" in lines(after)
    assert lines(after)[-1] == "stitches: 112"


def test_row_of_a_stitch_pattern_is_told_by_its_repeats() -> None:
    """And its base rounds by what they make ready."""
    drafted = shown(Example("barn-dance-skirt"))
    assert lines(reason(drafted, "row.skirt.24"))[2:] == [
        "repeats of the stitch pattern: 33", "places that each leaves: 6", "places to work into: 198",
    ]  # fmt: skip
    base = reason(drafted, "row.skirt.23")
    assert "more: it makes the count that the stitch pattern needs: 6" in lines(base)
    columns = reason(shown(Example("hop-garden-skirt")), "row.skirt.24")
    assert "in the 8 plain columns between them: 40" in lines(columns)


def test_chain_to_begin_with_is_longer_than_its_row() -> None:
    """What row 1 takes for its turning chain is told beside the count."""
    found = reason(shown(CARDIGAN), "row.back.0")
    assert found.number == "90"
    assert "The chain has 2 more, for the first row to begin with: 92." in found.notes


def test_wanted_girth_runs_straight_between_its_knots() -> None:
    """A little beyond the last one it stays; before the first nothing is wanted."""
    profile = ((0.0, 800.0), (100.0, 900.0), (100.0, 950.0), (200.0, 1000.0))
    assert wanted_at(profile, 50.0) == pytest.approx(850.0)
    assert wanted_at(profile, 150.0) == pytest.approx(975.0)
    assert wanted_at(profile, 210.0) == 1000.0
    assert wanted_at(profile, -1.0) is None
    assert wanted_at((), 10.0) is None


def test_reason_without_a_sentence_has_one_of_its_steps() -> None:
    """And leaves notes out that say nothing."""
    step = reason(shown(RING), "landmark.hip_girth").steps[-1]
    found = reasoned("k", "t", (step,), None, ("", "Note."))
    assert found.sentence == "in whole stitches, multiple of 8: 192"
    assert found.notes == ("Note.",)


def test_slugs_keep_apart_what_looks_alike() -> None:
    """Names without a Latin letter are numbered."""
    assert slugs(("Ärmel", "armel", "рукав"), "piece") == ("armel", "armel-2", "piece-3")


@pytest.mark.parametrize("design", TEXTS)
def test_no_reason_only_says_its_number_again(design: str) -> None:
    """ "wanted: 60 cm" for what was wanted, or "rounds 1 to 29" for how many rounds, says nothing."""
    shown = drafted(Example(design))
    for key in keys(shown):
        told = reason(shown, key)
        if len(told.steps) == 1:
            assert not told.steps[0].text.startswith(("rounds ", "rows or rounds ")), key
            assert told.steps[0].text != "wanted" or not key.endswith(".wanted"), key


def test_row_of_a_strand_is_told_with_its_chains() -> None:
    """8 lengths of 20 chains are 160, and have 9 ends."""
    steps = reason(drafted(Example()), "row.front-strand.1").steps
    assert [step.value_text for step in steps] == ["8", "20", "160", "9"]
