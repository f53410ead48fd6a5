"""Patterns by designers who did not know the program: right as they stand, and with a slip in each."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest
from reference.proofread.planted import told

from frogless.proofread.run import proofread

HERE = Path(__file__).parent
PATTERNS = HERE / "by_others"
SLIPS = HERE / "slips.csv"


def right() -> tuple[str, ...]:
    """The patterns, by folder and file."""
    return tuple(
        f"{path.parent.name}/{path.name}" for path in sorted(PATTERNS.rglob("*")) if path.is_file()
    )


def slips() -> tuple[object, ...]:
    """One for each line of the table."""
    with SLIPS.open(encoding="utf-8", newline="") as file:
        return tuple(
            pytest.param(
                row["pattern"],
                int(row["line"]),
                row["becomes"],
                id=f"{row['pattern']}:{row['line']} {row['kind']}",
            )
            for row in csv.DictReader(file)
        )


@pytest.mark.parametrize("pattern", right())
def test_nothing_is_found_in_a_right_pattern(pattern: str) -> None:
    """And every row of it is worked out."""
    report = proofread((PATTERNS / pattern).read_text(encoding="utf-8"))
    assert told(report) == ()
    assert report.proven


@pytest.mark.parametrize(("pattern", "line", "becomes"), slips())
def test_slip_is_found_at_its_row_or_the_next(pattern: str, line: int, becomes: str) -> None:
    """In the line that reads otherwise now, or within three below, where it is felt."""
    lines = (PATTERNS / pattern).read_text(encoding="utf-8").split("\n")
    assert lines[line - 1] != becomes
    lines[line - 1] = becomes
    report = proofread("\n".join(lines))
    found = {report.script.line(each.span.start) for each in report.findings}
    assert found & set(range(line, line + 4)), found
