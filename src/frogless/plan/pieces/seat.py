"""Short rows below the waist edge that make a skirt longer over the seat or over one hip.

Pairs of short rows, the widest first, reach over half of the round at most and end one step nearer
to its middle each: 78, 52 and 26 stitches of the 104 at the back (common practice: an even number
of rows, so that the work ends where it began). Where the middle is the join, a row leads back to
the join at last; elsewhere the first row begins the first round and the last one completes it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from frogless.design.pieces.tube import Seat
from frogless.errors import InputError
from frogless.plan.model import CordPlan, PiecePlan, Remark
from frogless.plan.pieces.rounds import manner, turning_chain
from frogless.plan.sections import Span
from frogless.plan.tube import Tube
from frogless.rows.nodes import End, Leave, Piece, Row, Side, Start, Work

MET = ("back", "right side", "front", "left side")
"""The order in which a round worked downwards passes the wearer, its right side facing."""

JOINS = {"centre back": "back", "left side": "left side", "right side": "right side"}


@dataclass(frozen=True, slots=True)
class Raised:
    """Short rows, decided.

    Args:
        rows: those that come before the first round; of a wedge beside the join the last of them
            takes the first round's place.
        more: rows that there are now above the second round beyond the first.
    """

    seat: Seat
    pairs: int
    high: float
    wanted: float
    rows: tuple[Row, ...]
    more: int


def is_beside_join(seat: Seat | None, join_at: str) -> bool:
    """Whether the first round is worked in two parts, with the short rows between them."""
    return seat is not None and seat.at != JOINS[join_at]


def unshaped(spans: Sequence[Span], seat: Seat | None, join_at: str) -> tuple[Span, ...]:
    """The sections, the first round left plain where short rows divide it."""
    first, *others = spans
    if is_beside_join(seat, join_at):
        first = replace(first, plain=tuple(sorted({1, *first.plain})))
    return (first, *others)


def raised(skirt: Tube, worked: Sequence[Row]) -> Raised | None:
    """The short rows that a skirt's start asks for.

    Args:
        worked: its rows without them, the foundation first.

    Raises:
        InputError: the length asked for is less than a pair of rows, or the first round holds
            eyelets and is divided.
    """
    seat, basis = skirt.basis.tube.start.seat, skirt.basis
    if seat is None:
        return None
    span, count = skirt.spans[0], skirt.counts[0]
    wanted = basis.girth_wanted(seat.extra, "start.seat.extra")
    pairs = round(wanted / (2 * span.height))
    # Each step has to be a stitch at least.
    if not 0 < pairs < count // 8:
        raise InputError(
            f"{basis.show(wanted)} more are {pairs} pairs of short rows of "
            f"{basis.show(2 * span.height)}; ask for one pair at least, and no more than steps of a "
            "stitch allow",
            basis.place("start.seat.extra"),
        )
    halves = [round(count / 4 * (pairs - i) / (pairs + 1)) for i in range(pairs)]
    high = 2 * pairs * span.height
    if not is_beside_join(seat, basis.work.join_at):
        made = tuple(_short_rows(skirt, _over_join(halves)))
        return Raised(seat, pairs, high, wanted, made, len(made))
    if len(worked[1].body) != 1:
        raise InputError(
            "the first round is divided by short rows and cannot hold eyelets too; set them lower",
            basis.place("waist.eyelet_round"),
        )
    apart = MET.index(seat.at) - MET.index(JOINS[basis.work.join_at])
    middle = round(apart % len(MET) / len(MET) * count)
    made = tuple(_short_rows(skirt, _beside_join(halves, middle, count)))
    last = replace(made[-1], end=worked[1].end)
    return Raised(seat, pairs, high, wanted, (*made[:-1], last), len(made) - 1)


def _over_join(halves: Sequence[int]) -> list[int]:
    """Stitches of each row: from the join, over it there and back, and on to it again.

    >>> _over_join([39, 26, 13])
    [39, 78, 65, 52, 39, 26, 13]
    """
    met, before = [], 0
    for half in halves:
        met += [before + half, 2 * half]
        before = half
    return [*met, before]


def _beside_join(halves: Sequence[int], middle: int, count: int) -> list[int]:
    """Stitches of each row: from the join over the wedge, there and back, and on to the join.

    >>> _beside_join([20, 10], 50, 200)
    [70, 40, 30, 20, 160]
    """
    met = [middle + halves[0]]
    for half, following in zip(halves, [*halves[1:], 0], strict=True):
        met += [2 * half, half + following]
    return [*met[:-1], count - middle + halves[-1]]


def _short_rows(skirt: Tube, worked: Sequence[int]) -> Iterator[Row]:
    """Rows of so many stitches, by turns on the right and on the wrong side; the last not turned."""
    span, how, n = skirt.spans[0], manner(skirt.basis), skirt.counts[0]
    chains = turning_chain(skirt.basis, span.section)
    if how.spiral:
        chains = skirt.basis.stitches[span.gauge.stitch].turning_chain
    for number, stitches in enumerate(worked, 1):
        side: Side = "RS" if number % 2 else "WS"
        first = how.spiral and number == 1
        yield Row(
            number=number,
            side=side,
            section=span.section.name,
            body=(Work(span.gauge.stitch, stitches - int(how.chain_counts)), Leave(n - stitches)),
            count=stitches,
            start=Start(0 if first else chains, how.chain_counts),
            end=End(turn=number < len(worked)),
            hook=span.gauge.hook or skirt.basis.hook,
        )


def with_rows(piece: Piece, found: Raised) -> Piece:
    """The piece with its short rows, later rows numbered on."""
    foundation, *rounds = piece.rows
    kept = rounds[len(found.rows) - found.more :]
    numbered = (replace(row, number=row.number + found.more) for row in kept)
    return replace(piece, rows=(foundation, *found.rows, *numbered))


def with_plan(plan: PiecePlan, piece: Piece, found: Raised) -> PiecePlan:
    """The plan of a piece that has its short rows: they add nothing to the depth in front."""
    more = found.more
    sections = tuple(
        replace(s, first_round=s.first_round + more, last_round=s.last_round + more)
        for s in plan.sections
    )
    edging, waist = plan.edging, plan.waist
    if edging is not None:
        edging = replace(
            edging, first_round=edging.first_round + more, last_round=edging.last_round + more
        )
    if isinstance(waist, CordPlan):
        waist = replace(waist, eyelet_round=waist.eyelet_round + more)
    return replace(
        plan,
        counts=tuple(row.count for row in piece.rows),
        depths=(plan.depths[0], *(plan.depths[0],) * more, *plan.depths[1:]),
        girths=(plan.girths[0], *(plan.girths[0],) * more, *plan.girths[1:]) if plan.girths else (),
        sections=sections,
        landmarks=tuple(
            replace(m, rounds=m.rounds + more if m.rounds else 0) for m in plan.landmarks
        ),
        edging=edging,
        waist=waist,
    )


def told(skirt: Tube, found: Raised) -> Remark:
    """What the short rows do, and on whose side."""
    show, where = skirt.basis.show, f"at the {found.seat.at}"
    if found.seat.at.endswith("side"):
        where = f"on the wearer's {found.seat.at}"
    pairs = "pair" if found.pairs == 1 else "pairs"
    return Remark(
        "seat",
        f"{found.pairs} {pairs} of short rows below the waist edge make the skirt "
        f"{show(found.high)} longer {where} ({show(found.wanted)} asked for); all other counts "
        "stay as they are",
        serious=False,
    )
