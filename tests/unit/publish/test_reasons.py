"""Every number of a draft, asked why it is what it is."""

from __future__ import annotations

import re

import pytest
from examples import DESIGNS, GARMENTS, Example
from published import shown

from frogless.errors import InputError
from frogless.publish.drafted import Drafted
from frogless.publish.reasons import Reason, keys, reason
from frogless.units import Units

EVERY = (*DESIGNS, *GARMENTS)


def lines(found: Reason) -> list[str]:
    """The steps as a page would show them."""
    return [f"{step.text}: {step.value_text}" for step in found.steps]


@pytest.mark.parametrize("units", ["cm", "in"])
@pytest.mark.parametrize("design", EVERY)
def test_every_reason_ends_with_the_number_that_is_shown(design: str, units: Units) -> None:
    """In every design: each step says something, and the last one is the number itself."""
    drafted = shown(Example(design), units=units)
    asked = keys(drafted)
    assert len(asked) > 20
    for key in asked:
        found = reason(drafted, key)
        assert found.key == key
        assert found.number == found.steps[-1].value_text
        assert found.title
        assert all(step.text.strip() and step.value_text.strip() for step in found.steps), key
        assert not any("{" in text for text in (*lines(found), *found.notes)), key


@pytest.mark.parametrize("design", EVERY)
def test_keys_are_unique_and_fit_into_an_address(design: str) -> None:
    """Lower-case letters, digits, dots, hyphens and underscores; each once."""
    asked = keys(shown(Example(design)))
    assert len(set(asked)) == len(asked)
    assert all(re.fullmatch(r"[a-z0-9_-]+(\.[a-z0-9_-]+)*", key) for key in asked)


def test_keys_are_the_same_whatever_it_is_published_in() -> None:
    """Terms and units change what is said, and no key."""
    assert keys(shown(Example(), "uk", "in")) == keys(shown(Example()))


def test_count_of_a_landmark_is_told_step_by_step() -> None:
    """The body, the ease, the gauge, whole stitches; first cause first."""
    found = reason(shown(Example()), "landmark.hip_girth")
    assert lines(found) == [
        "hip, measured: 101 cm",
        "+ ease: 4 cm",
        "wanted: 105 cm",
        "at 18 stitches in 10 cm: 189",
        "in whole stitches, multiple of 8: 192",
    ]
    assert (found.title, found.number) == ("hip", "192")
    assert found.sentence.startswith("hip 101 cm + ease 4 cm = 105 cm wanted")
    assert found.notes[0].startswith("192 stitches make 106.5 cm, give or take the swatch")


def test_straight_hem_is_wanted_as_the_landmark_above() -> None:
    """It has no cause of its own."""
    found = reason(shown(Example("rehearsal-skirt")), "landmark.hem")
    assert found.steps[0].text == "wanted, as at the hip"


def test_estimated_measurement_is_marked_in_its_step() -> None:
    """Whoever was not measured there is told so."""
    drafted = shown(Example(body="dancer-4"))
    steps = [step for key in keys(drafted) for step in reason(drafted, key).steps]
    marked = [f"{step.text} {step.value_text}" for step in steps if step.estimated]
    assert marked
    assert all("estimated" in text for text in marked)


def test_shaping_round_says_which_it_is_and_what_it_adds() -> None:
    """The second of five, one stitch more at each of eight points."""
    found = reason(shown(Example()), "row.skirt.8")
    assert lines(found)[2:] == [
        "stitches of round 7 below: 160",
        "more: 1 at each of 8 points, the 2nd of 5 shaping rounds: 8",
        "stitches: 168",
    ]
    assert any(note.startswith("That is 2 cm wider than the 91.5 cm") for note in found.notes)


def test_row_between_keeps_the_count_below() -> None:
    """And says that it is no shaping round."""
    found = reason(shown(Example()), "row.skirt.9")
    assert found.steps[-1].text == "not a shaping round, so its count stays"
    assert found.number == "168"


def test_foundation_has_the_reason_of_the_waist() -> None:
    """The count that is begun with is that of the landmark there."""
    drafted = shown(Example())
    assert reason(drafted, "row.skirt.0").steps == reason(drafted, "landmark.waist_girth").steps


@pytest.mark.parametrize("design", EVERY)
def test_rows_count_from_the_row_below(design: str) -> None:
    """Wherever the row below is told, what is added to it gives the row."""
    drafted: Drafted = shown(Example(design))
    told = 0
    for key in keys(drafted):
        if not key.startswith("row."):
            continue
        found = reason(drafted, key)
        below = [n for n, step in enumerate(found.steps) if step.text.endswith("below")]
        if not below:
            continue
        told += 1
        change = 0
        if len(found.steps) == below[0] + 3:
            step = found.steps[below[0] + 1]
            change = int(step.value_text) * (1 if step.text.startswith("more") else -1)
        assert int(found.steps[below[0]].value_text) + change == int(found.number), key
    assert told


def test_unknown_key_is_refused_with_one_like_it() -> None:
    """A page may be older than the draft."""
    with pytest.raises(InputError, match=r'did you mean "landmark.hip_girth"'):
        reason(shown(Example()), "landmark.hips_girth")
