"""The rows of sections in a stitch pattern, and the rounds of base stitches between fabrics.

A base round takes what the round below leaves and makes the stitches that the next fabric needs,
spread evenly: a space of three chains takes three times as many as a stitch does.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import accumulate, groupby, pairwise

from frogless.plan import shaping
from frogless.plan.patterned import BASE, Patterned, PatternRound
from frogless.rows.count import row_left
from frogless.rows.nodes import Chain, End, Into, Node, Repeat, Row, Side, Start, Together, Work
from frogless.rows.spread import worked_over
from frogless.rows.walk import unrolled
from frogless.stitches.load import leaves
from frogless.stitches.model import Stitch
from frogless.stitches.pattern_rows import OTHER_SIDE, worked

Stitches = Mapping[str, Stitch]


def pattern_rows(
    section: Patterned, stitches: Stitches, number: int = 1, name: str = "", hook: float = 0.0
) -> tuple[Row | None, ...]:
    """The rows of a section; None for its rounds of base stitches.

    Args:
        number: of its first round.
    """
    made: list[Row | None] = []
    before = section.before
    for is_base, run in groupby(section.rounds, key=lambda one: one.row == BASE):
        rounds = tuple(run)
        at = number + len(made)
        if is_base:
            made += [None] * len(rounds)
        elif section.columns:
            made += _beside_columns(section, before, rounds, stitches, at, name, hook)
        else:
            places = section.pattern.way.places(rounds[0].repeats)
            begin = rounds[0].row
            for row in _continued(section, places, begin, stitches):
                places = row.count
            made += worked(
                section.pattern.way, places, len(rounds), stitches,
                begin=begin, number=at, section=name, hook=hook,
            )  # fmt: skip
        before = rounds[-1]
    return tuple(made)


def _continued(section: Patterned, places: int, begin: int, stitches: Stitches) -> tuple[Row, ...]:
    """The rows that were worked before a section that goes on in the pattern of the one above."""
    return worked(section.pattern.way, places, begin, stitches) if begin else ()


def _beside_columns(
    section: Patterned,
    before: PatternRound,
    rounds: Sequence[PatternRound],
    stitches: Stitches,
    number: int,
    name: str,
    hook: float,
) -> Iterator[Row]:
    """Rounds of panels and plain columns by turns; worked back, they come the other way round.

    Rounds that are not turned begin with a column, which hides the join. Turned ones would begin
    with it in every other round only, so that there the first panel comes first.
    """
    way, side = section.pattern.way, section.pattern.way.side
    stitch = section.column.stitch if section.column else section.base_stitch
    turned = any(row.end.turn for row in way.rows)
    lifted = Start(stitches[stitch].turning_chain)
    column = before.column
    for i, one in enumerate(rounds):
        row = way.row(one.row)
        panel = _times(row.repeat, one.repeats // section.columns)
        plain = column_nodes(stitch, column, one.column)
        unit = (*panel, *plain) if turned and side == way.side else (*plain, *panel)
        end = row.end if turned else End("first_stitch")
        made = Row(
            number + i, side, name, (Repeat(unit, section.columns),), 0,
            row.start if turned else lifted, end, hook=hook,
        )  # fmt: skip
        yield replace(made, count=row_left(made, leaves(stitches)))
        column = one.column
        side = OTHER_SIDE[side] if row.end.turn else side


def _times(body: tuple[Node, ...], times: int) -> tuple[Node, ...]:
    return body if times == 1 else (Repeat(body, times),)


def column_nodes(stitch: str, before: int, after: int) -> tuple[Node, ...]:
    """A plain column of `before` places that becomes `after` stitches.

    One more or one less in its middle, two at its two edges.
    """
    change = after - before
    if abs(change) == 2 and before >= 2 * (1 + (change < 0)):
        edge: Node = Into((Work(stitch, 2),)) if change > 0 else Together(stitch, 2)
        return (edge, *_plain(stitch, before - 2 * (1 + (change < 0))), edge)
    if change == 0:
        return _plain(stitch, before)
    taken = 1 - min(change, 0)
    middle: Node = Into((Work(stitch, 1 + change),)) if change > 0 else Together(stitch, taken)
    first = (before - taken) // 2
    return (*_plain(stitch, first), middle, *_plain(stitch, before - taken - first))


def _plain(stitch: str, times: int) -> tuple[Node, ...]:
    return (Work(stitch, times),) if times > 0 else ()


def weights(row: Row, stitches: Stitches) -> tuple[int, ...]:
    """How wide each place is that a row leaves, in stitches: a space as its chains, in the order made."""
    stands_in = (1,) if row.start.counts and row.start.chains else ()
    return (*stands_in, *_weights(row.body, stitches))


def _weights(body: Sequence[Node], stitches: Stitches) -> Iterator[int]:
    for node in unrolled(body):
        match node:
            case Work(stitch, times):
                yield from (1,) * (times * stitches[stitch].leaves)
            case Together(stitch, _):
                yield from (1,) * stitches[stitch].leaves
            case Chain(times, each) if times:
                yield from (1,) * times if each else (times,)
            case Into(inner):
                yield from _weights(inner, stitches)


def met(below: Row, side: Side, stitches: Stitches) -> tuple[int, ...]:
    """The widths of the places of a round in the order in which a round on that side meets them."""
    made = weights(below, stitches)
    if (below.side != side) == below.backwards:
        return made
    back = made[::-1]
    on_first = below.end.join == "chain_top" and below.start.counts and below.start.chains > 0
    return (*back[-1:], *back[:-1]) if on_first else back


def base_body(stitch: str, below: Sequence[int], count: int) -> tuple[Node, ...]:
    """A round that makes `count` stitches of places that are so wide, spread evenly.

    >>> base_body("single_crochet", (1, 3) * 4, 16)[0].times
    4
    """
    n = len(below)
    change = count - n
    if set(below) == {1} and -n <= 2 * change <= 2 * n:
        if change == 0:
            return (Work(stitch, n),)
        return shaping.body(stitch, shaping.Round(n, abs(change), 1 if change > 0 else -1))
    total = sum(below)
    ends = (0, *(end * count // total for end in accumulate(below)))
    return worked_over(stitch, tuple(b - a for a, b in pairwise(ends)))


def base_row(
    stitch: str, below: Sequence[int], count: int, stitches: Stitches, *, number: int, side: Side,
    name: str, hook: float,
) -> Row:  # fmt: skip
    """A base round: its turning chain does not count, and it is joined."""
    chains = stitches[stitch].turning_chain
    return Row(
        number=number,
        side=side,
        section=name,
        body=base_body(stitch, below, count),
        count=count,
        start=Start(chains),
        end=End("first_stitch"),
        hook=hook,
    )
