"""Numbers of rows that follow one another, and those that do not."""

import pytest

from frogless.proofread.run import proofread

BEGIN = "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"
PLAIN = "Ch 1, sc in each st across, turn. (20 sc)\n"


def _numbers(text: str) -> list[str]:
    return [each.row for each in proofread(text).findings if each.kind == "row-numbers"]


@pytest.mark.parametrize(
    "rows",
    [
        f"Row 2: {PLAIN}Row 3: {PLAIN}",
        f"Rows 2-5: {PLAIN}Row 6: {PLAIN}",
        f"Row 2: {PLAIN}Row 3: {PLAIN}Rep Rows 2 and 3 until piece measures 12 cm.\nRow 20: {PLAIN}",
        f"Row 2: {PLAIN}Rep Row 2 five more times.\nRow 8: {PLAIN}",
        f"Row 2: {PLAIN}Next row: {PLAIN}Row 4: {PLAIN}",
        f"Row 2 and all even rows: {PLAIN}Row 3: {PLAIN}Row 5: {PLAIN}",
        f"Rows 2 and 4: {PLAIN}Rows 3 and 5: {PLAIN}Row 6: {PLAIN}",
        f"Row 2: {PLAIN}\nEDGING\nRow 1: {PLAIN}Row 2: {PLAIN}",
    ],
)
def test_numbers_that_follow_are_right(rows: str) -> None:
    """Ranges, repeats, rows without a number, every second row, and sections that begin anew."""
    assert _numbers(BEGIN + rows) == []


@pytest.mark.parametrize(
    ("rows", "at"),
    [
        (f"Row 3: {PLAIN}", "Row 3"),
        (f"Row 2: {PLAIN}Row 2: {PLAIN}", "Row 2"),
        (f"Row 2: {PLAIN}Row 3: {PLAIN}Row 2: {PLAIN}", "Row 2"),
        (f"Rows 2-5: {PLAIN}Row 7: {PLAIN}", "Row 7"),
        (f"Rows 2 and 4: {PLAIN}Row 5: {PLAIN}", "Row 2"),
        (f"Work 6 rows even.\nRow 7: {PLAIN}", "Row 7"),
    ],
)
def test_numbers_that_do_not_follow_are_told(rows: str, at: str) -> None:
    """A gap, a number twice, one that goes backwards, and one that forgets rows told in words."""
    assert _numbers(BEGIN + rows) == [at]
