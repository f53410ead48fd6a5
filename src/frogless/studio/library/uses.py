"""Which garments a document is part of."""

from __future__ import annotations

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
