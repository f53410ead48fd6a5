"""Growth under the garment's own weight, and what to hang on a swatch to measure it."""

from __future__ import annotations

from frogless.fit.model import Hanging
from frogless.fit.tables import rows_of

# mm: the swatch that makers are asked for.
SWATCH_WIDTH = 150.0


def loads(grams: float, count: int, swatch_stitches: int) -> tuple[float, float]:
    """g to hang on a swatch so that it carries what the top row carries, and the average row.

    Args:
        grams: mass of the garment. count: stitches of the row that carries it, > 0.
        swatch_stitches: stitches across the swatch.

    Source: geometry: each stitch of the top row carries an equal share of the mass, the hem none,
    so that the average of a straight garment is half.

    >>> [round(load) for load in loads(500, 208, 27)]
    [65, 32]
    """
    top = grams * swatch_stitches / count
    return top, top / 2


def usual_growth(fibre: str) -> tuple[str, float, float] | None:
    """Name, low and high growth of the first fibre in the table that `fibre` names; from memory."""
    words = fibre.lower()
    for row in rows_of("fibre_growth.csv"):
        if any(word in words for word in row["words"].split("|")):
            return row["fibre"], float(row["low"]), float(row["high"])
    return None


def hanging(
    *,
    growth: float | None,
    fibre: str,
    grams: float | None,
    count: int,
    swatch_stitches: int,
) -> Hanging:
    """The growth the lengths are planned with, and the loads for a hang test.

    Args:
        growth: from the hang test, as a ratio (0.08: 8 %); None: not measured, none planned.
        grams: mass of the garment, None when it is not known.
        count: stitches of the top row. swatch_stitches: stitches across the swatch to be hung.
    """
    top, average = loads(grams, count, swatch_stitches) if grams else (None, None)
    sentence = _measured(growth) if growth is not None else _not_measured(fibre)
    return Hanging(
        growth=growth or 0.0,
        measured=growth is not None,
        load_top=top,
        load_average=average,
        sentence=sentence + _how(top, average, swatch_stitches),
    )


def _measured(growth: float) -> str:
    return f"The lengths allow for {100 * growth:.0f} % growth in wear, from the hang test."


def _not_measured(fibre: str) -> str:
    usual = usual_growth(fibre)
    if usual is None:
        return "Growth in wear has not been measured, and none is allowed for."
    name, low, high = usual
    return (
        "Growth in wear has not been measured, and none is allowed for; "
        f"{name} is said to grow {100 * low:.0f} to {100 * high:.0f} %"
        " (from memory, no published figure)."
    )


def _how(top: float | None, average: float | None, swatch_stitches: int) -> str:
    if top is None or average is None:
        return ""
    return (
        f" To test it, hang a swatch of {swatch_stitches} stitches by its top edge for a day with"
        f" {average:.0f} g spread along its bottom: the average row's load; the top row carries"
        f" {top:.0f} g."
    )
