"""Measurements that do not grow from size to size."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.proofread.checks.facts.told import names_of, shown
from frogless.proofread.checks.model import Check, Reading
from frogless.proofread.facts.model import Measurement
from frogless.proofread.findings import Finding

#: Girths that make the sizes: two sizes of one girth are one size too many.
_GROWING = {"bust", "hip", "high hip", "waist", "underbust"}


def measures_in_order(reading: Reading) -> Iterator[Finding]:
    """Girths that stop growing, and any measurement that shrinks from one size to the next."""
    sizes = len(reading.script.sizes)
    for measured in reading.facts.measurements:
        values = measured.lengths.values
        if len(values) == sizes > 1 and not measured.lengths.ranged:
            yield from _order(reading, measured, values)


def _order(reading: Reading, measured: Measurement, values: tuple[float, ...]) -> Iterator[Finding]:
    strict = measured.way == "girth" and measured.name in _GROWING
    for size in range(1, len(values)):
        before, here = values[size - 1], values[size]
        if here > before or (here == before and not strict):
            continue
        names = reading.script.sizes
        told, last = shown(here, measured.lengths), shown(before, measured.lengths)
        kind = "as much as" if here == before else "less than"
        yield Finding(
            "measures-in-order",
            measured.lengths.span,
            f"{measured.name} {told} in size {names[size]}",
            f"{last} in size {names[size - 1]}",
            f"The {measured.name} of size {names[size]} is {told}, {kind} the {last} of size "
            f"{names[size - 1]}. Two numbers may have changed places.",
            "likely",
            sizes=names_of(reading, [size]),
        )


ORDER = Check(
    "measures-in-order",
    "measurements do not shrink, and girths grow, from one size to the next",
    "Sizes: S (M, L)\nFinished bust: 84 (104, 94) cm\n\n"
    "Ch 84 (94, 104).\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. "
    "(83 (93, 103) sc)\n",
    measures_in_order,
)
