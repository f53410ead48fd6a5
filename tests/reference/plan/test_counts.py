"""Counts that do not fit an edging, worked by hand: what works on either side, and the round."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest
from sample_designs import swatch

from frogless.cli import main
from frogless.plan.counts import counts_that_work

HERE = Path(__file__).parent
ROWS = list(csv.DictReader((HERE / "counts.csv").read_text("utf-8").splitlines()))
Capture = pytest.CaptureFixture[str]


def hand(case: str) -> dict[str, str]:
    """What was worked by hand."""
    return {row["fact"]: row["expected"] for row in ROWS if row["case"] == case}


def test_hem_of_205_goes_up_or_down_to_the_edging() -> None:
    """208 by three increases, or 200 by five decreases; the girths to a millimetre."""
    worked = hand("hem of 205")
    more, fewer = counts_that_work(205, 8, 0, 100 / 18)
    assert more.off is not None
    assert fewer.off is not None
    found = {
        "girth cm": f"{205 / 1.8:.1f}",
        "more": str(more.count),
        "increases": str(more.change),
        "gaps of increases": " ".join(map(str, sorted(more.gaps))),
        "more cm": f"{more.off / 10:.1f}",
        "fewer": str(fewer.count),
        "decreases": str(-fewer.change),
        "fewer cm": f"{fewer.off / 10:.1f}",
    }
    assert found == worked


def test_hem_of_205_is_told_in_words_with_its_rounds(tmp_path: Path, capsys: Capture) -> None:
    """Both ways, each with the round that leads there and the girth it gives."""
    worked = hand("hem of 205")
    file = tmp_path / "swatch.toml"
    file.write_text(swatch(18, 10), encoding="utf-8")
    given = ["counts", "205", "--multiple", "8", "--offset", "0", "--gauge", str(file)]
    assert main(given) == 0
    more, fewer = capsys.readouterr().out.split("\n* ")[1:]
    told_more, told_fewer = (" ".join(part.split()) for part in (more, fewer))
    assert told_more.startswith(
        f"{worked['more']}: {worked['increases']} increases, 26 repeats, 115.6 cm "
        f"(+{worked['more cm']} cm) Round: "
    )
    assert f"From one to the next: {worked['gaps of increases'].replace(' ', ', ')}" in told_more
    assert "2 sc in next st, sc in next 67 sts" in told_more
    assert told_fewer.startswith(
        f"{worked['fewer']}: {worked['decreases']} decreases, 25 repeats, 111.1 cm "
        f"({worked['fewer cm'].replace('-', '−')} cm) Round: "
    )
    assert "sc2tog, sc in next 39 sts" in told_fewer


def test_150_and_six_is_asked_about_when_nobody_says_how_it_is_worked(capsys: Capture) -> None:
    """The answers differ, so neither is assumed; both are told with the question."""
    worked = hand("150 and six")
    given = ["counts", "150", "--multiple", "6", "--offset", "1"]
    assert main(given) == 2
    asked = capsys.readouterr().err
    assert "are the 150 stitches worked in rounds or in rows?" in asked
    repeats = worked["repeats in rounds"]
    assert f"In rounds {worked['in rounds']} is ready ({repeats} repeats)" in asked
    assert f"in rows (6 + 1) {worked['in rows']} with 1 increase" in asked


@pytest.mark.parametrize(("way", "over"), [("rounds", 0), ("rows", 1)])
def test_150_and_six_comes_out_as_worked_by_hand(way: str, over: int, capsys: Capture) -> None:
    """Ready in rounds; in rows one more."""
    worked = hand("150 and six")
    nearest = counts_that_work(150, 6, over)[0]
    assert nearest.count == int(worked[f"in {way}"])
    assert nearest.change == int(worked[f"to add in {way}"])
    assert nearest.repeats == int(worked["repeats in rounds"])
    assert main(["counts", "150", "--multiple", "6", "--offset", "1", f"--{way}"]) == 0
    assert f"* {nearest.count}" in capsys.readouterr().out
