"""Reads the tables that `fit` ships with."""

from __future__ import annotations

import csv
import tomllib
from functools import cache
from importlib.resources import files
from typing import Any


@cache
def rows_of(name: str) -> tuple[dict[str, str], ...]:
    """The rows of the CSV table `name`, as text by column."""
    text = files("frogless.fit").joinpath("data", name).read_text(encoding="utf-8")
    return tuple(csv.DictReader(text.splitlines()))


@cache
def document(name: str) -> dict[str, Any]:
    """The TOML table `name`."""
    text = files("frogless.fit").joinpath("data", name).read_text(encoding="utf-8")
    return tomllib.loads(text)
