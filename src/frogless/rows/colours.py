"""Which colours a program works in, what is worked from one end of yarn, and the ends there are."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

from frogless.rows.nodes import Change, Into, Node, Piece, Program
from frogless.rows.walk import nodes, unrolled

Thread = tuple[Piece, ...]
"""Pieces worked one after the other without cutting the yarn between them."""


def changes(body: Iterable[Node]) -> Iterator[Change]:
    """Every change of colour of a body, in the order worked."""
    for node in unrolled(body):
        if isinstance(node, Change):
            yield node
        elif isinstance(node, Into):
            yield from changes(node.body)


def has_changes(piece: Piece) -> bool:
    """Whether a piece changes colour anywhere."""
    return any(isinstance(node, Change) for row in piece.rows for node, _ in nodes(row.body))


def begun_in(piece: Piece) -> tuple[str, ...]:
    """The colour that each row of a piece begins with; "" when there is one colour."""
    found, used = [], piece.colour
    for row in piece.rows:
        found.append(used)
        for change in changes(row.body):
            used = change.colour
    return tuple(found)


def colours_of(program: Program) -> tuple[str, ...]:
    """The letters of all colours that are worked in, in order; none when there is one colour."""
    begun = {piece.colour for piece in program.pieces}
    rows = (row for piece in program.pieces for row in piece.rows)
    met = (node for row in rows for node, _ in nodes(row.body))
    return tuple(sorted((begun | {n.colour for n in met if isinstance(n, Change)}) - {""}))


def threads(program: Program) -> tuple[Thread, ...]:
    """The pieces in order, together with those that go on with the yarn at hand."""
    found: list[list[Piece]] = []
    for index, piece in enumerate(program.pieces):
        if goes_on(program, index):
            found[-1].append(piece)
        else:
            found.append([piece])
    return tuple(tuple(thread) for thread in found)


def goes_on(program: Program, index: int) -> bool:
    """Whether the yarn of the piece before is still on the hook where this one begins."""
    piece = program.pieces[index]
    if not index or not piece.bases:
        return False
    base, before = piece.bases[0], program.pieces[index - 1]
    last = before.rows[-1]
    on_last = base.edge == "last_row" or (base.edge == "row" and base.row == last.number)
    return before.name == base.piece and on_last and not last.end.fasten_off


def ends_of(thread: Sequence[Piece]) -> Counter[str]:
    """Ends to weave in, by letter of the colour.

    A colour has one where it is taken up new and one where it is cut; one that is carried has none
    until the work ends, where every colour still in hand is cut.
    """
    used = thread[0].colour
    in_hand, ends = {used}, Counter({used: 1})
    for change in (c for piece in thread for row in piece.rows for c in changes(row.body)):
        if not change.carried:
            in_hand.discard(used)
            ends[used] += 1
        used = change.colour
        ends[used] += int(used not in in_hand)
        in_hand.add(used)
    ends.update(in_hand)
    return ends
