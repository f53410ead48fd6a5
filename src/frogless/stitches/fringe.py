"""A fringe: how many strands to cut, and how long, for the knots along an edge."""

from __future__ import annotations

from dataclasses import dataclass

from frogless.errors import InputError
from frogless.stitches.model import Edging

#: What the fold and the knot of a strand take up, mm (common practice: 2 to 3 cm).
KNOT = 25.0


@dataclass(frozen=True, slots=True)
class FringeCut:
    """Strands for a fringe.

    Args:
        knots: along the edge.
        strands: in all.
        cut: of each strand, mm.
        yarn: of all of them, mm.
    """

    knots: int
    strands: int
    cut: float
    yarn: float


def cut_fringe(edging: Edging, places: int) -> FringeCut:
    """What to cut for the fringe of an edging over so many places: a knot in each repeat.

    A strand is cut twice as long as it hangs, and what its knot takes up.

    Raises:
        InputError: an edging without a fringe, or places that are no multiple of it.

    Source: twice the length and 2 to 3 cm for the knot: common practice.
    """
    if edging.fringe is None:
        raise InputError(f'"{edging.key}" has no fringe')
    knots, over = divmod(places - edging.offset, edging.multiple)
    if over:
        raise InputError(f'"{edging.key}" takes a multiple of {edging.multiple}, not {places}')
    strands = knots * edging.fringe.strands
    cut = 2 * edging.fringe.length + KNOT
    return FringeCut(knots, strands, cut, strands * cut)
