"""Stretches of flat pieces in stitch patterns."""

from __future__ import annotations

from pathlib import Path

import pytest
from sample_designs import basis, body, swatch

from frogless import draft
from frogless.errors import InputError
from frogless.plan.make import plan
from frogless.publish.drafted import Drafted

SINGLE = (
    'stitch = "sc"\nstate = "washed"\nstitches = 18\nwidth = "10 cm"\nrows = 20\nheight = "10 cm"'
)
FANS = (
    'pattern = "fan_arches"\nstate = "washed"\nrepeats = 10\nwidth = "50 cm"\nrows = 10\n'
    'height = "8 cm"'
)
BODY = body(bust_girth="92 cm", waist_girth="72 cm", hip_girth="98 cm", head_girth="56 cm")
BAND = '{ name = "band", length = "20 cm", pattern = "fan_arches" }'


def design(sections: str = BAND, more: str = "") -> str:
    """A panel of 50 × 60 cm: 8 cm plain, then these sections, then plain again."""
    return f"""format = "frogless-design/1"
title = "Sample"
[garment]
kind = "shawl"
[work]
stitch = "double_crochet"
turning_chain = 3
turning_chain_counts = true
[[piece]]
construction = "panel"
name = "front"
width = "50 cm"
length = "60 cm"
section = [{{ name = "hem", length = "8 cm" }}, {sections}]
{more}
"""


def drafted(folder: Path, text: str) -> Drafted:
    """The panel, worked and proven."""
    return draft.develop(basis(folder, text, BODY, swatch(18, 10, readings=(FANS, SINGLE))))


def refusal(folder: Path, text: str) -> str:
    """What is said of a panel that cannot be."""
    with pytest.raises(InputError) as refused:
        plan(basis(folder, text, BODY, swatch(18, 10, readings=(FANS, SINGLE))))
    return str(refused.value)


def test_pattern_is_as_wide_as_the_piece_and_leaves_it_its_stitches(tmp_path: Path) -> None:
    """90 stitches are 50 cm; 10 repeats of 5 cm and the stitch beyond them are 50.5."""
    found = drafted(tmp_path, design()).plan
    band = found.sections[1]
    assert band.pattern is not None
    (one,) = band.pattern.bands
    assert (one.repeats, one.base, band.count_before, band.count_after) == (10, 101, 90, 90)
    assert band.girth_after.value == pytest.approx(505)
    assert {round(w) for w in found.main.girths} == {500, 505}


def test_pattern_begins_on_its_own_side_and_is_as_long_as_asked(tmp_path: Path) -> None:
    """Whole row repeats between rows of base stitches."""
    found = drafted(tmp_path, design()).plan
    band = found.sections[1]
    assert band.pattern is not None
    rows = {row.number: row for row in found.program.pieces[0].rows}
    assert rows[band.pattern.bands[0].first_round].side == "RS"
    (length,) = (m.got.value for m in found.main.measures if m.name == "length of band")
    assert length == pytest.approx(200, abs=16)
    assert rows[band.last_round].count == 90


def test_side_edges_are_as_long_as_their_rows_are_high(tmp_path: Path) -> None:
    """Rows of three heights."""
    found = drafted(tmp_path, design()).plan
    (length,) = (m.got.value for m in found.main.measures if m.name == "length")
    assert length == pytest.approx(max(found.main.depths), abs=0.5)


@pytest.mark.parametrize(
    ("sections", "more", "told"),
    [
        (BAND.replace(" }", ', width = "40 cm" }'), "", 'leave "width" out, and shape plain rows'),
        (BAND.replace("fan_arches", "moss"), "", "no swatch was worked in moss"),
        (BAND.replace("fan_arches", "fans"), "", 'unknown stitch pattern "fans"'),
        ('{ name = "two", length = "5 cm", base_stitch = "single_crochet" }', "", "belongs to"),
        (
            BAND.replace("20 cm", "50 cm"),
            'neck = { width = "20 cm", depth = "8 cm" }',
            "the neck of front lies in the pattern",
        ),
        (
            BAND.replace("20 cm", "50 cm"),
            'armhole = { depth = "20 cm", width = "40 cm" }',
            "leave the armhole uncut",
        ),
        (BAND, 'slit = "10 cm"', "the slit of front lies in the pattern"),
    ],
)
def test_what_repeats_do_not_allow_is_refused(
    tmp_path: Path, sections: str, more: str, told: str
) -> None:
    """With what can be done instead."""
    assert told in refusal(tmp_path, design(sections, more))


def test_armhole_that_is_not_cut_may_lie_in_a_pattern(tmp_path: Path) -> None:
    """Its edge is as long as the rows above it are high."""
    text = design(BAND.replace("20 cm", "50 cm"), 'armhole = { depth = "20 cm" }')
    found = drafted(tmp_path, text).plan
    (edge,) = (m.got.value for m in found.main.measures if m.name == "left armhole edge")
    assert edge == pytest.approx(200, abs=16)


@pytest.mark.parametrize("long", ["40 cm", "41 cm", "42 cm", "43 cm"])
def test_piece_may_be_in_a_pattern_from_end_to_end(tmp_path: Path, long: str) -> None:
    """Whole row repeats miss its length by half of one at most."""
    text = design(f'{{ name = "all", length = "{long}", pattern = "fan_arches" }}')
    text = text.replace('{ name = "hem", length = "8 cm" }, ', "").replace("60 cm", long)
    found = drafted(tmp_path, text).plan
    (length,) = (m.got.value for m in found.main.measures if m.name == "length")
    assert length == pytest.approx(float(long.split()[0]) * 10, abs=16.5)
    assert found.sections[0].pattern is not None
