"""The trade's size tables as tables to read."""

from __future__ import annotations

from dataclasses import dataclass

from frogless.body.size_tables import sizes
from frogless.studio.needs import measurement_name
from frogless.studio.people.measured import ordered
from frogless.units import Units, show_length

TITLES = {"women": "Women", "children": "Children, by age in years"}
SOURCE = "Craft Yarn Council, Standards & Guidelines for Crochet and Knitting, 2018"


@dataclass(frozen=True, slots=True)
class Table:
    """One size table: a column for each size, a row for each measurement; "" where it has none."""

    key: str
    title: str
    source: str
    units: Units
    columns: tuple[str, ...]
    rows: tuple[tuple[str, tuple[str, ...]], ...]


def table(key: str, units: Units) -> Table:
    """A size table in cm or inches, the unit said once for all.

    Raises:
        InputError: there is no such table.
    """
    bodies = sizes(key)
    kept = [name for name in ordered() if any(body.get(name) for body in bodies)]
    rows = tuple(
        (
            measurement_name(name),
            tuple(
                bare(one.value.value, units) if (one := body.get(name)) else "" for body in bodies
            ),
        )
        for name in kept
    )
    columns = tuple(body.name for body in bodies)
    return Table(key, TITLES.get(key, key.capitalize()), SOURCE, units, columns, rows)


def bare(length: float, units: Units) -> str:
    """A length without its unit, quarters as ¼ ½ ¾.

    >>> bare(22.25 * 25.4, "in")
    '22¼'
    """
    text = show_length(length, units).removesuffix(f" {units}")
    for fraction, sign in (("1/4", "¼"), ("1/2", "½"), ("3/4", "¾")):
        text = text.replace(f" {fraction}", sign).replace(fraction, sign)
    return text
