"""Counts that are given in words, behind the row."""

import pytest

from frogless.proofread.run import proofread

_ROWS = (
    "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\n"
    "Row 2: Ch 1, 2 sc in first st, sc in each st across, turn. (11 sc)\n"
    "Rows 3-5: Rep Row 2. You gain {each} sc on every row and finish with {last} sc.\n"
)


@pytest.mark.parametrize(
    ("each", "last", "found"),
    [
        (1, 14, []),
        (1, 17, [("17 sts", "14 sts")]),
        (2, 14, [("2 in each row", "1 more")]),
    ],
)
def test_count_in_words_is_held_against_the_rows(
    each: int, last: int, found: list[tuple[str, str]]
) -> None:
    """What is gained in each row, and what the last one ends with."""
    findings = proofread(_ROWS.format(each=each, last=last)).findings
    assert [(one.says, one.works_out_to) for one in findings] == found
