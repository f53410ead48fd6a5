"""What holds of yarn and fit for any counts, girths and swatches."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st
from one_piece import one_piece

from frogless.because import Because
from frogless.body.measurements import Body
from frogless.fabric.expand import expand
from frogless.fit.going_on import going_on
from frogless.fit.survey import share_passing, share_reached
from frogless.plan.model import Landmark, Plan
from frogless.rows.nodes import Piece, Program, Row, Work
from frogless.stitches.load import dictionary
from frogless.swatch import Gauge, Reading, Swatch, Yarn
from frogless.tally.yarn import yarn
from frogless.units import Measured


def tube(count: int, width: float, hip: float, *, stitch: str = "double_crochet") -> Plan:
    """Ten rounds of `count` stitches over a hip."""
    rows = tuple(Row(n, "RS", "body", (Work(stitch, count),), count) for n in range(1, 11))
    landmark = Landmark(
        "hip_girth", 200.0, Measured(hip), False, hip, 0.0, 1e9, 10, count,
        Measured(count * width), Because(),
    )  # fmt: skip
    gauge = Gauge(stitch, Measured(width, width * 0.02), Measured(10.0, 0.2), "washed")
    return one_piece(
        (landmark,), (), None, None, (), tuple(10.0 * n for n in range(11)), {"body": gauge}, (),
        Program((Piece("skirt", closed=True, rows=rows),)),
    )  # fmt: skip


@given(
    count=st.integers(20, 600),
    width=st.floats(2.0, 15.0),
    hip=st.floats(500.0, 1800.0),
    stretch=st.floats(0.0, 0.8),
)
def test_the_opening_said_to_be_needed_passes_when_it_is_made(
    count: int, width: float, hip: float, stretch: float
) -> None:
    """A start of needed_count stitches goes on, and one stitch less would not."""
    found = going_on(
        tube(count, width, hip), stretch=stretch, start_kind="foundation", body=Body("b", {})
    )
    made = found.needed_count
    assert made * width * (1 + stretch) >= hip * (1 - 1e-6)
    assert (made - 1) * width * (1 + stretch) < hip
    again = going_on(
        tube(made, width, hip), stretch=stretch, start_kind="foundation", body=Body("b", {})
    )
    assert again.verdict == "passes"
    assert (found.verdict == "passes") == (count >= made)


@given(
    count=st.integers(20, 400),
    mass=st.floats(1.0, 60.0),
    width=st.floats(80.0, 300.0),
    length=st.floats(20_000.0, 500_000.0),
)
def test_more_stitches_never_take_less_yarn_when_one_is_added(
    count: int, mass: float, width: float, length: float
) -> None:
    """Weighed or not, yarn grows with the work, and the interval holds the estimate."""
    label = Yarn("yarn", None, "cotton", 50.0, length)
    for weighed in (round(mass, 1), None):
        reading = Reading("double_crochet", "washed", 4.0, 27, width, 15, width, mass=weighed)
        swatch = Swatch("s", "double_crochet", 4.0, label, readings=(reading,))
        plans = [tube(n, width / 27, 1000.0) for n in (count, count + 1)]
        less, more = (
            yarn(expand(p.program, dictionary()), p, swatch, dictionary())[0] for p in plans
        )
        assert less.mass.value < more.mass.value
        assert (less.balls or 0) <= (more.balls or 0)
        assert less.length_low <= less.length.value <= less.length_high
        assert (less.balls or 0) * 50.0 >= 1.1 * less.mass.value - 1e-6


@given(a=st.floats(-0.3, 1.0), b=st.floats(-0.3, 1.0))
def test_shares_of_bodies_never_fall_when_a_garment_gives_more(a: float, b: float) -> None:
    """More stretch, or more fullness, suits no fewer bodies."""
    low, high = sorted((a, b))
    assert 0.0 <= share_passing(low) <= share_passing(high) <= 1.0
    assert 0.0 <= share_reached(low) <= share_reached(high) <= 1.0
