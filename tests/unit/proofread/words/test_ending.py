"""Repeats whose last time ends otherwise, worked out."""

import pytest

from frogless.proofread.run import proofread

SHELLS = """Terms: US.

Ch 26.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (25 sc)
Row 2: Ch 1, sc in first st, *sk 2 sts, 5 dc in next st, sk 2 sts, sc in next st; rep from * {end}
"""
OTHERWISE = "ending last rep with 3 dc in last st, turn."


def test_another_end_comes_out() -> None:
    """Of four repeats the last ends with 3 dc in the place of its sc."""
    report = proofread(SHELLS.format(end=f"{OTHERWISE} (23 dc, 4 sc)"))
    assert not report.findings
    assert report.reckoning.rows[-1].verdict == "ok"


@pytest.mark.parametrize("count", ["(20 dc, 5 sc)", "(25 dc, 4 sc)", "(23 dc, 5 sc)"])
def test_wrong_count_is_found(count: str) -> None:
    """A count that leaves the other end out of account is found."""
    assert proofread(SHELLS.format(end=f"{OTHERWISE} {count}")).findings


def test_omitted_stitch_is_left_out() -> None:
    """The first sc of the round stands where the last repeat would put its last."""
    text = """Terms: US.

Magic ring.
Rnd 1: 8 sc in ring, join with sl st to first sc. (8 sc)
Rnd 2: Ch 1, sc in first sc, *2 sc in next sc, sc in next sc; rep from * around, omitting the last sc,
join to first sc. (12 sc)
"""
    report = proofread(text)
    assert not report.findings
    assert report.reckoning.rows[-1].verdict == "ok"
