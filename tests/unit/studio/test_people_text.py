"""A body file and its form: what is set in a field is set in the text, and nothing else is touched."""

from __future__ import annotations

import tomllib

import pytest

from frogless.body.load import parse_body
from frogless.body.measurements import known_measurements
from frogless.errors import InputError
from frogless.studio.examples import examples
from frogless.studio.people.body_text import FILE, NEW, values_of, written
from frogless.studio.people.measured import GROUPS, fields, ordered

BODIES = examples("body")
DANCER = BODIES["dancer-3"].text


@pytest.mark.parametrize("key", BODIES)
@pytest.mark.parametrize("units", ["cm", "in"])
def test_form_that_nobody_changed_leaves_the_text_as_it_was(key: str, units: str) -> None:
    """Letter by letter, comments included, on a page of either units."""
    text = BODIES[key].text
    values = values_of(text, units)  # type: ignore[arg-type]
    assert values is not None
    assert written(text, values, units) == text  # type: ignore[arg-type]


def test_one_change_changes_one_line() -> None:
    """The remark behind a size stays with it."""
    values = {**(values_of(DANCER, "cm") or {}), "waist_girth": "28 1/4 in"}
    before, after = DANCER.splitlines(), written(DANCER, values, "cm").splitlines()
    changed = [line for was, line in zip(before, after, strict=True) if was != line]
    assert len(changed) == 1
    assert changed[0].startswith('waist_girth = "28 1/4 in"')
    assert "ISO 8559-1 terms" in changed[0]


def test_emptied_field_leaves_the_file_and_a_new_one_joins_it() -> None:
    """Also an age, which stands before the measurements."""
    values = {
        **(values_of(DANCER, "cm") or {}),
        "wrist_girth": "",
        "thigh_girth": "58",
        "age": "31",
    }
    body = parse_body(written(DANCER, values, "cm"), FILE)
    assert body.get("wrist_girth") is None
    assert body.age == 31
    thigh = body.get("thigh_girth")
    assert thigh is not None
    assert thigh.value.value == 580


@pytest.mark.parametrize(
    ("typed", "units", "mm"),
    [
        ("71,5", "cm", 715.0),
        ("71.5 cm", "in", 715.0),
        ("28 1/4 in", "cm", 717.55),
        ("28¼", "in", 717.55),
        ("28.25", "in", 717.55),
        ("2 ft 4 in", "cm", 711.2),
    ],
)
def test_sizes_are_taken_as_people_write_them(typed: str, units: str, mm: float) -> None:
    """A bare number is in the units of the page; 1 in is 25.4 mm by definition (yard of 1959)."""
    text = written(NEW, {"name": "A", "waist_girth": typed}, units)  # type: ignore[arg-type]
    waist = parse_body(text, FILE).get("waist_girth")
    assert waist is not None
    assert waist.value.value == pytest.approx(mm)


def test_every_known_measurement_has_a_field_of_its_own() -> None:
    """None is asked twice, and each is in a group."""
    names = [one.name for one in fields()]
    assert sorted(names) == sorted(known_measurements())
    assert [key for keys in GROUPS.values() for key in keys] == list(ordered())


@pytest.mark.parametrize("text", ["x = [", "", 'format = "frogless-body/1"\nname = "A"\n'])
def test_text_that_is_no_body_cannot_be_filled_in(text: str) -> None:
    """It is told, and shown as text instead."""
    assert values_of(text, "cm") is None
    with pytest.raises(InputError, match="no body file"):
        written(text, {"name": "A"}, "cm")


def test_new_body_is_a_body_file() -> None:
    """Of the format that the command line reads."""
    data = tomllib.loads(written(NEW, {"name": " Anna  B ", "hip_girth": "101"}, "cm"))
    assert data == {
        "format": "frogless-body/1",
        "name": "Anna B",
        "measurements": {"hip_girth": "101 cm"},
    }
