"""What the studio's workers do for this room: a file made into text, a text proofread."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

from frogless.errors import InputError
from frogless.studio.proofreading.looked import Looked, looked

AUTO = "auto"
DIALECTS = (AUTO, "us", "uk")


@dataclass(frozen=True, slots=True)
class Opened:
    """The text of a file, and what somebody should know of how it was drawn."""

    text: str
    remarks: tuple[str, ...] = ()


def look(text: str, terms: str = AUTO, size: str = "", silenced: Collection[str] = ()) -> Looked:
    """Everything that a page tells of a text; why it cannot be read is told, not raised."""
    from frogless.proofread.run import proofread

    try:
        report = proofread(text, "us" if terms == "us" else "uk" if terms == "uk" else None)
    except InputError as error:
        sentence = str(error)
        return Looked(fault=sentence[:1].upper() + sentence[1:])
    return looked(report, size, silenced)


def open_file(data: bytes, name: str) -> Opened:
    """The text of a file.

    Raises:
        InputError: it is none that is read, or damaged.
    """
    from frogless.proofread.sources.read import text_of

    found = text_of(data, name)
    return Opened(found.text, found.remarks)
