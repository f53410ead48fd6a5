"""Sections of garments for real bodies, as tasks for the planner: what `bench_planner.py` asks.

The bodies are women of the survey in `tests/reference/body` (source beside it). What is made for them is
ours: four kinds of sections, eight swatches, shaping points, profiles. Every length is rounded to a
hundredth of a millimetre, so that a solver of whole numbers is asked the very same question.
"""

from __future__ import annotations

import csv
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from frogless.plan.rhythm.engine import Task, on_right_side

SURVEY = Path(__file__).parents[1] / "tests" / "reference" / "body" / "survey_women.csv"
SEED = 20
Woman = Mapping[str, float]
Curve = Callable[[np.ndarray], np.ndarray]

# Stitches and rounds in 10 cm: from chunky double crochet to fine single crochet.
SWATCHES = ((13, 7), (16, 9), (17, 9), (18, 10), (20, 11), (20, 22), (24, 13), (24, 26))
# A swatch of a good size is good to half a percent, a small one to two.
UNCERTAIN = (0.005, 0.01, 0.02)
# The share of the change by the share of the way: straight, or through a high hip, or as a wave.
CURVES: Mapping[str, Curve] = {
    "straight": lambda part: part,
    "high hip": lambda part: np.where(part < 0.5, part * 1.4, 0.7 + (part - 0.5) * 0.6),
    "wave": lambda part: (1 - np.cos(np.pi * part)) / 2,
}


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of section: the girths between which it is shaped, and how long it is, mm."""

    name: str
    before: Callable[[Woman], float]
    after: Callable[[Woman], float]
    length: Callable[[Woman], float]
    points: tuple[int, ...]
    curves: tuple[str, ...]
    in_rows: bool = False


def _waist_to_hip(woman: Woman) -> float:
    return woman["waistheightomphalion"] - woman["buttockheight"]


KINDS = (
    Kind(
        "skirt, waist to hip",
        lambda w: w["waistcircumference"],
        lambda w: w["buttockcircumference"] + 40,
        lambda w: max(_waist_to_hip(w), 120),
        (4, 6, 8),
        ("straight", "high hip", "wave"),
    ),
    Kind(
        "skirt, hip to hem",
        lambda w: w["buttockcircumference"] + 40,
        lambda w: 1.3 * w["buttockcircumference"],
        lambda w: w["buttockheight"] * 0.45,
        (4, 6, 8),
        ("straight",),
    ),
    Kind(
        "bodice, bust to waist",
        lambda w: w["chestcircumference"] + 60,
        lambda w: w["waistcircumference"] + 80,
        lambda w: w["waistbacklength"] * 0.45,
        (2, 4),
        ("straight", "wave"),
    ),
    Kind(
        "sleeve in rows, cuff to top",
        lambda w: w["wristcircumference"] + 60,
        lambda w: w["bicepscircumferenceflexed"] + 60,
        lambda w: w["stature"] * 0.25,
        (2,),
        ("straight",),
        in_rows=True,
    ),
)


def women(count: int) -> list[Woman]:
    """So many women of the survey, drawn with a fixed seed."""
    with SURVEY.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    drawn = np.random.default_rng(SEED).permutation(len(rows))[:count]
    return [_numbers(rows[i]) for i in drawn]


def _numbers(row: Mapping[str, str]) -> Woman:
    return {name: float(text) for name, text in row.items() if text.replace(".", "").isdigit()}


def tasks(count: int) -> Iterator[tuple[str, Task]]:
    """So many tasks with something to shape, each for another woman, kinds in turn."""
    chance, found = np.random.default_rng(SEED), 0
    for woman in women(2 * count):
        kind = KINDS[found % len(KINDS)]
        task = _task(woman, kind, chance)
        if task is not None:
            yield kind.name, task
            found += 1
        if found == count:
            return


def _task(woman: Woman, kind: Kind, chance: np.random.Generator) -> Task | None:
    """The section of one woman in a swatch drawn at random; None when nothing changes."""
    stitches, rows = SWATCHES[chance.integers(len(SWATCHES))]
    points = kind.points[chance.integers(len(kind.points))]
    curve = CURVES[kind.curves[chance.integers(len(kind.curves))]]
    width, uncertain = round(100 / stitches, 2), UNCERTAIN[chance.integers(len(UNCERTAIN))]
    rounds = round(kind.length(woman) * rows / 100)
    wanted = kind.before(woman), kind.after(woman)
    before = round(wanted[0] / width)
    shapings = round(abs(wanted[1] - before * width) / (points * width))
    if not 1 < shapings <= rounds:
        return None
    share = np.arange(rounds + 1) / rounds
    profile = np.round(wanted[0] + (wanted[1] - wanted[0]) * curve(share), 2)
    right_side = kind.in_rows and shapings <= rounds // 2
    return Task(
        wanted=profile,
        before=round(before * width, 2),
        step=round((1 if wanted[1] > wanted[0] else -1) * points * width, 2),
        shapings=shapings,
        indifference=round(max(width, uncertain * wanted[1]), 2),
        allowed=on_right_side(rounds) if right_side else None,
        pair=2 if right_side else 1,
    )
