"""For whom, in which yarn, a design is drafted where nobody says: the last garment's, or standing ones."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from frogless.errors import InputError
from frogless.studio import refs
from frogless.studio.designs.pictures import Worn
from frogless.studio.library.models import Garment

STANDING_BODY = "example:dancer-3"
STANDING_SWATCH = "example:light-cotton"
"""Together they are enough for every example."""

BETWEEN = ","
"""Stands between the refs of several swatches in one choice."""


@dataclass(frozen=True, slots=True)
class Pair:
    """A body and swatches, by their refs."""

    body: str = STANDING_BODY
    swatches: tuple[str, ...] = (STANDING_SWATCH,)

    @property
    def written(self) -> str:
        """The swatches as one choice."""
        return BETWEEN.join(self.swatches)


STANDING = Pair()


def last_used() -> Pair:
    """What the garment that was opened last is for; the standing pair when there is none."""
    garment = Garment.objects.filter(removed=False).first()
    if garment is None or not garment.swatches:
        return STANDING
    pair = Pair(garment.body, tuple(map(str, garment.swatches)))
    return pair if is_there(pair) else STANDING


def chosen(values: Mapping[str, str]) -> Pair:
    """The body and swatch of a form; what is not there (any more) is the last used one."""
    usual = last_used()
    body = values.get("body") or usual.body
    swatches = tuple(filter(None, values.get("swatch", "").split(BETWEEN))) or usual.swatches
    pair = Pair(body, swatches[:8])
    return pair if is_there(pair) else usual


def is_there(pair: Pair) -> bool:
    """Whether its refs stand for something."""
    try:
        worn(pair)
    except InputError:
        return False
    return True


def worn(pair: Pair) -> Worn:
    """The texts of a pair.

    Raises:
        InputError: a ref stands for nothing (any more).
    """
    body = refs.resolve("body", pair.body).text
    return body, tuple(one.text for one in refs.swatches(pair.swatches))


def tries(ref: str) -> tuple[Worn, ...]:
    """What a design is drawn for: an example always for the same, an own design for the last used."""
    pairs = (STANDING,) if ref.startswith("example:") else (last_used(), STANDING)
    # Without the files of an example there is a picture less, and no page that cannot be shown.
    return tuple(dict.fromkeys(worn(pair) for pair in pairs if is_there(pair)))


def swatch_choices(pair: Pair) -> refs.Choices:
    """The swatches to choose from; several that are used together are one more choice."""
    single = refs.choices("swatch")
    if len(pair.swatches) == 1:
        return single
    names = " and ".join(one.name for one in refs.swatches(pair.swatches))
    return (("Together", ((pair.written, names),)), *single)
