"""The tally against values from outside."""

from __future__ import annotations

import csv
import math
from pathlib import Path

import pytest
from one_piece import one_piece

from frogless.fabric.expand import expand
from frogless.plan.model import Plan
from frogless.rows.nodes import Piece, Program, Row, Work
from frogless.stitches.load import dictionary
from frogless.swatch import Gauge, Reading, Swatch, Yarn, gauge
from frogless.tally.pace import working_time
from frogless.tally.scale import scale
from frogless.tally.tables import rows_of
from frogless.tally.thickness import diameter, fibre_of
from frogless.tally.yarn import MARGIN, yarn
from frogless.units import Measured

HERE = Path(__file__).parent
BASES = {"published", "common-practice", "memory", "derived"}


def rows(name: str) -> list[dict[str, str]]:
    """The rows of a reference table."""
    with (HERE / name).open(encoding="utf-8") as file:
        return list(csv.DictReader(file))


def skirt_of_doubles(count: int) -> Plan:
    """A plan of nothing but `count` double crochets."""
    made = (Row(1, "RS", "body", (Work("double_crochet", count),), count),)
    gauge = Gauge("double_crochet", Measured(100 / 18), Measured(10.0), "washed")
    return one_piece(
        (), (), None, None, (), (0.0,), {"body": gauge}, (),
        Program((Piece("skirt", closed=True, rows=made),)),
    )  # fmt: skip


@pytest.mark.parametrize("path", sorted(HERE.glob("*.csv")), ids=lambda path: path.stem)
def test_every_row_names_its_source_when_read(path: Path) -> None:
    """A value without a source or a known basis is refused."""
    table = rows(path.name)
    assert table
    assert all(row["source"] and row["basis"] in BASES for row in table)


@pytest.mark.parametrize("name", ["fibres.csv", "cover.csv"])
def test_every_shipped_row_names_its_source_when_read(name: str) -> None:
    """The tables that ship hold to the same rule."""
    assert all(row["source"] and row["basis"] in BASES for row in rows_of(name))


@pytest.mark.parametrize("row", rows("yarn.csv"), ids=lambda row: row["case"])
def test_yarn_is_as_worked_by_hand_when_the_swatch_was_weighed(row: dict[str, str]) -> None:
    """Grams, grams with the margin, balls and metres."""
    label = Yarn("", 3, "cotton", float(row["ball_g"]), float(row["ball_m"]) * 1000)
    reading = Reading(
        "double_crochet", "washed", 4.0, float(row["stitches"]), 150.0, float(row["rows"]), 150.0,
        mass=float(row["mass_g"]),
    )  # fmt: skip
    swatch = Swatch("swatch", "double_crochet", 4.0, label, readings=(reading,))
    plan = skirt_of_doubles(int(row["doubles"]))
    (need,) = yarn(expand(plan.program, dictionary()), plan, swatch, dictionary())
    within = float(row["tolerance"])
    expected = float(row["mass_expected_g"])
    assert dict(need.by_part)["skirt: body"] == pytest.approx(expected, abs=0.5)
    assert need.mass.value == pytest.approx(expected, rel=within)
    assert need.margin_percent >= MARGIN
    assert need.mass.value * (1 + MARGIN / 100) == pytest.approx(
        float(row["with_margin_g"]), rel=within
    )
    assert need.length.value / 1000 == pytest.approx(float(row["metres"]), rel=within)
    assert need.balls == int(row["balls"])


@pytest.mark.parametrize("row", rows("catches.csv"), ids=lambda row: row["stitch"])
def test_catches_are_in_proportion_to_ravelled_yarn_when_rows_are_as_long(
    row: dict[str, str],
) -> None:
    """Chain, single, half double and double against one maker's ravelled rows."""
    catches = dictionary()[row["stitch"]].catches
    assert catches == pytest.approx(float(row["to_chain"]), rel=float(row["tolerance"]))


@pytest.mark.parametrize("row", rows("cover.csv"), ids=lambda row: row["case"])
def test_the_cover_model_holds_the_measured_fabric_in_its_interval_when_unweighed(
    row: dict[str, str],
) -> None:
    """Metres per square metre of five solid fabrics, each within the 95 % interval."""
    gauge = Gauge(row["stitch"], Measured(5.0), Measured(8.0), "washed")
    label = Yarn("", None, row["fibre"], float(row["tex"]), 1e6)
    by = scale(Swatch("", row["stitch"], 4.0, label), gauge, dictionary(), None)
    work = dictionary()[row["stitch"]].catches * 5.0
    metres = by.length * work / (5.0 * 8.0) * 1000
    spread = 1.96 * by.length_relative * metres
    assert math.isclose(metres, float(row["metres_per_square_metre"]), abs_tol=spread)


@pytest.mark.parametrize("row", rows("diameter.csv"), ids=lambda row: row["case"])
def test_diameter_is_that_of_the_handbooks_when_worked_from_tex(row: dict[str, str]) -> None:
    """Peirce's cotton, and a soft acrylic."""
    found = diameter(Measured(float(row["tex"])), fibre_of(row["fibre"]))
    assert found.value == pytest.approx(float(row["expected_mm"]), abs=float(row["tolerance_mm"]))


@pytest.mark.parametrize("row", rows("pace.csv"), ids=lambda row: row["case"])
def test_hours_are_as_worked_by_hand_when_the_maker_was_timed(row: dict[str, str]) -> None:
    """A double takes twice the time of a single, so a pace in doubles is twice that in singles."""
    plan = skirt_of_doubles(int(row["doubles"]))
    pace = 2 * float(row["doubles_per_minute"])
    fabric = expand(plan.program, dictionary())
    seconds, _ = working_time(fabric, plan, dictionary(), slow=pace, fast=pace)
    assert seconds / 3600 == pytest.approx(float(row["hours"]), abs=float(row["tolerance_hours"]))


def banded(*, weighed: bool) -> dict[str, float]:
    """Grams of ten rounds of double crochet and four of single crochet, which was weighed or not.

    The band's stitches are 5 x 5 mm, the body's 5.6 x 10.
    """
    yarn_is = Yarn("main yarn", 3, "cotton", 50.0, 120_000.0)
    doubles = Reading("double_crochet", "washed", 4.0, 27, 150.0, 15, 150.0, mass=9.0)
    singles = Reading(
        "single_crochet", "washed", 4.0, 20, 100.0, 20, 100.0, mass=6.0 if weighed else None
    )
    swatch = Swatch("swatch", "double_crochet", 4.0, yarn_is, readings=(doubles, singles))
    stitches = {"body": "double_crochet", "band": "single_crochet"}
    made = tuple(
        Row(n, "RS", section, (Work(stitches[section], 1000),), 1000)
        for n, section in enumerate(["body"] * 10 + ["band"] * 4, 1)
    )
    gauges = {section: gauge(swatch, stitch) for section, stitch in stitches.items()}
    plan = one_piece(
        (), (), None, None, (), (0.0,), gauges, (),
        Program((Piece("shawl", closed=False, rows=made),)),
    )  # fmt: skip
    (need,) = yarn(expand(plan.program, dictionary()), plan, swatch, dictionary())
    return {name.removeprefix("shawl: "): grams for name, grams in need.by_part}


def test_band_of_another_stitch_goes_by_its_own_grams_and_not_by_its_area() -> None:
    """60 g where the square rule says 40; where the band was not weighed, by its loops."""
    hand = {row["part"]: float(row["expected_g"]) for row in rows("sections.csv")}
    found = banded(weighed=True)
    assert found["body"] == pytest.approx(hand["body"], abs=0.05)
    assert found["band"] == pytest.approx(hand["band"], abs=0.05)
    assert hand["band by area"] == pytest.approx(4000 * 25 * 9 / 150**2, abs=0.05)
    by_loops = banded(weighed=False)["band"]
    assert by_loops == pytest.approx(4000 * 9 / 405 * (2.08 / 4) * (5 * 1.8 / 10), rel=0.05)
