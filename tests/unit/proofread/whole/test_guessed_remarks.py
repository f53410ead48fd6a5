"""Sentences between rows that are left out are told."""

from __future__ import annotations

from frogless.proofread.run import proofread

TEXT = """Terms: US

Rnd 1: 6 sc in magic ring. (6)
Plain edging with the 3.25 mm hook, over 208 stitches.
Rnd 2: sc in each st around. (6)
"""


def test_sentence_taken_for_a_remark_is_an_assumption() -> None:
    """With its place, so that nobody has to trust that it was one."""
    report = proofread(TEXT)
    told = [report.script.line(each.span.start) for each in report.assumptions if each.span]
    assert told == [4]
    assert report.proven
