"""Stated counts in words."""

from __future__ import annotations

from dataclasses import replace

import pytest

from frogless.rows.nodes import Chain, End, Into, Node, Repeat, Row, Start, Together, Work
from frogless.write.counted import first_stitch, say_count
from frogless.write.words import Words

SC, DC = "single_crochet", "double_crochet"
PICOTS = Into((Work(SC), Work("picot")) * 3)


def row(count: int, *body: Node, start: Start = Start(1)) -> Row:  # noqa: B008
    """A row that states a count."""
    return Row(1, "RS", "", body, count, start)


@pytest.mark.parametrize(
    ("given", "expected"),
    [
        (row(160, Work(DC, 160)), "160 dc"),
        (row(224, Repeat((Work(SC, 3), PICOTS, Chain(1)), 32)), "192 sc, 96 picots, 32 ch-1 sps"),
        (row(1, Chain(5)), "1 ch-5 sp"),
        (row(30, Chain(30, each=True)), "30 ch"),
        (row(20, Repeat((Together(DC, 2), Work(DC, 4)), 4)), "20 dc"),
        (row(12, Repeat((Work("bead"), Chain(20)), 12)), "12 beads, 12 ch-20 sps"),
        (row(20, Work("crossed_double_crochet", 10)), "20 cdc"),
        (row(10, Work("star", 10)), "10 star"),
        (row(15, Work("y_stitch", 5)), "15 sts"),
        (row(1, Into((Work(SC), Work("picot")))), "1 sc, 1 picot"),
    ],
)
def test_count_is_stated_by_kind(us: Words, given: Row, expected: str) -> None:
    """In the order met; ornaments are counted too, though no place is left by them."""
    assert say_count(given, us) == expected


def test_turning_chain_that_counts_is_one_of_the_first_stitch(us: Words) -> None:
    """Chain 3 and 29 double crochets are 30."""
    assert say_count(row(30, Work(DC, 29), start=Start(3, counts=True)), us) == "30 dc"
    assert say_count(row(29, Work(DC, 29), start=Start(3)), us) == "29 dc"


def test_count_that_does_not_add_up_stands_alone(us: Words) -> None:
    """The stated number is shown, never a corrected one."""
    assert say_count(row(161, Work(DC, 160)), us) == "161 sts"
    assert say_count(row(0), us) == "0 sts"


def test_first_stitch_is_found_inside_groups(us: Words) -> None:
    """Chains and ornaments are passed over; a chain is joined to only when there is nothing else."""
    assert first_stitch(row(0, Repeat((Chain(1), Into((Work(DC),))), 2)), us) == DC
    assert first_stitch(row(0, Work("picot"), Work(SC)), us) == SC
    assert first_stitch(row(0, Chain(3)), us) == "chain"


@pytest.mark.parametrize("body", [Work("adjustable_ring"), Chain(4)])
def test_a_ring_is_one_ring_however_it_is_made(us: Words, body: Node) -> None:
    """It is one place; how many chains it has is no count of stitches."""
    ring = Row(0, "RS", "", (body,), 1, end=End("first_stitch"))
    assert say_count(ring, us) == "1 ring"
    flat = Row(0, "RS", "", (Chain(4),), 1)
    assert say_count(flat, us, closed=False) == "1 ch-4 sp"


def test_a_foundation_chain_states_the_chains_that_are_made(us: Words) -> None:
    """Those of the turning chain among them, right or wrong as the count may be."""
    chain = Row(0, "WS", "", (Chain(91, each=True),), 91)
    assert say_count(chain, us, closed=False, more=2) == "93 ch"
    assert say_count(replace(chain, count=90), us, closed=False, more=2) == "92 sts"


def test_a_turning_chain_without_stitches_is_counted_as_a_chain(us: Words) -> None:
    """Otherwise the kinds would not add up."""
    lace = row(2, Chain(2), start=Start(3, counts=True))
    assert say_count(lace, us) == "1 ch-2 sp, 1 ch"
