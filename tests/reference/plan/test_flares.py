"""Circles and gores against arithmetic worked by hand, from design files to proven rows."""

from __future__ import annotations

import csv
from collections.abc import Callable, Mapping
from itertools import pairwise
from pathlib import Path

import pytest
from sample_designs import CHAIN, Design, basis, body, section, swatch

from frogless.draft import develop
from frogless.plan.model import SectionPlan

ROWS = list(csv.DictReader((Path(__file__).parent / "flares.csv").read_text("utf-8").splitlines()))
JUST = CHAIN + '\nease_allowed = ["0 cm", "0 cm"]'
FULLER = CHAIN + '\nease_allowed = ["0 cm", "5 cm"]'


def circle(folder: Path, share: str, points: int, start: str) -> SectionPlan:
    """A skirt for a waist of 70 cm, 45 cm long, 20 stitches and 10 rounds in 10 cm, proven."""
    flare = section("flare", shape="shaped", to="hem", flare=share, points=points)
    text = Design((flare,), length="45 cm", start=start).text
    person = body(waist_girth="70 cm", hip_girth="70 cm", waist_to_hip="20 cm")
    (planned,) = develop(basis(folder, text, person, swatch(20, 10))).plan.sections
    return planned


def gores(folder: Path) -> SectionPlan:
    """Eight gores from a gathered waist of 72 cm to a hip of 105 cm, 16 by 8 in 10 cm, proven."""
    panels = section("gores", shape="shaped", to="hem", girth="105 cm", gores=8)
    text = Design((panels,), length="20 cm", start=FULLER).text
    person = body(waist_girth="72 cm", hip_girth="75 cm", waist_to_hip="30 cm")
    (planned,) = develop(basis(folder, text, person, swatch(16, 8))).plan.sections
    return planned


CASES: Mapping[str, Callable[[Path], SectionPlan]] = {
    "full circle": lambda folder: circle(folder, "full circle", 16, JUST),
    "full circle of even stretches": lambda folder: circle(folder, "full circle", 16, CHAIN),
    "half circle": lambda folder: circle(
        folder, "half circle", 8, 'with = "chain"\ngirth = "72 cm"'
    ),
    "eight gores": gores,
}


def facts(planned: SectionPlan) -> Mapping[str, int]:
    """Counts, rounds and gaps of a section."""
    assert planned.chosen is not None
    shaped = planned.chosen.rhythm.rounds
    return {
        "waist": planned.count_before,
        "hem": planned.count_after,
        "rounds": planned.last_round,
        "shaping rounds": len(shaped),
        "shortest gap": min(b - a for a, b in pairwise(shaped)),
    }


@pytest.mark.parametrize("case", CASES)
def test_flare_comes_out_as_by_hand(case: str, tmp_path: Path) -> None:
    """Every fact of its lines in the table."""
    found = facts(CASES[case](tmp_path))
    lines = {row["fact"]: int(row["expected"]) for row in ROWS if row["case"] == case}
    assert lines
    assert {fact: found[fact] for fact in lines} == lines


def test_every_case_of_the_table_is_planned() -> None:
    """No line is left out."""
    assert {row["case"] for row in ROWS} == set(CASES)
