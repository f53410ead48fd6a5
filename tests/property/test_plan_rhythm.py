"""Rhythms against every rhythm there is, written down naively, and against a general solver."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from ortools.sat.python import cp_model

from frogless.plan.rhythm import Candidate, Stretch, candidates, choose, girths

# Girths in tenths of a millimetre, so that the solver's whole numbers are the same problem.
Way = tuple[int, tuple[int, ...]]
Measure = tuple[int, float, float, float]


def every_way(rounds: int, shapings: int) -> Iterator[Way]:
    """Clauses and shaping rounds of every rhythm of at most two clauses, and of every alternation."""
    if shapings == 1:
        yield from ((0, (r,)) for r in range(1, rounds + 1))
        return
    further = shapings - 1
    for first in range(1, rounds + 1):
        for q in range(1, rounds + 1):
            yield 1, tuple(first + q * i for i in range(shapings))
            for p in range(1, rounds + 1):
                for early in range(1, further):
                    if p != q:
                        gaps = [q] * early + [p] * (further - early)
                        yield 2, tuple(first + sum(gaps[:i]) for i in range(shapings))
            for pair in ((q, q + 1), (q + 1, q)):
                gaps = [pair[i % 2] for i in range(further)]
                yield 2, tuple(first + sum(gaps[:i]) for i in range(shapings))


def measure(clauses: int, at: Sequence[int], stretch: Stretch) -> Measure | None:
    """Clauses, stray, squares and tightness of a rhythm, round by round; None below the floor."""
    girth, worst, squares, tight = stretch.before, 0.0, 0.0, 0.0
    for r in range(stretch.rounds + 1):
        girth += stretch.step if r in at else 0.0
        if stretch.floor is not None and girth < stretch.floor[r] - 1e-6:
            return None
        off = girth - float(stretch.wanted[r])
        worst, squares, tight = max(worst, abs(off)), squares + off * off, max(tight, -off)
    return clauses, round(worst, 4), round(squares, 4), round(tight, 4)


def by_hand(stretch: Stretch, every: int | None = None) -> dict[tuple[int, ...], Measure]:
    """The fewest clauses and the measure of every set of shaping rounds that fits in."""
    found: dict[tuple[int, ...], Measure] = {}
    for clauses, at in every_way(stretch.rounds, stretch.shapings):
        if at[-1] > stretch.rounds:
            continue
        if every is not None and any(b - a != every for a, b in pairwise(at)):
            continue
        measured = measure(clauses, at, stretch)
        if measured is not None and (at not in found or measured < found[at]):
            found[at] = measured
    return found


def best_by_hand(found: dict[tuple[int, ...], Measure], indifference: float) -> Measure:
    """Of all within the indifference of the least stray, the least."""
    least = min(m[1] for m in found.values())
    return min(m for m in found.values() if m[1] <= least + indifference + 1e-9)


@st.composite
def stretches(draw: st.DrawFn, rounds: int = 16, shapings: int = 6) -> Stretch:
    """A section of any profile, widening or narrowing, with or without a floor."""
    last = draw(st.sampled_from([*range(1, rounds + 1), *range(rounds // 2, rounds + 1)]))
    times = min(last, draw(st.sampled_from([*range(1, shapings + 1), shapings, shapings])))
    step = draw(st.integers(5, 80)) * draw(st.sampled_from([1, -1]))
    wanted, here = [], draw(st.integers(-40, 40))
    for _ in range(last + 1):
        wanted.append(800 + here)
        here += draw(st.integers(-10, 60)) * (1 if step > 0 else -1)
    floor = None
    if draw(st.booleans()):
        at = draw(st.integers(0, last))
        floor = np.full(last + 1, -np.inf)
        floor[at] = 800 + draw(st.integers(-3, 5)) * step
    return Stretch(np.array(wanted, np.float64), 800.0, float(step), times, floor)


@settings(max_examples=200, deadline=None)
@given(stretches(), st.sampled_from([0.0, 1.0, 10.0, 60.0]))
def test_chosen_rhythm_is_the_best_of_all_there_are(stretch: Stretch, give: float) -> None:
    """The same clauses, stray, squares and tightness as the best found by looking at each."""
    found, everything = candidates(stretch), by_hand(stretch)
    assert bool(found) == bool(everything)
    if found:
        chosen = choose(found, give)
        assert chosen.key() == pytest.approx(best_by_hand(everything, give), abs=1e-3)
        assert chosen.rhythm.rounds in everything


@settings(max_examples=200, deadline=None)
@given(stretches())
def test_candidate_is_measured_as_it_is_worded(stretch: Stretch) -> None:
    """Its clauses give its rounds, and its stray is that of its girths."""
    for one in candidates(stretch):
        at = [one.rhythm.first]
        for clause in one.rhythm.clauses:
            for i in range(clause.times):
                at.append(at[-1] + clause.every[i % len(clause.every)])
        assert tuple(at) == one.rhythm.rounds
        off = girths(stretch, one.rhythm.rounds) - stretch.wanted
        assert one.stray == pytest.approx(abs(off).max(), abs=1e-3)
        assert one.tightness == pytest.approx(max(-off.min(), 0.0), abs=1e-3)


@settings(max_examples=200, deadline=None)
@given(stretches())
def test_nothing_that_strays_less_is_left_out(stretch: Stretch) -> None:
    """Whatever an author could be offered instead is among the candidates."""
    found, everything = candidates(stretch), by_hand(stretch)
    if found:
        assert min(c.stray for c in found) == pytest.approx(
            min(m[1] for m in everything.values()), abs=1e-3
        )


@settings(max_examples=200, deadline=None)
@given(stretches(), st.integers(1, 4))
def test_rhythm_that_the_author_fixed_is_the_best_of_its_kind(stretch: Stretch, every: int) -> None:
    """Only "every q rounds", begun where it strays least."""
    found, everything = candidates(stretch, every), by_hand(stretch, every)
    assert bool(found) == bool(everything)
    for one in found:
        assert one.stray == pytest.approx(min(m[1] for m in everything.values()), abs=1e-3)


def flared(wanted: tuple[float, float], rounds: int, before: float, step: float, t: int) -> Stretch:
    """A straight profile."""
    return Stretch(np.linspace(*wanted, rounds + 1), before, step, t)


def bent(rounds: int, t: int) -> Stretch:
    """A profile that widens fast to a high hip and slowly after it."""
    part = np.linspace(0.0, 1.0, rounds + 1)
    rise = np.where(part < 0.5, part * 1.5, 0.75 + (part - 0.5) * 0.5)
    return Stretch(np.round(840 + 320 * rise, 1), 844.4, 44.4, t)


CASES = {
    "waist to hip": flared((840.0, 1160.0), 20, 844.4, 44.4, 7),
    "hip to hem": flared((1160.0, 1420.0), 40, 1155.6, 44.4, 6),
    "four points": flared((840.0, 1160.0), 20, 844.4, 22.2, 14),
    "pegged": flared((1020.0, 940.0), 44, 1021.1, -21.1, 4),
    "high hip": bent(20, 7),
    "high hip, many rounds": bent(33, 7),
    "fast": flared((700.0, 1400.0), 18, 700.0, 44.4, 16),
}


def least_stray(stretch: Stretch) -> float:
    """The least stray of any choice of shaping rounds at all, by a constraint solver, mm."""
    model, tenths = cp_model.CpModel(), 10
    shaped = [model.new_bool_var(f"round {r}") for r in range(1, stretch.rounds + 1)]
    stray = model.new_int_var(0, 10**6, "stray")
    model.add(sum(shaped) == stretch.shapings)
    for r in range(stretch.rounds + 1):
        girth = round(stretch.before * tenths) + round(stretch.step * tenths) * sum(shaped[:r])
        off = girth - round(float(stretch.wanted[r]) * tenths)
        model.add(stray >= off)
        model.add(stray >= -off)
    model.minimize(stray)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    assert solver.solve(model) == cp_model.OPTIMAL
    return solver.objective_value / tenths


def best_two_clauses(stretch: Stretch) -> float:
    """The least stray of two clauses, gaps and where they change left to the solver, mm."""
    model, tenths, last = cp_model.CpModel(), 10, stretch.rounds
    t = stretch.shapings
    first, one, two = (model.new_int_var(1, last, name) for name in ("first", "one", "two"))
    change = model.new_int_var(0, t - 1, "change")
    at = [first]
    for i in range(1, t):
        early = model.new_bool_var(f"gap {i} is early")
        model.add(change >= i).only_enforce_if(early)
        model.add(change < i).only_enforce_if(early.negated())
        here = model.new_int_var(1, last, f"shaping {i}")
        model.add(here == at[-1] + one).only_enforce_if(early)
        model.add(here == at[-1] + two).only_enforce_if(early.negated())
        at.append(here)
    stray = model.new_int_var(0, 10**6, "stray")
    for r in range(last + 1):
        done = []
        for i, shaping in enumerate(at):
            worked = model.new_bool_var(f"shaping {i} by round {r}")
            model.add(shaping <= r).only_enforce_if(worked)
            model.add(shaping > r).only_enforce_if(worked.negated())
            done.append(worked)
        girth = round(stretch.before * tenths) + round(stretch.step * tenths) * sum(done)
        off = girth - round(float(stretch.wanted[r]) * tenths)
        model.add(stray >= off)
        model.add(stray >= -off)
    model.minimize(stray)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    assert solver.solve(model) == cp_model.OPTIMAL
    return solver.objective_value / tenths


def is_sequence(candidate: Candidate) -> bool:
    """One clause or two that follow each other."""
    return all(len(clause.every) == 1 for clause in candidate.rhythm.clauses)


@pytest.mark.parametrize("name", CASES)
def test_no_rhythm_strays_less_than_the_solver_allows(name: str) -> None:
    """The bound of any rhythm at all is kept, and neared within half a step of girth."""
    stretch = CASES[name]
    found = min(c.stray for c in candidates(stretch))
    bound = least_stray(stretch)
    assert bound - 0.11 <= found <= bound + abs(stretch.step) / 2


@pytest.mark.parametrize("name", ["waist to hip", "pegged", "high hip"])
def test_two_clauses_are_as_good_as_the_solvers(name: str) -> None:
    """The same least stray, to the tenth of a millimetre that the solver works in."""
    stretch = CASES[name]
    ours = min(c.stray for c in candidates(stretch) if is_sequence(c))
    assert ours == pytest.approx(best_two_clauses(stretch), abs=0.11)
