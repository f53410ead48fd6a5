"""How heavy and how thick a yarn is: from its label, its category, or the stitches it made."""

from __future__ import annotations

import math
from dataclasses import dataclass

from frogless.swatch import Yarn
from frogless.tally.tables import rows_of, yarn_weights
from frogless.units import Measured

# Two teaching charts give one end only for the thinnest and the thickest yarns; the other end is
# set at half or double of it, an assumption.
OPEN_END = 2.0


@dataclass(frozen=True, slots=True)
class Fibre:
    """Density of the fibre, g/cm³, and the share of the yarn's cross-section that is fibre."""

    name: str
    density: float
    packing: Measured


def fibre_of(label: str) -> Fibre:
    """The first fibre of the table that a label names, else a middle one.

    Source: data/fibres.csv; densities from memory, packing published for cotton only.
    """
    words = label.lower()
    table = rows_of("fibres.csv")
    row = next((r for r in table[:-1] if any(w in words for w in r["words"].split("|"))), table[-1])
    packing = Measured(float(row["packing"]), float(row["packing_uncertainty"]))
    return Fibre(row["fibre"], float(row["density"]), packing)


def diameter(tex: Measured, fibre: Fibre) -> Measured:
    """Diameter of a yarn, mm: d = 0.0357 √(tex / (φ · density)).

    Source: a cylinder of length 1 km and mass tex; derived. With φ 0.60 and cotton it is Peirce's
    0.0374 √tex.
    """
    value = 0.0357 * math.sqrt(tex.value / (fibre.packing.value * fibre.density))
    return Measured(value, value * math.hypot(tex.relative, fibre.packing.relative) / 2)


def tex_of_diameter(thick: Measured, fibre: Fibre) -> Measured:
    """The tex (g per km) of a yarn of this diameter, mm: `diameter` the other way round."""
    value = fibre.packing.value * fibre.density * (thick.value / 0.0357) ** 2
    return Measured(value, value * math.hypot(2 * thick.relative, fibre.packing.relative))


def tex_of_category(category: int) -> Measured:
    """The tex usual for a yarn category: geometric middle of the charts' metres per 100 g.

    The range is taken for a rectangular distribution of the logarithm.

    Source: two teaching charts (common practice), in data/yarn_weights.csv.
    """
    row = next(r for r in yarn_weights() if int(r["category"]) == category)
    low, high = row["m_per_100g_low"], row["m_per_100g_high"]
    least = float(low) if low else float(high) / OPEN_END
    most = float(high) if high else float(low) * OPEN_END
    value = 1e5 / math.sqrt(least * most)
    return Measured(value, value * math.log(most / least) / math.sqrt(12))


def known_tex(yarn: Yarn) -> tuple[Measured, str] | None:
    """The tex and where it is from: "label" or "category"; None when neither is given."""
    if yarn.tex is not None:
        return Measured(yarn.tex), "label"
    if yarn.category is not None:
        return tex_of_category(yarn.category), "category"
    return None
