"""Form to file and file to form: nothing is lost, converted or rounded on the way."""

from __future__ import annotations

from pathlib import Path

import pytest

from frogless.body.load import load_body
from frogless.design.document import Design
from frogless.design.load import read_design
from frogless.errors import InputError
from frogless.studio.drafting import documents
from frogless.studio.drafting.fields import (
    WHY,
    Group,
    body_groups,
    pattern_of,
    respelled,
    swatch_groups,
    swatch_stitches,
    with_unit,
)
from frogless.studio.examples import examples, folder
from frogless.swatch import load_swatch
from frogless.units import Units


def design(name: str) -> Design:
    """An example design."""
    return read_design(folder() / name / "design.toml").checked


def names(groups: tuple[Group, ...], *, needed: bool = False) -> set[str]:
    """The fields of a form, or those that may not be empty."""
    return {f.name for group in groups for f in group.fields if f.needed or not needed}


@pytest.mark.parametrize(
    ("written", "kind", "units", "read"),
    [
        ("72", "size", "cm", "72 cm"),
        (" 72,5 ", "size", "cm", "72,5 cm"),
        ("28 1/4", "size", "in", "28 1/4 in"),
        ("28¼", "size", "in", "28¼ in"),
        ("72 cm", "size", "in", "72 cm"),
        ('28"', "size", "cm", '28"'),
        ("3.5", "fine", "in", "3.5 mm"),
        ("120", "long", "in", "120 yd"),
        ("50", "mass", "cm", "50 g"),
        ("62", "weight", "cm", "62 kg"),
        ("27", "", "cm", "27"),
        ("", "size", "cm", ""),
        ("-3", "size", "cm", "-3 cm"),
        ("wide", "size", "cm", "wide"),
    ],
)
def test_bare_number_gets_the_unit_of_the_page(
    written: str, kind: str, units: Units, read: str
) -> None:
    """Whatever says its unit, or is no number, is left to the library."""
    assert with_unit(written, kind, units) == read


def test_units_are_written_out_when_the_page_changes_them() -> None:
    """And dropped again when it changes back; a size is never converted."""
    values = {"body-waist_girth": "72", "body-hip_girth": "40 in", "body-name": "72"}
    groups = body_groups(None, values)
    inches = respelled(values, groups, "cm", "in")
    assert inches == {"body-waist_girth": "72 cm", "body-hip_girth": "40", "body-name": "72"}
    back = respelled(inches, groups, "in", "cm")
    assert back == values


@pytest.mark.parametrize("units", ["cm", "in"])
@pytest.mark.parametrize("key", examples("body"))
def test_body_is_the_same_after_the_form(key: str, units: Units, tmp_path: Path) -> None:
    """Every example, in either unit."""
    text = examples("body")[key].text
    values = documents.body_values(text, units)
    assert values is not None
    (tmp_path / "a.toml").write_text(text, encoding="utf-8")
    again = documents.body_document(values, body_groups(None, values)).text
    (tmp_path / "b.toml").write_text(again, encoding="utf-8")
    one, other = (load_body(tmp_path / f"{n}.toml") for n in "ab")
    assert {k: m.value for k, m in one.measurements.items()} == {
        k: m.value for k, m in other.measurements.items()
    }


@pytest.mark.parametrize("units", ["cm", "in"])
@pytest.mark.parametrize("key", examples("swatch"))
@pytest.mark.parametrize("name", [None, "ring-dance-skirt", "procession-skirt"])
def test_swatch_is_the_same_after_the_form(
    key: str, units: Units, name: str | None, tmp_path: Path
) -> None:
    """Every example, in either unit, whichever design is chosen."""
    text = examples("swatch")[key].text
    values = documents.swatch_values(text, units)
    assert values is not None
    (tmp_path / "a.toml").write_text(text, encoding="utf-8")
    groups = swatch_groups(design(name) if name else None, values)
    again = documents.swatch_document(values, groups).text
    (tmp_path / "b.toml").write_text(again, encoding="utf-8")
    one, other = (load_swatch(tmp_path / f"{n}.toml") for n in "ab")
    assert set(one.readings) == set(other.readings)
    assert (one.stitch, one.hook, one.yarn) == (other.stitch, other.hook, other.yarn)


@pytest.mark.parametrize(
    "more",
    [
        'stitches = 26\nwidth = "14 cm"\nstate = "washed"',
        'stitch = "sc"\nrows = 20\nheight = "12 cm"\nstate = "as worked"',
        'stitch = "tr"\nrows = 20\nheight = "12 cm"\nstate = "washed"\nhook = "5 mm"',
        'stitch = "hdc"\nrows = 20\nheight = "12 cm"\nstate = "hung"',
    ],
)
def test_swatch_that_the_form_cannot_hold_is_not_forced_into_it(more: str) -> None:
    """A second reading, another state, another hook, rows of their own when hung."""
    text = examples("swatch")["fine-wool"].text
    assert documents.swatch_values(f"{text}[[reading]]\n{more}\n", "cm") is None


def test_weighed_stitch_is_the_main_one_of_a_new_swatch() -> None:
    """Its yarn is what the need is worked out from."""
    values = {
        "swatch-name": "S", "swatch-hook": "4", "swatch-state": "washed",
        **{f"swatch-{stitch}-{part}": value
           for stitch in ("double_crochet", "single_crochet")
           for part, value in (("stitches", "20"), ("width", "12"), ("rows", "10"), ("height", "11"))},
        "swatch-single_crochet-mass": "8",
    }  # fmt: skip
    written = documents.swatch_document(values, swatch_groups(design("ring-dance-skirt"), values))
    assert 'stitch = "single_crochet"' in written.text.partition("[")[0]


def test_design_decides_what_is_needed() -> None:
    """Measurements of its formulas and landmarks, and the stitches that it is worked in."""
    for name, stitch in (
        ("ring-dance-skirt", "double_crochet"),
        ("whirl-skirt", "half_double_crochet"),
    ):
        needed = names(swatch_groups(design(name), {}), needed=True)
        assert needed == {
            "swatch-hook",
            *(f"swatch-{stitch}-{part}" for part in ("stitches", "width", "rows", "height")),
        }
    ring = body_groups(design("ring-dance-skirt"), {})
    assert names(ring[:1]) == {
        "body-name", "body-waist_girth", "body-hip_girth", "body-waist_to_hip", "body-waist_to_knee",
    }  # fmt: skip
    assert names(ring, needed=True) == {"body-waist_girth", "body-hip_girth"}
    assert {f"body-{key}" for key in WHY} <= names(ring)
    back_loop = "single_crochet_back_loop"
    assert back_loop in swatch_stitches(design("procession-skirt"), {})
    assert back_loop not in swatch_stitches(design("ring-dance-skirt"), {})


def test_every_measurement_has_one_field() -> None:
    """Whatever the design, a body file can hold nothing that the form has no place for."""
    for groups in (body_groups(None, {}), body_groups(design("ring-dance-skirt"), {})):
        fields = [f.name for group in groups for f in group.fields]
        assert len(fields) == len(set(fields))
        assert "body-neck_girth" in fields


def test_name_is_found_in_a_document_or_the_fault_told() -> None:
    """A design's title, a body's name."""
    assert documents.name_in('title = "T"') == "T"
    assert documents.name_in('name = "N"') == "N"
    assert documents.name_in("") == ""
    with pytest.raises(InputError, match="not valid TOML"):
        documents.name_in("=")


def test_design_in_patterns_asks_for_their_repeats() -> None:
    """Each grade of its fans has a reading of its own; those that are there already are folded."""
    fans = [f"swatch-fan_arches({inside})-repeats" for inside in ("half=4", "half=5", "half=6")]
    asked = names(swatch_groups(design("bellflower-skirt"), {}), needed=True)
    assert set(fans) <= asked
    assert "swatch-square_mesh()-repeats" in names(swatch_groups(design("sluice-top"), {}))
    filled = {"swatch-square_mesh()-repeats": "13"}
    group = swatch_groups(None, filled)[-2]
    assert (group.title, group.folded) == ("Square mesh", True)


def test_reading_in_a_pattern_is_written_with_its_numbers() -> None:
    """And a field whose name has no numbers is refused in a sentence."""
    values = {
        "swatch-name": "mine", "swatch-hook": "4", "swatch-state": "washed",
        "swatch-fan_arches(half=5)-repeats": "4", "swatch-fan_arches(half=5)-width": "26",
    }  # fmt: skip
    written = documents.swatch_document(values, swatch_groups(None, values)).text
    for line in ('pattern = "fan_arches"', "repeats = 4", 'width = "26 cm"', "half = 5"):
        assert line in written
    with pytest.raises(InputError, match="no stitch pattern with its numbers"):
        pattern_of("fan_arches(half=many)")
