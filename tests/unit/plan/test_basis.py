"""Design, body and swatches brought together."""

from __future__ import annotations

from pathlib import Path

import pytest
from sample_designs import Design, Made, basis, body, section, swatch, table

from frogless.errors import InputError
from frogless.plan.make import plan

SKIRT = (
    section("to the hip", shape="shaped", to="hip", ease="4 cm"),
    section("to the hem", to="hem"),
)


def test_because_of_a_formula_names_what_was_measured(made: Made) -> None:
    """By way of the design's own lengths, each measurement once, then the formula."""
    lengths = table("lengths", opening="max(waist_girth, half)", half="hip_girth / 2")
    known = made(*SKIRT, tables=(lengths,))
    steps = known.because_formula("opening", "start.girth").steps
    assert [s.what for s in steps] == ["waist_girth", "hip_girth", "formula"]
    assert steps[-1].note == "opening: max(waist_girth, half)"
    (alone,) = known.because_formula("hip_girth", "start.girth").steps
    assert (alone.what, alone.value) == ("hip_girth", 1120)


def test_measured_stretch_is_a_number_in_formulas(made: Made) -> None:
    """Half of it may be used up at the waist."""
    sample = swatch(27, 15, width="15 cm", height="15 cm", more='stretched_width = "18 cm"')
    start = 'with = "chain"\ngirth = "hip_girth / (1 + stretch)"'
    known = made(*SKIRT, sample=sample, start=start)
    assert known.length(known.tube.start.girth, "start.girth") == pytest.approx(1120 / 1.2)


def test_trim_in_a_stitch_that_was_not_swatched_is_estimated(made: Made) -> None:
    """From the main stitch, with its uncertainty, and marked as such."""
    known = made(*SKIRT)
    main, trim = known.gauge("double_crochet", "work.stitch"), known.trim_gauge("single_crochet")
    assert (main.estimated, trim.estimated) == (False, True)
    assert trim.width.relative > main.width.relative
    assert trim.height.value < main.height.value


def test_stitch_is_looked_for_in_every_swatch(tmp_path: Path) -> None:
    """One file for the skirt, one for its band."""
    design = Design((section("band", length="4 cm", stitch="single_crochet"), *SKIRT))
    person = body(waist_girth="84 cm", hip_girth="112 cm", waist_to_hip="20 cm")
    fine = swatch(36, 40, stitch="sc", width="20 cm", height="20 cm", hook="3 mm")
    start = 'with = "chain"\ngirth = "hip_girth / 1.1"'
    known = basis(tmp_path, Design(design.sections, start=start).text, person, swatch(18, 10), fine)
    assert [s.hook for s in plan(known).sections] == [3.0, 3.5, 3.5]
    assert known.hook == 3.5


REFUSED = {
    "stitch that is none": (
        {"stitch": "double_crotchet"},
        "work.stitch",
        'unknown stitch "double_crotchet"; did you mean "double_crochet"',
    ),
    "fabric of what nobody swatches": (
        {"stitch": "reverse_single_crochet"},
        "work.stitch",
        "accepted are slip_stitch, single_crochet, half_double_crochet, double_crochet",
    ),
    "fabric of picots": ({"stitch": "picot"}, "work.stitch", "is nothing to make a fabric of"),
    "start with a stitch": (
        {"start": 'with = "double_crochet"\ngirth = "waist_girth"'},
        "start.with",
        "is nothing to begin with",
    ),
    "gauge of no stitch": (
        {
            "tables": (
                '[gauge]\nstitch = "dc"\nstitches_in_10cm = 18\nrows_in_10cm = 9\nhook = "4 mm"',
            )
        },
        "gauge.stitch",
        'unknown stitch "dc"',
    ),
    "length named like a measurement": (
        {"tables": (table("lengths", hip_girth="90 cm"),)},
        "lengths.hip_girth",
        "is a measurement of the body; choose another name",
    ),
    "length named like a function": (
        {"tables": (table("lengths", max="90 cm"),)},
        "lengths.max",
        "is a word of formulas",
    ),
    "length that no formula can name": (
        {"tables": ('[lengths]\n"skirt length" = "60 cm"',)},
        "lengths.skirt length",
        "write letters, figures and _, a letter first",
    ),
}


@pytest.mark.parametrize("case", REFUSED)
def test_design_that_names_what_is_not_there_is_refused(made: Made, case: str) -> None:
    """With its key, and what there is."""
    design, key, told = REFUSED[case]
    with pytest.raises(InputError) as refused:
        made(*SKIRT, **design)
    assert told in str(refused.value)
    assert refused.value.faults[0].place.key == key


def test_stitch_that_no_swatch_has_is_asked_for(made: Made) -> None:
    """With what the swatch has."""
    with pytest.raises(InputError, match="the swatch has no gauge of half double crochet"):
        plan(made(section("band", length="4 cm", stitch="half_double_crochet"), *SKIRT))
