"""The trade's tables of body sizes as bodies, for grading."""

from __future__ import annotations

import math
from collections.abc import Mapping

from frogless.body.measurements import Body, Measurement, read_table
from frogless.errors import InputError, near_names
from frogless.units import Measured

TABLES: Mapping[str, str] = {"women": "body_sizes_women.csv", "children": "body_sizes_child.csv"}
"""Craft Yarn Council, Standards & Guidelines for Crochet and Knitting, 2018: body measurements."""


def sizes(table: str) -> tuple[Body, ...]:
    """The bodies of a size table, smallest first; a measurement is the middle of its printed range.

    Half the range is taken as limits ± a of a rectangular distribution, so its standard uncertainty
    is a / √3 (JCGM 100:2008, 4.3.7). A child's size is its age in years.

    Raises:
        InputError: there is no such table.
    """
    if table not in TABLES:
        known = ", ".join(TABLES)
        raise InputError(f'no size table "{table}"{near_names(table, TABLES)}; known are {known}')
    rows = [row for row in read_table(TABLES[table]) if row["size_order"]]
    order = {row["size"]: int(row["size_order"]) for row in rows}
    return tuple(_size(size, rows) for size in sorted(order, key=order.__getitem__))


def _size(size: str, rows: list[dict[str, str]]) -> Body:
    own = [row for row in rows if row["size"] == size and row["mm_low"] and row["mm_high"]]
    return Body(
        name=size,
        measurements={row["measure"]: _measurement(row) for row in own},
        age=float(size) if size.isdigit() else None,
    )


def _measurement(row: Mapping[str, str]) -> Measurement:
    low, high = float(row["mm_low"]), float(row["mm_high"])
    value = Measured((low + high) / 2, (high - low) / 2 / math.sqrt(3))
    return Measurement(row["measure"], value, source=f"{row['system']}, size {row['size']}")
