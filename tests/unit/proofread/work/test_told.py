"""The statements of a pattern, in their order."""

from __future__ import annotations

import pytest

from frogless.proofread import told
from frogless.proofread.run import proofread


def test_what_comes_after_the_most_that_is_read_is_never_proven(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """A text with more rows than are read is told as not understood from there on."""
    monkeypatch.setattr(told, "MOST", 3)
    rows = "".join(f"Rnd {n}: sc in each st around. (6)\n" for n in range(2, 8))
    report = proofread(f"Cup\n\nRnd 1: 6 sc in magic ring. (6)\n{rows}")
    assert [each.kind for each in report.findings] == ["unclear"]
    assert [each.number for each in report.reckoning.rows] == [1, 2, 3, 4]
