"""What a body takes, leaves and works."""

from __future__ import annotations

import pytest

from frogless.errors import InputError
from frogless.rows.count import (
    consumed,
    left,
    left_for_later,
    row_consumed,
    row_left,
    row_worked,
    worked,
)
from frogless.rows.nodes import (
    Chain,
    Into,
    Leave,
    Node,
    Repeat,
    Row,
    Skip,
    Start,
    Together,
    Work,
)

STANDS_ON = {"dc": 1, "picot": 0, "wide": 2}
LEAVES = {"dc": 1, "picot": 0, "wide": 1}


@pytest.mark.parametrize(
    ("node", "takes", "leaves"),
    [
        (Work("dc", 7), 7, 7),
        (Work("wide", 3), 6, 3),
        (Work("picot", 3), 0, 0),
        (Into((Work("dc", 5), Work("picot"))), 1, 5),
        (Into((Work("dc"), Chain(2), Work("dc"))), 1, 3),
        (Together("dc", 3), 3, 1),
        (Skip(2), 2, 0),
        (Leave(2), 2, 0),
        (Chain(5), 0, 1),
        (Chain(0), 0, 0),
        (Chain(5, each=True), 0, 5),
        (Repeat((Work("dc", 2), Into((Work("dc", 2),)), Repeat((Skip(),), 2)), 10), 50, 40),
    ],
)
def test_places_are_taken_and_left_when_a_node_is_worked(
    node: Node, takes: int, leaves: int
) -> None:
    """Each kind of node by the contract of the tree."""
    assert consumed((node,), STANDS_ON) == takes
    assert left((node,), LEAVES) == leaves


def test_stitches_are_counted_by_kind_when_worked() -> None:
    """Chains one by one, closed-together stitches once, nothing that is worked 0 times."""
    body = (Repeat((Into((Work("dc", 2), Work("picot"))), Chain(3)), 4), Together("dc", 2))
    assert worked((*body, Work("wide", 0))) == {"dc": 9, "picot": 4, "chain": 12}


@pytest.mark.parametrize(
    ("start", "places", "chains"),
    [(Start(3, counts=True), 11, 3), (Start(2), 10, 2), (Start(), 10, 0)],
    ids=["counts", "does not count", "none"],
)
def test_the_turning_chain_is_a_place_when_it_counts(
    start: Start, places: int, chains: int
) -> None:
    """It stands on one place and leaves one; its chains are worked either way."""
    row = Row(1, "RS", "body", (Work("dc", 10),), places, start)
    assert row_consumed(row, STANDS_ON) == places
    assert row_left(row, LEAVES) == places
    assert row_worked(row)["chain"] == chains


def test_an_unknown_stitch_is_refused_with_a_near_name_when_counted() -> None:
    """A stitch that the table lacks is named with the nearest one."""
    with pytest.raises(InputError, match='unknown stitch "picott"; did you mean "picot"'):
        consumed((Work("picott"),), STANDS_ON)
    with pytest.raises(InputError, match="unknown stitch"):
        left((Repeat((Together("tr", 2),), 2),), LEAVES)


def test_a_chain_takes_no_place_of_its_own_when_it_shares() -> None:
    """It counts, and stands where the body's first stitch stands."""
    row = Row(1, "RS", "body", (Work("dc", 10),), 11, Start(3, counts=True, shares=True))
    assert row_consumed(row, STANDS_ON) == 10
    assert row_left(row, LEAVES) == 11


def test_slip_stitches_across_are_worked_and_take_places_when_a_row_begins() -> None:
    """They leave none."""
    row = Row(1, "RS", "body", (Work("dc", 10),), 10, Start(3, across=4))
    assert row_consumed(row, STANDS_ON) == 14
    assert row_left(row, LEAVES) == 10
    assert row_worked(row) == {"dc": 10, "chain": 3, "slip_stitch": 4}


def test_what_is_left_for_later_is_counted_when_asked() -> None:
    """A body that leaves nothing leaves none."""
    assert left_for_later((Work("dc", 3), Leave(7))) == 7
    assert left_for_later((Work("dc", 3), Skip(7))) == 0
