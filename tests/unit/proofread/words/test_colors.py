"""Colors are named in many ways, and none of them changes a stitch."""

import pytest

from frogless.proofread.run import proofread


@pytest.mark.parametrize(
    "row",
    [
        "With A, sc in each sc across, turn. (8 sc)",
        "(2 sc A, 2 sc B) twice, turn. (8 sc)",
        "*2 sc in A, 2 sc in B; rep from * across, turn. (8 sc)",
        "With B only, sc in each sc across, turn. (8 sc)",
        "Sc in each sc across, turn, change to col B. (8 sc)",
        "Using col MC, sc in each sc across, switch to color C, turn. (8 sc)",
        "Sc in each sc across, with a new color every 2 rows, turn. (8 sc)",
    ],
)
def test_a_color_changes_no_stitch(row: str) -> None:
    """With it or without, at a row's start or behind a stitch, the row is proven."""
    report = proofread(
        "Pouch\n\nWith A, ch 9.\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (8 sc)\n"
        f"Row 2: Ch 1, {row}\n"
    )
    assert (report.understood, report.findings) == (1, ())


@pytest.mark.parametrize(
    "foundation",
    ["With 5mm hook make 9 ch.", "Using 4 mm hook chain 9.", "With a 3.5 mm hook, ch 9.", "Chain nine."],
)  # fmt: skip
def test_a_hook_hides_no_foundation(foundation: str) -> None:
    """Named right before the chain that is made with it, or before a comma."""
    report = proofread(
        f"Pouch\n\n{foundation}\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across [8 sc] turn\n"
        "Row 2: Ch 1, sc in each sc across, turn. (8 sc)\n"
    )
    assert (report.understood, report.findings, report.open_rows) == (1, (), ())
    assert report.reckoning.rows[0].worked == 9


def test_squares_that_are_counted_are_no_work() -> None:
    """A row of a net is worked out, whatever its squares are called."""
    report = proofread(
        "Runner\n\nCh 12.\nRow 1: Dc in 9th ch from hook (counts as dc, ch 2), ch 2, sk next 2 chs,"
        " dc in last ch, turn. (2 open squares)\n"
    )
    assert report.understood == 1
