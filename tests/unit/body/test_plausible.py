"""Slips are refused with what was probably meant; rare bodies are only questioned."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from frogless.body.load import load_body
from frogless.body.measurements import Body
from frogless.body.plausible import question, refusals
from frogless.errors import InputError

Make = Callable[..., Body]


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ('waist_girth = "33 cm"', "did you mean 33 in (83.8 cm)?"),
        ('waist_girth = "84 mm"', "did you mean 84 cm?"),
        ('waist_girth = "840 cm"', "did you mean 840 mm (84 cm)?"),
        ('hip_girth = "112 in"', "did you mean 112 cm?"),
        ('waist_to_hip = "21 in"', "did you mean 21 cm?"),
        ('waist_to_hip = "8 mm"', "did you mean 8 in (20.3 cm)?"),
        ('stature = "165 in"', "did you mean 165 cm?"),
        ('body_mass = "70 g"', "did you mean 70 kg?"),
        ('waist_girth = "10 m"', "50 cm to 250 cm is accepted"),
    ],
)
def test_slip_of_the_unit_is_refused_with_what_was_meant(
    body_file: Callable[..., Path], written: str, meant: str
) -> None:
    """The same number in another unit, where it would be plausible; with line and key."""
    with pytest.raises(InputError) as refused:
        load_body(body_file(written))
    (told,) = str(refused.value).splitlines()
    assert told.startswith(f"body.toml:5 measurements.{written.split()[0]}: ")
    assert meant in told


def test_slips_are_told_together(body_file: Callable[..., Path]) -> None:
    """Somebody who thinks in inches writes them everywhere."""
    with pytest.raises(InputError) as refused:
        load_body(body_file('waist_girth = "33 cm"', 'hip_girth = "44 cm"'))
    assert [fault.place.line for fault in refused.value.faults] == [5, 6]


@pytest.mark.parametrize(
    "sizes",
    [
        {"waist_girth": 840.0, "hip_girth": 1120.0, "waist_to_hip": 200.0},
        {"waist_girth": 600.0, "hip_girth": 830.0},
        {"waist_girth": 1300.0, "hip_girth": 1500.0},
        {"waist_girth": 1000.0, "hip_girth": 950.0},
    ],
)
def test_usual_bodies_are_neither_refused_nor_questioned(make_body: Make, sizes: dict) -> None:
    """Among them one with a hip smaller than its waist, as the survey has some."""
    assert refusals(make_body(**sizes)) == ()
    assert question(make_body(**sizes)) == ()


def test_large_body_is_questioned_and_never_refused(make_body: Make) -> None:
    """Large bodies exist and the surveys have few of them."""
    body = make_body(waist_girth=1900.0, hip_girth=2000.0)
    assert refusals(body) == ()
    assert [sentence.split()[0] for sentence in question(body)] == ["waist_girth", "hip_girth"]
    assert "keep it if the tape says so" in question(body)[1]


def test_question_offers_the_other_unit_when_that_is_plausible(make_body: Make) -> None:
    """A depth of 8 cm was perhaps 8 in."""
    (asked,) = question(make_body(waist_to_hip=80.0))
    assert "did you mean 8 in (20.3 cm)?" in asked


def test_small_waist_is_fine_for_a_child(make_body: Make) -> None:
    """55 cm is a child of 4; without an age it is questioned, and age is asked for."""
    assert question(make_body(waist_girth=550.0, age=4)) == ()
    assert question(make_body(waist_girth=550.0, stature=1050.0)) == ()
    (asked,) = question(make_body(waist_girth=550.0))
    assert "for a child give its age" in asked


def test_refusal_asks_for_the_age_when_a_child_could_be_so(make_body: Make) -> None:
    """A toddler's waist of 48 cm, or 48 in."""
    (fault,) = refusals(make_body(waist_girth=480.0))
    assert "for a child give its age; did you mean 48 in (121.9 cm)?" in fault.message
    assert refusals(make_body(waist_girth=480.0, age=1.5)) == ()


def test_hip_much_smaller_than_waist_is_questioned_then_refused(make_body: Make) -> None:
    """0.85 of the waist is rare, half of it is a slip."""
    (asked,) = question(make_body(waist_girth=1200.0, hip_girth=1020.0))
    assert "hip_girth 102 cm is 0.85 times waist_girth 120 cm" in asked
    (fault,) = refusals(make_body(waist_girth=1200.0, hip_girth=600.0))
    assert fault.place.key == "hip_girth"
    assert "cannot be" in fault.message


def test_pair_is_refused_when_one_alone_could_be(make_body: Make) -> None:
    """A waist of 50 cm exists, but not with a hip of 112 cm: it was 50 in."""
    (fault,) = refusals(make_body(waist_girth=500.0, hip_girth=1120.0))
    assert "did you mean 50 in (127 cm)?" in fault.message


@pytest.mark.parametrize(
    ("shallow", "deep"),
    [
        ({"waist_to_high_hip": 210.0}, {"waist_to_hip": 200.0}),
        ({"waist_to_hip": 390.0}, {"waist_to_knee": 380.0}),
        ({"waist_to_floor": 1450.0}, {"stature": 1450.0}),
    ],
)
def test_depths_are_refused_when_out_of_order(make_body: Make, shallow: dict, deep: dict) -> None:
    """High hip, hip, knee and floor follow from above."""
    assert len(refusals(make_body(**shallow, **deep))) == 1


def test_estimates_are_not_questioned(make_body: Make) -> None:
    """Nobody measured them."""
    body = make_body(waist_to_hip=80.0)
    one = body.measurements["waist_to_hip"]
    guessed = Body("x", {one.key: type(one)(one.key, one.value, estimated=True)})
    assert question(guessed) == ()


def test_age_of_a_child_with_the_size_of_an_adult_is_asked_about(make_body: Make) -> None:
    """Both are named: the rules for children's clothes go by the age."""
    (told,) = question(make_body(age=8, waist_girth=840.0, hip_girth=1120.0))
    assert told.startswith("age 8 does not go with waist_girth 84 cm (a child of 8: about ")
    assert "hip_girth 112 cm" in told
    assert "is the age right?" in told


@pytest.mark.parametrize(("age", "waist"), [(8.0, 640.0), (13.0, 780.0), (40.0, 840.0)])
def test_large_child_is_not_asked_for_its_age(make_body: Make, age: float, waist: float) -> None:
    """Children of one age differ; an adult may have any size."""
    assert question(make_body(age=age, waist_girth=waist, hip_girth=1.2 * waist)) == ()
