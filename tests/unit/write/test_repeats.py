"""Repeats found in lists."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from frogless.write.repeats import Repeated, say_shortest, shortest


def bracketed(text: str, depth: int = 1, least: int = 2) -> str:
    """Letters with their repeats in brackets."""
    said = say_shortest(
        tuple(text), str, lambda inner, times: f"[{inner}]{times}", depth=depth, least=least
    )
    return "".join(said).replace(", ", "")


@pytest.mark.parametrize(
    ("text", "depth", "least", "expected"),
    [
        ("", 1, 2, ""),
        ("abc", 1, 2, "abc"),
        ("abab", 1, 2, "[ab]2"),
        ("abab", 1, 3, "abab"),
        ("ababab", 1, 3, "[ab]3"),
        ("xababaab", 1, 2, "x[ab]2aab"),
        ("aabaabaab", 2, 2, "[aab]3"),
        ("aaabaaab", 1, 2, "[aaab]2"),
        ("aaabaaab", 2, 2, "[[a]3b]2"),
        ("aaaabbbb", 1, 2, "[a]4[b]4"),
    ],
)
def test_repeats_leave_the_least_to_read(text: str, depth: int, least: int, expected: str) -> None:
    """As deep and as often as allowed."""
    assert bracketed(text, depth, least) == expected


@given(st.text("ab", max_size=24), st.integers(0, 3), st.integers(2, 3))
def test_nothing_is_lost_or_added(text: str, depth: int, least: int) -> None:
    """Written out again, the items are the same."""

    def written_out(items: tuple[str | Repeated[str], ...]) -> str:
        return "".join(
            written_out(item.items) * item.times if isinstance(item, Repeated) else item
            for item in items
        )

    assert written_out(shortest(tuple(text), depth=depth, least=least)) == text
