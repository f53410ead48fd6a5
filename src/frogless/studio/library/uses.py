"""Which garments a document is part of."""

from __future__ import annotations

import re
from collections.abc import Mapping

from frogless.studio.library.models import Garment


def uses() -> Mapping[str, tuple[Garment, ...]]:
    """The garments that are kept, by the ref of each document that they are made of."""
    found: dict[str, tuple[Garment, ...]] = {}
    for garment in Garment.objects.filter(removed=False):
        for ref in dict.fromkeys((garment.design, garment.body, *garment.swatches)):
            found[ref] = (*found.get(ref, ()), garment)
    return found


def garments_using(ref: str) -> tuple[Garment, ...]:
    """The garments that are made of what a ref stands for."""
    return uses().get(ref, ())


def named_after(name: str) -> tuple[Garment, ...]:
    """The garments that have a name within their own, those in the bin too: "Skirt for Ada"."""
    whole = re.compile(rf"(?<!\w){re.escape(name)}(?!\w)", re.IGNORECASE)
    return tuple(one for one in Garment.objects.order_by("name") if whole.search(one.name))
