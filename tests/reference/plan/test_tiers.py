"""Tiers and flounces against arithmetic worked by hand: gathered at once, or by and by."""

from __future__ import annotations

import csv
from collections.abc import Callable, Mapping
from pathlib import Path

import pytest
from pieces_designs import Garment, garment, swatch
from sample_designs import CHAIN, Design, basis, body, section
from sample_designs import swatch as sample

from frogless.draft import develop
from frogless.fabric.geometry import shaping_points

ROWS = list(csv.DictReader((Path(__file__).parent / "tiers.csv").read_text("utf-8").splitlines()))


def tube(name: str, start: str, length: str) -> str:
    """A straight tube of one section."""
    return (
        f'[[piece]]\nconstruction = "tube"\nname = "{name}"\nstart = {{ {start} }}\n'
        f'section = [{{ name = "{name}", length = "{length}" }}]'
    )


def gathered(made: Garment, name: str) -> int:
    """Places of a piece's first row that take more than one stitch."""
    return len(shaping_points(made.rows(name)[0]))


def tiers(folder: Path) -> Mapping[str, int]:
    """Three tiers of 14 by 8 in 10 cm, each half as many stitches again."""
    made = garment(
        folder,
        tube("first tier", 'with = "chain", girth = "104 cm", multiple = 6', "15 cm"),
        tube("second tier", 'on = ["first tier.hem"], gather = 1.5', "15 cm"),
        tube("third tier", 'on = ["second tier.hem"], gather = 1.5', "15 cm"),
        sample=swatch(14, 8),
    )
    assert not made.faults()
    names = ("first tier", "second tier", "third tier")
    return {name: made.piece(name).counts[-1] for name in names} | {
        f"places of two in the {name}": gathered(made, name) for name in names[1:]
    }


def at_once(folder: Path) -> Mapping[str, int]:
    """A flounce of 12 rounds, twice as wide from its first round on, 18 by 10 in 10 cm."""
    made = garment(
        folder,
        tube("skirt", 'with = "chain", girth = "142.2 cm"', "10 cm"),
        tube("flounce", 'on = ["skirt.hem"], gather = 2', "12 cm"),
    )
    assert not made.faults()
    counts = made.piece("flounce").counts
    return {"after the first round": counts[0], "stitches": sum(counts)}


def by_and_by(folder: Path) -> Mapping[str, int]:
    """The same as the last section of the skirt, shaped at 32 points; proven."""
    design = Design(
        (
            section("skirt", length="10 cm"),
            section("flounce", shape="shaped", to="hem", girth="284.4 cm", points=32),
        ),
        length="22 cm",
        start=CHAIN,
    )
    person = body(waist_girth="142.2 cm", hip_girth="142 cm", waist_to_hip="20 cm")
    made = develop(basis(folder, design.text, person, sample(18, 10)))
    flounce = made.plan.sections[-1]
    counts = made.plan.main.counts[flounce.first_round : flounce.last_round + 1]
    return {"stitches": sum(counts)}


CASES: Mapping[str, Callable[[Path], Mapping[str, int]]] = {
    "tiers": tiers,
    "flounce at once": at_once,
    "flounce by and by": by_and_by,
}


@pytest.mark.parametrize("case", CASES)
def test_fullness_comes_out_as_by_hand(case: str, tmp_path: Path) -> None:
    """Every fact of its lines in the table."""
    lines = {row["fact"]: int(row["expected"]) for row in ROWS if row["case"] == case}
    assert lines
    assert CASES[case](tmp_path) == lines


def test_every_case_of_the_table_is_planned() -> None:
    """No line is left out."""
    assert {row["case"] for row in ROWS} == set(CASES)
