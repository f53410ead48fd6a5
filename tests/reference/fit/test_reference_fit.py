"""The fit against values from outside."""

from __future__ import annotations

import csv
from pathlib import Path
from statistics import quantiles

import pytest
from one_piece import one_piece

from frogless.because import Because
from frogless.body.measurements import Body
from frogless.fit.flare import describe_fullness, fullness
from frogless.fit.going_on import going_on
from frogless.fit.hanging import loads
from frogless.fit.survey import WAIST_TO_HIP, share_passing, share_reached
from frogless.fit.tables import document, rows_of
from frogless.plan.model import Landmark, Plan
from frogless.rows.nodes import Piece, Program, Row, Work
from frogless.swatch import Gauge
from frogless.units import Measured

HERE = Path(__file__).parent
BASES = {"published", "common-practice", "memory", "derived"}


def rows(name: str) -> list[dict[str, str]]:
    """The rows of a reference table."""
    with (HERE / name).open(encoding="utf-8") as file:
        return list(csv.DictReader(file))


def women() -> list[tuple[float, float]]:
    """Waist and hip girth of each surveyed woman, mm."""
    return [
        (float(r["waist_girth_mm"]), float(r["hip_girth_mm"])) for r in rows("women_waist_hip.csv")
    ]


@pytest.mark.parametrize("path", sorted(HERE.glob("*.csv")), ids=lambda path: path.stem)
def test_every_row_names_its_source_when_read(path: Path) -> None:
    """A value without a source or a known basis is refused."""
    table = rows(path.name)
    assert table
    assert all(row["source"] and row["basis"] in BASES for row in table)


@pytest.mark.parametrize("name", ["women_waist_to_hip.csv", "fibre_growth.csv"])
def test_every_shipped_row_names_its_source_when_read(name: str) -> None:
    """The tables that ship hold to the same rule."""
    assert all(row["source"] and row["basis"] in BASES for row in rows_of(name))


def test_every_caution_names_its_source_when_read() -> None:
    """And so do the cautions."""
    entries = document("cautions.toml")["caution"]
    assert all(entry["source"] and entry["basis"] in BASES for entry in entries)


@pytest.mark.parametrize("row", rows("survey.csv"), ids=lambda row: row["case"])
def test_share_of_women_is_that_of_the_survey_when_asked(row: dict[str, str]) -> None:
    """The shipped percentiles give the shares worked out from the full survey."""
    share = share_passing if row["column"] == "needed_stretch" else share_reached
    assert share(float(row["value"])) == pytest.approx(
        float(row["expected"]), abs=float(row["tolerance"])
    )


def test_percentiles_are_those_of_the_raw_survey_when_worked_out_again() -> None:
    """Percentiles 1 to 99 of both columns, from the women themselves."""
    stretch = quantiles([hip / waist - 1 for waist, hip in women()], n=100, method="inclusive")
    taper = quantiles(
        [(hip - waist) / (6.283185307 * WAIST_TO_HIP) for waist, hip in women()],
        n=100,
        method="inclusive",
    )
    shipped = rows_of("women_waist_to_hip.csv")[1:-1]
    assert [float(r["needed_stretch"]) for r in shipped] == pytest.approx(stretch, abs=6e-5)
    assert [float(r["needed_fullness"]) for r in shipped] == pytest.approx(taper, abs=6e-5)


@pytest.mark.parametrize("stretch", [0.0, 0.1, 0.2, 0.3, 0.4])
def test_share_passing_is_a_head_count_when_compared_with_the_women(stretch: float) -> None:
    """Interpolated percentiles stay within half a percent of counting heads."""
    heads = sum(hip <= waist * (1 + stretch) for waist, hip in women())
    assert share_passing(stretch) == pytest.approx(heads / len(women()), abs=0.005)


def plan_of(row: dict[str, str]) -> Plan:
    """A skirt whose start has `start_count` stitches and whose hip is far enough below."""
    count, width = int(row["start_count"]), float(row["width_mm"])
    made = tuple(
        Row(n, "RS", "body", (Work("double_crochet", count),), count + 8 * n) for n in range(21)
    )
    hip = Landmark(
        "hip_girth", 200.0, Measured(float(row["hip_mm"])), False, 0.0, 0.0, 0.0, 20, count + 160,
        Measured((count + 160) * width), Because(),
    )  # fmt: skip
    waist = Landmark(
        "waist_girth", 0.0, Measured(float(row["waist_mm"])), False, 0.0, 0.0, 0.0, 0, count,
        Measured(count * width), Because(),
    )  # fmt: skip
    gauge = Gauge("double_crochet", Measured(width), Measured(10.0), "washed")
    return one_piece(
        (waist, hip), (), None, None, (), tuple(10.0 * n for n in range(21)), {"body": gauge}, (),
        Program((Piece("skirt", closed=True, rows=made),)),
    )  # fmt: skip


@pytest.mark.parametrize("row", rows("going_on.csv"), ids=lambda row: row["case"])
def test_going_on_is_as_worked_by_hand_when_the_waist_is_joined(row: dict[str, str]) -> None:
    """How far it reaches, what is missing, and what would be enough."""
    found = going_on(
        plan_of(row),
        stretch=float(row["stretch"]),
        start_kind="foundation",
        body=Body("someone", {}),
    )
    within = float(row["tolerance_mm"])
    assert found.verdict == "does not pass"
    assert found.reach == pytest.approx(float(row["reach_mm"]), abs=within)
    assert found.short == pytest.approx(float(row["short_mm"]), abs=within)
    assert found.needed_opening == pytest.approx(float(row["needed_opening_mm"]), abs=within)
    assert found.needed_count == int(row["needed_count"])
    assert f"cut {float(row['elastic_cut_mm']) / 10:g} cm" in found.ways_out[0]
    assert f"stretch {row['elastic_stretch']} times" in found.ways_out[0]


@pytest.mark.parametrize("row", rows("hang_loads.csv"), ids=lambda row: row["case"])
def test_loads_are_as_worked_by_hand_when_a_swatch_is_hung(row: dict[str, str]) -> None:
    """The top row's load and the average row's."""
    top, average = loads(float(row["grams"]), int(row["count"]), int(row["swatch_stitches"]))
    within = float(row["tolerance_g"])
    assert top == pytest.approx(float(row["top_g"]), abs=within)
    assert average == pytest.approx(float(row["average_g"]), abs=within)


@pytest.mark.parametrize("row", rows("fullness.csv"), ids=lambda row: row["case"])
def test_fullness_is_that_of_geometry_and_practice_when_worked_flat_or_flared(
    row: dict[str, str],
) -> None:
    """Circles by geometry, flat discs by practice."""
    found = fullness(float(row["added_per_row"]), 1.0, float(row["height_over_width"]))
    assert found == pytest.approx(float(row["expected"]), abs=float(row["tolerance"]))
    assert describe_fullness(found) == row["word"]
