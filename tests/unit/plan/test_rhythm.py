"""Rhythms, in sections that can be counted on paper."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from frogless.plan.model import Clause
from frogless.plan.rhythm.engine import (
    Solution,
    Task,
    bound,
    on_right_side,
    runners,
    solve,
)
from frogless.plan.rhythm.spread import edge_task
from frogless.plan.rhythm.wording import rounds_of

WIDTH = 100 / 18


def waist_to_hip(points: int = 8, **changes: object) -> Task:
    """84 to 116 cm in 20 rounds, from 152 to 208 stitches."""
    task = Task(np.linspace(840, 1160, 21), 152 * WIDTH, points * WIDTH, 56 // points)
    return replace(task, **changes)


def best(task: Task) -> Solution:
    """The best rhythm of a task that has one."""
    found = solve(task)
    assert found is not None
    return found


def test_simpler_rhythm_wins_when_the_tape_cannot_tell() -> None:
    """One clause that strays 3.3 cm beats three that stray 2.2 when 2 cm cannot be told."""
    chosen = best(waist_to_hip(indifference=20.0))
    assert chosen.rhythm.clauses == (Clause((3,), 6),)
    assert chosen.rhythm.rounds == (1, 4, 7, 10, 13, 16, 19)
    assert chosen.stray == pytest.approx(32.9, abs=0.05)
    assert (chosen.worst, chosen.worst_round) == (chosen.stray, 1) or chosen.worst > 0


def test_closer_rhythm_wins_when_nothing_is_indifferent() -> None:
    """Two clauses that stray 2.8 cm; of two that do, the one that binds least."""
    chosen = best(waist_to_hip(clauses=2))
    assert chosen.rhythm.rounds == (2, 5, 8, 11, 14, 16, 18)
    assert chosen.rhythm.clauses == (Clause((3,), 4), Clause((2,), 2))
    task = waist_to_hip()
    ours, mirrored = (
        task.values(at) - task.wanted for at in (chosen.rhythm.rounds, (3, 5, 7, 10, 13, 16, 19))
    )
    assert abs(mirrored).max() == pytest.approx(abs(ours).max())
    assert (mirrored**2).sum() == pytest.approx((ours**2).sum())
    assert -mirrored.min() > -ours.min()


def test_third_clause_is_taken_when_it_strays_less() -> None:
    """Three clauses stray 2.2 cm, which no choice of rounds at all betters."""
    chosen = best(waist_to_hip())
    assert chosen.rhythm.clause_count == 3
    assert chosen.stray == bound(waist_to_hip()) == pytest.approx(22.2, abs=0.05)


def test_runners_up_are_told_by_their_clauses() -> None:
    """3.3, 2.8 and 2.2 cm with one, two and three; a fourth clause gains nothing."""
    found = runners(waist_to_hip(clauses=4))
    assert [one.rhythm.clause_count for one in found] == [1, 2, 3]
    assert [round(one.stray) for one in found] == [33, 28, 22]


def test_indifference_decides_between_two_and_three_clauses() -> None:
    """With 1 cm neither is told from the other, and one clause is too far off."""
    chosen = best(waist_to_hip(indifference=10.0))
    assert chosen.rhythm.clause_count == 2
    assert chosen.stray == pytest.approx(27.6, abs=0.05)


def test_alternation_is_told_as_one_and_counted_as_two() -> None:
    """Alternately every round and every 2nd."""
    chosen = best(waist_to_hip(4, clauses=2))
    assert chosen.rhythm.clauses == (Clause((1, 2), 13),)
    assert chosen.rhythm.clause_count == 2


def test_alternation_on_right_side_rows_differs_by_two() -> None:
    """Alternately every 2nd and every 4th row."""
    may = on_right_side(31)
    wanted = np.interp(np.arange(32), [0, 1, 31], [0, 1, 11])
    chosen = best(Task(wanted, 0, 1, 11, clauses=2, allowed=may, pair=2))
    assert chosen.rhythm.clauses == (Clause((2, 4), 10),)


def test_single_shaping_has_no_clause() -> None:
    """It falls where it strays least; of two rounds that do, on the earlier, which binds less."""
    only = best(Task(np.linspace(100, 140, 5), 100, 40, 1))
    assert (only.rhythm.clauses, only.rhythm.rounds, only.stray) == ((), (2,), 20)


def test_rhythm_keeps_to_what_the_author_fixed() -> None:
    """Every 2nd round, only the first is free."""
    assert best(waist_to_hip(every=2)).rhythm.clauses == (Clause((2,), 6),)


def test_nothing_fits_when_there_are_more_shapings_than_rounds() -> None:
    """Nor when the author's rhythm is too slow; and nothing is to be done without shapings."""
    wanted = np.linspace(100, 200, 4)
    for task in (
        Task(wanted, 100, 10, 4),
        Task(wanted, 100, 10, 3, every=2),
        Task(wanted, 100, 10, 0),
        Task(wanted, 100, 10, 3, least_gap=2),
    ):
        assert solve(task) is None
        assert runners(task) == ()


def test_rhythm_keeps_the_floor() -> None:
    """A landmark after round 2 asks for two shapings by then, whatever strays less."""
    wanted, floor = np.linspace(100, 130, 11), np.full(11, -np.inf)
    floor[2] = 120
    assert best(Task(wanted, 100, 10, 3)).rhythm.rounds[1] > 2
    assert best(Task(wanted, 100, 10, 3, floor=floor)).rhythm.rounds[:2] == (1, 2)


def test_rhythm_keeps_the_ceiling() -> None:
    """No more than 100 before round 6."""
    wanted, ceiling = np.linspace(100, 130, 11), np.full(11, np.inf)
    ceiling[5] = 100
    assert best(Task(wanted, 100, 10, 3, ceiling=ceiling)).rhythm.first == 6


def test_no_rhythm_is_offered_when_none_keeps_the_floor() -> None:
    """Three shapings of 10 do not reach 140."""
    floor = np.full(11, 140.0)
    task = Task(np.linspace(100, 130, 11), 100, 10, 3, floor=floor)
    assert (solve(task), bound(task)) == (None, None)


def test_narrowing_is_the_mirror_of_widening() -> None:
    """A profile turned over has the same best strays."""
    widening = runners(Task(np.linspace(100, 160, 13), 101, 10, 6))
    narrowing = runners(Task(-np.linspace(100, 160, 13), -101, -10, 6))
    assert [c.stray for c in narrowing] == [c.stray for c in widening]


def test_forbidden_rounds_are_left_plain() -> None:
    """A placket over rounds 7 to 12."""
    chosen = best(waist_to_hip(forbidden=range(7, 13), clauses=4))
    assert not set(chosen.rhythm.rounds) & set(range(7, 13))
    assert len(chosen.rhythm.rounds) == 7


def test_least_gap_is_kept() -> None:
    """Never two shaping rounds within three, though the profile is steep."""
    steep = np.sqrt(np.linspace(0, 1, 21)) * 320 + 840
    chosen = best(waist_to_hip(wanted=steep, least_gap=3, clauses=4))
    gaps = np.diff(chosen.rhythm.rounds)
    assert gaps.min() == 3


def test_values_rise_on_the_shaping_rounds() -> None:
    """100 before, 10 more after rounds 2 and 3."""
    task = Task(np.zeros(5), 100, 10, 2)
    assert task.values((2, 3)).tolist() == [100, 100, 110, 120, 120]


def test_long_section_with_four_clauses_is_exact_all_the_same() -> None:
    """400 rounds with a bend: four clauses do what no choice of rounds betters, or nearly."""
    part = np.linspace(0, 1, 401)
    wanted = 800 + np.where(part < 0.4, part * 1.9, 0.76 + (part - 0.4) * 0.4) * 800
    task = Task(wanted, 802, 40, 20, clauses=4)
    found = runners(task)
    assert [one.stray for one in found] == sorted((one.stray for one in found), reverse=True)
    assert (bound(task) or 0) <= found[-1].stray
    off = task.values(found[-1].rhythm.rounds) - wanted
    assert found[-1].stray == pytest.approx(abs(off).max(), abs=1e-3)


def test_squares_of_metres_over_many_rounds_are_summed_whole() -> None:
    """A profile that is metres off has the same best rhythm as one near by, moved."""
    near = best(Task(np.linspace(0, 200, 301), 0, 10, 20))
    far = best(Task(np.linspace(0, 200, 301) + 4000, 0, 10, 20))
    assert far.stray >= 4000 - 200
    assert far.squares > near.squares


def test_clauses_give_the_rounds_they_were_read_from() -> None:
    """Words and rounds are one."""
    for one in runners(waist_to_hip(4, clauses=4)):
        assert rounds_of(one.rhythm.first, one.rhythm.clauses) == one.rhythm.rounds


def test_edge_of_a_panel_is_spread_over_its_rows() -> None:
    """Six in eighteen right-side rows; the first row may be a wrong-side one."""
    task = edge_task(18, 6, right_side_only=True, first_right_side=2)
    assert all(r % 2 == 0 for r in best(task).rhythm.rounds)
    assert best(edge_task(20, 7)).rhythm.clauses == (Clause((3,), 6),)


def test_edge_without_rows_for_its_shapings_has_no_rhythm() -> None:
    """Ten in eighteen rows do not fit on the right side."""
    assert solve(edge_task(18, 10, right_side_only=True)) is None
    assert solve(edge_task(0, 1)) is None
