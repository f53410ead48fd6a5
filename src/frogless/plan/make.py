"""The planner's door: a basis in, a plan out; one construction for each kind of garment."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from frogless.plan import limits
from frogless.plan.basis import Basis
from frogless.plan.model import Plan
from frogless.plan.pieces.skirt import plan_skirt

CONSTRUCTIONS: Mapping[str, Callable[[Basis], Plan]] = {"skirt": plan_skirt}


def plan(basis: Basis) -> Plan:
    """The plan of the garment the design describes.

    Raises:
        InputError: the design, body or swatch has to be mended.
        Impossible: a requirement cannot be met; says by how much and what would help.
    """
    limits.check(basis)
    return CONSTRUCTIONS[basis.design.garment.kind](basis)
