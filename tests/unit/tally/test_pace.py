"""Working time."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import pytest

from frogless.fabric.model import Fabric
from frogless.plan.model import Plan
from frogless.rows.nodes import Base, Row, Seam
from frogless.stitches.model import Stitch
from frogless.tally.pace import single_crochets, working_time


@pytest.mark.parametrize(
    ("stitch", "each"),
    [("single_crochet", 1.0), ("half_double_crochet", 1.5), ("double_crochet", 2.0)],
)
def test_taller_stitches_take_longer_when_timed(
    stitches: Mapping[str, Stitch],
    rows: Callable[..., tuple[Row, ...]],
    plan: Callable[..., Plan],
    fabric: Callable[[Plan], Fabric],
    stitch: str,
    each: float,
) -> None:
    """One, one and a half, and two single crochets."""
    made = plan(rows(stitch=stitch))
    assert single_crochets(fabric(made), made, stitches) == 1000 * each


def test_time_runs_from_fast_to_slow_when_nobody_was_timed(
    stitches: Mapping[str, Stitch],
    rows: Callable[..., tuple[Row, ...]],
    plan: Callable[..., Plan],
    fabric: Callable[[Plan], Fabric],
) -> None:
    """2,000 single crochets at 40 and at 10 a minute."""
    made = plan(rows())
    assert working_time(fabric(made), made, stitches) == (3000.0, 12_000.0)


def test_time_is_one_figure_when_the_maker_was_timed(
    stitches: Mapping[str, Stitch],
    rows: Callable[..., tuple[Row, ...]],
    plan: Callable[..., Plan],
    fabric: Callable[[Plan], Fabric],
) -> None:
    """At 25 a minute."""
    made = plan(rows())
    assert working_time(fabric(made), made, stitches, slow=25, fast=25) == (4800.0, 4800.0)


def test_seams_take_time_when_there_are_some(
    stitches: Mapping[str, Stitch],
    rows: Callable[..., tuple[Row, ...]],
    plan: Callable[..., Plan],
    fabric: Callable[[Plan], Fabric],
) -> None:
    """50 single crochets more."""
    base = (Base("piece 1", "last_row"),)
    made = plan(rows(), seams=(Seam("side", "single_crochet", base, base, 50, 50),))
    assert single_crochets(fabric(made), made, stitches) == 2050
