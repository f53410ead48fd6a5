"""Reads the tables that `tally` ships with, and the yarn weights it looks metres up in."""

from __future__ import annotations

import csv
from functools import cache
from importlib.resources import files


@cache
def rows_of(name: str) -> tuple[dict[str, str], ...]:
    """The rows of `tally/data/<name>`, as text by column."""
    return _rows("tally", "data", name)


@cache
def yarn_weights() -> tuple[dict[str, str], ...]:
    """The rows of the yarn weight system."""
    return _rows("data", "yarn_weights.csv")


def _rows(*parts: str) -> tuple[dict[str, str], ...]:
    text = files("frogless").joinpath(*parts).read_text(encoding="utf-8")
    return tuple(csv.DictReader(text.splitlines()))
