"""Any program of rings, open rows, short rows and begun pieces is read back as it was written."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings
from property.strategies import programs

from frogless.fabric.compare import same
from frogless.fabric.expand import expand
from frogless.read.build import read_program
from frogless.rows.nodes import Base, Piece, Program, Row, Work
from frogless.rows.walk import flatten
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.write.pattern import write_program

STITCHES = dictionary()
DIALECTS: tuple[Dialect, ...] = ("us", "uk")


def told(program: Program) -> Program:
    """All that a text can tell of a program."""
    return replace(program, pieces=tuple(_piece(piece) for piece in program.pieces))


def _piece(piece: Piece) -> Piece:
    rows = tuple(_row(row) for row in piece.rows)
    return replace(piece, rows=rows, bases=tuple(_base(base) for base in piece.bases))


def _row(row: Row) -> Row:
    """With its body as short as it gets; an adjustable ring is closed by itself."""
    closes_itself = row.body == (Work("adjustable_ring"),)
    end = replace(row.end, join="none") if closes_itself else row.end
    return replace(row, body=flatten(row.body), end=end)


def _base(base: Base) -> Base:
    """With the number of a row only where it says something."""
    return base if base.edge in ("row", "underside") else replace(base, row=0)


@settings(max_examples=150, deadline=None)
@given(programs())
def test_any_sound_program_comes_back_when_written_and_read(program: Program) -> None:
    """In both dialects: the same rows, begun on the same edges, and the same stitches."""
    for dialect in DIALECTS:
        text = write_program(program, STITCHES, dialect)
        read = read_program(text, STITCHES, dialect)
        assert told(read) == told(program), text
        assert same(expand(program, STITCHES), expand(read, STITCHES)) is None
