"""What is written is proofread as it was meant: each row's count, and nothing found."""

from __future__ import annotations

from hypothesis import assume, given, settings
from property import strategies
from property.test_round_trip import bands, programs, tubes
from property.test_stripes import striped

from frogless.proofread.run import proofread
from frogless.rows.nodes import Chain, Leave, Node, Piece, Program, Row, Skip, Together, Work
from frogless.rows.walk import nodes
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.write.ground import is_ring
from frogless.write.pattern import write_program

STITCHES = dictionary()
#: What random rows are blamed for and that is no arithmetic: chains of any height, odd stitches and
#: groups, a turn here and none there.
STYLE = (
    "turning-chain", "stitch-odd", "joining", "undefined-abbreviation", "mixed-terms", "group-shape",
    "sides", "said-twice", "gaps-alike",
)  # fmt: skip


def faults(program: Program, dialect: Dialect) -> tuple[str, ...]:
    """All that is wrongly found, not understood, not read or read otherwise; then the text."""
    text = write_program(program, STITCHES, dialect)
    report = proofread(text, terms=dialect)
    found = [each for each in report.findings if each.kind not in STYLE]
    said = [f"{each.kind}: {each.row} {each.says}, {each.works_out_to}" for each in found]
    said += [f"not understood: {report.script.words(each.span)}" for each in report.not_understood]
    meant = [(row.number, bool(p.bases)) for p in program.pieces for row in _numbered(p)]
    rows = [(row.number or 0, row.stated, row.worked) for row in report.reckoning.rows]
    rows = [row for row in rows if row[0] or row[1] is not None]
    if [number for number, _ in meant] != [number for number, _, _ in rows]:
        said.append(f"rows {[row[0] for row in rows]}, and not {[row[0] for row in meant]}")
    else:
        said += [
            f"row {number}: stated {stated}, worked {makes}"
            for (number, stated, makes), (_, on_edge) in zip(rows, meant, strict=True)
            # how many places an edge has is known of other pieces alone; rows that are worked again
            # on one line state a count once, the last of them
            if not on_edge and (makes is None or stated not in (None, makes))
        ]
    return (*said, text) if said else ()


def _numbered(piece: Piece) -> list[Row]:
    """The rows that state a count of stitches; a ring states that it is one."""
    return [row for row in piece.rows if not is_ring(row, STITCHES, closed=piece.closed)]


def _of_piece(piece: Piece) -> tuple[str, ...]:
    program = Program((piece,))
    assume(not _lifts_by_one(program))
    return (*faults(program, "us"), *faults(program, "uk"))


def _lifts_by_one(program: Program) -> bool:
    """Whether a single chain counts as a stitch: nobody says that once for all of the rows after it."""
    return any(row.start.counts and row.start.chains == 1 for p in program.pieces for row in p.rows)


@settings(max_examples=30, deadline=None)
@given(tubes())
def test_any_rounds_are_proofread_without_a_fault(piece: Piece) -> None:
    """In both dialects, folded lines among them."""
    assert _of_piece(piece) == ()


@settings(max_examples=30, deadline=None)
@given(bands())
def test_any_flat_rows_are_proofread_without_a_fault(piece: Piece) -> None:
    """In both dialects, folded lines among them."""
    assert _of_piece(piece) == ()


@settings(max_examples=10, deadline=None)
@given(programs())
def test_pieces_on_one_another_are_proofread_without_a_fault(program: Program) -> None:
    """A tube, a cover on its edge, a band, a strand of beads, and the seams that join them."""
    assume(not _lifts_by_one(program))
    assert faults(program, "us") == ()


@settings(max_examples=10, deadline=None)
@given(striped())
def test_stripes_are_proofread_without_a_fault(piece: Piece) -> None:
    """Colors that are carried or cut, and rows in turn on one line."""
    assert _of_piece(piece) == ()


@settings(max_examples=30, deadline=None)
@given(strategies.programs().filter(lambda program: _is_written(program)))
def test_any_program_is_proofread_without_a_fault(program: Program) -> None:
    """Rings, short rows, rows worked back, slip stitches that lead on, pieces on any edges."""
    assert faults(program, "us") == ()


def _is_written(program: Program) -> bool:
    """Whether it is what a designer would write.

    Each row has a stitch, and ends with none but a stitch: chains at the end of a row lift the next.
    Of short rows there is one in a piece, as the reader keeps what the last one left and no more. A
    ring is neither skipped nor left.
    """
    if _lifts_by_one(program):
        return False
    for piece in program.pieces:
        bodies = [tuple(node for node, _ in nodes(row.body)) for row in piece.rows if row.number]
        short = sum(any(isinstance(node, Leave) for node in body) for body in bodies)
        if short > 1 or not all(any(map(_is_stitch, body)) for body in bodies):
            return False
        turned = (r for r in piece.rows if r.number and (r.end.turn or not piece.closed))
        if any(isinstance(row.body[-1], Chain) for row in turned):
            return False
        ring = is_ring(piece.rows[0], STITCHES, closed=piece.closed)
        if ring and any(isinstance(node, Leave | Skip) for node in (bodies or [()])[0]):
            return False
    return True


def _is_stitch(node: Node) -> bool:
    """Whether it is a stitch, and no bead or picot."""
    return isinstance(node, Together) or (
        isinstance(node, Work) and STITCHES[node.stitch].leaves > 0
    )
