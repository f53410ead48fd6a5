"""Strategies for stitch patterns: rows for any number of repeats, each fitting the one before."""

from __future__ import annotations

from dataclasses import dataclass, replace

from hypothesis import strategies as st
from property.strategies import (
    LEAVES,
    STANDS_ON,
    STITCHES,
    chains,
    changes,
    groups,
    ornaments,
    works,
)

from frogless.rows.count import consumed, left
from frogless.rows.nodes import End, Into, Node, Repeat, Skip, Start, Together
from frogless.stitches.load import dictionary
from frogless.stitches.pattern_rows import PatternRow, Way

GROUPS = tuple(Into(stitch.works) for stitch in dictionary().values() if stitch.works)


@dataclass(frozen=True, slots=True)
class Below:
    """Places that a row leaves: some outside the repeats, and some in each of them."""

    outside: int
    each: int


@st.composite
def nodes_over(draw: st.DrawFn, places: int) -> tuple[Node, ...]:
    """Nodes that take just so many places; between them what takes none."""
    found: list[Node] = []
    while places > 0:
        node = draw(_taking(places))
        takes = consumed((node,), STANDS_ON)
        if takes > places:
            continue
        found.append(node)
        places -= takes
        if draw(st.integers(0, 3)) == 0:
            found.append(draw(chains() | ornaments() | changes()))
    return tuple(found)


def _taking(places: int) -> st.SearchStrategy[Node]:
    named = st.sampled_from(GROUPS)
    one = works(1) | groups() | named | st.builds(Skip, st.integers(1, min(places, 3)))
    if places < 2:
        return one
    closed = st.builds(Together, st.sampled_from(STITCHES), st.integers(2, min(places, 4)))
    repeated = st.builds(lambda node: Repeat((node, Skip()), places // 2), works(1) | named)
    return one | works(min(places, 6)) | closed | repeated


@st.composite
def pattern_rows(draw: st.DrawFn, below: Below, *, closed: bool) -> PatternRow:
    """A row that takes all places over any number of repeats."""
    each = draw(st.sampled_from([n for n in range(1, below.each + 1) if below.each % n == 0]))
    start = draw(_starts(below))
    outside = below.outside - _own(start)
    # The repeat may be worked over places at the edges as well.
    outside -= each * draw(st.integers(0, max(outside, 0) // each))
    first: tuple[Node, ...] = ()
    if start.shares:
        if outside < 1:
            start = replace(start, shares=False)
            outside -= 1
        else:
            first, outside = (Into((draw(works(3)),)),), outside - 1
    if outside < 0:
        start, outside = Start(draw(st.integers(0, 3))), below.outside
    cut = draw(st.integers(0, outside))
    before, repeat, after = (draw(nodes_over(places)) for places in (cut, each, outside - cut))
    end = draw(_ends(start, closed=closed))
    return PatternRow(start, (*first, *before), repeat, after, end)


def _own(start: Start) -> int:
    return int(start.counts and not start.shares)


@st.composite
def _starts(draw: st.DrawFn, below: Below) -> Start:
    lift = draw(st.integers(0, 4))
    counts = lift > 0 and below.outside > 0 and draw(st.booleans())
    return Start(lift, counts, counts and draw(st.booleans()))


@st.composite
def _ends(draw: st.DrawFn, start: Start, *, closed: bool) -> End:
    if not closed:
        return End(turn=draw(st.booleans()))
    joins = ["none", "first_stitch", *(["chain_top"] if start.chains else [])]
    return End(draw(st.sampled_from(joins)), turn=draw(st.booleans()))


@st.composite
def ways(draw: st.DrawFn) -> Way:
    """One to three rows, flat or in rounds; that they come again is not asked for."""
    closed = draw(st.booleans())
    multiple, offset = draw(st.integers(1, 8)), draw(st.integers(0, 4))
    below = Below(offset, multiple)
    rows: list[PatternRow] = []
    for _ in range(draw(st.integers(1, 3))):
        row = draw(pattern_rows(below, closed=closed))
        rows.append(row)
        below = left_by(row, below)
        if not below.each or below.each > 24:
            break
    colour = draw(st.sampled_from(["", "A"]))
    return Way(closed, multiple, offset, tuple(rows), len(rows) - 1, 1, colour=colour)


def left_by(row: PatternRow, below: Below) -> Below:
    """What a row leaves of the places that it takes."""
    takes, makes = consumed(row.repeat, STANDS_ON), left(row.repeat, LEAVES)
    taken = _own(row.start) + consumed((*row.before, *row.after), STANDS_ON)
    around = int(row.start.counts) + left((*row.before, *row.after), LEAVES)
    more = (below.outside - taken) // takes
    return Below(around + more * makes, below.each // takes * makes)
