"""Stretches of edges in words, and the words for the numbers in them."""

from __future__ import annotations

import pytest

from frogless.read.edges import read_along, read_stretches
from frogless.rows.nodes import Base, Piece, Program, Row, Work
from frogless.write.edges import needs_numbers, say_along, say_stretches
from frogless.write.pattern import write_numbering_note
from frogless.write.words import Words

STRETCHES = [
    (Base("yoke", "foundation"), "the foundation edge of yoke"),
    (Base("yoke", "last_row"), "the last row of yoke"),
    (Base("yoke", "row_ends"), "the row ends of yoke"),
    (Base("yoke", "right_edge", reverse=True),
     "the row ends at the right edge of yoke, from last to first"),
    (Base("yoke", "row", row=22, first=37, count=52), "52 sts along rnd 22 of yoke (sts 38–89)"),
    (Base("yoke", "row", row=0, first=4, count=1),
     "1 st along the top of the foundation of yoke (st 5)"),
    (Base("yoke", "row", row=3, first=4), "rnd 3 of yoke from st 5 on"),
    (Base("yoke", "underside", row=23, first=9, count=4, reverse=True),
     "4 sts along the underside of rnd 23 of yoke (sts 10–13), from last to first"),
    (Base("yoke", "left_edge", first=2, count=3),
     "3 row ends at the left edge of yoke (row ends 3–5)"),
    (Base("yoke", "row", row=2, count=0), "0 sts along rnd 2 of yoke (from st 1)"),
]  # fmt: skip


@pytest.mark.parametrize(("base", "told"), STRETCHES, ids=[told for _, told in STRETCHES])
def test_stretch_is_read_as_it_was_told(us: Words, base: Base, told: str) -> None:
    """Which places of which edge, and which way."""
    assert say_stretches([base], us, {"yoke"}) == told
    assert read_stretches(told) == (base,)


def test_rows_are_rows_when_the_piece_is_flat(us: Words) -> None:
    """Rounds are for pieces that are worked in rounds."""
    base = Base("back", "row", row=54, count=20)
    assert say_stretches([base], us) == "20 sts along row 54 of back (sts 1–20)"


def test_stretches_follow_one_another_when_there_are_several(us: Words) -> None:
    """In the order met; a seam says how many there are in all."""
    bases = (Base("body", "row", row=4, count=7), Base("left front", "left_edge"))
    told = say_along(19, bases, us, {"body"})
    assert told == (
        "19 places, made up of 7 sts along rnd 4 of body (sts 1–7), "
        "then the row ends at the left edge of left front"
    )
    assert read_along(told) == (19, bases)


@pytest.mark.parametrize(
    ("base", "needed"),
    [
        (Base("yoke", "last_row"), False),
        (Base("yoke", "row_ends", reverse=True), False),
        (Base("yoke", "last_row", first=1), True),
        (Base("yoke", "row", row=1, count=3), True),
        (Base("yoke", "left_edge"), True),
    ],
)
def test_numbers_are_explained_when_an_edge_is_told_by_them(base: Base, needed: bool) -> None:
    """Or by a side, which depends on who looks."""
    assert needs_numbers((base,)) is needed
    row = Row(1, "RS", "", (Work("single_crochet", 3),), 3)
    note = write_numbering_note(Program((Piece("tab", False, (row,), (base,)),)))
    assert note.startswith("Sts are numbered") is needed
