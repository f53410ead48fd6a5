"""Rhythms of flat pieces are told in rows."""

from __future__ import annotations

import pytest

from frogless.plan.model import Clause, Rhythm
from frogless.write.rhythm import rhythm_sentence

CASES = (
    (Rhythm(3, (Clause((4,), 2),), (3, 7, 11)), "on row 3, then every 4th row 2 more times"),
    (Rhythm(1, (Clause((1,), 2),), (1, 2, 3)), "on row 1, then every row 2 more times"),
    (Rhythm(1, (Clause((2, 3), 2),), (1, 3, 6)), "alternately every 2nd and 3rd row 2 more times"),
)


@pytest.mark.parametrize(("rhythm", "told"), CASES)
def test_rows_are_told_when_a_piece_is_flat(rhythm: Rhythm, told: str) -> None:
    """And rounds when it is closed; the numbers are the same."""
    rows = rhythm_sentence(rhythm, closed=False)
    rounds = rhythm_sentence(rhythm)
    assert told in rows
    assert "round" not in rows
    assert rows.replace("row", "round") == rounds
