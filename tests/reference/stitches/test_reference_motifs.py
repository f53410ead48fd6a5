"""Motifs against counts of the trade and of hand arithmetic."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from frogless.read.motifs import motif
from frogless.rows.count import row_worked
from frogless.rows.nodes import Chain, Row
from frogless.rows.walk import nodes
from frogless.stitches.motifs import flat_growth, motifs
from frogless.stitches.sums import whole

HERE = Path(__file__).parent


def table(name: str) -> list[dict[str, str]]:
    """The rows of a reference table."""
    with (HERE / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


ROWS = table("motifs.csv")
DISCS = [row for row in table("conventions.csv") if row["basis_disc"] == "common-practice"]


def stitches(row: Row, stitch: str) -> int:
    """Stitches of one kind; a turning chain that counts is one of those it stands in for."""
    stands_in = int(row.start.counts and row_worked(row)[stitch] > 0)
    return row_worked(row)[stitch] + stands_in


def spaces(row: Row) -> int:
    """Runs of chains among the stitches of a round."""
    return sum(met for node, met in nodes(row.body) if isinstance(node, Chain))


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['key']}-{row['round']}")
def test_rounds_hold_what_practice_says_when_counted(row: dict[str, str]) -> None:
    """Stitches of the kind named, chain spaces, and corners."""
    given = {n: int(v) for n, v in (part.split("=") for part in row["parameters"].split())}
    made = motif(row["key"], int(row["round"]), given)
    last = made.piece.rows[-1]
    assert stitches(last, row["stitch"]) == int(row["count"])
    assert spaces(last) == int(row["spaces"])
    if row["corners"] != "0":
        assert whole(made.entry.points, given) == int(row["corners"])


@pytest.mark.parametrize("key", motifs())
def test_every_motif_is_held_to_a_count_when_listed(key: str) -> None:
    """No motif without a figure from outside."""
    assert key in {row["key"] for row in ROWS}


@pytest.mark.parametrize("row", DISCS, ids=lambda row: row["key"])
def test_circles_grow_by_the_published_number_when_flat(row: dict[str, str]) -> None:
    """6, 8, 12 and 16 more stitches in each round, each within what is told to lie flat."""
    found = [
        flat
        for key, entry in motifs().items()
        if entry.shape == "circle" and (flat := motif(key).flatness) and flat.stitch == row["key"]
    ]
    assert [flat.growth for flat in found] == [float(row["disc_inc_typical"])]
    assert found[0].lies == "lies flat"


@pytest.mark.parametrize(
    ("corners", "factor"),
    # Girth of a regular polygon around a circle of radius 1, by hand: triangle 6 sqrt 3, square 8,
    # hexagon 4 sqrt 3; a circle 2 pi.
    [(3, 10.3923), (4, 8.0), (6, 6.9282), (0, 6.2832)],
)
def test_a_polygon_needs_more_than_a_circle_when_flat(corners: int, factor: float) -> None:
    """The fewer corners, the more a round has to gain."""
    assert flat_growth(corners) == pytest.approx(factor, abs=1e-4)
