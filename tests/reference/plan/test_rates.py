"""So many shapings in so many rounds, worked by hand: what fits in, what is doubled, what is short."""

from __future__ import annotations

import csv
from pathlib import Path

import numpy as np
import pytest

from frogless.plan.rhythm.amounts import slots, solve_amounts
from frogless.plan.rhythm.conflict import explain
from frogless.plan.rhythm.engine import Task, solve

TABLE = Path(__file__).with_name("rates.csv")
ROWS = list(csv.DictReader(TABLE.read_text("utf-8").splitlines()))


def task(row: dict[str, str]) -> Task:
    """A straight line in shapings; a simpler rhythm is as good within one of them."""
    shapings, every = int(row["shapings"]), row["every"]
    wanted = np.linspace(0, shapings, int(row["rounds"]) + 1)
    return Task(wanted, 0, 1, shapings, indifference=1, every=int(every) if every else None)


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["case"])
def test_room_for_shapings_is_as_worked_by_hand(row: dict[str, str]) -> None:
    """And there is a rhythm wherever there is room."""
    room, asked = len(slots(task(row))), task(row)
    assert room == int(row["room"])
    found = solve(asked)
    assert (found is not None) == (room >= asked.shapings)
    if row["rhythm"] and found is not None:
        assert " ".join(map(str, found.rhythm.rounds)) == row["rhythm"]


@pytest.mark.parametrize("row", [r for r in ROWS if r["rounds_needed"]], ids=lambda r: r["case"])
def test_shortfall_and_ways_out_are_as_worked_by_hand(row: dict[str, str]) -> None:
    """How many are missing, the rounds that would do, and the rounds with two at each."""
    asked = task(row)
    conflict = explain(asked)
    assert conflict is not None
    assert conflict.missing == asked.shapings - int(row["room"])
    assert conflict.freed_by("rounds") == int(row["rounds_needed"])
    twice = solve_amounts(asked)
    doubled = len(twice.doubled.rhythm.rounds) if twice else None
    assert doubled == conflict.doubled == (int(row["doubled"]) if row["doubled"] else None)
