"""Strategies that the property tests share: rows that fit the row below, and programs of them."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from hypothesis import strategies as st

from frogless.rows.count import consumed, left, row_left
from frogless.rows.nodes import (
    Chain,
    End,
    Into,
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
STITCHES = tuple(key for key, stitch in dictionary().items() if stitch.kind == "stitch")[1:]
ORNAMENTS = tuple(key for key in dictionary() if STANDS_ON[key] == LEAVES[key] == 0)
FOUNDATIONS = tuple(key for key, s in dictionary().items() if s.begins_on)


@cache
def works(most: int = 6) -> st.SearchStrategy[Node]:
    """A run of one stitch."""
    return st.builds(Work, st.sampled_from(STITCHES), st.integers(1, most))


@cache
def ornaments() -> st.SearchStrategy[Node]:
    """Picots and beads: nothing taken, nothing left."""
    return st.builds(Work, st.sampled_from(ORNAMENTS), st.integers(1, 3))


@cache
def chains() -> st.SearchStrategy[Node]:
    """A run of chains: one place left."""
    return st.builds(Chain, st.integers(1, 5))


@st.composite
def groups(draw: st.DrawFn) -> Node:
    """Several things in one place, at least one of them a stitch."""
    inside = draw(st.lists(works(3) | ornaments() | chains(), min_size=0, max_size=3))
    return Into((*inside, draw(works(3))))


@cache
def leaf_nodes() -> st.SearchStrategy[Node]:
    """Any node without a repeat."""
    closed = st.builds(Together, st.sampled_from(STITCHES), st.integers(2, 4))
    skips = st.builds(Skip, st.integers(1, 3))
    return works() | groups() | closed | skips | chains() | ornaments()


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


@st.composite
def starts(draw: st.DrawFn) -> Start:
    """No turning chain, one that counts, or one that only lifts the work."""
    lift = draw(st.integers(0, 4))
    return Start(lift, counts=draw(st.booleans()) and lift > 0)


@st.composite
def sound_rows(draw: st.DrawFn, below: Row, closed: bool) -> Row:
    """A row that takes every place of the row below, worked on, turned or backwards."""
    start = draw(starts())
    places = below.count - int(start.counts)
    side = below.side
    if below.end.turn:
        side = "WS" if below.side == "RS" else "RS"
    join = draw(st.sampled_from(("none", "first_stitch", "chain_top"))) if closed else "none"
    row = Row(
        number=below.number + 1,
        side=side,
        section="body",
        body=draw(sound_bodies(places)),
        count=0,
        start=start,
        end=End(join, turn=draw(st.booleans())),
        backwards=draw(st.booleans()),
    )
    return replace(row, count=row_left(row, LEAVES))


@st.composite
def programs(draw: st.DrawFn, most_rows: int = 3) -> Program:
    """One piece of a foundation and sound rows, round or flat."""
    closed = draw(st.booleans())
    count = draw(st.integers(1, 40))
    body: tuple[Node, ...] = draw(
        st.sampled_from(((Chain(count, each=True),), *((Work(f, count),) for f in FOUNDATIONS)))
    )
    end = End("first_stitch" if closed else "none", turn=draw(st.booleans()))
    rows = [Row(0, "RS", "start", body, count, end=end)]
    for _ in range(draw(st.integers(0, most_rows))):
        if not 0 < rows[-1].count < 500:
            break
        rows.append(draw(sound_rows(rows[-1], closed)))
    return Program((Piece("piece", closed, tuple(rows)),))


def left_by(body: tuple[Node, ...]) -> int:
    """Places that a body leaves, by the dictionary."""
    return left(body, LEAVES)
