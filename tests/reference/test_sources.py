"""Every value that the tests are held to says where it comes from, and stands in the docs."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

REFERENCE = Path(__file__).parent
BASES = {"published", "common-practice", "derived", "memory"}
FILES = sorted(file.relative_to(REFERENCE).as_posix() for file in REFERENCE.rglob("*.csv"))


@pytest.mark.parametrize("file", FILES)
def test_row_has_a_source_and_a_basis(file: str) -> None:
    """A value without a source is refused."""
    with (REFERENCE / file).open(encoding="utf-8", newline="") as lines:
        rows = list(csv.DictReader(lines))
    assert rows
    assert [row for row in rows if not row["source"].strip() or row["basis"] not in BASES] == []


@pytest.mark.parametrize("file", FILES)
def test_file_is_listed_in_the_docs(file: str) -> None:
    """The page of truth names every file of values."""
    page = REFERENCE.parents[1] / "docs" / "truth.md"
    assert f"`{file}`" in page.read_text(encoding="utf-8")


def test_page_of_truth_names_no_file_that_is_gone() -> None:
    """Nothing is claimed that is not there."""
    page = (REFERENCE.parents[1] / "docs" / "truth.md").read_text(encoding="utf-8")
    named = {line.split("`")[1] for line in page.splitlines() if line.startswith("| `")}
    assert named - set(FILES) == set()
