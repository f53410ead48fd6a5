"""Rounds between fabrics, plain columns, and what each place of a pattern is worth."""

from __future__ import annotations

import pytest

from frogless.plan.pattern_rounds import base_body, column_nodes, met, weights
from frogless.rows.count import consumed, left
from frogless.rows.nodes import Chain, End, Into, Node, Repeat, Row, Skip, Start, Work
from frogless.stitches.load import dictionary, leaves, stands_on

STITCHES = dictionary()
S = "single_crochet"
ARCHES = (Repeat((Work(S), Chain(3), Skip(3)), 10),)


def row(body: tuple[Node, ...], *, counts: bool = False, join: str = "first_stitch") -> Row:
    """A right-side round."""
    start = Start(3, counts)
    return Row(1, "RS", "", body, 0, start, End(join))  # type: ignore[arg-type]


def both(body: tuple[Node, ...]) -> tuple[int, int]:
    """Places that a body takes, and those that it leaves."""
    return consumed(body, stands_on(STITCHES)), left(body, leaves(STITCHES))


@pytest.mark.parametrize(
    ("below", "count"),
    [(100, 100), (100, 107), (100, 61), (100, 200), (100, 230), (100, 40), (7, 3), (1, 5)],
)
def test_base_round_uses_what_is_there_and_leaves_what_is_asked(below: int, count: int) -> None:
    """Also where it doubles, or takes away more than half."""
    assert both(base_body(S, (1,) * below, count)) == (below, count)


@pytest.mark.parametrize("count", [40, 37, 44, 20, 80])
def test_spaces_take_as_many_as_they_have_chains(count: int) -> None:
    """And with another count still as near to that as can be."""
    below = weights(row(ARCHES), STITCHES)
    assert below == (1, 3) * 10
    assert both(base_body(S, below, count)) == (20, count)


def test_count_that_is_there_already_is_a_stitch_in_each_and_in_each_chain() -> None:
    """40 stitches over ten singles and ten spaces of three."""
    (repeat,) = base_body(S, (1, 3) * 10, 40)
    assert repeat == Repeat((Work(S, 1), Into((Work(S, 3),))), 10)


def test_turned_round_meets_places_in_reverse() -> None:
    """Joined into a chain that counts it begins with that chain."""
    body = (Chain(2), Work(S, 2), Chain(5))
    assert met(row(body), "RS", STITCHES) == (2, 1, 1, 5)
    assert met(row(body), "WS", STITCHES) == (5, 1, 1, 2)
    on_top = row(body, counts=True, join="chain_top")
    assert met(on_top, "RS", STITCHES) == (1, 2, 1, 1, 5)
    assert met(on_top, "WS", STITCHES) == (1, 5, 1, 1, 2)


@pytest.mark.parametrize(
    ("before", "after"),
    [(5, 5), (5, 6), (5, 7), (1, 2), (1, 3), (2, 4), (6, 5), (6, 4), (3, 1), (2, 1), (5, 9)],
)
def test_column_takes_its_places_and_makes_its_stitches(before: int, after: int) -> None:
    """Narrow ones too."""
    assert both(column_nodes("double_crochet", before, after)) == (before, after)


def test_column_is_widened_at_both_edges_by_two_and_in_its_middle_by_one() -> None:
    """As a gore is."""
    two = Into((Work(S, 2),))
    assert column_nodes(S, 5, 7) == (two, Work(S, 3), two)
    assert column_nodes(S, 5, 6) == (Work(S, 2), two, Work(S, 2))
