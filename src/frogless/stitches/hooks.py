"""Hook sizes in use: the nearest real one to a wanted size, and its US label."""

from __future__ import annotations

import csv
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from types import MappingProxyType


@cache
def sizes() -> Mapping[float, str]:
    """US label by size in mm ("" where there is none that can be trusted)."""
    text = files(__package__).joinpath("data/hook_sizes.csv").read_text("utf-8")
    rows = csv.DictReader(text.splitlines())
    return MappingProxyType({float(r["mm"]): r["us_label"] for r in rows})


def nearest(size: float) -> float:
    """The size in use nearest in ratio to `size`, mm; the smaller of two equally near."""
    return min(sizes(), key=lambda mm: (round(max(mm / size, size / mm), 6), mm))
