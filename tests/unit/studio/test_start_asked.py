"""The first page of a garment: as few fields as its design can be drafted from."""

from __future__ import annotations

import pytest

from frogless.body.load import parse_body
from frogless.design.document import TubeDesign
from frogless.design.load import parse_design
from frogless.draft import Texts, draft_texts
from frogless.stitches.patterns import patterns
from frogless.studio.examples import examples
from frogless.studio.needs import PatternNeed, need_words, needs
from frogless.studio.start.asked import (
    asked,
    first_values,
    in_other_units,
    moved_windows,
    over_its_window,
    pattern_title,
)
from frogless.studio.start.offered import KINDS, kinds, offer
from frogless.studio.start.written import body_lacks, swatch_lacks, understood

DESIGNS = examples("design")
SIZES = {"waist_girth": "72", "hip_girth": "101", "bust_girth": "90"}

FIELDS = {
    "barn-dance-skirt": 7,
    "bellflower-skirt": 11,
    "drum-bag": 3,
    "fiddler-cardigan": 4,
    "half-moon-shawl": 3,
    "harvest-top": 4,
    "hayfield-pullover": 4,
    "haymaker-hat": 3,
    "hop-garden-skirt": 7,
    "kerchief-skirt": 5,
    "lantern-cap": 3,
    "maypole-camisole": 4,
    "midsummer-dress": 6,
    "millrace-skirt": 5,
    "moth-wing-shawl": 3,
    "procession-skirt": 5,
    "rehearsal-skirt": 5,
    "ribbon-dance-top": 5,
    "ring-dance-skirt": 5,
    "rosin-bag": 3,
    "sluice-top": 6,
    "sunwheel-skirt": 5,
    "torchlight-shawl": 3,
    "whirl-skirt": 5,
    "windmill-skirt": 5,
}
"""How many fields have to be filled in for each example design."""

GRADED = "bellflower-skirt"
"""Its pattern is worked in three widths, and each of them has a gauge of its own."""


def test_every_example_has_its_count() -> None:
    """Also those that come to be."""
    counts = {key: len(asked(needs(one.text), "us", "cm").needed) for key, one in DESIGNS.items()}
    assert counts == FIELDS


@pytest.mark.parametrize("key", [key for key in DESIGNS if key != GRADED])
def test_fewer_than_ten_fields_lead_to_a_pattern(key: str) -> None:
    """Of every design but the one whose pattern has three gauges."""
    assert FIELDS[key] < 10


def test_skirts_of_one_tube_and_one_stitch_ask_five() -> None:
    """Waist, hip, hook, stitches, rows."""
    for key, one in DESIGNS.items():
        plain = not needs(one.text).patterns
        if plain and isinstance(parse_design(one.text, key).checked, TubeDesign):
            page = asked(needs(one.text), "us", "cm")
            labels = [field.label for field in page.needed]
            assert labels == ["Waist girth", "Hip girth", "Hook", "Stitches", "Rows"], key


def test_every_needed_field_is_shown_how_it_is_taken() -> None:
    """All but the hook, whose millimeters are printed on it."""
    for one in DESIGNS.values():
        page = asked(needs(one.text), "us", "cm")
        assert all(field.picture for field in page.needed if field is not page.hook)
        assert all(field.hint for field in page.needed)


@pytest.mark.parametrize("key", ["ring-dance-skirt", "barn-dance-skirt", "haymaker-hat"])
def test_what_is_asked_is_enough_to_draft(key: str) -> None:
    """Stitches as of the designer's own gauge; repeats as of the example swatch."""
    need = needs(DESIGNS[key].text)
    page = asked(need, "us", "cm")
    values = first_values(page, body_name="Me", swatch_name="My swatch")
    values |= {"swatch-hook": "3.75", "swatch-r1-count": "18", "swatch-r1-rows": "9.5"}
    values |= {f"body-{one}": SIZES[one] for one in need.measurements}
    # Wheat sheaves, 5 repeats in 16.9 cm, 20 rows in 15.6 cm: light-cotton.toml.
    values |= {"swatch-r2-width": "20.3", "swatch-r2-height": "9.4"} if need.patterns else {}
    if key == "haymaker-hat":
        values["swatch-r1-rows"] = "20"
    told = understood(page, values, "cm")
    assert told.errors == {}
    made = draft_texts(Texts(DESIGNS[key].text, told.body, (told.swatch,)))
    assert made.drafted.tally.yarn[0].mass.value > 0


def test_empty_page_says_of_each_field_that_it_is_needed() -> None:
    """And of no other."""
    page = asked(needs(DESIGNS["ring-dance-skirt"].text), "us", "cm")
    values = first_values(page, body_name="Me", swatch_name="My swatch")
    told = understood(page, values, "cm")
    assert set(told.errors) == {one.name for one in page.needed}


def test_faults_have_the_names_of_the_pages_fields() -> None:
    """A slip of the unit, and a count that is none."""
    page = asked(needs(DESIGNS["ring-dance-skirt"].text), "us", "cm")
    values = first_values(page, body_name="Me", swatch_name="My swatch")
    values |= {"body-waist_girth": "33", "body-hip_girth": "101", "swatch-hook": "3.75"}
    values |= {"swatch-r1-count": "many", "swatch-r1-rows": "9.5"}
    told = understood(page, values, "cm")
    assert set(told.errors) == {"body-waist_girth", "swatch-r1-count"}
    assert "did you mean 33 in" in told.errors["body-waist_girth"]


def test_untouched_window_follows_the_units_and_the_label_says_which() -> None:
    """10 cm or 4 in, counted or not; one that somebody wrote stays, with its unit."""
    page = asked(needs(DESIGNS["ring-dance-skirt"].text), "us", "cm")
    values = first_values(page, body_name="Me", swatch_name="My swatch")
    values |= {"swatch-r1-count": "15 1/2", "swatch-r1-height": "15"}
    changed = in_other_units(page, values, "cm", "in")
    assert (changed["swatch-r1-width"], changed["swatch-r1-height"]) == ("4", "15 cm")
    inches = asked(needs(DESIGNS["ring-dance-skirt"].text), "us", "in")
    count, rows = (
        over_its_window(one, inches, changed, "in").hint for one in inches.readings[0].asked
    )
    assert count.startswith("In 4 in,")
    assert rows == "In 15 cm of height."


def test_count_whose_window_moved_is_asked_about() -> None:
    """18 written where it said 10 cm may have been counted in 10 cm."""
    page = asked(needs(DESIGNS["ring-dance-skirt"].text), "us", "cm")
    values = first_values(page, body_name="Me", swatch_name="My swatch")
    assert not moved_windows(page, values, "cm", "in")
    counted = {**values, "swatch-r1-count": "18"}
    assert "in 4 in" in moved_windows(page, counted, "cm", "in")["swatch-r1-count"]
    assert not moved_windows(page, counted, "cm", "cm")


def test_patterns_are_called_by_their_names_and_numbers() -> None:
    """In either terms; one of the design's own by its key."""
    assert pattern_title(PatternNeed("fan_arches", (("half", 5),)), "us") == (
        f"{patterns()['fan_arches'].names['us'].capitalize()}, half 5"
    )
    assert pattern_title(PatternNeed("my_own"), "uk") == "My own"


def test_body_says_what_it_lacks() -> None:
    """In words, and nothing when everything can be estimated."""
    need = needs(DESIGNS["midsummer-dress"].text)
    lacking = 'format = "frogless-body/1"\nname = "A"\n[measurements]\nwaist_girth = "72 cm"\n'
    assert parse_body(lacking, "a").name == "A"
    assert "Bust girth, " in body_lacks(need, lacking)
    assert "hip girth" in body_lacks(need, lacking)
    assert body_lacks(need, examples("body")["dancer-4"].text) == ""
    assert "fault" in body_lacks(need, "x = [")


def test_swatch_says_what_it_was_not_read_in() -> None:
    """A stitch in the terms of the page, or a stitch pattern with its numbers."""
    plain = examples("swatch")["light-cotton"].text.partition("[[reading]]\nstitch")[0]
    assert swatch_lacks(needs(DESIGNS["whirl-skirt"].text), plain, "us") == (
        "It was not read in half double crochet."
    )
    assert "half treble" in swatch_lacks(needs(DESIGNS["whirl-skirt"].text), plain, "uk")
    assert "half 4" in swatch_lacks(needs(DESIGNS[GRADED].text), plain, "us")
    assert "fault" in swatch_lacks(needs(DESIGNS[GRADED].text), "x = [", "us")
    for swatch in examples("swatch").values():
        assert swatch_lacks(needs(DESIGNS[GRADED].text), swatch.text, "us") == ""


def test_card_says_what_it_asks() -> None:
    """As the gallery does; of a design with a fault the fault; own ones are marked."""
    example = DESIGNS["ring-dance-skirt"]
    card = offer("example:ring-dance-skirt", example.title, example.text, "us")
    assert card.asks == f"Needs {need_words(needs(example.text), 'us')}"
    assert not card.own
    mine = offer("own:1", "A", "x = [", "us")
    assert mine.fault
    assert mine.own


def test_every_kind_of_garment_has_a_word() -> None:
    """The filter leaves none out."""
    offers = [offer(key, one.title, one.text, "us") for key, one in DESIGNS.items()]
    assert {one.kind for one in offers} == set(KINDS)
    assert sum(one.number for one in kinds(offers)) == len(offers)
