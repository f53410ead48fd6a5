"""Requirements that cannot hold together, and what frees them."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from frogless.plan.rhythm.conflict import (
    Name,
    asked,
    explain,
    is_possible,
    is_possible_without,
)
from frogless.plan.rhythm.engine import Task, on_right_side, solve

LINE = Task(np.linspace(0, 70, 21), 0, 10, 7)


def floor(round_: int, least: float, rounds: int = 20) -> np.ndarray:
    """A bound at one round."""
    values = np.full(rounds + 1, -np.inf)
    values[round_] = least
    return values


def test_what_can_be_met_has_no_conflict() -> None:
    """Seven in twenty rounds."""
    assert explain(LINE) is None


def test_two_points_every_second_round_are_twenty_shapings_short() -> None:
    """66 to 100 cm, 17 stitches in 10 cm: 58 stitches are 29 shapings of two, and nine fit in."""
    conflict = explain(Task(np.linspace(0, 29, 19), 0, 1, 29, every=2))
    assert conflict is not None
    assert conflict.missing * 2 == 40
    assert conflict.doubled is None


def test_right_side_only_is_blamed_when_all_rounds_would_do() -> None:
    """Twelve in twenty rows; ten are right-side ones."""
    task = replace(LINE, shapings=12, allowed=on_right_side(20))
    conflict = explain(task)
    assert conflict is not None
    assert set(conflict.names) == {"shapings", "rounds", "allowed"}
    assert (conflict.room, conflict.missing, conflict.doubled) == (10, 2, 2)
    assert conflict.freed_by("rounds") == 23
    assert conflict.freed_by("shapings") == 10
    assert conflict.freed_by("floor") is None


def test_gap_is_freed_by_a_smaller_one() -> None:
    """Seven at least four apart need 25 rounds; three apart 19."""
    conflict = explain(replace(LINE, least_gap=4))
    assert conflict is not None
    assert conflict.freed_by("least_gap") == 3
    assert conflict.freed_by("rounds") == 25
    assert conflict.freed_by("shapings") == 5


def test_floor_gives_way_by_just_so_much() -> None:
    """After round 3 there can be three shapings: 30 of 45."""
    conflict = explain(replace(LINE, floor=floor(3, 45.0)))
    assert conflict is not None
    assert "floor" in conflict.names
    assert conflict.freed_by("floor") == pytest.approx(15.0)


def test_ceiling_and_end_cannot_both_be_had() -> None:
    """Seven shapings make 70, and 64 are allowed at the end."""
    ceiling = np.full(21, np.inf)
    ceiling[20] = 64
    conflict = explain(replace(LINE, ceiling=ceiling))
    assert conflict is not None
    assert set(conflict.names) == {"shapings", "ceiling"}
    assert conflict.freed_by("ceiling") == pytest.approx(6.0)
    assert conflict.freed_by("shapings") == 6


def test_clauses_are_blamed_when_a_rhythm_would_need_more() -> None:
    """Rounds 1 and 2, then 19 and 20: three clauses, one is allowed."""
    task = Task(np.zeros(21), 0, 10, 4, clauses=1, floor=floor(2, 20.0), forbidden=range(3, 19))
    conflict = explain(task)
    assert conflict is not None
    assert "clauses" in conflict.names
    assert conflict.freed_by("clauses") == 3
    freed = solve(replace(task, clauses=3))
    assert freed is not None
    assert freed.rhythm.rounds == (1, 2, 19, 20)


def test_forbidden_rounds_are_blamed_by_name() -> None:
    """Seven in four rounds that are left."""
    conflict = explain(replace(LINE, forbidden=range(5, 21)))
    assert conflict is not None
    assert set(conflict.names) == {"shapings", "rounds", "forbidden"}
    assert conflict.freed_by("forbidden") == 3


def test_nothing_to_shape_is_possible_where_it_stays() -> None:
    """Unless a bound asks for more."""
    assert is_possible(replace(LINE, shapings=0))
    assert not is_possible(replace(LINE, shapings=0, floor=floor(20, 5.0)))


CONFLICTS = {
    "right side": replace(LINE, shapings=12, allowed=on_right_side(20)),
    "gap and floor": replace(LINE, least_gap=3, floor=floor(9, 40.0)),
    "forbidden and clauses": Task(
        np.zeros(21), 0, 10, 4, clauses=1, floor=floor(2, 20.0), forbidden=range(3, 19)
    ),
    "every": replace(LINE, every=4),
}


@pytest.mark.parametrize("case", CONFLICTS)
def test_every_requirement_of_a_conflict_is_needed_for_it(case: str) -> None:
    """With all others left out they cannot be met; without any one of them they can."""
    task = CONFLICTS[case]
    conflict = explain(task)
    assert conflict is not None
    others: list[Name] = [name for name in asked(task) if name not in conflict.names]
    assert not is_possible_without(task, others)
    for name in conflict.names:
        assert is_possible_without(task, [*others, name]), name
