"""What the person prefers: units, names of stitches, hand. Kept for every page until changed."""

from __future__ import annotations

from dataclasses import dataclass, fields, replace
from typing import Literal

from frogless.stitches.model import Dialect
from frogless.studio.library.models import Preferences
from frogless.units import Units

KEPT = 1
"""The key of the only row."""

ACCEPTED = {"units": ("cm", "in"), "terms": ("us", "uk"), "hand": ("right", "left")}


@dataclass(frozen=True, slots=True)
class Preferred:
    """How pages are shown where nothing else is said."""

    units: Units = "cm"
    terms: Dialect = "us"
    hand: Literal["right", "left"] = "right"


def preferred() -> Preferred:
    """What was chosen last."""
    row = Preferences.objects.filter(pk=KEPT).first()
    return _accepted(Preferred(), row.values if row else {})


def prefer(**chosen: str) -> Preferred:
    """Keeps a choice; what is no choice is left as it was."""
    now = _accepted(preferred(), chosen)
    values = {one.name: getattr(now, one.name) for one in fields(now)}
    Preferences.objects.update_or_create(pk=KEPT, defaults={"values": values})
    return now


def _accepted(before: Preferred, chosen: object) -> Preferred:
    given = chosen if isinstance(chosen, dict) else {}
    good = {name: given[name] for name, known in ACCEPTED.items() if given.get(name) in known}
    return replace(before, **good)
