"""How far elastics stretch, by kind: in comfort, at the longest, and while pulled on."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from functools import cache
from importlib.resources import files


@dataclass(frozen=True, slots=True)
class Elastic:
    """A kind of elastic, as ratios of stretched to relaxed length; sources in its data file.

    Args:
        comfortable: worn all day. longest: still wearable. pulled_on: for a moment, over the hips.
    """

    kind: str
    comfortable: float
    longest: float
    pulled_on: float


@cache
def elastics() -> tuple[Elastic, ...]:
    """Every kind in the table."""
    text = files(__package__).joinpath("data/elastic_stretch.csv").read_text("utf-8")
    return tuple(
        Elastic(r["kind"], float(r["comfortable"]), float(r["longest"]), float(r["pulled_on"]))
        for r in csv.DictReader(text.splitlines())
    )


def stretch(kind: str) -> Elastic:
    """The elastic of that kind.

    Raises:
        KeyError: no such kind; the design document knows only those of the table.
    """
    found = {elastic.kind: elastic for elastic in elastics()}
    return found[kind]
