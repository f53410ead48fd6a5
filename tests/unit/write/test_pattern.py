"""Pieces and programs in words."""

from __future__ import annotations

import pytest

from frogless.rows.nodes import Base, Chain, End, Into, Piece, Program, Repeat, Row, Seam, Work
from frogless.stitches.load import dictionary
from frogless.write.ground import Ground, edge_ground
from frogless.write.pattern import (
    say_heading,
    write_marker_note,
    write_piece,
    write_pieces,
    write_program,
    write_rows,
    write_seam,
)
from frogless.write.words import Words

STITCHES = dictionary()
SC, DC = "single_crochet", "double_crochet"
RING = Row(0, "RS", "", (Work("foundation_double_crochet", 9),), 9, end=End("first_stitch"))


def plain(number: int, end: End = End("first_stitch")) -> Row:  # noqa: B008
    """A round of nine."""
    return Row(number, "RS", "", (Work(DC, 9),), 9, end=end)


SKIRT = Piece("skirt", True, (RING, plain(1), plain(2), plain(3)))
COVER = Piece(
    "cover",
    True,
    (Row(1, "WS", "", (Repeat((Into((Work(SC, 2),)),), 9),), 18),),
    (Base("skirt", "foundation"),),
)


def test_piece_is_folded_and_rows_are_not() -> None:
    """The same words either way."""
    folded, single = write_piece(SKIRT, STITCHES, "us"), write_rows(SKIRT, STITCHES, "us")
    assert [(line.first_row, line.last_row) for line in folded] == [(0, 0), (1, 3)]
    assert [(line.first_row, line.last_row) for line in single] == [(i, i) for i in range(4)]
    assert {line.text for line in single[1:]} == {folded[1].text}


def test_piece_on_an_edge_that_is_not_at_hand_is_written_in_numbers() -> None:
    """ "Each" is said only where it is known how many there are."""
    assert write_piece(COVER, STITCHES, "us")[0].text.startswith("2 sc in each of next 9 sts")
    known = write_piece(COVER, STITCHES, "us", ground=Ground(("st",) * 9))
    assert known[0].text.startswith("2 sc in each st around")


def test_pieces_of_a_program_know_their_edges() -> None:
    """What `write_piece` has to be told, the program knows."""
    skirt, cover = write_pieces(Program((SKIRT, COVER)), STITCHES, "us")
    assert (skirt.name, skirt.heading) == ("skirt", "skirt: worked in joined rounds, not turned.")
    assert cover.lines[0].text == "2 sc in each st around; do not join."
    assert cover.heading == (
        "cover: worked in a spiral, into the foundation edge of skirt, WS facing; "
        "join yarn in the first st."
    )


@pytest.mark.parametrize(
    ("closed", "end", "way"),
    [
        (True, End("first_stitch", turn=True), "in joined rounds, turned"),
        (True, End("first_stitch"), "in joined rounds, not turned"),
        (True, End(), "in a spiral"),
        (True, End(turn=True), "in rounds"),
        (False, End(turn=True), "in rows, turned"),
        (False, End(), "in rows"),
    ],
)
def test_heading_says_how_rows_follow_each_other(
    us: Words, closed: bool, end: End, way: str
) -> None:
    """The last row, which ends the work, has no say."""
    piece = Piece("skirt", closed, (RING, plain(1, end), plain(2, End(fasten_off=True))))
    assert say_heading(piece, us) == f"skirt: worked {way}."


def test_edges_offer_what_their_rows_left(us: Words) -> None:
    """A foundation chain has no row end; the last row may have chain spaces."""
    lace = Row(2, "RS", "", (Chain(2), Work(DC, 8)), 9)
    chain = Row(0, "RS", "", (Chain(4, each=True),), 4)
    pieces = (Piece("skirt", True, (RING, lace)), Piece("band", False, (chain, lace)))

    def offered(base: Base) -> tuple[str, ...] | None:
        piece = Piece("edge", True, (plain(1),), (base,))
        return edge_ground(Program((*pieces, piece)), piece, us).nouns

    assert offered(Base("skirt", "foundation")) == ("st",) * 9
    assert offered(Base("skirt", "row_ends")) == ("end",) * 2
    assert offered(Base("band", "row_ends")) == ("end",)
    assert offered(Base("band", "last_row")) == ("sp2", *("st",) * 8)
    assert offered(Base("band", "foundation")) == ("ch",) * 4


def test_program_declares_its_terms_and_ends_with_its_seams() -> None:
    """Blocks apart by a blank line."""
    seam = Seam("side", SC, (Base("skirt", "last_row"),), (Base("cover", "last_row"),), 9, 9)
    text = write_program(Program((SKIRT, COVER), (seam,)), STITCHES, "uk")
    blocks = text.split("\n\n")
    assert blocks[0] == "Terms: UK"
    assert [block.partition(":")[0] for block in blocks[1:]] == ["skirt", "cover", "Seam side"]
    assert blocks[3].startswith(f"Seam side: {write_seam(seam, STITCHES, 'uk').text}")


def test_marker_note_is_for_pieces_with_markers() -> None:
    """Nothing to say about markers that are not there."""
    assert write_marker_note(SKIRT) == ""
    shaped = Row(1, "RS", "", (Into((Work(DC, 2),)), Work(DC, 8)), 10, marks=(0,))
    assert write_marker_note(Piece("skirt", True, (RING, shaped))).startswith("Move the markers up")
