"""Rows of a stitch pattern: a part that repeats as often as there is room, and what frames it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import pairwise
from math import gcd

from frogless.errors import InputError
from frogless.rows.count import consumed, row_left
from frogless.rows.nodes import End, Node, Repeat, Row, Side, Start
from frogless.stitches.load import leaves, stands_on
from frogless.stitches.model import Stitch

WORKED_ON = End()
OTHER_SIDE: Mapping[Side, Side] = {"RS": "WS", "WS": "RS"}


@dataclass(frozen=True, slots=True)
class PatternRow:
    """One row of a pattern, for any number of repeats.

    Args:
        before, after: worked once, before and after the repeats.
        repeat: worked as often as there is room; empty in a row that is the same at any width.
    """

    start: Start
    before: tuple[Node, ...]
    repeat: tuple[Node, ...]
    after: tuple[Node, ...]
    end: End = WORKED_ON
    backwards: bool = False


@dataclass(frozen=True, slots=True)
class Way:
    """A pattern in rows, or in rounds: it works over `multiple` times any number, and `offset`.

    Args:
        setup: so many of the rows come once; those after them are worked over and over.
        least: fewest repeats that it works over.
        side: of its first row.
        colour: the letter of the colour it begins with; "" in one colour.
    """

    closed: bool
    multiple: int
    offset: int
    rows: tuple[PatternRow, ...]
    setup: int = 0
    least: int = 1
    side: Side = "RS"
    colour: str = ""

    @property
    def period(self) -> int:
        """Rows that are worked over and over."""
        return len(self.rows) - self.setup

    def places(self, repeats: int) -> int:
        """Places that so many repeats stand on."""
        return self.multiple * repeats + self.offset

    def fits(self, places: int) -> bool:
        """Whether it works over so many places."""
        repeats, over = divmod(places - self.offset, self.multiple)
        return over == 0 and repeats >= self.least

    def row(self, index: int) -> PatternRow:
        """The row that is worked as number `index`, 0 first, however long it goes on."""
        if index < len(self.rows):
            return self.rows[index]
        return self.rows[self.setup + (index - self.setup) % self.period]


def room(row: PatternRow, stitches: Mapping[str, Stitch]) -> tuple[int, int]:
    """Places that a row takes outside its repeat, and places that one repeat takes."""
    on, start = stands_on(stitches), row.start
    own = start.across + int(start.counts and start.chains > 0 and not start.shares)
    return own + consumed((*row.before, *row.after), on), consumed(row.repeat, on)


def filled(row: PatternRow, places: int, stitches: Mapping[str, Stitch]) -> tuple[Node, ...]:
    """The body of a row over so many places, its repeat as one `Repeat` node.

    Raises:
        InputError: it does not come out; says with how many places it would.
    """
    around, each = room(row, stitches)
    rest = places - around
    times, over = divmod(rest, each) if each else (0, rest)
    if rest < 0 or over:
        raise InputError(_misfit(places, around, each))
    repeated = (Repeat(row.repeat, times),) if times else ()
    return (*row.before, *repeated, *row.after)


def worked(
    way: Way,
    places: int,
    rows: int,
    stitches: Mapping[str, Stitch],
    *,
    begin: int = 0,
    number: int = 1,
    section: str = "",
    hook: float = 0.0,
) -> tuple[Row, ...]:
    """Rows of a pattern over so many places, from its row `begin` on (0 first).

    Raises:
        InputError: a row does not consume what the row before leaves; names the row of the pattern.
    """
    made: list[Row] = []
    side = way.side
    for index in range(begin):
        side = OTHER_SIDE[side] if way.row(index).end.turn else side
    for index in range(begin, begin + rows):
        row = way.row(index)
        try:
            body = filled(row, places, stitches)
        except InputError as error:
            raise InputError(f"{_called(way, index)} {error}") from error
        bare = Row(
            number + index - begin,
            side,
            section,
            body,
            0,
            row.start,
            row.end,
            backwards=row.backwards,
            hook=hook,
        )
        places = row_left(bare, leaves(stitches))
        made.append(replace(bare, count=places))
        side = OTHER_SIDE[side] if row.end.turn else side
    return tuple(made)


def multiples(way: Way, stitches: Mapping[str, Stitch], most: int = 60) -> tuple[int, ...]:
    """Every count up to `most` that the rows come out over, through two row repeats."""
    return tuple(n for n in range(1, most + 1) if _comes_out(way, n, stitches))


def multiple_of(counts: tuple[int, ...]) -> tuple[int, int, int] | None:
    """Multiple, offset and fewest repeats of counts that have one step; None of others.

    The offset is the least that is not below 0, with at least one repeat.
    """
    step = 0
    for a, b in pairwise(counts):
        step = gcd(step, b - a)
    if step == 0 or counts != tuple(range(counts[0], counts[-1] + 1, step)):
        return None
    least, offset = divmod(counts[0], step)
    return (step, offset, least) if least else (step, offset, 1)


def _comes_out(way: Way, places: int, stitches: Mapping[str, Stitch]) -> bool:
    try:
        worked(way, places, way.setup + 2 * way.period, stitches)
    except InputError:
        return False
    return True


def _called(way: Way, index: int) -> str:
    name = "rnd" if way.closed else "row"
    number = (
        index + 1 if index < len(way.rows) else way.setup + 1 + (index - way.setup) % way.period
    )
    return f"{name} {number}"


def _misfit(places: int, around: int, each: int) -> str:
    near = ", ".join(map(str, _near(places, around, each)))
    takes = f"{around} places and {each} in each repeat" if each else f"{around} places"
    return f"takes {takes} and so fits {near}, but it meets {places}"


def _near(places: int, around: int, each: int) -> Iterator[int]:
    """Counts about `places` that come out."""
    if not each:
        yield around
        return
    times = max((places - around) // each, 0)
    yield from (around + each * n for n in range(max(times - 1, 0), times + 3))
