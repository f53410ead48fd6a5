"""Our own patterns are proofread: nothing is found, and every row is the row that was planned."""

import pytest
from examples import Example, drafted

from frogless.proofread.run import proofread
from frogless.publish.pattern import pattern
from frogless.publish.plain import plain


@pytest.mark.parametrize("design", ["lantern-cap", "kerchief-skirt", "drum-bag"])
def test_a_draft_is_clean(design: str) -> None:
    """A cap begun in a ring, a skirt in rounds, a bag of pieces with a strap."""
    found = drafted(Example(design))
    report = proofread(plain(pattern(found)))
    assert report.findings == ()
    assert report.not_understood == ()
    rows = [(row.number, row.worked) for row in report.reckoning.rows if row.number]
    planned = [
        (row.number, row.count)
        for piece in found.plan.program.pieces
        for row in piece.rows
        if row.number
    ]
    assert rows == planned
