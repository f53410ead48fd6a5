"""Two stitches at a point on some of the rounds."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from frogless.plan.rhythm.amounts import room, slots, solve_amounts
from frogless.plan.rhythm.conflict import explain
from frogless.plan.rhythm.engine import Task, on_right_side

# Hand-worked: the front of a large raglan grows from 36 to 100 stitches, 32 at each line, in 26
# rounds; its sleeve from 14 to 66, 26 at each line.
RAGLAN = Task(np.linspace(0, 32, 27), 0, 1, 32, indifference=1)


def test_large_raglan_is_six_short() -> None:
    """32 in 26 rounds: two at each in six of them, or 32 rounds."""
    conflict = explain(RAGLAN)
    assert conflict is not None
    assert set(conflict.names) == {"shapings", "rounds"}
    assert (conflict.room, conflict.missing, conflict.doubled) == (26, 6, 6)
    assert conflict.freed_by("rounds") == 32
    assert conflict.freed_by("shapings") == 26


def test_large_raglan_takes_two_at_each_on_six_rounds() -> None:
    """Every round, six of them doubled, spread evenly: 32 in all."""
    found = solve_amounts(RAGLAN)
    assert found is not None
    assert found.rounds == tuple(range(1, 27))
    assert len(found.doubled.rhythm.rounds) == 6
    assert found.doubled.rhythm.clause_count == 1
    assert sum(found.amounts().values()) == 32
    value = np.cumsum([0, *(found.amounts().get(r, 0) for r in range(1, 27))])
    assert abs(value - RAGLAN.wanted).max() < 1.1


def test_sleeve_of_the_large_raglan_needs_none() -> None:
    """26 in 26 rounds."""
    assert solve_amounts(replace(RAGLAN, shapings=26)) is None


def test_more_than_twice_as_many_are_not_to_be_had() -> None:
    """53 in 26 rounds."""
    assert solve_amounts(replace(RAGLAN, shapings=53)) is None


def test_doubled_rounds_are_right_side_rows_when_all_are() -> None:
    """Sixteen in ten right-side rows of twenty."""
    task = Task(np.linspace(0, 16, 21), 0, 1, 16, allowed=on_right_side(20))
    found = solve_amounts(task)
    assert found is not None
    assert found.rounds == tuple(range(1, 21, 2))
    assert set(found.doubled.rhythm.rounds) <= set(found.rounds)


def test_floor_holds_for_what_is_left() -> None:
    """Twenty by round ten asks for ten doubled ones at once."""
    floor = np.full(27, -np.inf)
    floor[5] = 10
    found = solve_amounts(replace(RAGLAN, floor=floor))
    assert found is not None
    assert set(found.doubled.rhythm.rounds) >= {1, 2, 3, 4, 5}


def test_room_counts_rounds_by_gap_and_by_an_author_s_rhythm() -> None:
    """Nine in eighteen every second round; less when some are forbidden."""
    may = [False] + [True] * 18
    assert room(may, 1, 2)[-1] == 9
    assert room(may, 3)[-1] == 6
    may[3] = False
    assert room(may, 1, 2)[-1] == 9
    may[4] = False
    assert room(may, 1, 2)[-1] == 7
    assert len(slots(Task(np.zeros(19), 0, 1, 1, every=2))) == 9
