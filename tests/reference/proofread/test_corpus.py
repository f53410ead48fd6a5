"""Patterns in many styles: nothing is found in right ones, and what was planted is found."""

from __future__ import annotations

from collections import Counter

import pytest
from reference.proofread.planted import (
    STYLES,
    Planted,
    batches,
    finds,
    planted,
    planted_in,
    read,
    right,
    told,
    wrong,
)

from frogless.proofread.checks.table import BY_NAME
from frogless.proofread.run import proofread

#: Errors that are known not to be found yet, by name, with the reason.
KNOWN_MISSES = {
    "sentences/ferry_rope_belt.txt:3 gauge vs width": "a length that runs along the row",
}


@pytest.mark.parametrize("pattern", right())
def test_nothing_is_found_in_a_right_pattern(pattern: str) -> None:
    """A false alarm costs a designer an evening."""
    report = read(pattern)
    assert told(report) == ()
    assert report.proven


@pytest.mark.parametrize("errors", batches(), ids=lambda errors: " & ".join(e.name for e in errors))
def test_what_was_planted_is_found_where_it_is(errors: tuple[Planted, ...]) -> None:
    """By a check that says what it is, at its row or line, in its size; also among others."""
    report = proofread(planted_in(*errors))
    missed = {error.name for error in errors if not finds(error, report)}
    known = {error.name for error in errors if error.name in KNOWN_MISSES}
    assert missed == known, told(report)


def test_corpus_is_as_wide_as_is_claimed() -> None:
    """At least 72 patterns in 12 styles, 45 of them right; 80 errors, three of each kind."""
    kinds = Counter(error.kind for error in planted())
    assert len(STYLES) >= 12
    assert len(right()) >= 45
    assert len(right()) + len(wrong()) >= 72
    assert sum(kinds.values()) >= 80
    assert [kind for kind, many in kinds.items() if many < 3] == []


def test_every_check_has_an_error_that_it_must_find() -> None:
    """Every check has been seen to fail."""
    named = {check for error in planted() for check in error.checks}
    assert set(BY_NAME) - named == set()


def test_accepted_checks_are_checks() -> None:
    """No error waits for a check that is not there."""
    named = {check for error in planted() for check in error.checks}
    assert named - set(BY_NAME) == set()


def test_every_wrong_pattern_says_what_is_wrong_in_it() -> None:
    """None stands in the corpus unused."""
    assert set(wrong()) == {error.pattern for error in planted() if "/wrong_" in error.pattern}
