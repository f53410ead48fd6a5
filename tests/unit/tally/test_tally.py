"""The tally together."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from frogless.fabric.model import Fabric
from frogless.plan.model import Plan
from frogless.rows.nodes import Row, Start
from frogless.stitches.model import Stitch
from frogless.swatch import Swatch
from frogless.tally.tally import tally


def test_yarn_notions_stitches_and_time_are_there_when_a_plan_is_tallied(
    stitches: Mapping[str, Stitch],
    swatch: Callable[..., Swatch],
    rows: Callable[..., tuple[Row, ...]],
    plan: Callable[..., Plan],
    fabric: Callable[[Plan], Fabric],
) -> None:
    """Ten rounds of 100 doubles: 1,000 stitches, turning chains not among them."""
    made = plan(rows(start=Start(2)))
    found = tally(fabric(made), made, swatch(), stitches)
    assert found.stitches == 1000
    assert found.time_low < found.time_high
    assert len(found.yarn) == 1
    assert found.notions
