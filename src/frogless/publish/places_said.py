"""Where on a garment a depth lies, in a maker's words: at a landmark, or so far below one."""

from __future__ import annotations

from frogless.plan.model import PiecePlan
from frogless.publish.changes_said import tell
from frogless.publish.drafted import Drafted
from frogless.publish.messages import MESSAGES, say
from frogless.units import as_shown, show_length

NEAR = 10.0
"""mm from a landmark that still count as at it (own choice): less than most rounds are high."""

WAIST = "waist_girth"


def where(drafted: Drafted, piece: PiecePlan, depth: float) -> str:
    """Where a depth lies, mm below the top edge: "at the hip", "14 cm below the waist"."""
    near = min(piece.landmarks, key=lambda mark: abs(mark.depth - depth), default=None)
    if near is not None and abs(near.depth - depth) <= NEAR:
        return tell(drafted, "at_place", place=named(drafted, near.key))
    waist = next((mark for mark in piece.landmarks if mark.key == WAIST), None)
    below = depth - (waist.depth if waist is not None else 0.0)
    shown = show_length(below, drafted.units)
    if waist is not None and as_shown(below, drafted.units) > 0:
        return tell(drafted, "below_place", depth=shown, place=named(drafted, waist.key))
    shown = show_length(depth, drafted.units)
    return tell(drafted, "below_top", depth=shown)


def named(drafted: Drafted, key: str) -> str:
    """What a landmark is called, by its key."""
    return say(drafted, key) if key in MESSAGES else drafted.phrases.measurement(key)
