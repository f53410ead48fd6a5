"""What is said beside the fields of a body: faults, questions, estimates."""

from __future__ import annotations

import pytest

from frogless.body.measurements import known_measurements
from frogless.studio.examples import examples
from frogless.studio.people.body_text import NEW, written
from frogless.studio.people.checked import checked
from frogless.studio.people.shown import form


def body(**values: str) -> str:
    """A body file in cm."""
    return written(NEW, {"name": "A", **values}, "cm")


def test_inches_typed_as_cm_are_asked_about() -> None:
    """33 in is 83.8 cm."""
    told = checked(body(waist_girth="33", hip_girth="101"), "cm")
    assert told.body is None
    assert "did you mean 33 in (83.8 cm)?" in told.errors["waist_girth"]


def test_faults_of_several_kinds_are_told_together() -> None:
    """What is no length does not hide what no body has."""
    told = checked(body(waist_girth="33", bust_girth="9o", age="old"), "cm")
    assert set(told.errors) == {"waist_girth", "bust_girth", "age"}


def test_estimates_go_on_beside_a_fault() -> None:
    """They are made from what is good."""
    told = checked(body(waist_girth="33", stature="165", hip_girth="101"), "cm")
    assert told.estimates["waist_to_hip"].startswith("Estimated: about 19.5 cm")


def test_estimate_says_how_far_off_it_may_be_and_from_what() -> None:
    """ANSUR II as in estimates.csv: 0.121 · 1650 − 6 = 193.65 mm; 1.96 · 17 mm and the tape's 5 mm."""
    told = checked(body(stature="165"), "cm")
    assert told.estimates["waist_to_hip"] == "Estimated: about 19.5 cm, ± 3.5 cm, from stature."
    told = checked(body(stature="165"), "in")
    assert told.estimates["waist_to_hip"] == "Estimated: about 7 1/2 in, ± 1 1/4 in, from stature."


def test_what_cannot_be_estimated_yet_says_what_it_would_take() -> None:
    """A floor length comes from stature only; a waist from nothing."""
    told = checked(body(), "cm")
    assert told.estimates["waist_to_floor"] == "Can be estimated once stature is filled in."
    assert told.estimates["waist_girth"] == ""


def test_nothing_is_estimated_for_a_child() -> None:
    """The surveys are of grown-ups."""
    told = checked(body(age="8", stature="128"), "cm")
    assert "for a child" in told.estimates["waist_to_hip"]
    assert not any(said.startswith("Estimated") for said in told.estimates.values())


def test_odd_proportion_is_questioned_and_not_refused() -> None:
    """Bodies differ; the question stands beside the part that is odd."""
    told = checked(body(waist_girth="100", hip_girth="90"), "cm")
    assert told.body is not None
    assert told.questions["hip_girth"].startswith(
        "Hip girth 90 cm is 0.90 times waist girth 100 cm"
    )


def test_sentences_call_measurements_as_the_form_does() -> None:
    """No key with an underscore is shown."""
    told = checked(body(waist_girth="150", hip_girth="80", stature="300"), "cm")
    said = " ".join((*told.errors.values(), *told.questions.values()))
    assert said
    assert not [key for key in known_measurements() if key in said and "_" in key]


@pytest.mark.parametrize("text", ["", "x = [", "measurements = 3"])
def test_text_that_is_no_body_is_told_and_nothing_else(text: str) -> None:
    """Never a traceback."""
    told = checked(text, "cm")
    assert told.errors[""]
    assert told.body is None


def test_what_designs_cannot_do_without_comes_first() -> None:
    """Waist and hip for skirts; what is only estimated is folded, and says who needs it."""
    designs = [examples("design")[key].text for key in ("ring-dance-skirt", "whirl-skirt")]
    shown = form({"waist_to_knee": "58"}, checked(body(), "cm"), "cm", designs)
    first = shown.parts[0]
    assert [row.field.name for row in first.rows] == ["waist_girth", "hip_girth"]
    assert first.rows[0].needed == "Needed by Ring dance skirt and Whirl skirt."
    knee = next(row for row in shown.rows if row.field.name == "waist_to_knee")
    assert knee.needed == "Needed by Ring dance skirt."
    assert shown.filled == 1
    assert [row.number for row in shown.rows if row.number] == list(range(1, 24))
