"""Strategies that the property tests share: rows that fit the row below, and programs of them."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache
from typing import get_args

from hypothesis import strategies as st

from frogless.fabric.expand import expand
from frogless.fabric.model import runs_back
from frogless.fabric.stretches import stretch
from frogless.rows.count import consumed, left, left_for_later, row_left
from frogless.rows.nodes import (
    Base,
    Chain,
    Change,
    Edge,
    End,
    Into,
    Leave,
    Node,
    Piece,
    Program,
    Repeat,
    Row,
    Skip,
    Start,
    Together,
    Work,
)
from frogless.stitches.load import dictionary, leaves, stands_on

STANDS_ON = stands_on(dictionary())
LEAVES = leaves(dictionary())
#: Stitches that take one place and leave one.
STITCHES = tuple(
    key
    for key, stitch in dictionary().items()
    if stitch.kind == "stitch" and stitch.stands_on == stitch.leaves == 1
)
#: Stitches that take or leave another number of places, the chain apart, which has a node.
OTHERS = tuple(
    key
    for key, stitch in dictionary().items()
    if stitch.kind == "stitch" and key != "chain" and stitch.leaves > 0 and key not in STITCHES
)
ORNAMENTS = tuple(key for key in dictionary() if STANDS_ON[key] == LEAVES[key] == 0)
FOUNDATIONS = tuple(key for key, s in dictionary().items() if s.begins_on)


@cache
def works(most: int = 6) -> st.SearchStrategy[Node]:
    """A run of one stitch."""
    return st.builds(Work, st.sampled_from(STITCHES), st.integers(1, most))


@cache
def others() -> st.SearchStrategy[Node]:
    """A run of a stitch that takes or leaves several places, or takes none."""
    return st.builds(Work, st.sampled_from(OTHERS), st.integers(1, 3))


@cache
def ornaments() -> st.SearchStrategy[Node]:
    """Picots and beads: nothing taken, nothing left."""
    return st.builds(Work, st.sampled_from(ORNAMENTS), st.integers(1, 3))


@cache
def chains() -> st.SearchStrategy[Node]:
    """A run of chains: one place left."""
    return st.builds(Chain, st.integers(1, 5))


@cache
def changes() -> st.SearchStrategy[Node]:
    """Another colour from here on, the one before it carried or cut."""
    return st.builds(Change, st.sampled_from("ABC"), st.booleans())


@st.composite
def groups(draw: st.DrawFn) -> Node:
    """Several things in one place, at least one of them a stitch."""
    inside = draw(st.lists(works(3) | ornaments() | chains() | changes(), max_size=3))
    return Into((*inside, draw(works(3))))


@cache
def leaf_nodes() -> st.SearchStrategy[Node]:
    """Any node without a repeat."""
    closed = st.builds(Together, st.sampled_from(STITCHES), st.integers(2, 4))
    skips = st.builds(Skip, st.integers(1, 3))
    return works() | others() | groups() | closed | skips | chains() | ornaments() | changes()


@cache
def bodies(most: int = 4) -> st.SearchStrategy[tuple[Node, ...]]:
    """Bodies with repeats in repeats."""
    leaf = st.lists(leaf_nodes(), min_size=1, max_size=most).map(tuple)
    return st.recursive(leaf, _with_repeat, max_leaves=3)


def _with_repeat(
    inner: st.SearchStrategy[tuple[Node, ...]],
) -> st.SearchStrategy[tuple[Node, ...]]:
    repeat = st.builds(Repeat, inner, st.integers(2, 4))
    return st.tuples(leaf_nodes(), repeat) | st.tuples(repeat, leaf_nodes())


@st.composite
def sound_bodies(draw: st.DrawFn, places: int) -> tuple[Node, ...]:
    """A body that takes just `places` places: a pattern as often as it goes, the rest plain."""
    pattern = draw(bodies())
    takes = consumed(pattern, STANDS_ON)
    times = draw(st.integers(0, 4))
    times = min(times, places // takes) if takes else min(times, 1)
    rest = places - times * takes
    body: tuple[Node, ...] = (Repeat(pattern, times),) if times > 1 else pattern * times
    if rest:
        body += (Work(draw(st.sampled_from(STITCHES)), rest),)
    return body


@dataclass(frozen=True, slots=True)
class Waiting:
    """How many places wait ahead of the loop and behind it, and which way the last row ran."""

    ahead: int
    behind: int
    runs_back: bool

    def met(self, row: Row, *, closed: bool) -> Waiting:
        """As the next row meets them."""
        back = runs_back(row)
        if closed or back == self.runs_back:
            return Waiting(self.ahead + self.behind, 0, back)
        return Waiting(self.behind, self.ahead, back)

    def after(self, row: Row) -> Waiting:
        """What it made lies behind, what it left still ahead."""
        return replace(self, ahead=left_for_later(row.body), behind=self.behind + row.count)


@st.composite
def starts(draw: st.DrawFn, places: int) -> Start:
    """Slip stitches or none; then no chain, one that counts, perhaps sharing, or one that lifts."""
    across = draw(st.integers(0, 3)) if places > 6 else 0
    lift = draw(st.integers(0, 4))
    counts = draw(st.booleans()) and lift > 0 and places > across
    shares = counts and draw(st.booleans())
    return Start(lift, counts, shares, across)


@st.composite
def started_bodies(draw: st.DrawFn, start: Start, places: int) -> tuple[Node, ...]:
    """A body that takes or leaves all that the start does not take."""
    rest = places - start.across - int(start.counts and not start.shares)
    shared: tuple[Node, ...] = ()
    if start.shares:
        shared, rest = (Into((draw(works(3)),)),), rest - 1
    later = draw(st.integers(0, rest)) if draw(st.booleans()) else 0
    body = shared + draw(sound_bodies(rest - later))
    return (*body, Leave(later)) if later else body


@st.composite
def sound_rows(draw: st.DrawFn, below: Row, waiting: Waiting, *, closed: bool) -> Row:
    """A row that accounts for every place it is offered, worked on, turned or backwards."""
    side = below.side
    if below.end.turn:
        side = "WS" if below.side == "RS" else "RS"
    join = draw(st.sampled_from(("none", "first_stitch", "chain_top"))) if closed else "none"
    row = Row(
        number=below.number + 1,
        side=side,
        section="body",
        body=(),
        count=0,
        end=End(join, turn=draw(st.booleans())),
        backwards=draw(st.booleans()),
    )
    places = waiting.met(row, closed=closed).ahead
    start = draw(starts(places))
    row = replace(row, start=start, body=draw(started_bodies(start, places)))
    return replace(row, count=row_left(row, LEAVES))


@st.composite
def foundations(draw: st.DrawFn, *, closed: bool) -> Row:
    """A chain, foundation stitches, or a ring."""
    count = draw(st.integers(1, 40))
    rows: list[tuple[tuple[Node, ...], int]] = [((Chain(count, each=True),), count)]
    rows += [((Work(key, count),), count) for key in FOUNDATIONS]
    rows += [((Work("adjustable_ring"),), 1), ((Chain(count),), 1)]
    body, left = draw(st.sampled_from(rows))
    end = End("first_stitch" if closed else "none", turn=draw(st.booleans()))
    return Row(0, "RS", "start", body, left, end=end)


@st.composite
def bases(draw: st.DrawFn, piece: Piece) -> tuple[Base, ...]:
    """One to three stretches of edges of a piece, whatever else is worked there."""
    stretches = []
    for _ in range(draw(st.integers(1, 3))):
        edge: Edge = draw(st.sampled_from(get_args(Edge)))
        row = draw(st.sampled_from(piece.rows)).number
        first = draw(st.integers(0, 4))
        count = draw(st.none() | st.integers(0, 12))
        stretches.append(Base(piece.name, edge, row, first, count, draw(st.booleans())))
    return tuple(stretches)


@st.composite
def based_pieces(draw: st.DrawFn, name: str, below: Piece) -> Piece:
    """A piece of one row or two begun on edges of an earlier one."""
    begun = draw(bases(below))
    made = expand(Program((below,)), dictionary()).pieces
    places = sum(stretch(base, made).size for base in begun)
    closed = draw(st.booleans())
    first = Row(1, draw(st.sampled_from(("RS", "WS"))), "body", (), 0)
    start = draw(starts(places))
    first = replace(first, start=start, body=draw(started_bodies(start, places)))
    first = replace(first, count=row_left(first, LEAVES), end=End(turn=draw(st.booleans())))
    waiting = Waiting(left_for_later(first.body), first.count, runs_back(first))
    rows = [first]
    if draw(st.booleans()):
        rows.append(draw(sound_rows(first, waiting, closed=closed)))
    return Piece(name, closed, tuple(rows), begun)


@st.composite
def programs(draw: st.DrawFn, most_rows: int = 4) -> Program:
    """A piece of a foundation and sound rows, round or flat; perhaps another begun on its edges."""
    closed = draw(st.booleans())
    rows = [draw(foundations(closed=closed))]
    waiting = Waiting(0, rows[0].count, runs_back=False)
    for _ in range(draw(st.integers(0, most_rows))):
        if waiting.ahead + waiting.behind > 500:
            break
        row = draw(sound_rows(rows[-1], waiting, closed=closed))
        waiting = waiting.met(row, closed=closed).after(row)
        rows.append(row)
    piece = Piece("piece", closed, tuple(rows), colour=draw(st.sampled_from(["", "A", "B"])))
    if draw(st.booleans()):
        return Program((piece,))
    return Program((piece, draw(based_pieces("other", piece))))


def left_by(body: tuple[Node, ...]) -> int:
    """Places that a body leaves, by the dictionary."""
    return left(body, LEAVES)
