"""Shaping rounds and their markers, in a few rounds that can be counted on paper."""

from __future__ import annotations

import pytest

from frogless.plan.shaping import Round, body, in_line, marks
from frogless.rows.nodes import Into, Repeat, Together, Work

DC = "double_crochet"


def test_points_lie_half_a_gap_from_the_join() -> None:
    """40 places and four points: the middle of each quarter."""
    assert Round(40, 4, 1).positions() == (5, 15, 25, 35)
    assert Round(40, 4, 1).groups() == (5, 16, 27, 38)


def test_counted_chain_stands_on_the_join() -> None:
    """Place 0 is the chain's, so a point at the quarter's middle is nearer to place 5 than 4.5."""
    assert Round(40, 4, 1, chain_counts=True).positions() == (5, 15, 25, 35)
    assert Round(44, 4, 1, chain_counts=True).positions() == (6, 17, 28, 39)
    assert Round(44, 4, 1).positions() == (5, 16, 27, 38)


def test_first_place_is_the_chains_when_it_counts() -> None:
    """Even when the points lie close, nothing is increased in the chain."""
    assert Round(6, 2, 1, chain_counts=True).positions()[0] >= 1
    assert Round(3, 3, 1, chain_counts=True).positions()[0] >= 1


def test_decrease_takes_the_places_about_the_line() -> None:
    """Two places of four points in 40: one before the line, one after it."""
    assert Round(40, 4, -1).positions() == (4, 14, 24, 34)
    assert Round(40, 4, -2).positions() == (4, 14, 24, 34)
    assert Round(40, 4, -1).left == 36


def test_decrease_round_is_worded_together() -> None:
    """dc 4, [dc2tog, dc 8] 3 times, dc2tog, dc 4."""
    assert body(DC, Round(40, 4, -1)) == (
        Work(DC, 4),
        Repeat((Together(DC, 2), Work(DC, 8)), 3),
        Together(DC, 2),
        Work(DC, 4),
    )


def test_two_stitches_are_added_in_one_place() -> None:
    """3 dc in the marked stitch."""
    first, repeat, *_ = body(DC, Round(40, 4, 2))
    assert first == Work(DC, 5)
    assert isinstance(repeat, Repeat)
    assert repeat.body[0] == Into((Work(DC, 3),))


def test_gaps_that_repeat_in_pairs_are_folded_in_pairs() -> None:
    """84 places and eight points: gaps of 9 and 10 by turns are told as three pairs and a rest."""
    two = Into((Work(DC, 2),))
    pair = Repeat((two, Work(DC, 9), two, Work(DC, 10)), 3)
    assert body(DC, Round(84, 8, 1))[:2] == (Work(DC, 5), pair)


def test_marker_moves_into_the_stitch_that_the_next_round_increases() -> None:
    """On the line, it is the first of two; past half a stitch, the second."""
    one = Round(40, 4, 1)
    assert marks(one, Round(44, 4, 1)) == (0, 0, 0, 0)
    turned = marks(one, Round(44, 4, 1, "WS"))
    assert set(turned) <= {0, 1}


def test_marker_stays_in_the_middle_when_nothing_follows() -> None:
    """Of three stitches the second; of two the first; of one that one."""
    assert marks(Round(40, 4, 2), None) == (1, 1, 1, 1)
    assert marks(Round(40, 4, 1), None) == (0, 0, 0, 0)
    assert marks(Round(40, 4, -1), None) == (0, 0, 0, 0)


def test_markers_are_placed_afresh_when_the_number_of_points_changes() -> None:
    """Four points do not lead to eight."""
    assert marks(Round(40, 4, 2), Round(48, 8, 1)) == (1, 1, 1, 1)


@pytest.mark.parametrize("chain_counts", [False, True])
def test_increase_above_a_decrease_is_worked_in_the_marked_stitch(*, chain_counts: bool) -> None:
    """There is one stitch above a decrease, and the line may run beside it in a turned round."""
    below = Round(36, 4, -1, "RS", chain_counts)
    for places in range(36, 60):
        below = Round(places, 4, -1, "RS", chain_counts)
        _, above = in_line((below, Round(below.left, 4, 1, "WS", chain_counts)))
        last = below.left - int(not chain_counts)
        assert above.positions() == tuple(last - g for g in reversed(below.groups()))


def test_increase_above_an_increase_is_left_on_its_line() -> None:
    """Only a decrease leaves no choice."""
    rounds = (Round(40, 4, 1), Round(44, 4, 1))
    assert in_line(rounds) == rounds
