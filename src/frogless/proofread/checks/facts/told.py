"""Findings and figures in the words of the facts' checks."""

from __future__ import annotations

from frogless.proofread.checks.facts.pieces import Held
from frogless.proofread.checks.model import Reading
from frogless.proofread.facts.model import Lengths
from frogless.units import INCH


def sizes_told(held: Held, sizes: list[int]) -> tuple[str, ...]:
    """The names of sizes; () for all of them."""
    return () if len(sizes) == held.sizes else names_of(held.reading, sizes)


def names_of(reading: Reading, sizes: list[int]) -> tuple[str, ...]:
    """The names of sizes, or their numbers."""
    return tuple(reading.script.sizes[size] or str(size + 1) for size in sizes)


def of_size(values: tuple[float, ...], size: int, sizes: int) -> float | None:
    """The value of a size; one for all counts for a pattern of one size only."""
    if len(values) == sizes:
        return values[size]
    return None


def shown(length: float, lengths: Lengths) -> str:
    """A length in the units that the text uses: "115.6 cm", "45 1/2 in"."""
    if lengths.values is lengths.inches or not lengths.metric:
        return f"{length / INCH:.1f}".rstrip("0").rstrip(".") + " in"
    return f"{length / 10:.1f}".removesuffix(".0") + " cm"


def plain(number: float) -> str:
    """A number without needless digits."""
    return f"{number:.2f}".rstrip("0").rstrip(".")
