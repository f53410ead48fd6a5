"""What is written is proofread as it was meant: each row's count, and nothing found."""

from __future__ import annotations

from hypothesis import given, settings
from property.test_round_trip import bands, programs, tubes

from frogless.proofread.run import proofread
from frogless.rows.nodes import Piece, Program
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.write.pattern import write_program

STITCHES = dictionary()
#: What random rows are blamed for and that is no arithmetic: chains of any height, odd stitches and
#: groups, a turn here and none there.
STYLE = (
    "turning-chain", "stitch-odd", "joining", "undefined-abbreviation", "mixed-terms", "group-shape",
    "sides", "said-twice",
)  # fmt: skip


def faults(program: Program, dialect: Dialect) -> tuple[str, ...]:
    """All that is wrongly found, not understood, not read or read otherwise; then the text."""
    text = write_program(program, STITCHES, dialect)
    report = proofread(text, terms=dialect, silenced=STYLE)
    said = [f"{each.kind}: {each.row} {each.says}, {each.works_out_to}" for each in report.findings]
    said += [f"not understood: {report.script.words(each.span)}" for each in report.not_understood]
    meant = [(row.number, bool(p.bases)) for p in program.pieces for row in p.rows]
    rows = [(row.number or 0, row.stated, row.worked) for row in report.reckoning.rows]
    rows = [row for row in rows if row[0] or row[1] is not None]
    if [number for number, _ in meant] != [number for number, _, _ in rows]:
        said.append(f"rows {[row[0] for row in rows]}, and not {[row[0] for row in meant]}")
    else:
        said += [
            f"row {number}: stated {stated}, worked {makes}"
            for (number, stated, makes), (_, on_edge) in zip(rows, meant, strict=True)
            # how many places an edge has is known of other pieces alone
            if stated is None or (makes != stated and not (on_edge and makes is None))
        ]
    return (*said, text) if said else ()


def _of_piece(piece: Piece) -> tuple[str, ...]:
    program = Program((piece,))
    return (*faults(program, "us"), *faults(program, "uk"))


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
    assert faults(program, "us") == ()
