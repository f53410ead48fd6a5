"""What is picked up evenly along an edge, stretch by stretch."""

from __future__ import annotations

import pytest

from frogless.read.build import read_program
from frogless.rows.nodes import Base, Chain, End, Into, Node, Piece, Program, Row, Start, Work
from frogless.rows.spread import even_spread, worked_over
from frogless.stitches.load import dictionary, stands_on
from frogless.stitches.model import Dialect
from frogless.write.evenly import Evenly, even_parts, say_shares
from frogless.write.pattern import write_program
from frogless.write.words import Words

S = "single_crochet"
STANDS_ON = stands_on(dictionary())
UNEVEN = worked_over(S, even_spread(17, 12))
UNDERARM = Chain(4, each=True)


def band(*body: Node, count: int) -> Program:
    """A front of twelve rows, and a band down its left edge and along its last row."""
    turned = End(turn=True)
    front = [Row(0, "WS", "", (Chain(5, each=True),), 5, end=turned)]
    for number in range(1, 13):
        front.append(Row(number, "RS" if number % 2 else "WS", "", (Work(S, 5),), 5, end=turned))
    bases = (Base("front", "left_edge", reverse=True), Base("front", "last_row"))
    picked_up = Row(1, "RS", "", body, count, Start(1), End(fasten_off=True))
    return Program((Piece("front", False, tuple(front)), Piece("band", False, (picked_up,), bases)))


def test_a_stretch_is_one_part_when_it_is_picked_up_evenly() -> None:
    """Seventeen over twelve; then five stitches, one in each."""
    parts = even_parts((*UNEVEN, Work(S, 5)), (12, 5), STANDS_ON)
    assert parts == (Evenly(S, 17, 12), (Work(S, 5),))


def test_a_run_is_cut_when_it_goes_on_over_the_end_of_a_stretch() -> None:
    """Nine in nine places are six of one stretch and three of the next."""
    body = (*worked_over(S, even_spread(9, 6)), Work(S, 9), *worked_over(S, even_spread(9, 6)))
    assert even_parts(body, (6, 9, 6), STANDS_ON) == (
        Evenly(S, 9, 6),
        (Work(S, 9),),
        Evenly(S, 9, 6),
    )


def test_chains_over_a_gap_stand_after_their_stretch_when_it_is_even() -> None:
    """An underarm bridged between two stretches."""
    body = (*UNEVEN, UNDERARM, Work(S, 5))
    assert even_parts(body, (12, 5), STANDS_ON) == (
        Evenly(S, 17, 12),
        (UNDERARM,),
        (Work(S, 5),),
    )


@pytest.mark.parametrize(
    ("body", "stretches"),
    [
        ((Work(S, 12),), (12,)),
        ((Into((Work(S, 2),)), Work(S, 11)), (12,)),
        ((Work(S, 11), Into((Work(S), Work("double_crochet")))), (12,)),
        (worked_over(S, even_spread(27, 26)), (26,)),
        (worked_over(S, even_spread(155, 156)), (156,)),
        (UNEVEN, ()),
        (UNEVEN, (13,)),
    ],
    ids=[
        "one in each",
        "not even",
        "other stitches",
        "one more",
        "one less",
        "no edge",
        "edge is longer",
    ],
)
def test_a_body_stays_as_it_is_when_nothing_is_picked_up_evenly(
    body: tuple[Node, ...], stretches: tuple[int, ...]
) -> None:
    """It is told stitch by stitch, or as one in each."""
    assert even_parts(body, stretches, STANDS_ON) == (body,)


def test_shares_are_told_the_larger_first_when_a_spread_is_even(us: Words) -> None:
    """Scenario B1: 144 stitches over 98 row ends."""
    assert say_shares(even_spread(144, 98), us) == "46 take 2 and 52 take 1"


@pytest.mark.parametrize(("dialect", "stitch"), [("us", "sc"), ("uk", "dc")])
def test_a_band_is_told_in_one_sentence_when_picked_up_over_row_ends(
    dialect: Dialect, stitch: str
) -> None:
    """And is read back as the very same places."""
    program = band(*UNEVEN, Work(S, 5), count=22)
    text = write_program(program, dictionary(), dialect)
    assert (
        f"work 17 {stitch} evenly over next 12 row ends (5 take 2 and 7 take 1), "
        f"{stitch} in next 5 sts."
    ) in text
    assert read_program(text, dictionary(), dialect) == program
