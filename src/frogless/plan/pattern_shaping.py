"""A section in a stitch pattern in whichever way it is shaped."""

from __future__ import annotations

from frogless.plan.basis import Basis
from frogless.plan.pattern_asked import Asked
from frogless.plan.pattern_columns import by_columns
from frogless.plan.pattern_growth import Made
from frogless.plan.pattern_repeats import by_repeats
from frogless.plan.pattern_sections import kept


def made_section(basis: Basis, ask: Asked) -> Made:
    """The section in whichever way it is shaped.

    Raises:
        InputError, Impossible: it cannot be shaped so; says what can be had.
    """
    if ask.shape_by == "repeats":
        return by_repeats(basis, ask)
    if ask.shape_by == "columns":
        return by_columns(basis, ask)
    found = kept(basis, ask)
    return found, (None,) * len(found)
