"""A swatch file as a form and back: nothing that the format has is lost, comments are kept."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from frogless.studio.examples import examples
from frogless.studio.swatches.form import (
    empty_values,
    numbers_of,
    reading_forms,
    values_of,
    with_reading,
    without_reading,
)
from frogless.studio.swatches.looking import looked, what_changed
from frogless.studio.swatches.written import checked
from frogless.swatch import parse_swatch

DOCS = Path(__file__).parents[3] / "docs" / "swatch-format.md"

COMMENTED = """# my own
format = "frogless-swatch/1"
name = "blue"   # of the shelf
stitch = "double crochet"
hook = "4 mm"

[yarn]
ball_mass = "1 3/4 oz" # as printed

[[reading]] # in the middle
state = "washed"
stitches = 27
width = "150 mm"
rows = 15
height = "15.8 cm"

[[reading]]
# hung on the door
state = "hung"
rows = 15
height = "16.3 cm"
load = "40 g"
"""

ALL_KEYS = """format = "frogless-swatch/1"
name = "all"
stitch = "dc"
hook = "4 mm"
colour = "B"
[yarn]
name = "y"
category = 3
fibre = "wool"
plies = 4
ball_mass = "50 g"
ball_length = "120 m"
[[reading]]
stitch = "sc"
hook = "3.5 mm"
state = "washed"
stitches = 27.25
width = "15 cm"
rows = 30.5
height = "15 cm"
mass = "9.6 g"
stretched_width = "18 cm"
[[reading]]
state = "hung"
stitches = 27
width = "14.8 cm"
rows = 15
height = "16.3 cm"
load = "40 g"
[[reading]]
pattern = "fan_arches"
parameters = { half = 5 }
state = "as worked"
repeats = 4
width = "22.4 cm"
rows = 10
height = "12.6 cm"
[[reading]]
pattern = "my_own"
parameters = { a = 2, b = 3 }
state = "washed"
repeats = 4
width = "22.4 cm"
[[reading]]
state = "washed"
stitches = 18
width = "10 cm"
rows = 9
height = "10 cm"
"""

TEXTS = {
    "comments": COMMENTED,
    "all keys": ALL_KEYS,
    "inline": 'format = "frogless-swatch/1"\nname = "i"\nstitch = "dc"\nhook = "4 mm"\n'
    'yarn = { category = 3 }\nreading = [ { state = "washed", stitches = 18, width = "10 cm" } ]\n',
    "documentation": DOCS.read_text(encoding="utf-8").split("```toml\n")[1].split("```")[0],
    **{key: one.text for key, one in examples("swatch").items()},
}


@pytest.mark.parametrize("units", ["cm", "in"])
@pytest.mark.parametrize("name", TEXTS)
def test_form_that_nobody_touched_saves_the_same_text(name: str, units: str) -> None:
    """To the last letter, whatever the units of the page."""
    made = checked(values_of(TEXTS[name], units), TEXTS[name])  # type: ignore[arg-type]
    assert made.errors == {}
    assert made.text == TEXTS[name]


@pytest.mark.parametrize("units", ["cm", "in"])
@pytest.mark.parametrize("name", TEXTS)
def test_form_holds_everything(name: str, units: str) -> None:
    """Written anew from the form alone, it is the same swatch."""
    made = checked(values_of(TEXTS[name], units))  # type: ignore[arg-type]
    assert made.errors == {}
    assert parse_swatch(made.text) == parse_swatch(TEXTS[name])


def test_comments_stay_when_a_reading_is_changed() -> None:
    """Only the line that was changed is another."""
    values = values_of(COMMENTED, "cm") | {"r1-count": "27 1/2"}
    text = checked(values, COMMENTED).text
    assert text == COMMENTED.replace("stitches = 27", "stitches = 27.5")


def test_comments_stay_when_readings_come_and_go() -> None:
    """A reading taken away takes its own comments along, and no others."""
    values = without_reading(values_of(COMMENTED, "cm"), 1)
    values = with_reading(values, 2) | {"r3-rows": "14", "r3-height": "15"}
    text = checked(values, COMMENTED).text
    for kept in ("# my own", "# of the shelf", "# as printed", "# hung on the door"):
        assert kept in text
    assert "27" not in text
    assert [one["state"] for one in tomllib.loads(text)["reading"]] == ["hung", "hung"]


def test_new_keys_stand_where_they_belong() -> None:
    """A color is written above the first table, fiber into the yarn's."""
    values = values_of(COMMENTED, "cm") | {"colour": "B", "yarn-fibre": "wool"}
    made = checked(values, COMMENTED)
    swatch = parse_swatch(made.text)
    assert (swatch.colour, swatch.yarn.fibre) == ("B", "wool")
    assert "# as printed" in made.text


def test_bare_numbers_are_in_the_units_of_the_page() -> None:
    """6 on a page in inches is 6 in; what has a unit keeps it."""
    values = empty_values("in") | {
        "name": "a", "hook": "4", "r1-count": "24", "r1-width": "6", "r1-rows": "14",
        "r1-height": "15 cm", "yarn-ball_length": "120", "yarn-ball_mass": "2",
    }  # fmt: skip
    made = checked(values)
    assert made.errors == {}
    for written in ('"4 mm"', 'width = "6 in"', 'height = "15 cm"', '"120 yd"', '"2 oz"'):
        assert written in made.text


FAULTS = [
    ({"name": ""}, "name", "a name is needed"),
    ({"hook": ""}, "hook", "the hook is needed"),
    ({"hook": "J-10"}, "hook", "J-10 is 6 mm; write 6"),
    ({"colour": "blue"}, "colour", "one capital letter"),
    ({"r1-count": "27.3"}, "r1-count", "multiple of 0.25"),
    ({"r1-count": "many"}, "r1-count", "must be a number"),
    ({"r1-count": ""}, "r1-count", "is missing"),
    ({"r1-width": "4"}, "r1-width", "count over 5 cm at least"),
    ({"r1-width": "15 cn"}, "r1-width", "no unit"),
    ({"r1-rows": "0"}, "r1-rows", "more than 0"),
    ({"r1-load": "40"}, "r1-load", "hung"),
    ({"r1-stretched_width": "12"}, "r1-stretched_width", "15 cm or more"),
    ({"r1-numbers": "half 5"}, "r1-numbers", "only a stitch pattern has numbers"),
    ({"r1-of": "pattern:", "r1-key": ""}, "r1-key", "is needed"),
    ({"r1-of": "pattern:fan_arches", "r1-numbers": "half"}, "r1-numbers", "list of numbers"),
    ({"r1-of": "pattern:fan_arches", "r1-mass": "9 g"}, "r1-mass", "in a stitch"),
    ({"r1-of": "stitch:songs"}, "r1-of", "unknown stitch"),
    ({"r1-state": "wet"}, "r1-state", "washed"),
    ({"yarn-category": "9"}, "yarn-category", "7 or less"),
    ({"yarn-plies": "2.5"}, "yarn-plies", "whole number"),
    ({"yarn-ball_mass": "50 km"}, "yarn-ball_mass", "no unit"),
    ({"readings": ""}, "name", "one reading at least"),
]
GOOD = {
    **empty_values("cm"),
    "name": "a", "hook": "4", "r1-count": "27", "r1-width": "15",
    "r1-rows": "15", "r1-height": "15.8",
}  # fmt: skip


@pytest.mark.parametrize(("wrong", "field", "told"), FAULTS)
def test_fault_is_told_at_its_field(wrong: dict[str, str], field: str, told: str) -> None:
    """Each field that can be wrong says so itself, in a sentence."""
    errors = checked({**GOOD, **wrong}).errors
    assert told in errors[field]


def test_fault_of_the_second_reading_is_told_there() -> None:
    """Also when the one before it was left empty, or was there before."""
    values = with_reading(with_reading(GOOD)) | {"r3-count": "3", "r3-width": "7 cn"}
    assert set(checked(values).errors) == {"r3-width"}
    values = with_reading(values_of(COMMENTED, "cm")) | {"r3-count": "3", "r3-width": "7 cn"}
    assert set(checked(values, COMMENTED).errors) == {"r3-width"}


def test_empty_readings_are_left_out() -> None:
    """A reading that was added and not filled in does not keep anybody from saving."""
    made = checked(with_reading(GOOD))
    assert made.errors == {}
    assert len(parse_swatch(made.text).readings) == 1


def test_form_with_a_fault_is_read_as_far_as_it_goes() -> None:
    """Rows that cannot be read leave the stitches."""
    values = GOOD | {"r1-height": "9 cn"}
    found = looked(values, checked(values).errors, "cm", "us")
    assert found.headline.startswith("18.0 stitches in 10 cm")
    assert found.left_out == (1,)


def test_readings_are_called_by_their_place() -> None:
    """An empty reading before them does not move the sentence to another."""
    values = with_reading(with_reading(empty_values("cm"))) | {
        "name": "a", "hook": "4", "r3-count": "13", "r3-width": "8", "r3-rows": "9",
        "r3-height": "10",
    }  # fmt: skip
    found = looked(values, {}, "cm", "us")
    assert found.told is not None
    assert {one.readings for one in found.told.gauges} == {(3,)}
    assert [one.readings for one in found.told.said] == [(3,)]
    assert {one.reading for one in found.next if "over 15 cm" in one.do} == {3}


@pytest.mark.parametrize(
    ("change", "told"),
    [
        ({"r1-count": "28"}, "reading 1 changed"),
        ({"yarn-fibre": "wool"}, "yarn changed"),
        ({"name": "red"}, "name or hook changed"),
        ({"name": "red", "r2-load": "50"}, "swatch changed"),
    ],
)
def test_undo_says_what_was_done(change: dict[str, str], told: str) -> None:
    """In a few words."""
    old = values_of(COMMENTED, "cm")
    assert what_changed({**old, **change}, old) == told


def test_undo_says_that_a_reading_came_or_went() -> None:
    """One added, one taken away."""
    old = values_of(COMMENTED, "cm")
    more = with_reading(old) | {"r3-rows": "9", "r3-height": "10"}
    assert what_changed(more, old) == "a reading added"
    assert what_changed(without_reading(old, 2), old) == "a reading removed"


def test_two_readings_of_one_place_are_both_kept() -> None:
    """A form that says twice where a reading stood loses neither."""
    values = with_reading(values_of(COMMENTED, "cm")) | {
        "r3-was": "1", "r3-rows": "9", "r3-height": "10"
    }  # fmt: skip
    assert len(parse_swatch(checked(values, COMMENTED).text).readings) == 3


def test_reading_again_keeps_what_it_is_of() -> None:
    """Stitch, state, numbers and hook, and none of what was counted."""
    values = with_reading(values_of(ALL_KEYS, "cm"), 3)
    number = numbers_of(values)[-1]
    assert values[f"r{number}-of"] == "pattern:fan_arches"
    assert values[f"r{number}-numbers"] == "half 5"
    assert f"r{number}-count" not in values


def test_readings_are_titled_in_the_readers_terms() -> None:
    """US double crochet is UK treble crochet."""
    values = values_of(ALL_KEYS, "cm")
    titles = [one.title for one in reading_forms(values, {}, "uk", "cm")]
    assert titles[1] == "Reading 2: treble crochet, hung"
    assert titles[3] == "Reading 4: my own, a 2, b 3, washed"


@given(
    st.dictionaries(
        st.sampled_from(
            (
                *("name", "hook", "colour", "stitch", "yarn-plies", "yarn-category", "readings"),
                *("r1-of", "r1-count", "r1-width", "r1-numbers", "r1-key", "r1-state", "r1-was"),
            )
        ),
        st.text(max_size=12)
        | st.sampled_from(["1", "2 1", "9" * 5000, "pattern:", "half " + "5" * 5000, "½"]),
    )
)
@settings(max_examples=150, deadline=None)
def test_no_form_is_a_fault_of_ours(sent: dict[str, str]) -> None:
    """Whatever is sent is a swatch, or is told at some field."""
    values = {**GOOD, **sent}
    for before in ("", COMMENTED):
        made = checked(values, before)
        looked(values, made.errors, "cm", "us")
        if not made.errors:
            parse_swatch(made.text)
