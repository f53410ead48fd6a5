"""A body: named measurements in ISO 8559-1 terms, each with its uncertainty and its origin."""

from __future__ import annotations

import csv
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from importlib import resources
from typing import Literal

from frogless.units import Measured

Kind = Literal["girth", "length", "mass"]

CHILD_UNTIL = 16.0
"""Years; the size tables for children and youths end with 16 (CYC)."""

SMALL_STATURE = 1400.0
"""mm; nobody in the survey of 1,986 women was smaller (ANSUR II: 1,409 mm)."""


@dataclass(frozen=True, slots=True)
class Measurement:
    """One measurement, mm; `body_mass` in g.

    Args:
        source: "" when taken with a tape, else how it was estimated or the table it stands in.
        written: the text it was read from, for questions about its unit.
    """

    key: str
    value: Measured
    estimated: bool = False
    source: str = ""
    written: str = ""


@dataclass(frozen=True, slots=True)
class Body:
    """A body by name; `age` in years matters for what is plausible and for cautions only."""

    name: str
    measurements: Mapping[str, Measurement]
    file: str = ""
    age: float | None = None

    def get(self, key: str) -> Measurement | None:
        """The measurement, or None."""
        return self.measurements.get(key)

    @property
    def may_be_child(self) -> bool:
        """Whether age says so or, when no age was given, a small stature allows it."""
        if self.age is not None:
            return self.age <= CHILD_UNTIL
        stature = self.get("stature")
        return stature is not None and stature.value.value < SMALL_STATURE


@dataclass(frozen=True, slots=True)
class Known:
    """What is known of a measurement; limits in mm, of `body_mass` in g.

    Args:
        iso_term: its term in ISO 8559-1, from memory; "" when the standard has none that is known.
        least, least_child, most: outside these it is refused.
        low, low_child, high: surveys and size tables have nobody outside these; it is questioned.
        basis: published, common-practice, memory or derived, for `low` and `high`.
    """

    key: str
    iso_term: str
    kind: Kind
    how_taken: str
    least: float
    least_child: float
    low_child: float
    low: float
    high: float
    most: float
    source: str
    basis: str


@cache
def known_measurements() -> Mapping[str, Known]:
    """All measurements that a body file may give, by key, from `data/measurements.csv`."""
    return {row["key"]: _known(row) for row in read_table("measurements.csv")}


def _known(row: Mapping[str, str]) -> Known:
    limits = ("least", "least_child", "low_child", "low", "high", "most")
    texts = {name: text for name, text in row.items() if name not in limits}
    return Known(**texts, **{name: float(row[name]) for name in limits})  # type: ignore[arg-type]


def read_table(name: str) -> Iterator[dict[str, str]]:
    """The rows of a table in `body/data`."""
    text = (resources.files("frogless") / "body" / "data" / name).read_text(encoding="utf-8")
    return csv.DictReader(text.splitlines())
