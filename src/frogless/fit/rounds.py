"""The closed rounds of the main piece as girths at depths."""

from __future__ import annotations

from dataclasses import dataclass

from frogless.plan.model import Plan
from frogless.rows.count import left_for_later
from frogless.rows.nodes import Chain, Node, Piece, Repeat, Row
from frogless.swatch import Gauge


@dataclass(frozen=True, slots=True)
class ClosedRound:
    """A round that cannot open: its number, count, stitch width (mm), girth and worn depth (mm).

    In a stitch pattern the width is its girth over the places that it leaves.
    """

    number: int
    count: int
    width: float
    depth: float

    @property
    def girth(self) -> float:
        """mm, unstretched."""
        return self.count * self.width


def main_piece(plan: Plan) -> Piece:
    """The first piece that stands on no other: what the rest is worked onto."""
    return next((p for p in plan.program.pieces if not p.bases), plan.program.pieces[0])


def main_gauge(plan: Plan, section: str) -> Gauge:
    """The gauge of a section; of the first section when it has none of its own (a foundation)."""
    return plan.gauges.get(section) or next(iter(plan.gauges.values()))


def closed_rounds(plan: Plan) -> tuple[ClosedRound, ...]:
    """The closed rounds of the main piece from the top down, the edging left out.

    An edging's places are not as wide as its stitches, and it hangs at the hem.
    """
    piece = main_piece(plan)
    if not piece.closed:
        return ()
    last = plan.main.edging.first_round if plan.main.edging else len(piece.rows) + 1
    return tuple(
        ClosedRound(
            row.number, row.count, _width(plan, piece.name, i, row), _depth(plan, row.number)
        )
        for i, row in enumerate(piece.rows)
        if row.number < last and not left_for_later(row.body)
    )


def _width(plan: Plan, piece: str, index: int, row: Row) -> float:
    """What each place of a round takes up of its girth, mm."""
    gauge = main_gauge(plan, row.section)
    planned = plan.piece(piece)
    if planned is None:
        return gauge.width.value
    return planned.girth_of(index, row.count, gauge) / row.count


def has_join(plan: Plan) -> bool:
    """Whether the rounds of the main piece are joined, so that a join can be left open."""
    return any(row.end.join != "none" for row in main_piece(plan).rows[1:])


def _depth(plan: Plan, number: int) -> float:
    return plan.main.depths[min(number, len(plan.main.depths) - 1)]


def begins_with_chain(plan: Plan) -> bool:
    """Whether the first row of the main piece is a foundation chain."""
    return first_is_chain(main_piece(plan).rows[0].body)


def first_is_chain(body: tuple[Node, ...]) -> bool:
    """Whether a row begins with a chain, be it inside a group."""
    if not body:
        return False
    first = body[0]
    return first_is_chain(first.body) if isinstance(first, Repeat) else isinstance(first, Chain)
