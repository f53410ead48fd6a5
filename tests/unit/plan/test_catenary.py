"""A line that hangs between two points."""

from __future__ import annotations

import csv
from itertools import pairwise
from math import dist
from pathlib import Path

import pytest

from frogless.errors import InputError
from frogless.plan.catenary import of_length, of_sag

TABLE = Path(__file__).parents[2] / "reference" / "draw" / "catenary.csv"
CASES = list(csv.DictReader(TABLE.read_text(encoding="utf-8").splitlines()))


@pytest.mark.parametrize("case", CASES, ids=[case["case"] for case in CASES])
def test_catenary_is_as_long_as_worked_elsewhere(case: dict[str, str]) -> None:
    """The curve has the length found by hand or by another method, and is as deep as asked."""
    span, sag = float(case["span"]), float(case["sag"])
    line = of_sag(span, sag)
    points = [(span * i / 2000, line.drop(span * i / 2000)) for i in range(2001)]
    length = sum(dist(a, b) for a, b in pairwise(points))
    assert length == pytest.approx(float(case["length"]), abs=float(case["tolerance"]))
    assert line.length == pytest.approx(length, rel=1e-5)
    assert max(y for _, y in points) == pytest.approx(sag)
    assert points[0][1] == pytest.approx(0.0, abs=1e-6)


def test_equal_parts_of_its_length_lie_closer_across_where_it_is_steep() -> None:
    """Beads hang evenly along the line, not along the span."""
    line = of_sag(100.0, 60.0)
    ends = [line.at_length(i / 40) for i in range(41)]
    pieces = [dist((a, line.drop(a)), (b, line.drop(b))) for a, b in pairwise(ends)]
    assert max(pieces) / min(pieces) < 1.01
    assert ends[1] - ends[0] < ends[20] - ends[19]


@pytest.mark.parametrize("span", [1.0, 180.0, 2000.0])
@pytest.mark.parametrize("part", [0.001, 0.1, 0.5, 3.0, 20.0])
def test_length_and_sag_lead_to_each_other(span: float, part: float) -> None:
    """From a sag to a length and back, flat and steep."""
    line = of_sag(span, span * part)
    again = of_length(span, line.length)
    assert again.sag == pytest.approx(span * part, rel=1e-4)
    assert line.length > span


@pytest.mark.parametrize("length", [100.0, 99.0, 0.0])
def test_line_is_taut_when_it_is_no_longer_than_its_span(length: float) -> None:
    """It has no sag and lies on the straight line."""
    line = of_length(100.0, length)
    assert (line.sag, line.length, line.drop(50.0), line.at_length(0.5)) == (0.0, 100.0, 0.0, 50.0)


def test_line_is_straight_when_nothing_sags() -> None:
    """No sag is a straight line and not a division by zero."""
    line = of_sag(100.0, 0.0)
    assert (line.length, line.drop(30.0), line.at_length(0.25)) == (100.0, 0.0, 25.0)


@pytest.mark.parametrize(("span", "sag"), [(0.0, 10.0), (-1.0, 10.0), (100.0, -1.0)])
def test_line_is_refused_when_it_cannot_hang(span: float, sag: float) -> None:
    """Two points apart, and a sag of zero or more."""
    with pytest.raises(InputError, match="two points apart"):
        of_sag(span, sag)
