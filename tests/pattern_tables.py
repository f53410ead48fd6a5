"""Reference tables of stitch patterns: their rows as parameters, and the pattern that each is about."""

from __future__ import annotations

import csv
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest

from frogless.read.patterns import way_of
from frogless.stitches.pattern_rows import Way


def table(file: Path, *named_by: str) -> list[Any]:
    """The rows of a table as parameters, each named by what stands in some of its columns."""
    with file.open(encoding="utf-8", newline="") as lines:
        rows = list(csv.DictReader(lines))
    return [pytest.param(row, id=" ".join(row[name] for name in named_by)) for row in rows]


def numbers(cell: str) -> dict[str, int]:
    """`name=number` pairs."""
    pairs = (part.split("=") for part in cell.split())
    return {name: int(number) for name, number in pairs}


def reference_way(row: Mapping[str, str]) -> Way:
    """The pattern that a row of a table is about."""
    closed = row["way"] == "rounds"
    return way_of(row["key"], closed=closed, parameters=numbers(row["parameters"]))
