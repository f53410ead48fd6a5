"""A range of rows that ends elsewhere in each size."""

from __future__ import annotations

from frogless.proofread.run import proofread

TEXT = """Sizes: S (M, L)

Rnd 1: 6 sc in magic ring. (6)
Rnds 2-4 (5, 6): Inc in each of next 6 sts, sc in each st around. [24 (30, 36) sts]
"""


def test_each_size_works_its_own_last_row() -> None:
    """Rounds 2 to 4, to 5 and to 6: three, four and five times six stitches more."""
    report = proofread(TEXT)
    last = [[row for row in report.reckoning.rows if row.size == size][-1] for size in range(3)]
    assert [(row.number, row.worked) for row in last] == [(4, 24), (5, 30), (6, 36)]
    assert report.findings == ()
