"""Slips planted in right patterns are found.

A part of what benchmarks/proofread_mutants.py tries. Not all slips can be seen from the text alone;
the shares that are held here are those that were reached, so that none is lost again.
"""

from __future__ import annotations

from mutants_found import found_at_row, right_patterns
from planting import Planted, planted

#: Every so many patterns; so many slips in each. All of them take minutes.
STEP = 8
EACH = 13
#: Share of slips that is found.
REACHED = 0.95


def _slips() -> list[tuple[str, Planted]]:
    return [
        (name, slip)
        for number, (name, text) in enumerate(right_patterns())
        if number % STEP == 0
        for slip in planted(text, seed=number, most=EACH)
    ]


def test_slips_are_found_at_their_row_or_the_next() -> None:
    """Those that were missed are shown."""
    slips = _slips()
    missed = [
        f"{name}:{slip.line} {slip.how}: {slip.old!r} -> {slip.new!r}"
        for name, slip in slips
        if not found_at_row(slip)
    ]
    assert len(slips) > 150
    assert len(missed) <= (1 - REACHED) * len(slips), "\n".join(missed)
