"""All of the fit together."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from frogless.because import Because
from frogless.body.measurements import Body
from frogless.fit.fit import fit
from frogless.fit.rounds import begins_with_chain, closed_rounds
from frogless.plan.model import EdgingPlan, Plan
from frogless.rows.nodes import Repeat
from frogless.swatch import Gauge, Reading, Swatch, Yarn
from frogless.units import Measured

READINGS = (
    Reading("double_crochet", "washed", 4.0, 27, 150.0, 15, 150.0, stretched_width=180.0),
    Reading("double_crochet", "hung", 4.0, rows=15, height=157.5),
)
SWATCH = Swatch(
    "swatch", "double_crochet", 4.0, Yarn("", 3, "cotton", 50.0, 120_000.0), readings=READINGS
)


def test_every_part_is_there_when_a_plan_is_fitted(
    skirt: Callable[..., Plan], body: Callable[..., Body]
) -> None:
    """Landmarks, going on, staying up, hanging (a swatch of 27 stitches) and cautions."""
    found = fit(skirt(), body(), SWATCH, stitch="double_crochet", grams=500.0)
    assert len(found.landmarks) == 3
    assert found.going_on.verdict == "does not pass"
    assert found.staying_up.startswith("Nothing")
    assert found.going_on.stretch == pytest.approx(0.2)
    assert found.hanging.growth == pytest.approx(0.05)
    assert found.hanging.load_top == pytest.approx(500 * 27 / 152)
    assert [c.key for c in found.cautions] == ["hands"]


def test_nothing_is_assumed_when_the_swatch_was_neither_stretched_nor_hung(
    skirt: Callable[..., Plan], body: Callable[..., Body]
) -> None:
    """No stretch, no growth, and both are told as not measured."""
    plain = replace(SWATCH, readings=(replace(READINGS[0], stretched_width=None),))
    found = fit(skirt(), body(), plain, stitch="double_crochet", grams=None)
    assert (found.going_on.measured, found.hanging.measured) == (False, False)
    assert (found.going_on.stretch, found.hanging.growth) == (0.0, 0.0)


@pytest.mark.parametrize("chain", [True, False])
def test_the_start_is_seen_in_the_first_row_when_it_is_a_chain(
    skirt: Callable[..., Plan], *, chain: bool
) -> None:
    """A chain start is a row that begins with a chain."""
    assert begins_with_chain(skirt(chain=chain)) is chain


def test_the_start_is_seen_when_the_chain_lies_in_a_repeat(skirt: Callable[..., Plan]) -> None:
    """Repeats are looked into; an empty row is no chain."""
    plan = skirt(chain=True)
    piece = plan.program.pieces[0]
    first = piece.rows[0]
    folded = replace(first, body=(Repeat(first.body, 2),))
    empty = replace(first, body=())
    for row, expected in ((folded, True), (empty, False)):
        changed = replace(piece, rows=(row, *piece.rows[1:]))
        program = replace(plan.program, pieces=(changed,))
        assert begins_with_chain(replace(plan, program=program)) is expected


def test_edging_rounds_are_left_out_when_girths_are_taken(skirt: Callable[..., Plan]) -> None:
    """Two edging rounds at the end of 60 leave rounds 0 to 58."""
    gauge = Gauge("single_crochet", Measured(4.0), Measured(4.0), "washed")
    edging = EdgingPlan(
        "picot", 2.25, 256, 256, 32, 8, 0, 0, 59, 60, gauge, Measured(1422), Measured(1400),
        Because(),
    )  # fmt: skip
    rounds = closed_rounds(skirt(edging=edging))
    assert [rounds[0].number, rounds[-1].number] == [0, 58]
