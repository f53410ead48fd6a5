"""What a construction hands over: rows, their plan, and the edges it offers to those after it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from frogless.errors import InputError, Place, near_names
from frogless.plan.model import JoinPlan, Landmark, PiecePlan, Remark
from frogless.rows.nodes import Base, Piece, Seam
from frogless.swatch import Gauge
from frogless.units import Measured


@dataclass(frozen=True, slots=True)
class OfferedEdge:
    """An edge that later pieces may be begun on, borders picked up along, or joined.

    Args:
        name: unique in its construction: "left side", "neck", "top", "hem", "left armhole".
        bases: the stretches it is made of, in the order met with the right side facing.
        places: stitches or row ends of each stretch.
        bridges: chains worked between one stretch and the next by whoever continues it (an
            underarm's), as many as `bases` or none at all; the last bridges back to the first.
        length: along the edge, mm.
        closed: the edge goes all round.
        gauge: of the fabric that it belongs to.
        landmark: the girth of the body that whoever continues it begins at, with its first round.
    """

    name: str
    bases: tuple[Base, ...]
    places: tuple[int, ...]
    length: Measured
    gauge: Gauge
    closed: bool = False
    bridges: tuple[int, ...] = ()
    landmark: Landmark | None = None

    @property
    def count(self) -> int:
        """Places of all its stretches, bridging chains counted."""
        return sum(self.places) + sum(self.bridges)


@dataclass(frozen=True, slots=True)
class Made:
    """One entry of a design's pieces, planned: usually one piece, sometimes a few.

    Args:
        gauges: by section name, the gauge its rows are worked to.
        joins: what it joins by itself (a band's ends, a hood's seam).
    """

    pieces: tuple[Piece, ...]
    plans: tuple[PiecePlan, ...]
    edges: tuple[OfferedEdge, ...] = ()
    seams: tuple[Seam, ...] = ()
    joins: tuple[JoinPlan, ...] = ()
    remarks: tuple[Remark, ...] = ()
    gauges: Mapping[str, Gauge] = field(default_factory=dict)


def edge_named(name: str, made: Mapping[str, Made], place: Place) -> OfferedEdge:
    """The edge of an earlier piece, written "piece.edge".

    Raises:
        InputError: there is no such piece before this one, or it has no such edge.
    """
    piece, _, edge = name.partition(".")
    if piece not in made:
        raise InputError(f'"{name}" names no piece before this one{near_names(piece, made)}', place)
    offered = {each.name: each for each in made[piece].edges}
    if edge not in offered:
        listed = ", ".join(f'"{piece}.{each}"' for each in offered) or "none"
        raise InputError(f'"{name}" is no edge of "{piece}"; its edges are {listed}', place)
    return offered[edge]
