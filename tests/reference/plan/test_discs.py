"""Flat discs and crowns as the trade makes them, as worked by hand, and as public pages have them."""

from __future__ import annotations

import csv
import json
import math
from itertools import pairwise
from pathlib import Path

import pytest

from frogless.plan.pieces.disc_rate import flat_rate, to_count, to_radius, usual_discs
from frogless.swatch import Gauge
from frogless.units import Measured

HERE = Path(__file__).parent


def table(name: str) -> list[dict[str, str]]:
    """The lines of a file beside this one."""
    return list(csv.DictReader((HERE / name).read_text("utf-8").splitlines()))


DISCS, CROWNS = table("flat_discs.csv"), table("crowns.csv")
CASES = json.loads((HERE.parent / "worked" / "worked_examples.json").read_text("utf-8"))["cases"]


def gauge(stitch: str, stitches: str, rows: str) -> Gauge:
    """So many in 10 cm, good to 2 %."""
    width, height = 100 / float(stitches), 100 / float(rows)
    return Gauge(stitch, Measured(width, width * 0.02), Measured(height, height * 0.02), "washed")


@pytest.mark.parametrize("row", DISCS, ids=lambda row: row["case"])
def test_what_lies_flat_is_what_the_trade_says(row: dict[str, str]) -> None:
    """Within the range of the source, and as worked by hand where it was."""
    flat = flat_rate(gauge(row["stitch"], row["stitches"], row["rows"])).value
    give = float(row["tolerance"])
    assert float(row["low"]) - give <= flat <= float(row["high"]) + give
    if row["flat"]:
        assert flat == pytest.approx(float(row["flat"]), abs=give)


@pytest.mark.parametrize(
    "row", [r for r in DISCS if float(r["high"]) > float(r["low"])], ids=lambda row: row["case"]
)
def test_the_table_in_use_is_that_of_the_source(row: dict[str, str]) -> None:
    """Lowest and highest of each stitch."""
    usual = usual_discs()[row["stitch"]]
    assert (usual.low, usual.high) == (int(row["low"]), int(row["high"]))


@pytest.mark.parametrize("row", CROWNS, ids=lambda row: row["case"])
def test_a_crown_has_the_counts_of_its_source(row: dict[str, str]) -> None:
    """Round by round."""
    own = gauge("double_crochet", row["stitches"], row["rows"])
    exact = float(row["girth_cm"]) * 10 / own.width.value
    step = int(row["per_round"]) if row["per_round"] else None
    seen = max(1.0, own.width.relative * exact)
    made = to_count(flat_rate(own), 1.0, exact, seen, step)
    assert made.counts == tuple(map(int, row["counts"].split()))


@pytest.mark.parametrize("row", CROWNS, ids=lambda row: row["case"])
def test_a_crown_that_lies_flat_is_as_wide_as_its_girth_over_pi(row: dict[str, str]) -> None:
    """Within the round that it cannot divide, and the 8 % that block out."""
    own = gauge("double_crochet", row["stitches"], row["rows"])
    girth = float(row["girth_cm"]) * 10
    made = to_count(flat_rate(own), 1.0, girth / own.width.value, 1.0)
    across = 2 * made.rounds * own.height.value
    assert across == pytest.approx(
        girth / math.pi, abs=girth / math.pi * 0.08 + 2 * own.height.value
    )


@pytest.mark.parametrize(
    ("name", "per_round", "rounds"), [("WC-D01", 6, 4), ("WC-D02", 14, 5), ("WC-H01", 12, 6)]
)
def test_a_disc_is_that_of_a_public_page(name: str, per_round: int, rounds: int) -> None:
    """With what its page adds, every round has what the page works."""
    case = next(case for case in CASES if case["id"] == name)
    own = gauge("double_crochet", "16", "9")
    made = to_radius(flat_rate(own), 1.0, rounds, per_round)
    assert list(made.counts) == [each["produced"] for each in case["rounds"]][:rounds]
    assert {b - a for a, b in pairwise(made.counts)} == {per_round}


def test_a_disc_that_doubles_ruffles_and_is_far_from_flat() -> None:
    """WC-D15: 96 stitches after five rounds, where six a round would be 30."""
    case = next(case for case in CASES if case["id"] == "WC-D15")
    last = case["rounds"][-1]["produced"]
    flat = flat_rate(gauge("single_crochet", "19", "20")).value
    assert last / (flat * len(case["rounds"])) > 3


@pytest.mark.parametrize(("name", "first", "per_round"), [("WC-D05", 15, 5), ("WC-D08", 24, 8)])
def test_a_disc_with_an_irregular_beginning_goes_on_by_one_number(
    name: str, first: int, per_round: int
) -> None:
    """From its second round on the page adds as many as the planner does from that count."""
    case = next(case for case in CASES if case["id"] == name)
    page = [each["produced"] for each in case["rounds"]][1:]
    flat = flat_rate(gauge("single_crochet", "19", "20"))
    assert list(to_radius(flat, 1.0, len(page), per_round, first).counts) == page
