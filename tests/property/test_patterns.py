"""Any stitch pattern at any gauge, girth and length: drafted and proven, or refused in a sentence."""

from __future__ import annotations

import tempfile
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sample_designs import Design, basis, body, section, swatch

from frogless import draft
from frogless.errors import FroglessError, Impossible, InputError, ProofFailed
from frogless.plan.patterns import stands_in_columns
from frogless.read.patterns import way_of
from frogless.stitches.load import dictionary
from frogless.stitches.pattern_rows import Way
from frogless.stitches.patterns import patterns

BODY = body(waist_girth="66 cm", hip_girth="70 cm", waist_to_hip="18 cm")
SINGLE = (
    'stitch = "sc"\nstate = "washed"\nstitches = 19\nwidth = "10 cm"\nrows = 21\nheight = "10 cm"'
)


@cache
def ways() -> dict[str, Way]:
    """Every pattern of the library that is worked in rounds."""
    keys = (key for key, entry in patterns().items() if entry.rounds is not None)
    return {key: way_of(key, closed=True) for key in keys}


@dataclass(frozen=True, slots=True)
class Wish:
    """What a skirt in a pattern is asked for: mm, except where said otherwise."""

    pattern: str
    stitch: float
    row: float
    above: int
    long: int
    girth: int
    end: int
    shape_by: str
    below: bool


@st.composite
def wishes(draw: st.DrawFn) -> Wish:
    """Skirts that people might ask for, and some that they would not."""
    shape_by = draw(st.sampled_from(["", "", "repeats", "columns"]))
    keys = sorted(ways())
    if shape_by == "columns":
        keys = [key for key in keys if stands_in_columns(ways()[key], dictionary())]
    return Wish(
        pattern=draw(st.sampled_from(keys)),
        stitch=draw(st.floats(3.5, 9.0)),
        row=draw(st.floats(4.0, 14.0)),
        above=draw(st.integers(20, 260)),
        long=draw(st.integers(20, 320)),
        girth=draw(st.integers(720, 1300)),
        end=draw(st.integers(700, 1700)),
        shape_by=shape_by,
        below=draw(st.booleans()),
    )


def design(wish: Wish) -> str:
    """The skirt as a file."""
    lace: dict[str, object] = {"pattern": wish.pattern, "length": f"{wish.long} mm"}
    if wish.shape_by:
        lace |= {"shape": "shaped", "girth": f"{wish.end} mm", "shape_by": wish.shape_by}
        lace |= {"columns": 6} if wish.shape_by == "columns" else {}
    sections = [section("top", length=f"{wish.above} mm"), section("lace", **lace)]
    long = wish.above + wish.long + 60
    if wish.below:
        sections.append(section("below", to="hem"))
    else:
        sections[-1] = section("lace", **{**lace, "to": "hem", "length": ""}).replace(
            'length = ""\n', ""
        )
        long -= 60
    return Design(
        tuple(sections),
        length=f"{long} mm",
        start=f'with = "foundation_double_crochet"\ngirth = "{wish.girth} mm"',
    ).text


@given(wishes())
@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_any_pattern_is_proven_or_refused(wish: Wish) -> None:
    """No proof fails, no traceback; every girth told is that of whole repeats, or of plain stitches."""
    way = ways()[wish.pattern]
    reading = (
        f'pattern = "{wish.pattern}"\nstate = "washed"\nrepeats = 10\n'
        f'width = "{way.multiple * wish.stitch:.3f} cm"\nrows = 20\nheight = "{2 * wish.row:.3f} cm"'
    )
    sample = swatch(27, 15, width="15 cm", height="15 cm", readings=(reading, SINGLE))
    with tempfile.TemporaryDirectory() as folder:
        try:
            found = draft.develop(basis(Path(folder), design(wish), BODY, sample))
        except ProofFailed as failed:
            pytest.fail(str(failed))
        except (InputError, Impossible) as refused:
            assert_told(refused)
            return
    lace = next(s for s in found.plan.sections if s.pattern)
    assert lace.pattern is not None
    for band in lace.pattern.bands:
        assert band.base == way.places(band.repeats) + lace.pattern.columns * band.column
    girth, plain = lace.girth_before.value, found.plan.sections[0].girth_after.value
    if not lace.pattern.columns:
        assert abs(girth - plain) <= way.multiple * lace.gauge.width.value / 2 + 1e-6
    rows = found.plan.program.pieces[0].rows
    assert len(found.plan.main.girths) == len(rows) == len(found.plan.main.depths)


@cache
def flat_ways() -> dict[str, Way]:
    """Every pattern of the library that is worked in rows."""
    keys = (key for key, entry in patterns().items() if entry.rows is not None)
    return {key: way_of(key, closed=False) for key in keys}


@given(
    st.sampled_from(sorted(flat_ways())),
    st.floats(3.5, 9.0),
    st.floats(4.0, 14.0),
    st.integers(150, 700),
    st.integers(30, 300),
    st.integers(0, 60),
)
@settings(max_examples=20, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_any_pattern_lies_in_a_panel_or_is_refused(
    pattern: str, stitch: float, row: float, width: int, long: int, below: int
) -> None:
    """The panel has its stitches again after it, and is about as wide within it."""
    way = flat_ways()[pattern]
    reading = (
        f'pattern = "{pattern}"\nstate = "washed"\nrepeats = 10\n'
        f'width = "{way.multiple * stitch:.3f} cm"\nrows = 20\nheight = "{2 * row:.3f} cm"'
    )
    hem = f'{{ name = "hem", length = "{below} mm" }}, ' if below > 10 else ""
    text = f"""format = "frogless-design/1"
title = "Sample"
[garment]
kind = "shawl"
[work]
stitch = "double_crochet"
turning_chain = 3
[[piece]]
construction = "panel"
name = "front"
width = "{width} mm"
length = "{long + below + 80} mm"
section = [{hem}{{ name = "band", length = "{long} mm", pattern = "{pattern}" }}]
"""
    sample = swatch(27, 15, width="15 cm", height="15 cm", readings=(reading, SINGLE))
    with tempfile.TemporaryDirectory() as folder:
        try:
            found = draft.develop(basis(Path(folder), text, BODY, sample))
        except ProofFailed as failed:
            pytest.fail(str(failed))
        except (InputError, Impossible) as refused:
            assert_told(refused)
            return
    band = next(s for s in found.plan.sections if s.pattern)
    assert band.pattern is not None
    assert band.count_before == band.count_after == band.pattern.left
    (stretch,) = band.pattern.bands
    assert stretch.base == way.places(stretch.repeats)
    repeat = way.multiple * band.gauge.width.value
    least = way.places(way.least) * band.gauge.width.value
    off = band.girth_after.value - band.girth_before.value
    assert abs(off) <= repeat / 2 + 1e-6 or band.girth_after.value == pytest.approx(least)


def assert_told(refused: FroglessError) -> None:
    """With a place, in whole words."""
    fault = refused.faults[0]
    assert fault.place.key
    assert len(fault.message.split()) > 5
    assert "None" not in fault.message
