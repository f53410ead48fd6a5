"""Stretches of edges in words."""

from __future__ import annotations

import pytest

from frogless.fabric.expand import expand
from frogless.rows.nodes import Base, End, Piece, Program, Row, Work
from frogless.stitches.load import dictionary
from frogless.write.edges import needs_numbers, say_along, say_joining, say_stretches
from frogless.write.words import Words

FSC, SC = "foundation_single_crochet", "single_crochet"


@pytest.mark.parametrize(
    ("base", "expected"),
    [
        (Base("skirt", "foundation"), "the foundation edge of skirt"),
        (Base("skirt", "last_row"), "the last row of skirt"),
        (Base("band", "row_ends"), "the row ends of band"),
        (Base("back", "right_edge"), "the row ends at the right edge of back"),
        (Base("back", "left_edge", reverse=True),
         "the row ends at the left edge of back, from last to first"),
        (Base("yoke", "row", 22), "rnd 22 of yoke"),
        (Base("back", "row", 40), "row 40 of back"),
        (Base("back", "row"), "the top of the foundation of back"),
        (Base("yoke", "underside", 23), "the underside of rnd 23 of yoke"),
        (Base("back", "underside"), "the underside of the foundation of back"),
        (Base("yoke", "row", 22, 37, 52), "52 sts along rnd 22 of yoke (sts 38–89)"),
        (Base("yoke", "row", 22, 37, 1), "1 st along rnd 22 of yoke (st 38)"),
        (Base("yoke", "row", 22, 37, 0), "0 sts along rnd 22 of yoke (from st 38)"),
        (Base("yoke", "row", 22, 37), "rnd 22 of yoke from st 38 on"),
        (Base("back", "row", 40, 0, 19, reverse=True),
         "19 sts along row 40 of back (sts 1–19), from last to first"),
        (Base("back", "right_edge", 0, 2, 12),
         "12 row ends at the right edge of back (row ends 3–14)"),
        (Base("band", "row_ends", 0, 2, 12), "12 row ends of band (row ends 3–14)"),
        (Base("band", "row_ends", 0, 2), "the row ends of band from row end 3 on"),
    ],
)  # fmt: skip
def test_stretch_is_told_by_its_edge_and_its_numbers(us: Words, base: Base, expected: str) -> None:
    """Counted from one, as a maker counts."""
    assert say_stretches((base,), us, {"yoke"}) == expected


def test_stretches_are_told_one_after_the_other(us: Words) -> None:
    """A sleeve: what the yoke passed, then the chains underneath."""
    bases = (Base("yoke", "row", 22, 37, 52), Base("yoke", "underside", 23, 74, 6))
    assert say_stretches(bases, us, {"yoke"}, ("st", "ch")) == (
        "52 sts along rnd 22 of yoke (sts 38–89), "
        "then 6 chs along the underside of rnd 23 of yoke (sts 75–80)"
    )


@pytest.mark.parametrize(
    ("bases", "expected"),
    [
        ((Base("band", "last_row"),), "9 sts along the last row of band"),
        ((Base("back", "left_edge"),), "9 row ends at the left edge of back"),
        ((Base("band", "last_row", first=4, count=9),),
         "9 sts along the last row of band (sts 5–13)"),
        ((Base("band", "last_row", first=4),),
         "9 sts, made up of the last row of band from st 5 on"),
        ((Base("band", "last_row", count=8),),
         "9 sts, made up of 8 sts along the last row of band (sts 1–8)"),
        ((Base("band", "last_row", count=4), Base("band", "row_ends", count=5)),
         "9 places, made up of 4 sts along the last row of band (sts 1–4), "
         "then 5 row ends of band (row ends 1–5)"),
    ],
)  # fmt: skip
def test_edge_of_a_seam_tells_all_its_places_and_their_stretches(
    us: Words, bases: tuple[Base, ...], expected: str
) -> None:
    """A whole edge, or one stretch of just that many, is told by its count alone."""
    assert say_along(9, bases, us) == expected


def test_numbers_are_explained_where_there_are_any() -> None:
    """Parts of edges, and sides."""
    assert not needs_numbers((Base("skirt", "foundation"), Base("band", "row_ends")))
    assert needs_numbers((Base("skirt", "foundation"), Base("skirt", "last_row", first=1)))
    assert needs_numbers((Base("skirt", "last_row", count=3),))
    assert needs_numbers((Base("back", "left_edge"),))


@pytest.mark.parametrize(
    ("base", "side", "expected"),
    [
        (Base("back", "last_row"), "RS", "the first st"),
        (Base("back", "last_row"), "WS", "the last st"),
        (Base("back", "last_row", first=2, count=4), "RS", "st 3"),
        (Base("back", "last_row", first=2, count=4), "WS", "st 6"),
        (Base("back", "row", 1, 2, 4, reverse=True), "RS", "st 6"),
        (Base("back", "foundation", reverse=True), "RS", "the last st"),
        (Base("back", "left_edge"), "RS", "the first row end"),
        (Base("back", "left_edge", first=1, reverse=True), "RS", "row end 2"),
    ],
)
def test_yarn_is_joined_where_the_first_row_begins(
    us: Words, base: Base, side: str, expected: str
) -> None:
    """The number that the place has in its own row, whichever way it is met."""
    back = (
        Row(0, "RS", "", (Work(FSC, 9),), 9, end=End(fasten_off=True)),
        Row(1, "RS", "", (Work(SC, 9),), 9, end=End(fasten_off=True)),
    )
    row = Row(1, "WS" if side == "WS" else "RS", "", (Work(SC, 4),), 4)
    piece = Piece("edge", False, (row,), (base,))
    fabric = expand(Program((Piece("back", False, back), piece)), dictionary())
    assert say_joining(piece, fabric, us) == expected
