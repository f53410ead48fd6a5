"""Rhythms against every rhythm there is, written down naively, and against a general solver."""

from __future__ import annotations

import importlib.util
import sys
from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import cache
from itertools import combinations, pairwise
from pathlib import Path
from types import ModuleType

import numpy as np
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from frogless.plan.rhythm.amounts import room, solve_amounts
from frogless.plan.rhythm.conflict import asked, explain, is_possible, is_possible_without
from frogless.plan.rhythm.engine import Task, bound, runners, solve
from frogless.plan.rhythm.turning import solve_turning
from frogless.plan.rhythm.wording import rounds_of

# Values in hundredths, so that the solver's whole numbers are the same problem.
PARTS = 100
Measure = tuple[int, int, int, int]


@cache
def every_way(rounds: int, shapings: int, clauses: int, pair: int) -> dict[tuple[int, ...], int]:
    """Every set of shaping rounds that can be worded, with the fewest clauses for it."""
    found: dict[tuple[int, ...], int] = {}

    def go_on(at: tuple[int, ...], used: int, goes_on: int, then: int) -> None:
        if len(at) == shapings:
            found[at] = min(used, found.get(at, used))
            return
        for gap in range(1, rounds - at[-1] + 1):
            if gap == goes_on:
                go_on((*at, at[-1] + gap), used, then, goes_on)
            if used + 1 <= clauses:
                go_on((*at, at[-1] + gap), used + 1, gap, gap)
            for other in (gap - pair, gap + pair):
                if used + 2 <= clauses and other > 0:
                    go_on((*at, at[-1] + gap), used + 2, other, gap)

    for first in range(1, rounds + 1):
        go_on((first,), 0, 0, 0)
    return found


def measure(at: Sequence[int], clauses: int, task: Task) -> Measure | None:
    """Clauses, stray, squares and tightness of a rhythm; None when it keeps not what it has to."""
    may = task.may_shape()
    gaps = [b - a for a, b in pairwise(at)]
    if not all(may[r] for r in at) or any(gap < task.least_gap for gap in gaps):
        return None
    if task.every is not None and any(gap != task.every for gap in gaps):
        return None
    value = np.rint(task.values(at) * PARTS).astype(int)
    for edge, sign in ((task.floor, 1), (task.ceiling, -1)):
        if edge is not None and (sign * value < sign * np.asarray(edge) * PARTS).any():
            return None
    off = value - np.rint(np.asarray(task.wanted) * PARTS).astype(int)
    return clauses, int(abs(off).max()), int((off**2).sum()), int(max(-off.min(), 0))


def by_hand(task: Task) -> dict[tuple[int, ...], Measure]:
    """The measure of every set of shaping rounds that will do."""
    ways = every_way(task.rounds, task.shapings, task.most_clauses, task.pair)
    measured = ((at, measure(at, clauses, task)) for at, clauses in ways.items())
    return {at: found for at, found in measured if found is not None}


def best_by_hand(found: dict[tuple[int, ...], Measure], indifference: float) -> Measure:
    """Of all within the indifference of the least stray, the least."""
    least = min(m[1] for m in found.values())
    return min(m for m in found.values() if m[1] <= least + round(indifference * PARTS))


@st.composite
def tasks(draw: st.DrawFn, rounds: int = 11, shapings: int = 6) -> Task:
    """A section of any profile, widening or narrowing, with or without each requirement."""
    last = draw(st.sampled_from([*range(1, rounds + 1), rounds, rounds]))
    times = min(last, draw(st.sampled_from([*range(1, shapings + 1), shapings, shapings])))
    step = draw(st.integers(5, 80)) * draw(st.sampled_from([1, -1]))
    wanted, here = [], draw(st.integers(-40, 40))
    for _ in range(last + 1):
        wanted.append(800 + here)
        here += draw(st.integers(-20, 60)) * (1 if step > 0 else -1)
    floor, ceiling = np.full(last + 1, -np.inf), np.full(last + 1, np.inf)
    floor[draw(st.integers(0, last))] = 800 + draw(st.integers(-3, times)) * step
    ceiling[draw(st.integers(0, last))] = 800 + draw(st.integers(0, times + 2)) * step
    may = [draw(st.integers(0, 3)) > 0 for _ in range(last + 1)]
    rarely = st.sampled_from([False, False, False, True])
    return Task(
        wanted=np.array(wanted, np.float64),
        before=800.0,
        step=float(step),
        shapings=times,
        indifference=draw(st.sampled_from([0.0, 1.0, 10.0, 60.0])),
        clauses=draw(st.integers(1, 4)),
        allowed=may if draw(rarely) else None,
        forbidden=(draw(st.integers(1, last)),) if draw(rarely) else (),
        least_gap=2 if draw(rarely) else 1,
        every=draw(st.integers(1, 3)) if draw(rarely) else None,
        floor=floor if draw(rarely) else None,
        ceiling=ceiling if draw(rarely) else None,
        pair=draw(st.sampled_from([1, 1, 2])),
    )


@settings(max_examples=300, deadline=None)
@given(tasks())
def test_chosen_rhythm_is_the_best_of_all_there_are(task: Task) -> None:
    """The same clauses, stray, squares and tightness as the best found by looking at each."""
    chosen, everything = solve(task), by_hand(task)
    assert (chosen is None) == (not everything)
    if chosen is not None:
        clauses, stray, squares, tight = best_by_hand(everything, task.indifference)
        assert chosen.rhythm.rounds in everything
        assert chosen.rhythm.clause_count == clauses
        assert (chosen.stray * PARTS, chosen.tightness * PARTS) == pytest.approx((stray, tight))
        assert chosen.squares * PARTS**2 == pytest.approx(squares)


@settings(max_examples=200, deadline=None)
@given(tasks())
def test_runner_up_is_the_best_of_its_number_of_clauses(task: Task) -> None:
    """Each strays least of all with at most so many clauses, and is worded as it is counted."""
    everything = by_hand(task)
    for one in runners(task):
        count = one.rhythm.clause_count
        of_count = [m[1] for m in everything.values() if m[0] <= count]
        assert one.stray * PARTS == pytest.approx(min(of_count))
        assert rounds_of(one.rhythm.first, one.rhythm.clauses) == one.rhythm.rounds


@settings(max_examples=200, deadline=None)
@given(tasks(rounds=9))
def test_bound_is_the_least_stray_of_any_rounds(task: Task) -> None:
    """Of every choice of shaping rounds, whether it can be worded or not."""
    free = replace(task, every=None)
    ways = combinations(range(1, task.rounds + 1), task.shapings)
    strays = [found[1] for at in ways if (found := measure(at, 0, free))]
    least = bound(free)
    assert (least is None) == (not strays)
    if least is not None:
        assert least * PARTS == pytest.approx(min(strays))


@settings(max_examples=150, deadline=None)
@given(tasks(rounds=9, shapings=5))
def test_conflict_is_minimal_and_its_way_out_is_one(task: Task) -> None:
    """What remains cannot be met; without any one of it, it can; a change of numbers frees it."""
    conflict = explain(task)
    assert (conflict is None) == is_possible(task)
    if conflict is None:
        return
    others = [name for name in asked(task) if name not in conflict.names]
    assert not is_possible_without(task, others)
    for name in conflict.names:
        assert is_possible_without(task, [*others, name])
    if (fewer := conflict.freed_by("shapings")) is not None:
        assert is_possible(replace(task, shapings=int(fewer)))
    if (gap := conflict.freed_by("least_gap")) is not None:
        assert is_possible(replace(task, least_gap=int(gap)))


@settings(max_examples=100, deadline=None)
@given(st.lists(st.booleans(), min_size=2, max_size=12), st.integers(1, 4))
def test_room_is_as_many_rounds_as_can_be_chosen(may: list[bool], gap: int) -> None:
    """By every choice of rounds that keeps the gap."""
    may[0] = False
    for r in range(len(may)):
        free = [i for i in range(1, r + 1) if may[i]]
        most = max(
            n
            for n in range(len(free) + 1)
            for at in combinations(free, n)
            if all(b - a >= gap for a, b in pairwise(at))
        )
        assert room(may, gap)[r] == most


@settings(max_examples=100, deadline=None)
@given(st.integers(2, 12), st.integers(1, 24))
def test_doubled_rounds_make_up_what_single_ones_lack(rounds: int, shapings: int) -> None:
    """One or two on each round, as many in all as asked for."""
    found = solve_amounts(Task(np.linspace(0, shapings, rounds + 1), 0, 1, shapings))
    assert (found is not None) == (rounds < shapings <= 2 * rounds)
    if found is not None:
        assert sum(found.amounts().values()) == shapings


def turned_ways(task: Task, net: int) -> Iterator[tuple[int, int]]:
    """Clauses with one for the turn, and stray, of every way up and down again, in parts."""
    for up in range(1, task.rounds):
        down = up - net
        for turn in range(up, task.rounds + 1):
            if down < 1 or down > task.rounds - turn:
                continue
            for a, ca in every_way(turn, up, 3, 1).items():
                if a[-1] != turn:
                    continue
                for b, cb in every_way(task.rounds - turn, down, 3, 1).items():
                    change = np.zeros(task.rounds + 1)
                    change[list(a)] = 1
                    change[[turn + r for r in b]] = -1
                    off = task.before + task.step * np.cumsum(change) - task.wanted
                    yield ca + cb + 1, round(float(abs(off).max()) * PARTS)


@settings(max_examples=25, deadline=None)
@given(st.integers(12, 36), st.integers(2, 6), st.integers(0, 12), st.integers(0, 1))
@example(high=35, at=2, give=10, net=0)  # turns lower than any level near the profile's own turn
def test_turned_section_is_the_best_of_all_with_one_turn(
    high: int, at: int, give: int, net: int
) -> None:
    """Of every level it could turn at and every rhythm of either stretch."""
    wanted = np.interp(np.arange(9), [0, at, 8], [0, high, 10 * net])
    task = Task(np.round(wanted, 2), 0.0, 10.0, 0, indifference=float(give))
    found = solve_turning(task, net)
    assert found is not None
    ways = list(turned_ways(task, net))
    least = min(stray for _, stray in ways)
    near = min(way for way in ways if way[1] <= least + give * PARTS)
    if len(found.stretches) == 2:
        assert (found.clause_count, round(found.stray * PARTS)) == near
    assert found.stray * PARTS <= least + give * PARTS + 0.5


def solver() -> ModuleType:
    """The model for OR-Tools CP-SAT that the benchmarks use too."""
    path = Path(__file__).parents[2] / "benchmarks" / "rhythm_cpsat.py"
    spec = importlib.util.spec_from_file_location("rhythm_cpsat", path)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = module  # a dataclass looks its module up
    spec.loader.exec_module(module)
    return module


CPSAT = solver()


def assert_same(task: Task) -> None:
    """The solver proves the same clauses, stray and squares to be best."""
    ours, theirs = solve(task), CPSAT.solve(task, PARTS)
    assert (ours is None) == (theirs is None)
    if ours is not None:
        assert ours.rhythm.clause_count == theirs.clauses
        assert ours.stray * PARTS == pytest.approx(theirs.stray)
        assert ours.squares * PARTS**2 == pytest.approx(theirs.squares)


def bent(rounds: int) -> np.ndarray:
    """A profile that widens fast to a high hip and slowly after it."""
    part = np.linspace(0.0, 1.0, rounds + 1)
    rise = np.where(part < 0.5, part * 1.5, 0.75 + (part - 0.5) * 0.5)
    return np.round(840 + 320 * rise, 1)


ALTERNATE = [False, *([True, False] * 20)]
CASES = {
    "waist to hip": Task(np.linspace(840, 1160, 21), 844.4, 44.4, 7, 10.0),
    "hip to hem": Task(np.linspace(1160, 1420, 41), 1155.6, 44.4, 6, 5.0),
    "four points": Task(np.linspace(840, 1160, 21), 844.4, 22.2, 14, 3.0),
    "pegged": Task(np.round(np.linspace(1020, 940, 45), 2), 1021.1, -21.1, 4),
    "high hip": Task(bent(20), 844.4, 44.4, 7, 6.0, clauses=4),
    "high hip, many rounds": Task(bent(33), 844.4, 22.2, 14),
    "right side only": Task(bent(40), 844.4, 22.2, 14, 6.0, allowed=ALTERNATE, pair=2),
    "apart": Task(bent(24), 844.4, 44.4, 7, 6.0, least_gap=3),
    "none": Task(bent(24), 844.4, 44.4, 7, least_gap=5),
}


@pytest.mark.parametrize("name", CASES)
def test_solver_proves_the_same_rhythm_to_be_best(name: str) -> None:
    """Clauses, stray and squares, in the order they are compared."""
    task = CASES[name]
    assert_same(replace(task, wanted=np.round(np.asarray(task.wanted), 2)))


@settings(max_examples=12, deadline=None)
@given(tasks(rounds=14, shapings=7))
def test_solver_agrees_about_any_task(task: Task) -> None:
    """Also whether there is a rhythm at all."""
    assert_same(task)
