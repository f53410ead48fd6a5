"""Flat pieces worked by hand, planned by the program from files a maker could have written."""

from __future__ import annotations

import csv
import re
from collections.abc import Callable, Mapping
from functools import cache
from pathlib import Path

import pytest
from pieces_designs import Garment, garment, panel, swatch

from frogless.plan.pieces.panel_cap import cap_length
from frogless.plan.pieces.panel_edges import along, steps_of
from frogless.rows.nodes import Into, Skip, Together
from frogless.stitches.load import dictionary
from frogless.swatch import Gauge
from frogless.units import Measured
from frogless.write.pattern import write_program

HERE = Path(__file__).parent
ROWS = list(csv.DictReader((HERE / "panels.csv").read_text("utf-8").splitlines()))
Facts = Mapping[str, object]


def shaped(made: Garment, piece: str, kind: type[Into] | type[Together]) -> list[int]:
    """For each row of a piece, how many increases or decreases stand in its body."""
    rows = (row.row for row in made.rows(piece))
    return [sum(isinstance(node, kind) for node in row.body) for row in rows]


def drop_shoulder(folder: Path) -> Facts:
    """Two panels and a sleeve worked down from its top, 16 × 9 in 10 cm."""
    made = garment(
        folder,
        panel(
            width="(96 cm + 10 cm) / 2",
            multiple=2,
            offset=1,
            length="60 cm",
            armhole={"depth": "22 cm"},
            neck={"width": "20 cm", "depth": "9 cm"},
        ),
        panel(
            "sleeve",
            width="44 cm",
            worked="downwards",
            length="78 cm - 26.6 cm - 6 cm",
            section=[{"name": "taper", "length": "45.4 cm", "width": "22 cm", "rows": "any"}],
        ),
        sample=swatch(16, 9),
    )
    assert not made.faults()
    decreases = shaped(made, "sleeve", Together)
    return {
        "panel stitches": made.measure("front", "width").count,
        "neck stitches": made.measure("front", "neck width").count,
        "shoulder stitches": made.measure("front", "shoulder width").count,
        "armhole rows": made.measure("front", "armhole depth").count,
        "sleeve top stitches": made.piece("sleeve").counts[0],
        "cuff stitches": made.piece("sleeve").counts[-1],
        "sleeve rows": len(made.piece("sleeve").counts) - 1,
        "sleeve pairs": sum(n == 2 for n in decreases),
    }


def set_in_sleeve(folder: Path) -> Facts:
    """Front and back alike, the sleeve made to them, 18 × 10."""
    hole = {"depth": "20 cm", "width": "36 cm", "rows": "any"}
    made = garment(
        folder,
        panel(width="48 cm", length="55 cm", armhole=hole),
        panel("back", width="48 cm", length="55 cm", armhole=hole),
        panel(
            "sleeve",
            make=2,
            width="24.5 cm",
            length="45 cm",
            section=[{"name": "taper", "length": "40 cm", "width": "34 cm"}],
            cap={"into": ["front.left armhole", "back.right armhole"]},
        ),
    )
    assert not made.faults()
    cap = made.measure("sleeve", "cap edge")
    assert cap.wanted is not None
    body, armhole = made.rows("front")[35], made.rows("front")[36]
    sloping = [n // 2 for n in shaped(made, "sleeve", Together) if n]
    return {
        "stitches below the armhole": body.places,
        "stitches above it": made.piece("front").counts[-1],
        "left at once": armhole.row.start.across,
        "decreased after that": sum(shaped(made, "front", Together)) // 2,
        "armhole round cm": cap.wanted / 10,
        "sleeve stitches": max(made.piece("sleeve").counts),
        "cap top stitches": made.piece("sleeve").counts[-1],
        "cap stitches at each side": sum(sloping),
        "cap slanting rows": len(sloping),
        "cap rows with two at each side": sum(n == 2 for n in sloping),
        "cap less armhole cm": (cap.got.value - cap.wanted) / 10,
    }


def tube_top(folder: Path) -> Facts:
    """Two panels of nine tenths of the bust, 20 in 10 cm."""
    made = garment(
        folder, panel(make=2, width="90 cm * 0.9 / 2", length="30 cm"), sample=swatch(20, 10)
    )
    wide = made.measure("front", "width")
    return {"stitches round": 2 * wide.count, "girth cm": 2 * wide.got.value / 10}


def full_bust(folder: Path) -> Facts:
    """Four cm more in the middle, 18 × 11."""
    made = garment(
        folder,
        panel(width="50 cm", length="40 cm", full_bust={"extra": "4 cm", "above": "25 cm"}),
        sample=swatch(18, 11),
    )
    assert not made.faults()
    extra = made.measure("front", "extra length over the bust")
    left, right = (
        sum(edge.places)
        for name in ("left side", "right side")
        for edge in made.edges("front")
        if edge.name == name
    )
    return {
        "short rows": extra.count,
        "extra length cm": extra.got.value / 10,
        "row ends at the left side less those at the right": left - right,
    }


def shoulder_slope(folder: Path) -> Facts:
    """Shoulders of 20 that fall by 3 cm, 20 × 9: what each row leaves at the armhole, and the rest."""
    made = garment(
        folder,
        panel(
            width="40 cm",
            length="50 cm",
            armhole={"depth": "20 cm"},
            neck={"width": "20 cm", "depth": "10 cm", "shape": "square"},
            shoulder={"drop": "3 cm"},
        ),
        sample=swatch(20, 9),
    )
    assert not made.faults()
    last = made.rows("front")[-3:]
    left = [
        sum(n.times for n in r.row.body if isinstance(n, Skip)) + r.row.start.across for r in last
    ]
    assert last[0].places == 20
    return {"steps": " ".join(map(str, (*left[1:], last[-1].places)))}


def edging_in_rows(folder: Path) -> Facts:
    """A multiple of six, and the one that makes both edges alike."""
    made = garment(
        folder,
        panel(width="50 cm", multiple=6, offset=1, length="10 cm"),
        work="turning_chain = 3\nturning_chain_counts = true",
    )
    text = write_program(made.plan.program, dictionary(), "us")
    (chains,) = re.findall(r"Ch (\d+); turn", text)
    assert "Beginning in 4th ch from hook" in text
    return {"stitches": made.piece("front").counts[0], "chains": int(chains)}


def v_neck(folder: Path) -> Facts:
    """Half a neck of 30 stitches over 18 rows."""
    made = garment(
        folder,
        panel(
            width="50 cm",
            length="60 cm",
            neck={"width": "166.7 mm", "depth": "18 cm", "shape": "V", "rows": "any"},
        ),
    )
    assert not made.faults()
    rows = [i for i, n in enumerate(shaped(made, "front", Together)) if n]
    first = len(made.rows("front")) - 18
    done = [sum(row < first + r for row in rows) for r in range(19)]
    return {
        "stitches at each side": len(rows),
        "strays stitches": max(abs(n - 15 * r / 18) for r, n in enumerate(done)),
    }


CASES: Mapping[str, Callable[[Path], Facts]] = {
    "drop shoulder": drop_shoulder,
    "set-in sleeve": set_in_sleeve,
    "tube top": tube_top,
    "full bust": full_bust,
    "shoulder slope": shoulder_slope,
    "edging in rows": edging_in_rows,
    "V neck": v_neck,
}


@pytest.fixture(scope="module")
def facts(tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], Facts]:
    """What the program makes of a case, worked out once."""
    return cache(lambda case: CASES[case](tmp_path_factory.mktemp("case")))


@pytest.mark.parametrize("row", ROWS, ids=[f"{r['case']}: {r['fact']}" for r in ROWS])
def test_panel_comes_out_as_worked_by_hand(
    row: Mapping[str, str], facts: Callable[[str], Facts]
) -> None:
    """Counts exactly, lengths as far as they are printed."""
    found = facts(row["case"])[row["fact"]]
    if isinstance(found, str):
        assert found == row["expected"]
    else:
        assert found == pytest.approx(float(row["expected"]), abs=float(row["tolerance"]) + 1e-9)


def test_every_case_is_looked_at() -> None:
    """No fact is worked out and left unread."""
    assert {row["case"] for row in ROWS} == set(CASES)


GAUGE = Gauge("double_crochet", Measured(100 / 18), Measured(10.0), "washed")


def test_armhole_is_as_long_as_by_hand_when_its_parts_are_added_up() -> None:
    """5 at once, 6 over 6 rows, 13 straight rows: 22.6 cm at each side."""
    assert along([(0, 5), (6, 6), (13, 0)], GAUGE.width, GAUGE.height).value == pytest.approx(
        226.4, abs=0.05
    )


@pytest.mark.parametrize(("rows", "length"), [(11, 445.5), (12, 461.0)])
def test_cap_is_as_long_as_by_hand_when_its_rows_are_given(rows: int, length: float) -> None:
    """44.6 or 46.1 cm: 5 at once, 17 over the rows, 18 at the top."""
    assert cap_length(5, 17, 18, rows, GAUGE).value == pytest.approx(length, abs=0.6)


def test_steps_differ_by_one_when_a_shoulder_is_divided() -> None:
    """The larger ones at the tip."""
    assert steps_of(20, 3) == (7, 7, 6)
