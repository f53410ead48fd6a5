"""Rhythms in the trade's words."""

from __future__ import annotations

import pytest

from frogless.plan.model import Clause, Rhythm
from frogless.write.rhythm import ordinal, rhythm_sentence


@pytest.mark.parametrize(
    ("rhythm", "offset", "expected"),
    [
        (
            Rhythm(1, (Clause((3,), 6),), (1, 4, 7, 10, 13, 16, 19)),
            0,
            "on round 1, then every 3rd round 6 more times (rounds 1, 4, 7, 10, 13, 16, 19)",
        ),
        (
            Rhythm(3, (Clause((7,), 1),), (3, 10)),
            20,
            "on round 23, then every 7th round once more (rounds 23, 30)",
        ),
        (
            Rhythm(2, (Clause((2, 3), 4),), (2, 4, 7, 9, 12)),
            0,
            "on round 2, then alternately every 2nd and 3rd round 4 more times "
            "(rounds 2, 4, 7, 9, 12)",
        ),
        (
            Rhythm(2, (Clause((3,), 2), Clause((1,), 2)), (2, 5, 8, 9, 10)),
            0,
            "on round 2, then every 3rd round 2 more times, then every round 2 more times "
            "(rounds 2, 5, 8\u201310)",
        ),
        (Rhythm(5, (), (5,)), 0, "on round 5"),
    ],
)
def test_rhythm_is_said_with_its_rounds(rhythm: Rhythm, offset: int, expected: str) -> None:
    """First round, clauses, and all rounds counted through the piece."""
    assert rhythm_sentence(rhythm, offset) == expected


def test_ordinal_is_that_of_the_phrases() -> None:
    """For whoever needs one outside a sentence."""
    assert (ordinal(2), ordinal(12)) == ("2nd", "12th")
