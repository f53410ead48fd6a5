"""One pattern for many bodies: a PDF for each in a zip, and a list of those it cannot be made for."""

from __future__ import annotations

import re
import zipfile
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from frogless.draft import Texts, draft_texts
from frogless.errors import FroglessError
from frogless.publish.pattern import pattern
from frogless.publish.pdf import pdf
from frogless.stitches.model import Dialect
from frogless.studio.jobs.run import Report
from frogless.units import Units

UNSAFE = re.compile(r"[^\w ()-]+")


@dataclass(frozen=True, slots=True)
class Wearer:
    """One body: what it is called, and its file."""

    name: str
    text: str


@dataclass(frozen=True, slots=True)
class Order:
    """What is to be drafted, for whom, and how it is shown."""

    title: str
    design: str
    swatches: tuple[str, ...]
    wearers: tuple[Wearer, ...]
    terms: Dialect
    units: Units
    hand: Literal["right", "left"]


def bundle(report: Report, out: Path, order: Order) -> None:
    """Drafts and sets the pattern for every wearer, one after the other.

    Raises:
        OSError: the zip cannot be written.
    """
    refused: list[str] = []
    names: set[str] = set()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for number, wearer in enumerate(order.wearers, 1):
            try:
                made = _pdf(order, wearer)
            except FroglessError as error:
                refused.append(f"{wearer.name}: {error}")
            else:
                archive.writestr(_file_name(order, wearer, names), made)
            report(number, wearer.name)
        archive.writestr("contents.txt", _contents(order, refused))


def _pdf(order: Order, wearer: Wearer) -> bytes:
    texts = Texts(order.design, wearer.text, order.swatches)
    drafted = draft_texts(texts, order.terms, order.units, order.hand).drafted
    return pdf(pattern(drafted), "us-letter" if order.units == "in" else "a4")


def _file_name(order: Order, wearer: Wearer, taken: set[str]) -> str:
    stem = UNSAFE.sub("_", f"{order.title} - {wearer.name}")[:100].strip()
    name, number = f"{stem}.pdf", 2
    while name.casefold() in taken:
        name, number = f"{stem} {number}.pdf", number + 1
    taken.add(name.casefold())
    return name


def _contents(order: Order, refused: list[str]) -> str:
    made = len(order.wearers) - len(refused)
    told = [f"{order.title}: {made} of {len(order.wearers)} patterns"]
    if refused:
        told += ["", "Not made, and why:", *(f"- {sentence}" for sentence in refused)]
    return "\n".join(told) + "\n"
