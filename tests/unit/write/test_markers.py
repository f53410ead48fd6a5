"""Markers keep their numbers, whichever way a row goes."""

from __future__ import annotations

import pytest

from frogless.rows.nodes import Piece, Row, Side, Together
from frogless.write.markers import by_number, say_in_general, say_markers, say_numbers
from frogless.write.phrases import phrases

ENGLISH = phrases()


def row(side: Side, *marks: int, backwards: bool = False) -> Row:
    """A row with marks and nothing else."""
    return Row(1, side, "", (), 0, marks=marks, backwards=backwards)


def test_row_on_the_wrong_side_meets_the_last_marker_first() -> None:
    """So does a row that goes back without turning; both together go forward."""
    assert by_number(row("RS", 0, 1, 2)) == (0, 1, 2)
    assert by_number(row("WS", 0, 1, 2)) == (2, 1, 0)
    assert by_number(row("RS", 0, 1, 2, backwards=True)) == (2, 1, 0)
    assert by_number(row("WS", 0, 1, 2, backwards=True)) == (0, 1, 2)


@pytest.mark.parametrize(
    ("numbers", "expected"),
    [((1,), "1"), ((1, 2), "1, 2"), ((1, 2, 3), "1–3"), ((1, 3, 4, 5, 8), "1, 3–5, 8")],
)
def test_numbers_are_said_as_short_as_they_get(numbers: tuple[int, ...], expected: str) -> None:
    """A run of three or more is a span."""
    assert say_numbers(numbers) == expected


def test_markers_that_go_into_different_stitches_are_listed() -> None:
    """Each stitch of the group with its markers."""
    assert say_markers(row("RS", 0, 1, 0, 1), ENGLISH, standing=4) == (
        "Move markers 1, 3 up into the 1st st and markers 2, 4 up into the 2nd st of each increase."
    )
    assert say_markers(row("RS", 1, 0), ENGLISH, standing=0) == (
        "Place marker 1 in the 2nd st and marker 2 in the 1st st of each increase."
    )


def test_other_number_of_markers_is_placed_anew() -> None:
    """Six that stand lead nowhere where four are wanted."""
    assert say_markers(row("RS", 0, 0, 0, 0), ENGLISH, standing=6) == (
        "Remove the old markers. Place markers 1–4 in the 1st st of each increase."
    )


def test_single_marker_and_decreases_are_named_as_such() -> None:
    """One marker has no "each"."""
    decrease = Row(1, "RS", "", (Together("double_crochet", 2),), 1, marks=(0,))
    assert say_markers(decrease, ENGLISH, standing=0) == (
        "Place marker 1 in the 1st st of the decrease."
    )


def test_row_without_shaping_says_nothing() -> None:
    """The general sentence covers it."""
    assert say_markers(row("RS"), ENGLISH, standing=4) == ""


def test_general_sentence_tells_which_way_they_are_numbered() -> None:
    """Only turned work meets them in reverse; a piece without markers has no sentence."""
    turned = Piece("skirt", True, (row("RS", 0), row("WS", 0)))
    straight = Piece("skirt", True, (row("RS", 0), row("WS")))
    assert "on a WS round you meet the last one first" in say_in_general(turned, ENGLISH)
    assert "in the order in which you meet them" in say_in_general(straight, ENGLISH)
    assert say_in_general(Piece("skirt", True, (row("RS"),)), ENGLISH) == ""
