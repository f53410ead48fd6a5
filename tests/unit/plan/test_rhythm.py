"""Rhythms, in sections that can be counted on paper."""

from __future__ import annotations

import numpy as np
import pytest

from frogless.plan.model import Clause
from frogless.plan.rhythm import Stretch, candidates, choose, girths

WIDTH = 100 / 18


def waist_to_hip(points: int = 8) -> Stretch:
    """84 to 116 cm in 20 rounds, from 152 to 208 stitches."""
    return Stretch(np.linspace(840, 1160, 21), 152 * WIDTH, points * WIDTH, 56 // points)


def test_simpler_rhythm_wins_when_the_tape_cannot_tell() -> None:
    """One clause that strays 3.3 cm beats two that stray 2.8 when 1 cm cannot be told."""
    chosen = choose(candidates(waist_to_hip()), 10.0)
    assert chosen.rhythm.clauses == (Clause((3,), 6),)
    assert chosen.rhythm.rounds == (1, 4, 7, 10, 13, 16, 19)


def test_closer_rhythm_wins_when_nothing_is_indifferent() -> None:
    """Two clauses that stray 2.8 cm; of two that do, the one that binds least."""
    chosen = choose(candidates(waist_to_hip()), 0.0)
    assert chosen.rhythm.rounds == (2, 5, 8, 11, 14, 16, 18)
    assert chosen.rhythm.clauses == (Clause((3,), 4), Clause((2,), 2))
    mirrored = next(
        c for c in candidates(waist_to_hip()) if c.rhythm.rounds == (3, 5, 7, 10, 13, 16, 19)
    )
    assert (mirrored.stray, mirrored.squares) == (chosen.stray, chosen.squares)
    assert mirrored.tightness > chosen.tightness


def test_alternation_is_told_as_one_and_counted_as_two() -> None:
    """Alternately every round and every 2nd."""
    chosen = min(candidates(waist_to_hip(4)), key=lambda c: c.stray)
    assert chosen.rhythm.clauses == (Clause((1, 2), 13),)
    assert chosen.rhythm.clause_count == 2


def test_single_shaping_has_no_clause() -> None:
    """It falls where it strays least; of two rounds that do, on the earlier, which binds less."""
    stretch = Stretch(np.linspace(100, 140, 5), 100, 40, 1)
    (only,) = candidates(stretch)
    assert (only.rhythm.clauses, only.rhythm.rounds) == ((), (2,))
    assert only.stray == 20


def test_rhythm_keeps_to_what_the_author_fixed() -> None:
    """Every 2nd round, only the first is free."""
    (only,) = candidates(waist_to_hip(), every=2)
    assert only.rhythm.clauses == (Clause((2,), 6),)


def test_nothing_fits_when_there_are_more_shapings_than_rounds() -> None:
    """Nor when the author's rhythm is too slow; and nothing is to be done without shapings."""
    wanted = np.linspace(100, 200, 4)
    assert candidates(Stretch(wanted, 100, 10, 4)) == []
    assert candidates(Stretch(wanted, 100, 10, 3), every=2) == []
    assert candidates(Stretch(wanted, 100, 10, 0)) == []


def test_rhythm_keeps_the_floor() -> None:
    """A landmark after round 2 asks for two shapings by then, whatever strays less."""
    wanted = np.linspace(100, 130, 11)
    floor = np.full(11, -np.inf)
    floor[2] = 120
    free = choose(candidates(Stretch(wanted, 100, 10, 3)), 0.0)
    held = choose(candidates(Stretch(wanted, 100, 10, 3, floor)), 0.0)
    assert free.rhythm.rounds[1] > 2
    assert held.rhythm.rounds[:2] == (1, 2)


def test_no_rhythm_is_offered_when_none_keeps_the_floor() -> None:
    """Three shapings of 10 do not reach 140."""
    floor = np.full(11, 140.0)
    assert candidates(Stretch(np.linspace(100, 130, 11), 100, 10, 3, floor)) == []


def test_narrowing_is_the_mirror_of_widening() -> None:
    """A profile turned over has the same best strays."""
    widening = candidates(Stretch(np.linspace(100, 160, 13), 101, 10, 6))
    narrowing = candidates(Stretch(-np.linspace(100, 160, 13), -101, -10, 6))
    assert [c.stray for c in narrowing] == pytest.approx([c.stray for c in widening])


def test_girths_rise_on_the_shaping_rounds() -> None:
    """100 before, 10 more after rounds 2 and 3."""
    stretch = Stretch(np.zeros(5), 100, 10, 2)
    assert girths(stretch, (2, 3)).tolist() == [100, 100, 110, 120, 120]


def test_long_section_is_searched_in_a_moment() -> None:
    """400 rounds with a bend, exact all the same: no candidate strays less than is measured."""
    part = np.linspace(0, 1, 401)
    wanted = 800 + np.where(part < 0.4, part * 1.9, 0.76 + (part - 0.4) * 0.4) * 800
    found = candidates(Stretch(wanted, 802, 40, 20))
    off = girths(Stretch(wanted, 802, 40, 20), found[0].rhythm.rounds) - wanted
    assert found[0].stray == pytest.approx(abs(off).max(), abs=1e-3)
