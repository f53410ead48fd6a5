"""Even spacing and landing on multiples, as handbooks have them."""

from __future__ import annotations

import csv
from collections import Counter
from pathlib import Path

import pytest

from frogless.plan.landing import land
from frogless.plan.shaping import Round, body
from frogless.rows.nodes import Into, Repeat, Work
from frogless.rows.spread import even_spread

HERE = Path(__file__).parent


def rows(name: str) -> list[dict[str, str]]:
    """A table of this folder."""
    return list(csv.DictReader((HERE / name).read_text("utf-8").splitlines()))


def gaps_of(row: dict[str, str]) -> Counter[int]:
    """ "24x2 23x6": two gaps of 24 and six of 23."""
    parts = (part.split("x") for part in row["gaps"].split())
    return Counter({int(length): int(times) for length, times in parts})


@pytest.mark.parametrize("row", rows("even_spacing.csv"), ids=lambda row: row["case"])
def test_places_are_spread_as_by_hand(row: dict[str, str]) -> None:
    """Both where trims are spread and where a round is shaped, the long gaps among the short."""
    places, marks = int(row["places"]), int(row["marks"])
    assert Counter(even_spread(places, marks)) == gaps_of(row)
    at = Round(places, marks, 1).positions()
    around = [b - a for a, b in zip(at, (*at[1:], at[0] + places), strict=True)]
    assert Counter(around) == gaps_of(row)


def test_round_of_152_with_eight_points_is_worded_as_by_hand() -> None:
    """dc 9, [2 dc in next, dc 18] 7 times, 2 dc in next, dc 9."""
    plain = "double_crochet"
    two = Into((Work(plain, 2),))
    assert body(plain, Round(152, 8, 1)) == (
        Work(plain, 9),
        Repeat((two, Work(plain, 18)), 7),
        two,
        Work(plain, 9),
    )
    assert Round(152, 8, 1).left == 160
    assert Round(186, 8, 1).left == 194


@pytest.mark.parametrize("row", rows("landing.csv"), ids=lambda row: row["case"])
def test_girth_lands_as_by_hand(row: dict[str, str]) -> None:
    """On the nearest count that leaves the offset over the multiple."""
    width = 100 / float(row["stitches_in_10cm"])
    landed = land(float(row["girth_cm"]) * 10, width, int(row["multiple"]), int(row["offset"]))
    assert landed.count == int(row["count"])
    assert landed.girth == pytest.approx(landed.count * width)
