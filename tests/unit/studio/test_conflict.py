"""Two texts side by side, when two pages changed one document."""

from __future__ import annotations

from frogless.studio.conflict import Line, beside


def test_lines_that_only_one_text_has_are_marked() -> None:
    """In both, and in no other line."""
    mine, theirs = beside("a\nb\nc", "a\nc\nd")
    assert mine == (Line("a", False), Line("b", True), Line("c", False))
    assert theirs == (Line("a", False), Line("c", False), Line("d", True))


def test_texts_of_very_many_lines_are_shown_whole() -> None:
    """They are not held against each other, which would take minutes."""
    mine, theirs = beside("a\n" * 50_000, "a\n" * 49_999)
    assert (len(mine), len(theirs)) == (50_000, 49_999)
    assert not any(line.only_here for line in mine)
