"""The reader's own count of places, held against the one that rows have, and against the fabric."""

from __future__ import annotations

from dataclasses import replace

import pytest

from frogless.fabric.expand import expand
from frogless.fabric.stretches import stretch
from frogless.read.build import read_program
from frogless.read.ground import (
    Done,
    Edge,
    Ground,
    Stretch,
    Way,
    after_row,
    first_edge,
    first_made,
    next_edge,
    places_made,
    plain,
    stretch_of,
    taken_by,
)
from frogless.rows.count import consumed, row_left
from frogless.rows.nodes import (
    Base,
    Chain,
    End,
    Into,
    Leave,
    Piece,
    Program,
    Repeat,
    Row,
    Skip,
    Start,
    Together,
    Work,
)
from frogless.stitches.load import dictionary, leaves, stands_on

STITCHES = dictionary()
SC, DC = "single_crochet", "double_crochet"
LACE = Row(
    1,
    "RS",
    "",
    (
        Repeat((Into((Work(SC, 2), Work("picot"), Chain(3))), Skip(2), Chain(1)), 4),
        Together(DC, 3),
        Chain(5, each=True),
        Work(DC, 2),
        Leave(2),
    ),
    0,
    Start(3, counts=True),
)
ROUND = Row(1, "RS", "", (Work(SC, 4),), 4, end=End("first_stitch", turn=True))


def test_two_counters_agree() -> None:
    """Two hands, one number: what a row leaves, and what it takes."""
    made = places_made(LACE, STITCHES, closed=True)
    assert len(made) == row_left(LACE, leaves(STITCHES)) == 25
    assert (made.count("sp3"), made.count("sp1")) == (4, 4)
    assert taken_by(LACE.body, STITCHES) == consumed(LACE.body, stands_on(STITCHES)) == 19


@pytest.mark.parametrize("body", [Work("adjustable_ring"), Chain(4)])
def test_a_ring_is_one_place(body: Work | Chain) -> None:
    """However it is made; chains that are not joined are a chain space."""
    ring = Row(0, "RS", "", (body,), 1, end=End("first_stitch"))
    assert places_made(ring, STITCHES, closed=True) == ("ring",)
    assert places_made(replace(ring, body=(Chain(4),)), STITCHES, closed=False) == ("sp4",)


def test_turned_rows_meet_what_was_made_last_first() -> None:
    """What lies behind comes first, what was left waits at the other end, in rounds after it."""
    edge = Edge((("st", 0), ("sp1", 1), ("sp2", 1)), (("st", 0), ("end", -1)))
    back = Way("WS")
    turned = next_edge(edge, replace(ROUND, end=End(turn=True)), back, closed=False)
    assert turned.ahead == (("sp2", 1), ("sp1", 1), ("st", 0))
    assert turned.behind == (("end", -1), ("st", 0))
    joined = next_edge(edge, replace(ROUND, end=End()), back, closed=True)
    assert joined.ahead == (*turned.ahead, *turned.behind)
    assert joined.behind == ()


def test_a_round_worked_on_meets_what_was_left_first() -> None:
    """The loop stands before it; a row that is not turned begins at its far end instead."""
    edge = Edge((("sp1", 1),), (("sp2", 0),))
    assert next_edge(edge, ROUND, Way("RS"), closed=True).ahead == (("sp2", 0), ("sp1", 1))
    assert next_edge(edge, ROUND, Way("RS"), closed=False).ahead == (("sp1", 1), ("sp2", 0))


def test_a_turned_round_takes_the_place_it_sits_on_first() -> None:
    """Joined to its first stitch, and begun there with a chain that counts."""
    edge = Edge(tuple((f"sp{i}", 1) for i in range(1, 5)))
    counted = Way("WS", start=Start(3, counts=True))
    met = next_edge(edge, ROUND, counted, closed=True).ahead
    assert met is not None
    assert [kind for kind, _ in met] == ["sp1", "sp4", "sp3", "sp2"]


def test_what_a_row_leaves_stays_ahead() -> None:
    """Known or not."""
    row = Row(2, "RS", "", (Work(SC, 2), Leave(2)), 2)
    known = after_row(Edge((), (("st", 1),) * 2 + (("sp1", 1), ("sp2", 1))), row, ("st", "st"))
    assert known == Edge((("st", 2),) * 2, (("sp1", 1), ("sp2", 1)))
    unknown = after_row(Edge((), None), row, ("st", "st"))
    assert unknown.ahead == (("st", -1),) * 2


def test_ground_tells_older_places_from_those_of_the_row_below() -> None:
    """They were left by rows before it."""
    ground = Ground((("st", 2), ("sp1", 0), ("sp2", 2)), below=2)
    assert (ground.places, ground.older(1), ground.older(3)) == (3, 0, 1)
    assert ground.kinds(1, 9) == ("sp1", "sp2")
    assert Ground(None).places is None
    assert plain(None) is None


def test_a_stretch_on_a_last_row_is_met_as_the_sides_say() -> None:
    """Any other in the order it names."""
    on_top = Stretch(("sp1", "sp2", "sp3"), ROUND)
    assert first_edge((on_top,), Way("RS")).ahead == tuple((f"sp{i}", -1) for i in (1, 2, 3))
    assert first_edge((on_top,), Way("WS")).ahead == tuple((f"sp{i}", -1) for i in (3, 2, 1))
    elsewhere = Stretch(("sp1", "end"))
    assert first_edge((elsewhere,), Way("WS")).ahead == (("sp1", -1), ("end", -1))
    assert first_edge((elsewhere,), Way("RS", backwards=True)).ahead == (("end", -1), ("sp1", -1))


def short_rows() -> Piece:
    """Two rows, the second of them turning early, and the row back."""
    rows = (
        Row(0, "WS", "", (Chain(9, each=True),), 9, end=End(turn=True)),
        Row(1, "RS", "", (Work(SC, 9),), 9, Start(1), End(turn=True)),
        Row(2, "WS", "", (Work(SC, 6), Leave(3)), 6, Start(1), End(turn=True)),
        Row(3, "RS", "", (Work(SC, 6),), 6, Start(1), End(turn=True)),
    )
    return Piece("back", False, rows)


@pytest.mark.parametrize("edge", ["foundation", "last_row", "row_ends", "right_edge", "left_edge"])
def test_edges_offer_as_many_places_as_the_fabric_has(edge: str) -> None:
    """A foundation chain has no row end, a short row none where it turns, its row back none there."""
    piece = short_rows()
    made = expand(Program((piece,)), STITCHES).pieces
    base = Base("back", edge)  # type: ignore[arg-type]
    done = tuple(
        Done(
            row.row,
            places_made(row.row, STITCHES, closed=False),
            row.behind > 0,
            bool(row.left.any()),
        )
        for row in made["back"]
    )
    assert len(stretch_of(base, done).places) == stretch(base, made).size
    part = replace(base, first=1, count=2, reverse=True)
    assert len(stretch_of(part, done).places) == stretch(part, made).size


def test_a_row_that_is_not_there_is_no_base() -> None:
    """The reader says which piece has no such row."""
    text = """
back: worked in rows.
Foundation (RS): Work 9 fdc. (9 fdc)

edge: worked in rows, into row 7 of back, RS facing.
Row 1 (RS): Sc in next 9 sts. (9 sc)
"""
    with pytest.raises(Exception, match='"back" has no row 7'):
        read_program(text, STITCHES, "us")


def test_first_stitch_made_is_found_inside() -> None:
    """Chains, ornaments and skips are passed over."""
    inside = Repeat((Skip(), Work("picot"), Into((Work(DC),))), 2)
    assert first_made((Chain(1), inside), STITCHES) == DC
    assert first_made((Chain(1),), STITCHES) is None
