"""Short rows over the seat and one hip against arithmetic worked by hand."""

from __future__ import annotations

import csv
from collections.abc import Mapping
from pathlib import Path

import pytest
from sample_designs import CHAIN, Design, basis, body, section, swatch

from frogless.draft import develop

ROWS = list(csv.DictReader((Path(__file__).parent / "seats.csv").read_text("utf-8").splitlines()))
SEATS: Mapping[str, str] = {
    "full seat": '{ extra = "3 cm" }',
    "one hip higher": '{ extra = "1.5 cm", at = "right side" }',
}


@pytest.mark.parametrize("line", ROWS, ids=[row["case"] for row in ROWS])
def test_short_rows_turn_where_they_do_by_hand(line: Mapping[str, str], tmp_path: Path) -> None:
    """Single crochet, 20 by 22 in 10 cm, 208 stitches, the join at centre back; proven."""
    design = Design(
        (section("skirt", to="hem"),),
        length="30 cm",
        start=f"{CHAIN}\nseat = {SEATS[line['case']]}",
        stitch="single_crochet",
    )
    person = body(waist_girth="104 cm", hip_girth="104 cm", waist_to_hip="20 cm")
    made = develop(basis(tmp_path, design.text, person, swatch(20, 22, stitch="sc")))
    expected = [int(n) for n in line["expected"].split()]
    rows = made.plan.program.pieces[0].rows[1 : len(expected) + 1]
    assert [row.count for row in rows] == expected
    whole = made.plan.program.pieces[0].rows[len(expected) + 2]
    assert whole.count == 208
