"""The round-trip proof: the written pattern, read by an independent parser, is the same fabric."""

from __future__ import annotations

from frogless.errors import FroglessError
from frogless.fabric.compare import same
from frogless.fabric.expand import expand
from frogless.proof.model import Finding, Subject, finding
from frogless.read.build import read_program
from frogless.stitches.model import Dialect


def check_reads_back(subject: Subject) -> Finding:
    """In every dialect the text reads back to the same stitches and the same stated counts."""
    faults = []
    for dialect, text in subject.texts.items():
        difference = _difference(subject, dialect, text)
        if difference is not None:
            faults.append(f"{dialect}: {difference}")
    stitches = sum(int(r.stitch.size) for rows in subject.fabric.pieces.values() for r in rows)
    return finding("reads_back", faults, stitches * len(subject.texts), "stitches")


def _difference(subject: Subject, dialect: Dialect, text: str) -> str | None:
    try:
        program = read_program(text, subject.stitches, dialect)
    except FroglessError as error:
        return f"the text cannot be read: {error}"
    if different := same(subject.fabric, expand(program, subject.stitches)):
        return different
    for ours, theirs in zip(subject.program.pieces, program.pieces, strict=True):
        for row, read in zip(ours.rows, theirs.rows, strict=True):
            if (row.count, row.marks, row.side) != (read.count, read.marks, read.side):
                return f"{ours.name}, row {row.number}: count, markers or side read otherwise"
    return None if program.seams == subject.program.seams else "the seams read otherwise"
