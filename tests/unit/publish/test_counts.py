"""Counts near a multiple, told: terms, rows without joins, few gaps and many, and the question."""

from __future__ import annotations

import pytest

from frogless.errors import InputError
from frogless.publish.counts import ask_which, counts_text


def test_ready_count_is_said_to_be_ready() -> None:
    """In one line below what was asked."""
    assert counts_text(256, 8, 0, closed=True) == (
        "256 stitches in rounds, multiple of 8:\n* 256 is ready: 32 repeats\n"
    )


def test_offset_is_left_off_in_rounds() -> None:
    """A round has no edges to balance."""
    assert "150 is ready: 25 repeats" in counts_text(150, 6, 1, closed=True)
    assert "* 151: 1 increase, 25 repeats" in counts_text(150, 6, 1, closed=False)


def test_rows_are_not_joined_and_have_no_gap_past_their_end() -> None:
    """The distance from the last change to the first means nothing there."""
    told = counts_text(91, 8, 0, closed=False)
    assert "Row: Ch 1" in told
    assert "join" not in told
    assert "From one" not in told


def test_uk_terms_are_used_when_asked_for() -> None:
    """The round is in double crochet then."""
    assert "(208 dc)" in counts_text(205, 8, 0, closed=True, terms="uk")


def test_many_gaps_are_told_by_how_often_they_come() -> None:
    """Not one by one."""
    assert "15 stitches 3 times and 16 stitches 4 times" in counts_text(109, 29, 0, closed=True)


def test_any_number_is_a_multiple_of_one() -> None:
    """Nothing is said to be over."""
    assert counts_text(7, 1, 0, closed=True).startswith("7 stitches in rounds, any number")


def test_nothing_is_asked_when_nothing_is_over_either_way() -> None:
    """Rows and rounds come to the same."""
    ask_which(205, 8, 0)
    with pytest.raises(InputError, match="write them as --offset"):
        ask_which(205, 8, None)
