"""Sections that widen and narrow again."""

from __future__ import annotations

import numpy as np
import pytest

from frogless.plan.rhythm.engine import Task
from frogless.plan.rhythm.turning import (
    solve_turning,
    turning_bound,
    turning_points,
)


def hump(rounds: int = 30, high: float = 62.0) -> Task:
    """Up to a middle and down again, in steps of 10."""
    half = rounds // 2
    wanted = np.interp(np.arange(rounds + 1), [0, half, rounds], [0, high, 0])
    return Task(wanted, 0.0, 10.0, 0, indifference=3.0)


def test_hump_is_one_stretch_up_and_one_down() -> None:
    """Six steps up by the middle, six down."""
    found = solve_turning(hump(), 0)
    assert found is not None
    up, down = found.stretches
    assert (up.sign, down.sign) == (1, -1)
    assert len(up.rhythm.rounds) == len(down.rhythm.rounds) == 6
    assert up.rhythm.rounds[-1] < down.rhythm.rounds[0]
    assert found.stray <= (found.strays[-1] or 0) + 3.0


def test_values_of_a_turned_section_are_those_of_its_changes() -> None:
    """The stray is measured on what is worked."""
    task = hump(24, 47.0)
    found = solve_turning(task, 0)
    assert found is not None
    change = np.zeros(25)
    for r, sign in found.changes().items():
        change[r] = sign
    off = 10.0 * np.cumsum(change) - task.wanted
    assert found.stray == pytest.approx(abs(off).max(), abs=1e-4)
    assert off[found.worst_round] == pytest.approx(found.worst)
    assert (off**2).sum() == pytest.approx(found.squares, rel=1e-4)


def test_section_may_end_higher_or_lower_than_it_begins() -> None:
    """A waist in a dress: in, then out further."""
    wanted = np.interp(np.arange(31), [0, 12, 30], [100, 55, 140])
    found = solve_turning(Task(wanted, 100.0, 5.0, 0, indifference=2.0), 8)
    assert found is not None
    assert [s.sign for s in found.stretches] == [-1, 1]
    assert sum(found.changes().values()) == 8


def test_turn_counts_as_a_clause() -> None:
    """Each stretch is told by itself."""
    found = solve_turning(hump(), 0)
    assert found is not None
    inside = sum(s.rhythm.clause_count for s in found.stretches)
    assert found.clause_count == inside + 1
    assert found.strays[found.clause_count] == found.stray


def test_ripple_is_no_turn() -> None:
    """Less than half a step is passed over, and the section widens on."""
    wanted = np.array([0, 5, 11, 9, 14, 20, 26, 30], dtype=float)
    assert turning_points(wanted, 5) == ()
    found = solve_turning(Task(wanted, 0.0, 10.0, 0), 3)
    assert found is not None
    assert [s.sign for s in found.stretches] == [1]


def test_gap_is_kept_over_the_turn() -> None:
    """At least three rounds from the last increase to the first decrease as well."""
    from_up_to_down = Task(hump().wanted, 0.0, 10.0, 0, indifference=3.0, least_gap=2)
    found = solve_turning(from_up_to_down, 0)
    assert found is not None
    assert np.diff(sorted(found.changes())).min() >= 2


def test_nothing_turns_when_nothing_changes() -> None:
    """A flat profile has no stretches; a peak with no round to turn on has no plan."""
    assert solve_turning(Task(np.zeros(10), 0.0, 10.0, 0), 0) is None
    assert solve_turning(Task(np.array([0.0, 90.0]), 0.0, 10.0, 0), 0) is None


def test_peak_too_steep_for_its_rounds_is_followed_as_far_as_they_go() -> None:
    """Nine steps up and down in two rounds: one is made, and the plan says how far it strays."""
    found = solve_turning(Task(np.array([0.0, 90.0, 0.0]), 0.0, 10.0, 0), 0)
    assert found is not None
    assert found.changes() == {1: 1, 2: -1}
    assert found.stray == 80.0


def test_bound_is_never_above_the_plan() -> None:
    """Whatever the hump."""
    for high in (22.0, 35.0, 58.0):
        found = solve_turning(hump(20, high), 0)
        assert found is not None
        assert turning_bound(hump(20, high), 0) == found.bound <= found.stray
