"""Formulas over lengths and names."""

from __future__ import annotations

import pytest

from frogless.design.formulas import Scope, evaluate, is_name, length, names_in
from frogless.errors import InputError, Place

PLACE = Place(key="here")
SCOPE = Scope(
    lengths={"waist_girth": 840.0, "hip_girth": 1120.0, "waist_to_hip": 200.0},
    numbers={"stretch": 0.2},
    formulas={
        "opening": "max(waist_girth, half)",
        "half": "hip_girth / 2",
        "round": "around",
        "around": "round + 1 cm",
    },
    wanting=frozenset({"bust_girth"}),
    where=lambda key: Place(key=key),
)


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("10 cm \u2212 2 cm", 80.0),
        ("\u22122 cm + 3 \u00d7 4 cm \u00f7 2", 40.0),
        ("60 cm", 600),
        ("23 5/8 in", 600.075),
        ('18 1/2"', 469.9),
        ("63,5 cm", 635),
        ("hip_girth + 4 cm", 1160),
        ("hip_girth - 4 cm * 2", 1040),
        ("(hip_girth - 4 cm) * 2", 2160),
        ("1.35 * hip_girth", 1512),
        ("hip_girth / (1 + stretch)", 933.33),
        ("-hip_girth + 2 * waist_girth", 560),
        ("max(waist_girth, hip_girth / 1.2, 90 cm)", 933.33),
        ("min(waist_girth, hip_girth)", 840),
        ("opening", 840),
        ("hip_girth * hip_girth / waist_girth", 1493.33),
        ("2 * 18 1/2 in", 939.8),
        ("min(3, 5) * 1 cm", 30),
        ("max(1.5, 2) * 1 cm", 20),
    ],
)
def test_formula_gives_a_length(text: str, mm: float) -> None:
    """As arithmetic has it; a length of the design's own is worked out where it is used."""
    assert length(text, SCOPE, PLACE) == pytest.approx(mm, abs=0.01)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("", "is not a formula"),
        ("hip_girth +", "(stuck at its end)"),
        ("hip_girth % 2", "(stuck at character 11)"),
        ("2 hip_girth", "stuck at character 3"),
        ("0,9 * hip_girth", "stuck at character 2"),
        ("hip_girht + 4 cm", 'unknown name "hip_girht" in a formula; did you mean "hip_girth"'),
        ("xyz", "may use the body's measurements and the names under [lengths]"),
        ("bust_girth", "was not measured; measure it and add it to the body"),
        ("hip_girth + 4", 'do not go together in "+"; give the number a unit'),
        ("max(hip_girth, 4)", 'do not go together in "max"'),
        ("maximum(hip_girth, 4 cm)", 'unknown function "maximum"'),
        ("hip_girth / 0", "divides by zero"),
        ("hip_girth * hip_girth", "gives an area or the like"),
        ("hip_girth / waist_girth", "gives a plain number (1.33333)"),
        ("4", "gives a plain number (4), where a length is wanted"),
        ("1,234 cm", "can be thousands or a decimal"),
        ("3/0 cm", "divides by zero"),
        ("round", "are defined by each other: round -> around -> round"),
        ("__import__('os')", "is not a formula"),
        ("hip_girth.real", "is not a formula"),
        ("(" * 300 + "1 cm" + ")" * 300, "too long for a formula"),
    ],
)
def test_formula_that_cannot_be_is_refused(text: str, told: str) -> None:
    """In one sentence, with its place; no code is run."""
    with pytest.raises(InputError) as refused:
        length(text, SCOPE, PLACE)
    assert told in str(refused.value)
    assert len(refused.value.faults) == 1
    assert refused.value.faults[0].place.key


def test_fault_in_a_length_of_the_designs_own_is_told_where_it_stands() -> None:
    """Not where it is used."""
    scope = Scope({}, formulas={"drop": "no_such"}, where=lambda key: Place(key=key))
    with pytest.raises(InputError) as refused:
        length("drop + 1 cm", scope, PLACE)
    assert refused.value.faults[0].place.key == "lengths.drop"


def test_names_of_a_formula_are_told_once_each() -> None:
    """Functions are no names."""
    text = "max(hip_girth, waist_girth) + hip_girth / 2"
    assert names_in(text, PLACE) == ("hip_girth", "waist_girth")
    assert names_in("4 cm", PLACE) == ()


def test_plain_number_is_a_value_without_length() -> None:
    """Power 0; a length has power 1, an area 2."""
    assert [evaluate(t, SCOPE, PLACE).power for t in ("2", "2 cm", "2 cm * 3 cm")] == [0, 1, 2]


@pytest.mark.parametrize(
    ("text", "good"),
    [
        ("skirt_length", True),
        ("_x1", True),
        ("skirt length", False),
        ("1st", False),
        ("hüfte", False),
    ],
)
def test_name_is_what_a_formula_can_use(text: str, *, good: bool) -> None:
    """Letters, figures and _, a letter first."""
    assert is_name(text) is good
