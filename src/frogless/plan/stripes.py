"""Changes of colour between rows: where they are made, and which colours are carried.

The stitch before a change draws the new colour through as its last loop, so the change is made in
the last stitch of the row before the stripe. A round is then joined in the new colour, and its
turning chain is of it too.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Literal

from frogless.design.colours import Stripe
from frogless.rows.colours import Thread, changes
from frogless.rows.count import left_for_later, row_consumed
from frogless.rows.nodes import Change, Node, Piece, Row, Skip, Work

# Rows over which a colour is carried up the edge before it is wanted again; over more it is cut.
# Common practice: 2 to 4.
MOST_CARRIED = 4

# Stitches by which slip stitches may move the beginning of rounds on while a colour hangs there; a
# longer strand snags. Common practice: strands over 3 to 5 stitches.
MOST_SLIPPED = 4


Where = Literal["same", "other", "passed"]


@dataclass(frozen=True, slots=True)
class Turn:
    """A row after which another colour is worked with.

    Args:
        rows: until the colour before comes back; None when it does not, or when a stitch pattern
            decides.
        edge: where it is wanted again: at the edge at which it is left, at the other one, or where
            stitches were left or passed on the way, so that it hangs where the work no longer is.
    """

    piece: Piece
    row: Row
    change: Change
    rows: int | None
    edge: Where

    @property
    def is_cut_for_its_edge(self) -> bool:
        """Whether the colour is cut only because it is wanted again at the other edge."""
        return self.rows is not None and self.rows <= MOST_CARRIED and self.edge == "other"


@dataclass(frozen=True, slots=True)
class _Step:
    """One row of a thread, the colour it begins with, and the one it has in its last stitch.

    Args:
        own: it changes colours by its own stitch pattern.
        after: the change in its last stitch that its pattern makes.
    """

    piece: Piece
    row: Row
    begins: str
    ends: str
    own: bool
    after: Change | None


def stripe_at(row: int, stripes: Sequence[Stripe]) -> str:
    """The colour of the row that comes after `row` others, when the stripes repeat.

    A stripe without a number of rows is the last and has all that are left.

    >>> [stripe_at(n, (Stripe(colour="A", rows=2), Stripe(colour="B", rows=1))) for n in range(5)]
    ['A', 'A', 'B', 'A', 'A']
    """
    whole = sum(stripe.rows or 0 for stripe in stripes)
    left = row if stripes[-1].rows is None else row % whole
    for stripe in stripes:
        if stripe.rows is None or left < stripe.rows:
            return stripe.colour
        left -= stripe.rows
    raise ValueError("a row beyond the last stripe")


def counted_rows(rows: Sequence[Row], stands_on: Mapping[str, int]) -> tuple[bool, ...]:
    """Which rows make a stripe higher all along.

    Not a foundation chain or a ring, and no short rows: those that leave places which a later row
    takes up again, and the rows between.

    Args:
        stands_on: places that each stitch takes, by key.
    """
    counted = [row.number > 0 or _is_fabric(row) for row in rows]
    short: int | None = None
    for i, row in enumerate(rows):
        left = left_for_later(row.body)
        offered = rows[i - 1].count if i else 0
        if short is not None and row_consumed(row, stands_on) - left > offered:
            counted[short:i] = [False] * (i - short)
            short = None
        if left and short is None:
            short = i
    return tuple(counted)


def _is_fabric(foundation: Row) -> bool:
    """Whether a foundation is a row of stitches, and neither a chain nor a ring."""
    return foundation.count > 1 and any(isinstance(node, Work) for node in foundation.body)


def turns(thread: Thread, letters: Mapping[str, Sequence[str]]) -> Iterator[Turn]:
    """Every change between the rows of pieces that are worked with one end of yarn.

    Args:
        letters: for each piece, by its name, the colour that each of its rows is to begin with; ""
            where a row goes on with the one in use, as its own stitch pattern has it.
    """
    steps = _steps(thread, letters)
    for i, (step, after) in enumerate(pairwise(steps)):
        if after.begins == step.ends:
            continue
        if step.after is not None and step.after.colour == after.begins:
            yield Turn(step.piece, step.row, step.after, None, "same")
            continue
        back = _comes_back(steps, i)
        edge: Where = "same" if back is None else _edge(steps[i : back + 2])
        rows = None if back is None else back - i
        carried = edge == "same" and rows is not None and rows <= MOST_CARRIED
        yield Turn(step.piece, step.row, Change(after.begins, carried), rows, edge)


def begins(thread: Thread, letters: Mapping[str, Sequence[str]]) -> Iterator[tuple[Piece, str]]:
    """Each piece of a thread with the colour that it begins with; `letters` as in `turns`."""
    found = {step.piece.name: step for step in reversed(_steps(thread, letters))}
    return ((piece, found[piece.name].begins) for piece in thread)


def _steps(thread: Thread, letters: Mapping[str, Sequence[str]]) -> list[_Step]:
    steps: list[_Step] = []
    used = thread[0].colour
    for piece in thread:
        for row, letter in zip(piece.rows, letters[piece.name], strict=True):
            begins = letter or used
            inside, after = _without_last(row.body)
            made = [change.colour for change in changes(inside)]
            ends = made[-1] if made else begins
            steps.append(_Step(piece, row, begins, ends, bool(made) or after is not None, after))
            used = after.colour if after else ends
    return steps


def _without_last(body: tuple[Node, ...]) -> tuple[tuple[Node, ...], Change | None]:
    """A body without the change in its last stitch, and that change."""
    last = body[-1] if body else None
    return (body[:-1], last) if isinstance(last, Change) else (body, None)


def _comes_back(steps: Sequence[_Step], left: int) -> int | None:
    """The row after which the colour of row `left` is worked with again, when no pattern decides."""
    for j in range(left + 1, len(steps)):
        if steps[j].own:
            return None
        if j + 1 < len(steps) and steps[j + 1].begins == steps[left].ends:
            return None if steps[j + 1].own else j
    return None


def _edge(steps: Sequence[_Step]) -> Where:
    """Where the last row begins, against where a colour left after the first row hangs.

    Rounds all end at the join. Rows end at the same edge when they run the same way.
    """
    first, *between, last = steps
    if any(_leaves_its_edge(step) for step in (first, *between)):
        return "passed"
    slipped = sum(step.row.start.across for step in (*between, last))
    if all(step.piece.closed for step in steps):
        return "same" if slipped <= MOST_SLIPPED else "passed"
    if slipped:
        return "passed"
    if any(step.piece.closed for step in steps):
        return "passed"
    return "same" if _runs_back(first.row) == _runs_back(between[-1].row) else "other"


def _leaves_its_edge(step: _Step) -> bool:
    """Whether a row ends before the edge: short, or with stitches that are never worked."""
    is_short = left_for_later(step.row.body) > 0
    skips = any(isinstance(node, Skip) for node in step.row.body[-1:])
    return is_short or (skips and not step.piece.closed)


def _runs_back(row: Row) -> bool:
    return (row.side == "WS") != row.backwards


def with_changes(piece: Piece, begun: str, turned: Sequence[Turn]) -> Piece:
    """The piece begun in a colour, each row with the change that is made in its last stitch.

    A change that a pattern makes there and that is not among them has nothing worked after it.
    """
    made = {turn.row.number: (turn.change,) for turn in turned if turn.piece.name == piece.name}
    rows = tuple(
        replace(row, body=(*_without_last(row.body)[0], *made.get(row.number, ())))
        for row in piece.rows
    )
    return replace(piece, rows=rows, colour=begun)
