"""Slips planted in right patterns are found.

A part of what benchmarks/proofread_mutants.py tries. Not all slips can be seen from the text alone:
those of just_as_right.csv leave a pattern that is as right as before. Of the others the share that was
reached is held, so that none is lost again.
"""

from __future__ import annotations

from mutants_found import found_at_row, is_just_as_right, right_patterns
from planting import Planted, planted

#: Every so many patterns; so many slips in each. All of them take minutes.
STEP = 8
EACH = 13
#: Share of slips that is found.
REACHED = 0.98


def _slips() -> list[tuple[str, str, Planted]]:
    return [
        (name, text, slip)
        for number, (name, text) in enumerate(right_patterns())
        if number % STEP == 0
        for slip in planted(text, seed=number, most=EACH)
    ]


def test_slips_are_found_at_their_row_or_the_next() -> None:
    """Those that were missed are shown."""
    slips = _slips()
    missed = [
        f"{name}:{slip.line} {slip.how}: {slip.old!r} -> {slip.new!r}"
        for name, text, slip in slips
        if not found_at_row(slip) and not is_just_as_right(name, text, slip)
    ]
    assert len(slips) > 150
    assert len(missed) <= (1 - REACHED) * len(slips), "\n".join(missed)
