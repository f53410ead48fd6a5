"""How long it takes: stitches weighed by how often they catch the yarn."""

from __future__ import annotations

from collections.abc import Mapping

from frogless.fabric.model import Fabric
from frogless.plan.model import Plan
from frogless.stitches.model import Stitch
from frogless.tally.catches import catches_of, catches_of_row, times_made, times_seamed

# Single crochets a minute. From forum talk and one page, 10 to 40; no study was found.
SLOW = 10.0
USUAL = 20.0
FAST = 40.0
# A chain takes half the time of a single crochet, a half double one and a half, a double twice: an
# assumption, which is a catch for half a single crochet.
CATCHES_OF_A_SINGLE = 2


def single_crochets(fabric: Fabric, plan: Plan, stitches: Mapping[str, Stitch]) -> float:
    """The work of all rows and seams as if it were single crochet."""
    rows = sum(
        catches_of_row(row, stitches) * times_made(plan, name)
        for name, rows in fabric.pieces.items()
        for row in rows
    )
    seams = sum(
        s.count * catches_of(s.stitch, stitches) * times_seamed(plan, s) for s in plan.program.seams
    )
    return (rows + seams) / CATCHES_OF_A_SINGLE


def working_time(
    fabric: Fabric,
    plan: Plan,
    stitches: Mapping[str, Stitch],
    *,
    slow: float = SLOW,
    fast: float = FAST,
) -> tuple[float, float]:
    """Seconds of crochet at a fast and at a slow pace; breaks, counting and finishing come on top.

    Args:
        slow, fast: single crochets a minute, > 0; a maker's own pace in both gives one figure.
    """
    work = single_crochets(fabric, plan, stitches)
    return 60 * work / fast, 60 * work / slow
