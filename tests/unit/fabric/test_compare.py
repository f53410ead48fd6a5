"""Whether two fabrics are the same."""

from __future__ import annotations

import pytest

from frogless.fabric.compare import same
from frogless.fabric.expand import expand
from frogless.fabric.model import Fabric
from frogless.rows.nodes import Into, Leave, Node, Piece, Program, Repeat, Row, Skip, Together, Work
from frogless.stitches.load import dictionary

D = "double_crochet"
BODY: tuple[Node, ...] = (Repeat((Work(D, 2), Into((Work(D, 2),))), 2),)


def fabric(*bodies: tuple[Node, ...], name: str = "skirt") -> Fabric:
    """A piece of six foundation stitches and rows of those bodies."""
    start = Row(0, "RS", "start", (Work("foundation_double_crochet", 6),), 6)
    rows = [Row(i, "RS", "body", body, 0) for i, body in enumerate(bodies, start=1)]
    return expand(Program((Piece(name, True, (start, *rows)),)), dictionary())


def test_two_fabrics_are_the_same_when_only_written_differently() -> None:
    """A repeat written out is the same fabric."""
    group = Into((Work(D), Work(D)))
    assert same(fabric(BODY), fabric((Work(D), Work(D), group, Work(D, 2), group))) is None


@pytest.mark.parametrize(
    ("body", "said"),
    [
        ((Work(D, 6),), "skirt, row 1: 8 stitches in one, 6 in the other"),
        (
            (Work(D, 2), Into((Work("treble", 2),)), Work(D, 2), Into((Work(D, 2),))),
            "skirt, row 1: stitch 3 is double_crochet in one and treble in the other",
        ),
        (
            (Into((Work(D, 2),)), Work(D, 3), Into((Work(D, 2),)), Work(D)),
            "skirt, row 1: stitch 2 stands on place 1 in one and 0 in the other",
        ),
    ],
)
def test_the_first_difference_is_told_when_stitches_differ(
    body: tuple[Node, ...], said: str
) -> None:
    """Piece, row, stitch and what differs stand in one sentence."""
    assert same(fabric(BODY), fabric(body)) == said


def test_a_skip_is_a_difference_when_nothing_else_differs() -> None:
    """A place left unused by mistake is not one skipped on purpose."""
    assert same(fabric((Work(D, 5), Skip())), fabric((Work(D, 5),))) == (
        "skirt, row 1: place below 6 is skipped (1) or not (0) 1 in one and 0 in the other"
    )


def test_a_place_left_for_later_is_a_difference_when_it_could_be_skipped() -> None:
    """One waits, the other is gone."""
    assert same(fabric((Work(D, 5), Leave())), fabric((Work(D, 5), Skip()))) == (
        "skirt, row 1: place below 6 is skipped (1) or not (0) 0 in one and 1 in the other"
    )
    assert same(fabric((Work(D, 5), Leave())), fabric((Work(D, 5),))) == (
        "skirt, row 1: place below 6 is left for later (1) or not (0) 1 in one and 0 in the other"
    )


def test_an_overrun_is_a_difference_when_nothing_else_differs() -> None:
    """A row that skips beyond the end of the row below is not one that ends there."""
    one, other = fabric((Work(D, 6), Skip())), fabric((Work(D, 6),))
    assert same(one, other) == "skirt, row 1: it runs 1 places over in one and 0 in the other"


def test_places_taken_together_are_a_difference_when_first_is_equal() -> None:
    """A decrease over three is not one over two and a skip."""
    one, other = fabric((Together(D, 3), Skip(3))), fabric((Together(D, 2), Skip(4)))
    assert "takes a number of places 3 in one and 2 in the other" in str(same(one, other))


def test_pieces_and_rows_are_compared_when_numbers_differ() -> None:
    """A missing row and another name are told."""
    assert same(fabric(BODY), fabric()) == "skirt has 2 rows in one and 1 in the other"
    assert same(fabric(), fabric(name="band")) == (
        "the pieces are skirt in one and band in the other"
    )
