"""Rows that rest on one which was not understood: of them nothing is certain, and most is left out."""

import pytest

from frogless.proofread.run import proofread

_BEGIN = "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\n"
_WIBBLE = "Row 2: Ch 1, sc in next 5 sts, wibble the frob twice, turn. (12 sts)\n"


@pytest.mark.parametrize(
    ("rows", "kinds"),
    [
        ("Row 3: Ch 1, 2 sc in each ch-5 sp across, turn. (12 sc)\n", ["unclear"]),
        ("Row 3: Ch 1, *sc in next 5 sts; rep from * across, turn.\n", ["unclear"]),
        ("Rows 3-9: Rep Row 2. (30 sts)\n", ["unclear"]),
        ("Row 3: Rep Row 1.\n", ["unclear"]),
        ("Row 3: Rep Row 8.\n", ["unclear", "repeated-rows"]),
        ("Row 3: Ch 1, sc in each st across, turn. (14 sc)\n", ["unclear", "row-count"]),
    ],
)
def test_what_rests_on_an_unclear_row_is_never_certain(rows: str, kinds: list[str]) -> None:
    """A row that is not there, and a count against a count, are told all the same."""
    found = proofread(_BEGIN + _WIBBLE + rows).findings
    assert [each.kind for each in found] == kinds
    assert all(each.certainty != "certain" for each in found)


def test_row_that_comes_out_is_firm_ground_again() -> None:
    """What stands on it is told as anywhere else."""
    rows = "Row 3: Ch 1, sc in each st across, turn. (12 sc)\nRow 4: Ch 1, sc in next 14 sts.\n"
    found = proofread(_BEGIN + _WIBBLE + rows).findings
    assert [(each.kind, each.certainty) for each in found][1:] == [("row-fills", "certain")]


def test_row_that_names_no_stitch_is_not_worked_out() -> None:
    """ "2 sps, 1 blk, 2 sps" are squares of a picture, and no count that is wrong."""
    report = proofread(_BEGIN + "Row 2: 2 sps, 1 block, 2 sps, turn. (4 sps, 1 block)\n")
    assert [each.kind for each in report.findings] == ["unclear"]
