"""Yokes worked by hand, planned by the program from files a maker could have written."""

from __future__ import annotations

import csv
import math
from collections.abc import Callable, Mapping
from pathlib import Path

import numpy as np
import pytest
from sample_yokes import YokeDesign, yoke_basis

from frogless.design.pieces.raglan import RaglanChoice
from frogless.design.pieces.round_yoke import RoundYokeChoice
from frogless.errors import Impossible
from frogless.plan.model import Measure
from frogless.plan.pieces.made import Made
from frogless.plan.pieces.raglan import plan_raglan
from frogless.plan.pieces.round_yoke import plan_round_yoke, ring_places

HERE = Path(__file__).parent
ROWS = list(csv.DictReader((HERE / "yokes.csv").read_text("utf-8").splitlines()))
Facts = Mapping[str, object]

MEDIUM: Mapping[str, object] = {
    "neck": "57.5 cm",
    "depth": "22 cm",
    "ease": "8 cm",
    "arm_ease": "4 cm",
    "underarm": "3.75 cm",
}
LARGE: Mapping[str, object] = {
    "neck": "62.5 cm",
    "sleeve_top": "8.75 cm",
    "depth": "26 cm",
    "ease": "8 cm",
    "arm_ease": "4 cm",
    "arm_ease_allowed": ("4 cm", "7 cm"),
    "underarm": "7.5 cm",
}


def raglan(folder: Path, keys: Mapping[str, object], bust: str, arm: str) -> Made:
    """A raglan yoke in double crochet, 16 stitches and 10 rounds in 10 cm."""
    basis, entry = yoke_basis(folder, YokeDesign(keys=keys), bust=bust, arm=arm)
    assert isinstance(entry, RaglanChoice)
    return plan_raglan(basis, entry, "piece.1", {})


def measure(made: Made, name: str) -> Measure:
    """A measure of the yoke by name."""
    return next(m for m in made.plans[0].measures if m.name == name)


def parted(made: Made) -> Facts:
    """Where a yoke parts."""
    body, sleeve = (measure(made, f"{part} at the underarm") for part in ("body", "sleeve"))
    return {
        "where it parts": made.plans[0].counts[-1],
        "body": body.count,
        "sleeve": sleeve.count,
        "body cm": body.got.value / 10,
        "sleeve cm": sleeve.got.value / 10,
    }


def medium_raglan(folder: Path) -> Facts:
    """Bust 92 + 8, arm 32 + 4, underarm 6 stitches, 22 deep."""
    made = raglan(folder, MEDIUM, "92 cm", "32 cm")
    counts = np.asarray(made.plans[0].counts)
    steps = np.diff(counts)
    front, sleeve = neck_parts(made)
    return {
        **parted(made),
        "neck stitches": int(counts[0]),
        "neck cm": measure(made, "neck opening").got.value / 10,
        "front at the neck": front,
        "sleeve at the neck": sleeve,
        "rounds": steps.size,
        "increase rounds": int((steps > 0).sum()),
        "stitches added in a round": int(steps.max()),
        "vertical depth cm": measure(made, "vertical armhole depth").got.value / 10,
    }


def neck_parts(made: Made) -> tuple[int, int]:
    """Front and sleeve at the neck: what they are where it parts, less two for each round."""
    rounds = int((np.diff(made.plans[0].counts) > 0).sum())
    body, right, *_ = made.edges
    assert len(body.places) == 3
    return body.places[1] - 2 * rounds, max(right.places) - 2 * rounds


def large_raglan(folder: Path) -> Facts:
    """Bust 132 + 8, arm 44 + 4, underarm 12 stitches, 26 deep: too few rounds."""
    with pytest.raises(Impossible) as caught:
        raglan(folder, LARGE, "132 cm", "44 cm")
    two, under, rounds = caught.value.ways_out
    assert two.startswith("add = 2: two stitches at the body side in ")
    assert under.startswith("an underarm of ")
    assert under.endswith(", which is wide")
    assert "6 short on the body lines" in str(caught.value)
    return {
        "stitches short": caught.value.short_stitches,
        "rounds with two": int(two.split()[-2]),
        "wider underarm": int(under.split()[3]),
        "wider underarm cm": float(under.split()[5]),
        "more rounds": int(rounds.split()[0]),
    }


def large_raglan_with_doubles(folder: Path) -> Facts:
    """The same with two stitches at the body side where they are needed."""
    return parted(raglan(folder, {**LARGE, "add": 2}, "132 cm", "44 cm"))


def round_yoke(folder: Path) -> Facts:
    """92 stitches wanted at the neck, 252 where it parts, multiples of 6, four rings in 22 rounds."""
    design = YokeDesign("round yoke", {**MEDIUM, "rings": 4, "multiple": 6})
    basis, entry = yoke_basis(folder, design)
    assert isinstance(entry, RoundYokeChoice)
    counts = plan_round_yoke(basis, entry, "piece.1", {}).plans[0].counts
    at = ring_places(counts[0], 42, 0)
    gaps = np.diff([*at, at[0] + counts[0]])
    gauge = basis.gauge("double_crochet", "work.stitch")
    return {
        "counts": " ".join(map(str, dict.fromkeys(counts))),
        "groups of two in the first ring": int((gaps == 2).sum()),
        "groups of three in the first ring": int((gaps == 3).sum()),
        "stitches a round on average": (counts[-1] - counts[0]) / (len(counts) - 1),
        "flat limit": 2 * math.pi * gauge.height.value / gauge.width.value,
    }


CASES: Mapping[str, Callable[[Path], Facts]] = {
    "medium raglan": medium_raglan,
    "large raglan": large_raglan,
    "large raglan with doubles": large_raglan_with_doubles,
    "round yoke": round_yoke,
}


@pytest.mark.parametrize("case", CASES)
def test_yoke_is_planned_as_worked_by_hand(case: str, tmp_path: Path) -> None:
    """Every figure of the table."""
    facts = CASES[case](tmp_path)
    for row in (row for row in ROWS if row["case"] == case):
        told = facts[row["what"]]
        if row["tolerance"]:
            expected = pytest.approx(float(row["expected"]), abs=float(row["tolerance"]))
            assert float(str(told)) == expected, row["what"]
        else:
            assert told == row["expected"], row["what"]


def test_every_case_of_the_table_is_planned() -> None:
    """No row stands for nothing."""
    assert {row["case"] for row in ROWS} == set(CASES)
