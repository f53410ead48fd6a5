"""Stripes of any rows and colours are folded and read back row by row, each in its colour."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from frogless.fabric.compare import same
from frogless.fabric.expand import expand
from frogless.read.build import read_program
from frogless.rows.nodes import Chain, Change, End, Node, Piece, Program, Row, Side, Start, Work
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.write.pattern import write_program

STITCHES = dictionary()
DIALECTS: tuple[Dialect, ...] = ("us", "uk")


@st.composite
def striped(draw: st.DrawFn) -> Piece:
    """A band of so many rows in each of some colours, over and over; carried, or cut at random."""
    closed, turned = draw(st.booleans()), draw(st.booleans())
    lengths = draw(st.lists(st.integers(1, 4), min_size=2, max_size=3))
    letters = [letter for letter, n in zip("ABC", lengths, strict=False) for _ in range(n)]
    letters = (letters * draw(st.integers(1, 5)))[: draw(st.integers(2, 24))]
    cut = draw(st.booleans())
    end = End("first_stitch" if closed else "none", turn=turned)
    side: Side = "RS"
    rows = [Row(0, side, "", (Chain(9, each=True),), 9, end=end)]
    for number, letter in enumerate(letters, start=1):
        side = ("WS" if side == "RS" else "RS") if turned else side
        after = letters[number] if number < len(letters) else letter
        changed = (Change(after, carried=not cut or number % 3 > 0),)
        body: tuple[Node, ...] = (Work("single_crochet", 9), *(changed if after != letter else ()))
        rows.append(Row(number, side, "", body, 9, Start(1), end))
    return Piece("band", closed, tuple(rows), colour=letters[0])


@settings(max_examples=60, deadline=None)
@given(striped())
def test_stripes_come_back_row_by_row(piece: Piece) -> None:
    """The same rows, changes and first colour, though rows that come in turn share a line."""
    program = Program((piece,))
    for dialect in DIALECTS:
        text = write_program(program, STITCHES, dialect)
        read = read_program(text, STITCHES, dialect)
        assert read == program, text
        assert same(expand(program, STITCHES), expand(read, STITCHES)) is None
        assert ("colour" in text) == (dialect == "uk")
