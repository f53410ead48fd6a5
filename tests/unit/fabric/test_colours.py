"""The colour of every stitch, and what is carried past others."""

from __future__ import annotations

import numpy as np

from frogless.fabric.colours import Carried, carried, coloured
from frogless.fabric.expand import expand
from frogless.fabric.model import RowFabric
from frogless.rows.nodes import Change, End, Node, Piece, Program, Repeat, Row, Start, Work
from frogless.stitches.load import dictionary

SC = "single_crochet"
FOUR = Work(SC, 4)
NONE = Start()


def rows(*bodies: tuple[Node, ...], start: Start = NONE) -> tuple[RowFabric, ...]:
    """Rounds of four stitches, the first on a foundation of four."""
    below = Row(0, "RS", "", (Work("foundation_single_crochet", 4),), 4, end=End("first_stitch"))
    made = [
        Row(n, "RS", "", body, 4, start, End("first_stitch")) for n, body in enumerate(bodies, 1)
    ]
    fabric = expand(Program((Piece("hat", True, (below, *made), (), "A"),)), dictionary())
    return fabric.pieces["hat"]


def words(begun: str, made: tuple[RowFabric, ...]) -> list[str]:
    """The letters of each row's stitches."""
    found = coloured(begun, made)
    return ["".join(found.letters[i] for i in row.stitch) for row in found.rows]


def test_stitch_before_a_change_counts_to_the_colour_it_is_begun_in() -> None:
    """Two stitches of A; the second is closed with B, and B begins with the third."""
    made = rows((Work(SC, 2), Change("B"), Work(SC, 2)), (FOUR,))
    assert words("A", made) == ["AAAA", "AABB", "BBBB"]


def test_turning_chain_and_join_are_of_the_new_colour_when_it_changes_at_the_end() -> None:
    """The chain of round 2 is made of the loop that round 1 ended with."""
    made = rows((FOUR, Change("B")), (FOUR,), start=Start(1))
    found = coloured("A", made)
    assert words("A", made) == ["AAAA", "AAAAA", "BBBBB"]
    assert [found.letters[row.after] for row in found.rows] == ["A", "B", "B"]


def test_colours_are_met_as_often_as_their_repeat() -> None:
    """One stitch of each, twice."""
    pair = (Work(SC), Change("B"), Work(SC), Change("A"))
    assert words("A", rows((Repeat(pair, 2),)))[1] == "ABAB"


def test_there_is_one_colour_without_a_letter_when_nothing_changes() -> None:
    """All indices are 0."""
    found = coloured("", rows((FOUR,)))
    assert found.letters == ("",)
    assert all(np.array_equal(row.stitch, np.zeros(4, np.int32)) for row in found.rows)


def test_colour_is_carried_from_where_it_is_left_to_where_it_is_taken_up() -> None:
    """A over two rounds, from the end of round 1 to that of round 3; B, cut, is not."""
    made = rows(
        (FOUR, Change("B")), (FOUR,), (FOUR, Change("A", carried=False)), (FOUR, Change("B")),
        (FOUR,),
    )  # fmt: skip
    assert list(carried("A", made)) == [Carried("A", (1, 4), (3, 4))]


def test_nothing_is_carried_when_the_colour_does_not_come_back() -> None:
    """It is cut where the work ends."""
    assert not list(carried("A", rows((FOUR, Change("B")), (FOUR,))))
