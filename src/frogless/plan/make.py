"""The planner's door: a basis in, a plan out; one construction for each kind of piece."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import Any

from frogless.design.document import PiecesDesign
from frogless.plan import limits
from frogless.plan.basis import Basis
from frogless.plan.colours import with_colours
from frogless.plan.joins import Joined, plan_joins
from frogless.plan.model import Plan
from frogless.plan.pieces.border import plan_border
from frogless.plan.pieces.cord import plan_cord
from frogless.plan.pieces.disc import plan_disc
from frogless.plan.pieces.made import Made
from frogless.plan.pieces.panel import plan_panel
from frogless.plan.pieces.raglan import plan_raglan
from frogless.plan.pieces.round_yoke import plan_round_yoke
from frogless.plan.pieces.shawl import plan_shawl
from frogless.plan.pieces.skirt import made_skirt
from frogless.plan.pieces.tube import plan_tube
from frogless.rows.nodes import Piece, Program

Construction = Callable[[Basis, Any, str, Mapping[str, Made]], Made]
"""Plans one entry of a design's pieces.

Takes the basis, the entry, its key in the design ("piece.2", for messages), and what the entries
before it made, by name.
"""

NOTHING_JOINED = Joined((), (), ())

CONSTRUCTIONS: Mapping[str, Construction] = {
    "border": plan_border,
    "disc": plan_disc,
    "shawl": plan_shawl,
    "cord": plan_cord,
    "panel": plan_panel,
    "raglan yoke": plan_raglan,
    "round yoke": plan_round_yoke,
    "tube": plan_tube,
}


def plan(basis: Basis) -> Plan:
    """The plan of the garment the design describes.

    Raises:
        InputError: the design, body or swatch has to be mended.
        Impossible: a requirement cannot be met; says by how much and what would help.
    """
    limits.check(basis)
    if isinstance(basis.design, PiecesDesign):
        return with_colours(basis, _plan_pieces(basis, basis.design))
    skirt = made_skirt(basis)
    limits.check_amount(skirt.pieces, basis.place("garment.length"))
    return with_colours(basis, _assembled((skirt,)))


def _plan_pieces(basis: Basis, design: PiecesDesign) -> Plan:
    made: dict[str, Made] = {}
    for i, choice in enumerate(design.piece, 1):
        construction = CONSTRUCTIONS[choice.construction]
        made[choice.name] = construction(basis, choice, f"piece.{i}", made)
        limits.check_amount(_pieces_of(made.values()), basis.place(f"piece.{i}"))
    return _assembled(tuple(made.values()), plan_joins(basis, design.join, made))


def _pieces_of(parts: Iterable[Made]) -> Iterator[Piece]:
    """A piece that is made twice counts once: the other is not planned again."""
    return (piece for part in parts for piece in part.pieces)


def _assembled(parts: Sequence[Made], joined: Joined = NOTHING_JOINED) -> Plan:
    return Plan(
        pieces=tuple(plan for part in parts for plan in part.plans),
        gauges={name: gauge for part in parts for name, gauge in part.gauges.items()},
        remarks=(*(remark for part in parts for remark in part.remarks), *joined.remarks),
        program=Program(
            tuple(piece for part in parts for piece in part.pieces),
            (*(seam for part in parts for seam in part.seams), *joined.seams),
        ),
        joins=(*(join for part in parts for join in part.joins), *joined.plans),
    )
