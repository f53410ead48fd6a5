"""What to buy and how long it takes, all of it."""

from __future__ import annotations

from collections.abc import Mapping

from frogless.fabric.model import Fabric
from frogless.plan.model import Plan
from frogless.stitches.model import Stitch
from frogless.swatch import Swatch
from frogless.tally.catches import stitches_worked, times_made
from frogless.tally.model import Tally
from frogless.tally.notions import notions
from frogless.tally.pace import working_time
from frogless.tally.yarn import yarn
from frogless.units import Units


def tally(
    fabric: Fabric,
    plan: Plan,
    swatch: Swatch,
    stitches: Mapping[str, Stitch],
    *,
    units: Units = "cm",
    others: tuple[Swatch, ...] = (),
) -> Tally:
    """Yarn, notions, stitches (chains and slip stitches left out) and working time.

    Args:
        fabric: of the plan's program. stitches: the dictionary it was expanded with.
        others: further swatches, as in `tally.yarn`.
    """
    fast, slow = working_time(fabric, plan, stitches)
    return Tally(
        yarn=yarn(fabric, plan, swatch, stitches, others),
        notions=notions(plan, units),
        stitches=sum(
            stitches_worked(row, stitches) * times_made(plan, name)
            for name, rows in fabric.pieces.items()
            for row in rows
        ),
        time_low=fast,
        time_high=slow,
    )
