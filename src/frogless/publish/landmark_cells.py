"""Body and ease at a landmark, as every table shows them."""

from __future__ import annotations

from frogless.fit.model import LandmarkFit
from frogless.publish.drafted import Drafted
from frogless.publish.messages import say
from frogless.units import as_shown, show_length, show_signed


def body_cell(drafted: Drafted, fit: LandmarkFit) -> str:
    """The girth of the body, marked where it was estimated; a dash where there is none."""
    if fit.body is None:
        body = say(drafted, "none")
    else:
        body = show_length(fit.body, drafted.units)
    return say(drafted, "estimated_mark", value=body) if fit.estimated else body


def ease_cell(drafted: Drafted, fit: LandmarkFit) -> str:
    """Garment less body, so that the columns subtract as they are shown; and whether that is too
    tight or too loose."""
    units = drafted.units
    if fit.body is None:
        ease = say(drafted, "none")
    else:
        ease = show_signed(as_shown(fit.garment, units) - as_shown(fit.body, units), units)
    return ease if fit.verdict == "ok" else say(drafted, f"verdict_{fit.verdict}", value=ease)
