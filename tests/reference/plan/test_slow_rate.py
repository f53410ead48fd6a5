"""The skirt that must be caught: two stitches every other round cannot reach its girth."""

from __future__ import annotations

import csv
import re
from pathlib import Path

import pytest
from sample_designs import Design, basis, body, section, swatch

from frogless.errors import Impossible
from frogless.plan.basis import Basis
from frogless.plan.make import plan
from frogless.units import INCH

HERE = Path(__file__).parent
ROWS = list(csv.DictReader((HERE / "slow_rate.csv").read_text("utf-8").splitlines()))


def short_skirt(folder: Path, gauge: float, girth: str = "37 in", points: int = 2) -> Basis:
    """Waist 25 in, 2 in straight, 11 in long, 37 in around, two stitches every other round.

    Double crochet: a row is 1.9 times as high as a stitch is wide.
    """
    height = 6 * 1.9 * 4 * INCH / gauge
    design = Design(
        (
            section("band", length="2 in"),
            section("skirt", shape="shaped", to="hem", girth=girth, points=points, every=2),
        ),
        length="11 in",
        start='with = "chain"\ngirth = "waist_girth"',
    )
    person = body(waist_girth="25 in", hip_girth="35 in", waist_to_hip="8 in")
    stitches = swatch(2 * gauge, 6, width="8 in", height=f"{height:.3f} mm")
    return basis(folder, design.text, person, stitches)


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["stitches_in_4in"])
def test_two_stitches_every_other_round_are_refused_at_any_usual_gauge(
    row: dict[str, str], tmp_path: Path
) -> None:
    """Says how far it gets, what is missing and how many points would do."""
    with pytest.raises(Impossible) as refused:
        plan(short_skirt(tmp_path, float(row["stitches_in_4in"])))
    told, first = str(refused.value), refused.value.ways_out[0]
    assert (
        f"every 2nd round give {row['shaping_rounds']} shaping rounds in {row['rounds']} and take "
        f"{row['start']} stitches to {row['reached']} "
    ) in told
    assert f"; {row['wanted']} (" in told
    assert refused.value.short_stitches == int(row["missing"])
    assert refused.value.short / INCH == pytest.approx(float(row["missing_in"]), abs=0.005)
    assert refused.value.short > 6 * INCH
    enough, least = (int(n) for n in re.findall(r"\d+", first)[:2])
    assert least == int(row["points_at_least"])
    assert enough == 6


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["stitches_in_4in"])
def test_what_is_offered_would_do(row: dict[str, str], tmp_path: Path) -> None:
    """Six points reach the girth within what is allowed at the hem (the hip is not asked for)."""
    planned = plan(short_skirt(tmp_path, float(row["stitches_in_4in"]), points=6))
    hem = planned.landmarks[-1]
    assert hem.low <= hem.garment.value <= hem.high


def test_piece_folded_flat_is_half_its_girth(tmp_path: Path) -> None:
    """18 1/2 in flat are 37 in around (common practice), written so in the design."""
    flat = plan(short_skirt(tmp_path, 16, girth="2 * 18 1/2 in", points=6))
    around = plan(short_skirt(tmp_path, 16, girth="37 in", points=6))
    assert flat.landmarks[-1].wanted == pytest.approx(around.landmarks[-1].wanted)
    assert flat.landmarks[-1].count == around.landmarks[-1].count
