"""What a millimetre of work costs in yarn: weighed on the swatch, or by a model, less sure."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from frogless.because import Step
from frogless.stitches.model import Stitch
from frogless.swatch import Gauge, Swatch, Yarn
from frogless.tally.catches import catches_of
from frogless.tally.tables import rows_of
from frogless.tally.thickness import diameter, fibre_of, known_tex, tex_of_diameter
from frogless.units import Measured

# A catch took 5.1, 4.4 and 3.9 stitch widths of yarn in three measured cases (common practice).
YARN_PER_WORK = Measured(4.5, 0.6)
# Hands differ from swatch to garment; common practice, no figure published.
HAND = 0.05


@dataclass(frozen=True, slots=True)
class Scale:
    """Grams and mm of yarn per mm of work.

    Args:
        mass_relative, length_relative: relative standard uncertainty of each, the hand's included.
        tex: g per km, with its uncertainty.
        weighed: from the swatch's mass; then stitches of the main gauge need no width.
    """

    mass: float
    length: float
    mass_relative: float
    length_relative: float
    tex: Measured
    weighed: bool
    steps: tuple[Step, ...]


def scale(
    swatch: Swatch, main: Gauge, stitches: Mapping[str, Stitch], per_stitch: Measured | None
) -> Scale:
    """The best scale that can be had: swatch mass, else label or category, else the stitch's size.

    Args:
        main: gauge of the swatch's stitch, or the nearest to it there is.
        per_stitch: g of one stitch of the swatch, None when the swatch was not weighed.
    """
    yarn, work = swatch.yarn, catches_of(swatch.stitch, stitches) * main.width.value
    if per_stitch is not None:
        return _weighed(yarn, main, work, per_stitch)
    known = known_tex(yarn)
    if known is not None:
        return _covered(yarn, main, work, *known)
    return _guessed(yarn, main, work)


def cover_of(stitch: str) -> Measured:
    """K = diameter · yarn length / area of solid fabric of this stitch.

    Source: data/cover.csv, makers' measurements of five solid fabrics.
    """
    table = rows_of("cover.csv")
    row = next((r for r in table if r["stitch"] == stitch), table[-1])
    return Measured(float(row["cover"]), float(row["uncertainty"]))


def _weighed(yarn: Yarn, main: Gauge, work: float, per_stitch: Measured) -> Scale:
    tex, origin = known_tex(yarn) or (_tex_of_stitch(yarn, main, work), "stitch size")
    relative = math.hypot(per_stitch.relative, HAND)
    mass = per_stitch.value / work
    return Scale(
        mass=mass,
        length=mass / tex.value * 1e6,
        mass_relative=relative,
        length_relative=math.hypot(relative, tex.relative),
        tex=tex,
        weighed=True,
        steps=(
            Step("one_stitch", 1000 * per_stitch.value, "", "mg, weighed on the swatch"),
            *_tex_steps(tex, origin),
        ),
    )


def _covered(yarn: Yarn, main: Gauge, work: float, tex: Measured, origin: str) -> Scale:
    """L = K · area / d for the main stitch, carried to the others by their work."""
    thick = diameter(tex, fibre_of(yarn.fibre))
    cover = cover_of(main.stitch)
    length = cover.value * main.height.value * main.width.value / (thick.value * work)
    relative = math.hypot(cover.relative, thick.relative, main.height.relative, HAND)
    return Scale(
        mass=length * tex.value / 1e6,
        length=length,
        # Mass goes with the root of tex, length with its inverse root: both through the diameter.
        mass_relative=relative,
        length_relative=relative,
        tex=tex,
        weighed=False,
        steps=(
            *_tex_steps(tex, origin),
            Step("yarn_diameter", thick.value, "", "mm, from tex and fibre", estimated=True),
            Step("cover", cover.value, "ratio", "usual for solid fabric", estimated=True),
        ),
    )


def _guessed(yarn: Yarn, main: Gauge, work: float) -> Scale:
    """Length from the size of the stitch alone; mass from the thickness that it implies."""
    tex = _tex_of_stitch(yarn, main, work)
    relative = math.hypot(YARN_PER_WORK.relative, HAND)
    return Scale(
        mass=YARN_PER_WORK.value * tex.value / 1e6,
        length=YARN_PER_WORK.value,
        mass_relative=math.hypot(relative, tex.relative),
        length_relative=relative,
        tex=tex,
        weighed=False,
        steps=_tex_steps(tex, "stitch size"),
    )


def _tex_of_stitch(yarn: Yarn, main: Gauge, work: float) -> Measured:
    """The tex of a yarn that covers the stitch as solid fabric usually is covered."""
    cover = cover_of(main.stitch)
    area = main.width.value * main.height.value
    thick = cover.value * area / (YARN_PER_WORK.value * work)
    relative = math.hypot(cover.relative, YARN_PER_WORK.relative, main.height.relative)
    return tex_of_diameter(Measured(thick, thick * relative), fibre_of(yarn.fibre))


def _tex_steps(tex: Measured, origin: str) -> tuple[Step, ...]:
    note = f"g per km, from the {origin}"
    return (Step("tex", tex.value, "", note, estimated=origin != "label"),)
