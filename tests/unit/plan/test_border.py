"""Borders picked up along edges."""

from __future__ import annotations

from typing import Any

import pytest
from sample_designs import Made as MadeBasis

from frogless.design.pieces.border import BorderChoice
from frogless.errors import Impossible, InputError
from frogless.fabric.expand import expand
from frogless.fabric.model import RowFabric
from frogless.plan.basis import Basis
from frogless.plan.pieces.border import picked_up, plan_border, runs_along
from frogless.plan.pieces.made import Made, OfferedEdge
from frogless.rows.count import consumed, left
from frogless.rows.nodes import Base, Chain, Edge, End, Piece, Program, Row, Side, Work
from frogless.stitches.load import dictionary, leaves, stands_on
from frogless.units import Measured

D = "double_crochet"


@pytest.fixture
def basis(made: MadeBasis) -> Basis:
    """18 double crochets and 10 rows in 10 cm."""
    return made('[[section]]\nname = "all"\ngirth = "waist_girth"\nlength = "60 cm"')


def panel(stitches: int, rows: int) -> Piece:
    """Plain rows on a chain."""
    made = [Row(0, "WS", "start", (Chain(stitches, each=True),), stitches, end=End(turn=True))]
    for number in range(1, rows + 1):
        side: Side = "RS" if number % 2 else "WS"
        row = Row(number, side, "body", (Work(D, stitches),), stitches, end=End(turn=number < rows))
        made.append(row)
    return Piece("front", False, tuple(made))


def edge(
    basis: Basis,
    name: str,
    parts: tuple[tuple[Edge, int], ...],
    length: float,
    **more: Any,  # noqa: ANN401 — any field
) -> OfferedEdge:
    """An edge of the panel."""
    bases = tuple(Base("front", kind) for kind, _ in parts)
    places = tuple(count for _, count in parts)
    return OfferedEdge(name, bases, places, Measured(length), basis.trim_gauge(D), **more)


def border(basis: Basis, *edges: OfferedEdge, **more: Any) -> Made:  # noqa: ANN401 — any key
    """A border along those edges of the panel."""
    keys = {"construction": "border", "name": "band", "stitch": D, **more}
    on = tuple(f"front.{each.name}" for each in edges)
    choice = BorderChoice.model_validate({**keys, "on": on})
    return plan_border(basis, choice, "piece.2", {"front": Made((), (), edges)})


def expanded(band: Made, front: Piece) -> tuple[RowFabric, ...]:
    """The band worked onto the panel."""
    return expand(Program((front, *band.pieces)), dictionary()).pieces["band"]


def test_a_border_takes_what_its_edge_is_long_when_picked_up(basis: Basis) -> None:
    """B1: 98 row ends over 80 cm at 18 stitches are 144: 46 take two, 52 take one."""
    made = border(basis, edge(basis, "side", (("left_edge", 98),), 800.0))
    rows = expanded(made, panel(5, 98))
    assert made.plans[0].counts == (144,)
    assert (rows[0].places, rows[0].overrun) == (144, 0)
    assert sorted(rows[0].used.tolist()) == [1] * 52 + [2] * 46


def test_three_stitches_go_over_two_rows_when_the_design_says_so(basis: Basis) -> None:
    """12 rows of 10 mm: 18 at three to two, where the gauge asks for 21.6."""
    made = border(basis, edge(basis, "side", (("left_edge", 12),), 120.0), per_rows=(3, 2))
    assert expanded(made, panel(5, 12))[0].used.tolist() == [1, 2] * 6
    (told,) = [r for r in made.remarks if r.name == "border_length"]
    assert "17 % shorter than the edge of 12 cm and will draw in" in told.sentence


def test_each_stretch_gets_its_share_when_stitches_and_row_ends_mix(basis: Basis) -> None:
    """A neck of 10 rows, 36 stitches and 10 rows: 10, 20 and 10 cm, so 18, 36 and 18."""
    parts: tuple[tuple[Edge, int], ...] = (("left_edge", 10), ("last_row", 36), ("right_edge", 10))
    made = border(basis, edge(basis, "neck", parts, 400.0))
    used = expanded(made, panel(36, 10))[0].used
    assert made.plans[0].counts == (72,)
    assert [int(part.sum()) for part in (used[:10], used[10:46], used[46:])] == [18, 36, 18]


def test_a_slope_is_longer_than_its_rows_when_shared_out(basis: Basis) -> None:
    """Ten rows on a slope of 15 cm share it alike."""
    (run,) = runs_along(edge(basis, "neck", (("left_edge", 10),), 150.0))
    assert (run.places, run.length) == (10, 150.0)


def test_edges_follow_one_another_when_several_are_named(basis: Basis) -> None:
    """Up one side, along the top, in that order."""
    up = edge(basis, "side", (("right_edge", 20),), 200.0)
    top = edge(basis, "top", (("last_row", 36),), 200.0)
    made = border(basis, up, top, closed=False)
    (piece,) = made.pieces
    assert [base.edge for base in piece.bases] == ["right_edge", "last_row"]
    assert (piece.closed, piece.rows[0].end.join) == (False, "none")
    assert made.plans[0].counts == (72,)


def test_chains_bridge_the_gap_when_an_edge_has_one(basis: Basis) -> None:
    """An armhole: 34 stitches, then six chains at the underarm."""
    hole = edge(basis, "armhole", (("last_row", 36),), 400 / 1.8 + 100 / 9, bridges=(6,))
    made = border(basis, hole)
    row = expanded(made, panel(36, 4))[0]
    assert row.places == made.plans[0].counts[0] == 42
    assert row.used.tolist() == [1] * 36
    assert made.pieces[0].rows[0].body[-1] == Chain(6, each=True)


def test_rows_are_turned_and_cut_when_a_border_is_open(basis: Basis) -> None:
    """3 cm at 10 rows in 10 cm: three rows, the last fastened off."""
    made = border(
        basis, edge(basis, "side", (("left_edge", 30),), 300.0), closed=False, height="3 cm"
    )
    rows = made.pieces[0].rows
    assert [(row.side, row.end.turn, row.end.fasten_off) for row in rows] == [
        ("RS", True, False),
        ("WS", True, False),
        ("RS", False, True),
    ]
    assert made.plans[0].depths == pytest.approx((10.0, 20.0, 30.0))
    assert [each.name for each in made.edges] == ["outer edge", "right end", "left end"]
    assert made.edges[1].places == (3,)


def test_a_multiple_is_met_when_the_border_has_one(basis: Basis) -> None:
    """21.6 exactly: 20 is the nearest multiple of 4, plus 1 is 21."""
    side = edge(basis, "side", (("left_edge", 12),), 120.0)
    assert border(basis, side, multiple=4).plans[0].counts == (20,)
    assert border(basis, side, multiple=4, offset=1).plans[0].counts == (21,)


def test_an_edging_stands_on_its_multiple_when_one_is_asked_for(basis: Basis) -> None:
    """Shells over six: 72 stitches round the neck, then the edging's rounds."""
    neck = edge(basis, "neck", (("last_row", 72),), 400.0)
    made = border(basis, neck, edging={"pattern": "shell", "hook": "3.5 mm"})
    (plan,), (piece,) = made.plans, made.pieces
    assert plan.edging is not None
    assert (plan.edging.base_count, plan.edging.repeats, plan.edging.first_round) == (72, 12, 2)
    assert [row.number for row in piece.rows] == list(range(1, len(piece.rows) + 1))
    assert not piece.rows[0].end.fasten_off
    assert piece.rows[-1].end.fasten_off
    assert set(made.gauges) == {"band", "edging"}


def test_an_edging_in_rows_ends_as_it_began_when_the_border_is_open(basis: Basis) -> None:
    """Shells over 6 + 1: the row picked up is turned, and the edging has a single at either end."""
    neck = edge(basis, "neck", (("last_row", 72),), 400.0)
    made = border(basis, neck, closed=False, edging={"pattern": "shell", "hook": "3.5 mm"})
    (plan,), (piece,) = made.plans, made.pieces
    assert plan.edging is not None
    assert plan.edging.base_count == 6 * plan.edging.repeats + 1
    picked_up, shells = piece.rows[-2:]
    assert (picked_up.side, picked_up.end.turn) == ("RS", True)
    assert (shells.side, shells.end) == ("WS", End(fasten_off=True))
    assert shells.body[-1] == Work("single_crochet", 1)


def test_a_border_that_has_no_room_is_refused(basis: Basis) -> None:
    """Three stitches cannot bridge a gap of six."""
    hole = edge(basis, "hole", (("last_row", 1),), 15.0, bridges=(6,))
    with pytest.raises(Impossible, match="too short for a border of 3 stitches"):
        border(basis, hole)


def test_an_unknown_edge_is_refused_with_those_there_are(basis: Basis) -> None:
    """By piece and name."""
    choice = BorderChoice.model_validate(
        {"construction": "border", "name": "band", "stitch": D, "on": ("front.nek",)}
    )
    neck = edge(basis, "neck", (("last_row", 72),), 400.0)
    with pytest.raises(InputError, match=r'its edges are "front\.neck"'):
        plan_border(basis, choice, "piece.2", {"front": Made((), (), (neck,))})


def test_a_stitch_that_was_not_swatched_is_told_of(basis: Basis) -> None:
    """Its gauge is estimated from the main stitch."""
    side = edge(basis, "side", (("left_edge", 12),), 120.0)
    made = border(basis, side, stitch="single_crochet")
    assert "border_gauge" in {remark.name for remark in made.remarks}


def test_a_border_uses_every_place_once_when_counted_without_unrolling(basis: Basis) -> None:
    """The tree says the same as the fabric."""
    runs = tuple(runs_along(edge(basis, "side", (("left_edge", 98),), 800.0)))
    body = picked_up(D, runs, 144)
    assert consumed(body, stands_on(dictionary())) == 98
    assert left(body, leaves(dictionary())) == 144
