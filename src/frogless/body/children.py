"""Who counts as a child where clothes have rules of their own."""

from __future__ import annotations

from frogless.body.measurements import SMALL_STATURE, Body

CHILD_AGE = 14
"""Years; EN 14682:2007 speaks of children under 14 (published)."""

CORD_END = 140.0
"""mm; a cord at the waist of a child's garment may stick out this far at each end with the garment
open flat: EN 14682:2007, as explained on a test house's page (published)."""


def is_for_child(body: Body, *, for_children: bool = False) -> bool:
    """Whether it is for a child: by the design, by age, or by a small stature without an age.

    Args:
        for_children: what the design says of itself.
    """
    if for_children:
        return True
    if body.age is not None:
        return body.age < CHILD_AGE
    stature = body.get("stature")
    return stature is not None and stature.value.value < SMALL_STATURE
