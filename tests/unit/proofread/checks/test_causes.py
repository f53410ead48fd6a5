"""What a wrong number most likely comes from."""

import pytest

from frogless.proofread.checks.rows.causes import of_digits
from frogless.proofread.checks.rows.sizes import out_of_order
from frogless.proofread.run import proofread


@pytest.mark.parametrize(
    ("says", "works", "cause"),
    [
        (69, 96, "69 looks like 96 with its digits changed round"),
        (132, 123, "132 looks like 123 with its digits changed round"),
        (9, 96, "9 looks like 96 with a digit lost"),
        (1120, 120, "1120 looks like 120 with a digit too many"),
        (126, 186, "one digit of 126 may be wrong: 186"),
        (96, 98, ""),
        (20, 0, ""),
        (96, 96, ""),
    ],
)
def test_slip_of_the_pen_is_told(says: int, works: int, cause: str) -> None:
    """Digits changed round, lost, doubled or misread; a small difference is counted wrong instead."""
    assert of_digits(says, works) == cause


@pytest.mark.parametrize(
    ("values", "at"),
    [
        ((60, 66, 72, 78), None),
        ((60, 60, 60), None),
        ((61, 67, 73, 85, 79), 3),
        ((21, 25, 92, 33), 2),
        ((88, 80, 96), 1),
        ((60, 20, 72, 10, 84), None),
    ],
)
def test_one_size_falls_out_of_line(values: tuple[int, ...], at: int | None) -> None:
    """The one value without which all others grow, and grow most evenly."""
    assert out_of_order(values) == at


def _hint(text: str) -> str:
    (only,) = proofread(text).findings
    return only.hint


ROUND = "Rnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each st around. (12 sc)\n"


def test_surplus_in_each_repeat_is_told() -> None:
    """Six stitches too many in six repeats are one in each."""
    hint = _hint(ROUND + "Rnd 3: [Sc in next st, 3 sc in next st] 6 times. (18 sc)")
    assert "Rnd 3 works 24 stitches over 12" in hint
    assert "1 stitch too many in each of 6 repeats" in hint


@pytest.mark.parametrize(
    ("row", "cause"),
    [
        ("[Sc in next 2 sts, 2 sc in next st] 5 times. (20 sc)", "4 times would fill the row"),
        ("[Sc in next 5 sts, sc2tog] twice. (12 sc)", "would have to use 6 places, not 7"),
        ("*Sc in next 2 sts; rep from * 4 more times. (10 sc)", "5 more times would fill the row"),
        ("2 sc in each st around. (36 sc)", "3 in each would make 36"),
    ],
)
def test_what_would_make_it_come_out_is_told(row: str, cause: str) -> None:
    """How often a repeat would have to be worked, over how many places, or how many in each."""
    assert cause in _hint(f"{ROUND}Rnd 3: {row}")


def test_chain_that_the_row_itself_speaks_of_is_not_blamed() -> None:
    """It says that it does not count: another count is wrong."""
    begin = "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\n"
    for chain, blamed in (("Ch 1", True), ("Ch 1 (does not count as a st)", False)):
        hint = _hint(f"{begin}Row 2: {chain}, sc in each st across, turn. (11 sc)\n")
        assert ("the chain of 1" in hint) == blamed


def test_count_that_fits_the_row_below_is_proposed() -> None:
    """From 7 stitches the round would come out as stated."""
    hint = _hint("Rnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each st around. (14 sc)")
    assert hint.endswith("or Rnd 1 should end with 7.")


def test_repeat_says_what_would_come_out() -> None:
    """78 over 4 is 19.5; from 80 it gives 100."""
    text = (
        "Row 1: Fdc 78, join with sl st to form a ring. (78 dc)\n"
        "Rnd 2: Ch 3 (does not count), *dc in next 3 sts, 2 dc in next st; rep from * around. (100 dc)"
    )
    hint = _hint(text)
    assert "78/4 = 19.5" in hint
    assert "from 80 it gives 100" in hint


def test_sizes_that_fail_alone_are_named() -> None:
    """One finding, for the sizes that share it."""
    text = (
        "Sizes: S (M, L)\nCh 21 (25, 29).\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn. 20 (24, 26) sc.\n"
    )
    (only,) = proofread(text).findings
    assert only.sizes == ("L",)
    assert (only.says, only.works_out_to) == ("26 sts", "28 sts")
    assert "Only in size L" in only.hint


def test_fault_of_all_sizes_is_told_once() -> None:
    """Its numbers stand in brackets, and no size is named."""
    text = (
        "Sizes: S (M, L)\nCh 21 (25, 29).\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn. 22 (26, 30) sc.\n"
    )
    (only,) = proofread(text).findings
    assert only.sizes == ()
    assert (only.says, only.works_out_to) == ("22 (26, 30) sts", "20 (24, 28) sts")
