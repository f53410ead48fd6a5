"""The check of colours: begun with one that is stated, changed to another, all of them bought."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.proof.model import Finding, Subject, finding
from frogless.rows.colours import Thread, colours_of, threads
from frogless.rows.nodes import Piece


def check_colours(subject: Subject) -> Finding:
    """Every colour is stated where it begins, changed to while another is used, and in the materials.

    Nothing is looked at in a pattern of one colour.
    """
    used = colours_of(subject.program)
    faults = [*_not_bought(subject, used)]
    if not used:
        return finding("colours", faults, 0, "changes")
    looked_at = 0
    for thread in threads(subject.program):
        faults += _unsound(thread, subject)
        for piece in thread:
            looked_at += sum(len(row.changes) for row in subject.fabric.pieces[piece.name])
    return finding("colours", faults, looked_at + len(used), "changes and colours")


def _not_bought(subject: Subject, used: tuple[str, ...]) -> Iterator[str]:
    bought, wanted = set(subject.bought), set(used or ("",))
    yield from (f"no yarn is told for colour {letter}" for letter in sorted(wanted - bought))
    yield from (
        f"yarn is told for colour {letter}, which is not used" for letter in sorted(bought - wanted)
    )


def _unsound(thread: Thread, subject: Subject) -> Iterator[str]:
    """What is wrong along one end of yarn; what was on the hook is followed from piece to piece."""
    used = thread[0].colour
    for piece in thread:
        if not piece.colour:
            yield f"{piece.name}: does not say which colour it begins with"
        elif piece.colour != used:
            yield f"{piece.name}: begins with colour {piece.colour} while {used} is on the hook"
        used = piece.colour
        for where, is_begun, after in _changes(piece, subject):
            if not is_begun:
                yield f"{where}: changes colour before anything is worked"
            if after == used:
                yield f"{where}: changes to colour {after}, which is in use"
            used = after


def _changes(piece: Piece, subject: Subject) -> Iterator[tuple[str, bool, str]]:
    """Where each change is, whether anything was worked before it, and the colour changed to."""
    worked = False
    for row in subject.fabric.pieces[piece.name]:
        for made, change in row.changes:
            yield f"{piece.name}, row {row.row.number}", worked or made > 0, change.colour
        worked = worked or row.stitch.size > 0
