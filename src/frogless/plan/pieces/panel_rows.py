"""The rows of a flat piece: strips of rows with what each edge does, turned into the row program."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace

from frogless.errors import Impossible, Place
from frogless.plan.pieces.panel_edges import STILL, Change, Hand, side_of
from frogless.rows.nodes import (
    Base,
    Chain,
    End,
    Into,
    Leave,
    Node,
    Piece,
    Row,
    Skip,
    Start,
    Together,
    Work,
)

FOUNDATION = "foundation"


@dataclass(frozen=True, slots=True)
class Span:
    """Rows of one section: its stitch, and the turning chain with which its rows begin.

    Args:
        rows: themselves, when they are those of a stitch pattern.
    """

    name: str
    first: int
    last: int
    stitch: str
    chains: int
    counts: bool
    rows: tuple[Row, ...] = ()


@dataclass(frozen=True, slots=True)
class ShortRows:
    """Pairs of short rows in row `at`, each turned `step` stitches before the one below."""

    at: int
    pairs: int
    step: int

    @property
    def rows(self) -> int:
        """How many are worked besides the row itself."""
        return 2 * self.pairs


@dataclass(frozen=True, slots=True)
class Strip:
    """A stretch of rows that one piece of the program holds.

    Args:
        count: stitches before its first row.
        edges: what each edge does, by row.
        inner: for rows shaped inside, what changes at which stitch counted from the right edge.
        begun_with: the foundation's stitch; "" when it is begun on `bases`.
    """

    name: str
    first: int
    last: int
    count: int
    edges: Mapping[Hand, Mapping[int, Change]]
    inner: Mapping[int, tuple[tuple[int, int], ...]] = field(default_factory=dict)
    begun_with: str = ""
    bases: tuple[Base, ...] = ()
    short: ShortRows | None = None

    def change(self, hand: Hand, row: int) -> Change:
        """What an edge does in a row."""
        return self.edges[hand].get(row, STILL)

    def count_after(self, row: int) -> int:
        """Stitches that a row leaves; before the first row, those it begins on."""
        return self.count + sum(self._gained(r) for r in range(self.first, row + 1))

    def counts_before(self) -> Iterator[int]:
        """Stitches that each row begins with."""
        total = self.count
        for row in range(self.first, self.last + 1):
            yield total
            total += self._gained(row)

    def _gained(self, row: int) -> int:
        gained = sum(by for _, by in self.inner.get(row, ()))
        for hand in ("right", "left"):
            change = self.edges[hand].get(row, STILL)
            gained += change.by - change.once
        return gained

    def number(self, row: int) -> int:
        """The number that a row has in the program, short rows below it counted."""
        return row + (self.short.rows if self.short and row >= self.short.at else 0)


def piece_of(strip: Strip, spans: tuple[Span, ...], hook: float, place: Place) -> Piece:
    """The strip as a piece of the program.

    Raises:
        Impossible: a row has too few stitches for its shaping.
    """
    rows = [*_foundation(strip)]
    for row, before in enumerate(strip.counts_before(), start=strip.first):
        span = next(s for s in spans if s.first <= row <= s.last)
        if strip.short and row == strip.short.at:
            rows += _short_rows(strip, strip.short, span)
        elif span.rows:
            rows.append(replace(span.rows[row - span.first], number=strip.number(row)))
        else:
            rows.append(_row(strip, row, before, span, place))
    last = rows[-1]
    rows[-1] = replace(last, end=End(turn=False, fasten_off=True))
    return Piece(
        strip.name, False, tuple(replace(r, hook=r.hook or hook) for r in rows), strip.bases
    )


def _foundation(strip: Strip) -> Iterator[Row]:
    if strip.begun_with:
        made: Node = (
            Chain(strip.count, each=True)
            if strip.begun_with == "chain"
            else Work(strip.begun_with, strip.count)
        )
        yield Row(0, "WS", FOUNDATION, (made,), strip.count, end=End(turn=True))


def _row(strip: Strip, row: int, before: int, span: Span, place: Place) -> Row:
    begins, ends = hands_of(row)
    first, last = strip.change(begins, row), strip.change(ends, row)
    there = before - first.once - last.once
    changes = {**_inside(strip, row, there), **_from_edge(first.by)}
    changes |= {_mirrored(at, by, there): by for at, by in _from_edge(last.by).items()}
    wanted = abs(first.by) + abs(last.by) + len(strip.inner.get(row, ()))
    if there < 1 or len(changes) != wanted or not _fits(changes, there):
        raise Impossible(
            f"{strip.name}, row {strip.number(row)}: {max(there, 0)} stitches are too few for what "
            "is taken away there",
            place,
            short_stitches=max(1, 2 * wanted + 2 - there),
            ways_out=("a wider piece", "less shaping in these rows"),
        )
    body = worked(span.stitch, there, changes, is_begun=span.counts)
    skipped = (Skip(last.once),) if last.once else ()
    return Row(
        number=strip.number(row),
        side=side_of(row),
        section=span.name,
        body=(*body, *skipped),
        count=there + sum(changes.values()),
        start=Start(span.chains, span.counts, across=first.once),
        end=End(turn=True),
    )


def hands_of(row: int) -> tuple[Hand, Hand]:
    """The edge where a row begins, and the one where it ends."""
    return ("right", "left") if row % 2 else ("left", "right")


def _from_edge(by: int) -> dict[int, int]:
    """Changes one stitch in from the edge where the row begins, by the place they begin at."""
    width = 2 if by < 0 else 1
    return {1 + i * width: (1 if by > 0 else -1) for i in range(abs(by))}


def _mirrored(at: int, by: int, there: int) -> int:
    """The same change counted from the other end of the row."""
    return there - at - (2 if by < 0 else 1)


def _inside(strip: Strip, row: int, there: int) -> dict[int, int]:
    changes = strip.inner.get(row, ())
    if row % 2:
        return dict(changes)
    return {_mirrored(at, by, there): by for at, by in changes}


def _fits(changes: Mapping[int, int], there: int) -> bool:
    """Whether changes stand beside each other, with the first and the last stitch plain."""
    reached = 1
    for at, by in sorted(changes.items()):
        if at < reached:
            return False
        reached = at + (2 if by < 0 else 1)
    return reached < there or not changes


def worked(
    stitch: str, places: int, changes: Mapping[int, int], *, is_begun: bool = False
) -> tuple[Node, ...]:
    """A body over so many places: two in one for a gain, two together for a loss.

    Args:
        changes: by the place where each begins, +1 or -1.
        is_begun: the turning chain stands for the first stitch.

    >>> worked("single_crochet", 6, {1: -1})
    (Work(stitch='single_crochet', times=1), Together(stitch='single_crochet', places=2), \
Work(stitch='single_crochet', times=3))
    """
    nodes: list[Node] = []
    at = 1 if is_begun else 0
    for change, by in sorted(changes.items()):
        nodes += [Work(stitch, change - at)] if change > at else []
        nodes.append(Together(stitch, 2) if by < 0 else Into((Work(stitch, 2),)))
        at = change + (2 if by < 0 else 1)
    nodes += [Work(stitch, places - at)] if places > at else []
    return tuple(nodes)


def _short_rows(strip: Strip, short: ShortRows, span: Span) -> Iterator[Row]:
    """Pairs turned before each edge in turn, then the row that goes on to the far edge.

    The first of them begins at one edge, the last ends at the other: they are one row for the sides.
    """
    count, number = strip.count_after(short.at - 1), short.at
    for pair in range(short.pairs):
        there, back = pair * short.step, (pair + 1) * short.step
        yield _short_row(span, number + 2 * pair, count - there, back)
        yield _short_row(span, number + 2 * pair + 1, count - back, back)
    yield _short_row(span, number + short.rows, count - short.pairs * short.step, 0)


def _short_row(span: Span, number: int, ahead: int, left: int) -> Row:
    body = worked(span.stitch, ahead - left, {}, is_begun=span.counts)
    return Row(
        number=number,
        side=side_of(number),
        section=span.name,
        body=(*body, Leave(left)) if left else body,
        count=ahead - left,
        start=Start(span.chains, span.counts),
        end=End(turn=True),
    )
