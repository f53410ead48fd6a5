"""Lines held against each other, and how much of that is done at most."""

from __future__ import annotations

import pytest

from frogless.studio.compare import groups
from frogless.studio.conflict import beside


def test_changed_line_stands_between_those_that_are_alike() -> None:
    """As the standard library tells it."""
    assert groups(["a", "b", "d"], ["a", "c", "d"]) == [
        ("equal", 0, 1, 0, 1),
        ("replace", 1, 2, 1, 2),
        ("equal", 2, 3, 2, 3),
    ]


@pytest.mark.parametrize(
    ("old", "new", "found"),
    [([], [], []), (["a"], [], [("delete", 0, 1, 0, 0)]), ([], ["a"], [("insert", 0, 0, 0, 1)])],
)
def test_nothing_is_made_of_something_and_something_of_nothing(
    old: list[str], new: list[str], found: list[tuple[str, int, int, int, int]]
) -> None:
    """Without a comparison."""
    assert list(groups(old, new)) == found


@pytest.mark.parametrize(
    ("old", "new"),
    [
        (["x", *["a"] * 1990, "x"], ["y", *["a", "b"] * 995, "y"]),
        ([str(n) for n in range(3000)], ["y", *(w for n in range(3000) for w in (str(n), "q"))]),
    ],
)
def test_what_would_take_too_long_is_two_blocks(old: list[str], new: list[str]) -> None:
    """Lines that come again hundreds of times, and thousands with another after each."""
    assert [tag for tag, *_ in groups(old, new)] == ["replace"]


def test_lines_of_blocks_that_both_have_are_not_marked() -> None:
    """What the other text lacks is, as on every page of two texts."""
    mine, theirs = beside("x\n" + "a\n" * 1990 + "x", "y\n" + "a\nb\n" * 995 + "y")
    assert {line.text for line in mine if line.only_here} == {"x"}
    assert {line.text for line in theirs if line.only_here} == {"y", "b"}
    assert not any(line.only_here for line in (*mine, *theirs) if line.text == "a")
