"""Finished sizes of public pattern pages, held against their counts by their gauge.

`finished.csv`: count, gauge and size as the page states them; `finds` is the check that must speak,
empty where the page agrees within its gauge.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from frogless.proofread.checks.of_facts import OF_FACTS
from frogless.proofread.run import proofread

FILE = Path(__file__).with_name("finished.csv")
CASES = list(csv.DictReader(FILE.read_text(encoding="utf-8").splitlines()))
NAMES = {check.name for check in OF_FACTS}
#: Chains at the start of a row, and whether they count, by stitch.
CHAINS = {"sc": 1, "hdc": 2, "dc": 3, "tr": 4}


def written(case: dict[str, str]) -> str:
    """A pattern of rows or rounds with the count of a case, in our words."""
    count, stitch = int(case["count"]), case["stitch"]
    turn = f"Ch {CHAINS[stitch]} (does not count as a st), {stitch} in each st"
    tube = case["shape"] == "tube"
    row, end = ("Rnd", "around, join") if tube else ("Row", "across, turn")
    first = f"Ch {count}, join with sl st to first ch." if tube else f"Ch {count + CHAINS[stitch]}."
    base = (
        f"{turn.replace('each st', 'each ch')} {end}"
        if tube
        else f"{stitch.capitalize()} in {('2nd', '3rd', '4th', '5th')[CHAINS[stitch] - 1]} ch from hook "
        "(skipped chs do not count) and in each ch across, turn"
    )
    materials = f"Materials\n{case['yarn']}\n5 mm hook\n\n" if case["yarn"] else ""
    return (
        f"Work\n\nFinished measurements\n{case['stated']}\n\n{materials}Gauge\n{case['gauge']}\n\n"
        f"Instructions\n{first}\n{row} 1: {base}. ({count} {stitch})\n"
        f"{row}s 2-{case['rows']}: {turn} {end}. ({count} {stitch})\nFasten off.\n"
    )


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case['case']} {case['count']}")
def test_page_is_told_apart(case: dict[str, str]) -> None:
    """What agrees within its gauge is passed, and what does not is named."""
    report = proofread(written(case))
    assert [each.kind for each in report.findings if each.kind not in NAMES] == []
    assert {each.kind for each in report.findings} == set(case["finds"].split())
