"""Hooks called by their US letter: what they are in millimeters. Knows no Django."""

from __future__ import annotations

import re

from frogless.stitches.hooks import sizes
from frogless.studio.offers import Offer

LETTERED = re.compile(r"\s*(?:US\s*)?([A-Za-z])[\s/-]*([\d\s/.½]*)(?:mm)?\s*")


def lettered(text: str) -> tuple[tuple[str, float], ...]:
    """Label and mm of every hook that a text like "H", "h8" or "US K-10½" may mean."""
    found = LETTERED.fullmatch(text[:40])
    if found is None:
        return ()
    letter, number = found[1].upper(), _plain(found[2])
    labels = [(label, size) for size, label in sizes().items() if label.partition("-")[0] == letter]
    exact = [one for one in labels if not number or _plain(one[0].partition("-")[2]) == number]
    return tuple(exact)


def _plain(number: str) -> str:
    return "".join(number.replace("½", " 1/2").split())


def hook_words(text: str) -> str:
    """ "H-8 is 5 mm; write 5": what to write instead of a letter; "" where it is none."""
    meant = lettered(text)
    told = " and ".join(f"{label} is {size:g} mm" for label, size in meant)
    return f"{told}; write {' or '.join(f'{size:g}' for _, size in meant)}" if meant else ""


def hook_offers(name: str, text: str) -> tuple[Offer, ...]:
    """A button for each hook that a letter may mean."""
    return tuple(Offer(f"Write {size:g} mm", ((name, f"{size:g}"),)) for _, size in lettered(text))
