"""Stated counts in words."""

from __future__ import annotations

import pytest

from frogless.rows.nodes import Chain, Into, Node, Repeat, Row, Start, Together, Work
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


def test_first_stitch_is_found_inside_groups() -> None:
    """Chains are passed over; they are what is joined to only when there is nothing else."""
    assert first_stitch(row(0, Repeat((Chain(1), Into((Work(DC),))), 2))) == DC
    assert first_stitch(row(0, Chain(3))) is None
