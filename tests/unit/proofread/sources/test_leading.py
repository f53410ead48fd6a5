"""Blank lines between the paragraphs of a page."""

from __future__ import annotations

from frogless.proofread.sources.leading import SetLine, lines_of, spaced
from frogless.proofread.sources.pages import joined


def page(*heights: float, size: float = 10) -> list[SetLine]:
    """Lines a, b, c… at these heights."""
    return [SetLine("abcdefgh"[place], height, size) for place, height in enumerate(heights)]


def test_more_room_is_a_blank_line() -> None:
    """Half as much again as between the lines of a paragraph."""
    assert spaced([page(100, 88, 76, 58, 46)]) == ["a\nb\nc\n\nd\ne"]


def test_smaller_letters_stand_closer() -> None:
    """Room counts by the size of the letters."""
    small = page(100, 94, 88, 79, 73, size=5)
    assert spaced([page(100, 88, 76), small]) == ["a\nb\nc", "a\nb\nc\n\nd\ne"]


def test_next_column_and_next_cell_begin_no_paragraph() -> None:
    """Their lines stand higher, or far below."""
    assert spaced([page(100, 88, 100, 100, 88)]) == ["a\nb\nc\nd\ne"]


def test_paragraphs_of_one_line_are_left_together() -> None:
    """Nothing tells them from the lines of one."""
    assert spaced([page(100, 80, 60, 40)]) == ["a\nb\nc\nd"]


def test_pieces_are_put_together_to_lines() -> None:
    """A line stands where its first letters do."""
    pieces = [("", 0, 12), ("Rnd 1:", 90, 9), (" 6 sc", 91, 8), ("\n", 78, 9), ("turn\nRnd", 78, 9)]
    assert lines_of(pieces) == [
        SetLine("Rnd 1: 6 sc", 90, 9),
        SetLine("turn", 78, 9),
        SetLine("Rnd", 78, 9),
    ]


def test_label_in_a_narrow_column_is_put_together() -> None:
    """With its row, a colon between, and without the numbers to tick off."""
    text, _ = joined(["Rnds 3–4\n(RS, WS)\nDc around.\n3  4\n152 dc\n\n40 44 48"])
    assert text == "Rnds 3–4 (RS, WS): Dc around.\n152 dc\n\n40 44 48\n"
