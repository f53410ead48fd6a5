"""What the studio's workers do for this room: a file made into text, a text proofread."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from functools import lru_cache

from frogless.errors import FroglessError, InputError
from frogless.proofread.findings import Report
from frogless.studio.proofreading.looked import Looked, looked

AUTO = "auto"
DIALECTS = (AUTO, "us", "uk")


@dataclass(frozen=True, slots=True)
class Opened:
    """The text of a file, and what somebody should know of how it was drawn."""

    text: str
    remarks: tuple[str, ...] = ()


def spoken(error: FroglessError) -> str:
    """What is wrong as a sentence of a page: the name of a file keeps its small first letter."""
    sentence = str(error)
    return sentence if str(error.faults[0].place) else sentence[:1].upper() + sentence[1:]


def look(text: str, terms: str = AUTO, size: str = "", silenced: Collection[str] = ()) -> Looked:
    """Everything that a page tells of a text; why it cannot be read is told, not raised."""
    try:
        report = read(text, terms)
    except InputError as error:
        return Looked(fault=spoken(error))
    return looked(report, size, silenced)


@lru_cache(maxsize=2)
def read(text: str, terms: str) -> Report:
    """The report of a text; the last ones are remembered, for another size or filter, and to save.

    A worker that remembers is ended when something is deleted for good.
    """
    from frogless.proofread.run import proofread

    return proofread(text, "us" if terms == "us" else "uk" if terms == "uk" else None)


def open_file(data: bytes, name: str) -> Opened:
    """The text of a file.

    Raises:
        InputError: it is none that is read, or damaged.
    """
    from frogless.proofread.sources.read import text_of

    found = text_of(data, name)
    return Opened(found.text, found.remarks)
