"""Catches of rows and the work of parts."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

import pytest

from frogless.fabric.expand import expand
from frogless.fabric.model import Fabric
from frogless.plan.model import Plan, StrandPlan
from frogless.rows.nodes import (
    Base,
    Chain,
    End,
    Into,
    Node,
    Piece,
    Program,
    Row,
    Seam,
    Start,
    Together,
    Work,
)
from frogless.stitches.model import Stitch
from frogless.swatch import Gauge, Swatch
from frogless.tally.catches import catches_of, catches_of_row, main_gauge, stitches_worked, works
from frogless.units import Measured


def catches(
    stitches: Mapping[str, Stitch],
    *body: Node,
    start: Start | None = None,
    end: End | None = None,
) -> tuple[int, int]:
    """Catches and stitches of one row worked on a foundation of 40 chains."""
    below = Row(0, "RS", "body", (Chain(40, each=True),), 40)
    row = Row(1, "RS", "body", body, 0, start or Start(), end or End())
    made = expand(Program((Piece("piece", closed=True, rows=(below, row)),)), stitches)
    fabric = made.pieces["piece"][1]
    return catches_of_row(fabric, stitches), stitches_worked(fabric, stitches)


@pytest.mark.parametrize(
    ("node", "expected"),
    [
        (Chain(7), 7),
        (Work("slip_stitch", 3), 3),
        (Work("single_crochet", 3), 6),
        (Work("half_double_crochet", 3), 9),
        (Work("double_crochet", 3), 12),
        (Into((Work("double_crochet", 2),)), 8),
        (Work("picot"), 4),
        (Work("bead"), 0),
    ],
)
def test_a_stitch_catches_as_often_as_its_steps_say_when_worked(
    stitches: Mapping[str, Stitch], node: Node, expected: int
) -> None:
    """Chain 1, slip stitch 1, single 2, half double 3, double 4; a picot is four, a bead none."""
    assert catches(stitches, node)[0] == expected


@pytest.mark.parametrize(
    ("stitch", "places", "expected"),
    [("single_crochet", 2, 3), ("double_crochet", 2, 7), ("double_crochet", 3, 10)],
)
def test_stitches_closed_together_share_their_last_catch_when_decreasing(
    stitches: Mapping[str, Stitch], stitch: str, places: int, expected: int
) -> None:
    """Two doubles together catch 3 + 3 + 1 times."""
    assert catches(stitches, Together(stitch, places))[0] == expected


def test_turning_chain_and_join_are_counted_when_a_round_has_them(
    stitches: Mapping[str, Stitch],
) -> None:
    """Chain 3, ten doubles, slip stitch: 3 + 40 + 1."""
    caught, _ = catches(
        stitches,
        Work("double_crochet", 10),
        start=Start(3, counts=True),
        end=End("chain_top"),
    )
    assert caught == 44


def test_chains_and_slip_stitches_are_no_stitches_when_a_maker_counts(
    stitches: Mapping[str, Stitch],
) -> None:
    """Only what takes its time is counted."""
    body = (Work("double_crochet", 5), Chain(3), Work("slip_stitch", 2), Work("picot"))
    assert catches(stitches, *body)[1] == 6


def test_an_unlisted_chain_catches_once_when_the_dictionary_lacks_it() -> None:
    """The tree has a node for chains, whatever the dictionary holds."""
    assert catches_of("chain", {}) == 1


def test_work_is_catches_times_the_width_of_the_section_when_gauges_differ(
    stitches: Mapping[str, Stitch],
    swatch: Callable[..., Swatch],
    rows: Callable[..., tuple[Row, ...]],
    plan: Callable[..., Plan],
    fabric: Callable[[Plan], Fabric],
) -> None:
    """A body of doubles at 5.56 mm and an edge of singles at 4 mm."""
    narrow = Gauge("single_crochet", Measured(4.0, 0.1), Measured(4.0, 0.1), "washed")
    main = main_gauge(plan(), swatch())
    made = plan(rows(), rows(stitch="single_crochet", section="edge"),
                gauges={"body": main, "edge": narrow})  # fmt: skip
    body, edge = works(fabric(made), made, stitches, main)
    assert (body.name, edge.name) == ("piece 1: body", "piece 2: edge")
    assert body.work == pytest.approx(1000 * 4 * 100 / 18)
    assert edge.work == pytest.approx(1000 * 2 * 4.0)


def test_seams_are_work_when_pieces_are_joined(
    stitches: Mapping[str, Stitch],
    swatch: Callable[..., Swatch],
    rows: Callable[..., tuple[Row, ...]],
    plan: Callable[..., Plan],
    fabric: Callable[[Plan], Fabric],
) -> None:
    """144 single crochets spread over 98 row ends are 144."""
    base = (Base("piece 1", "last_row"),)
    seam = Seam("band to waist", "single_crochet", base, base, 144, 98, (1,) * 98)
    made = plan(rows(), seams=(seam,))
    found = works(fabric(made), made, stitches, main_gauge(made, swatch()))
    assert found[-1].name == "seams"
    assert found[-1].work == pytest.approx(144 * 2 * 100 / 18)


def test_a_strand_is_left_out_of_the_pieces_when_the_plan_knows_its_yarn(
    stitches: Mapping[str, Stitch],
    swatch: Callable[..., Swatch],
    rows: Callable[..., tuple[Row, ...]],
    plan: Callable[..., Plan],
    fabric: Callable[[Plan], Fabric],
    strand: Callable[..., StrandPlan],
) -> None:
    """Its plies and its hook are not those of the swatch."""
    made = plan(rows(), rows(), strands=(strand(name="piece 2"),))
    found = works(fabric(made), made, stitches, main_gauge(made, swatch()))
    assert [part.name for part in found] == ["piece 1: body"]


def test_the_first_gauge_of_the_plan_serves_when_the_swatch_was_not_read(
    swatch: Callable[..., Swatch], plan: Callable[..., Plan]
) -> None:
    """Something has to stand for the main gauge."""
    unread = replace(swatch(), readings=())
    assert main_gauge(plan(), unread).width.value == pytest.approx(100 / 18)
