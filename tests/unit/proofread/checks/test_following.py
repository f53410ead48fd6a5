"""One slip is told once, at its place, and not again in the rows that follow from it."""

import pytest

from frogless.proofread.run import proofread

_BEGIN = "Ch 12.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (11 sc)\n"
_SLIP = "Row 2: Ch 1, sc in next 12 sts, turn.\n"
_V = "V-st = (dc, ch 1, dc) all in the same place.\nCh 24, join with sl st to first ch.\n"


@pytest.mark.parametrize(
    ("text", "rows"),
    [
        (f"{_BEGIN}{_SLIP}Row 3: Ch 1, sc in next 11 sts, turn.\nRow 4: As Row 2.\n", ["Row 2"]),
        (f"{_BEGIN}{_SLIP}Repeat Rows 1 and 2 3 more times.\n", ["Row 2"]),
        (
            f"{_V}Rnd 1: Ch 1, sc in each ch around, join. (24 sc)\n"
            "Rnd 2: *V-st in next st, sk 3 sts; rep from * around, join. (8 V-sts)\n"
            "Rnd 3: *V-st in ch-1 sp of next V-st; rep from * around, join. (8 V-sts)\n"
            "Rnd 4: Ch 1, sc in each dc and in each ch-1 sp around, join. (24 sc)\n",
            ["Rnd 2"],
        ),
        (f"{_BEGIN}{_SLIP}Row 3: Ch 1, sc in next 9 sts, turn.\n", ["Row 2", "Row 3"]),
    ],
)
def test_slip_is_told_where_it_is(text: str, rows: list[str]) -> None:
    """Rows that come out of it wrongly are left out; one with a slip of its own is told."""
    assert [each.row for each in proofread(text).findings] == rows
