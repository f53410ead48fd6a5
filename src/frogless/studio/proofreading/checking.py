"""A text proofread through the studio's workers: whatever happens there, the page has an answer.

Nothing of it is remembered here, so that nothing has to be forgotten.
"""

from __future__ import annotations

from collections.abc import Collection
from contextlib import suppress
from dataclasses import dataclass

from frogless.errors import FroglessError, InputError
from frogless.studio.library.bundle import LONGEST_PATTERN
from frogless.studio.proofreading.looked import Looked
from frogless.studio.proofreading.reading import AUTO, Opened, look, open_file, spoken
from frogless.studio.work.pool import SECONDS, Busy, TooMuchWork, pool

LARGEST_FILE = 20_000_000
"""Bytes of a file that is opened; a booklet with pictures has some millions."""

WAITS = 2
"""How often a file waits longer than a text that can be checked again."""

SLOW = (
    f"This took longer than {SECONDS:.0f} seconds and was ended. What you wrote is still here; "
    "check a part of it."
)
BUSY = "The studio is busy with other things; it is read as soon as there is time."
FAILED = (
    "This could not be checked: something went wrong inside Frogless. What you wrote is still here."
)


@dataclass(frozen=True, slots=True)
class Choice:
    """What is asked of a text: terms, size, and which kinds of findings are left out."""

    terms: str = AUTO
    size: str = ""
    silenced: tuple[str, ...] = ()


def too_long(text: str) -> str:
    """What is said of a text that is longer than any that is kept; "" of all others."""
    if len(text) <= LONGEST_PATTERN:
        return ""
    return f"This text has {len(text):,} letters; {LONGEST_PATTERN:,} are accepted."


def checked(text: str, choice: Choice, affinity: str) -> Looked:
    """What is found in a text.

    Args:
        affinity: what is checked again and again is asked of the same worker.
    """
    if sentence := too_long(text):
        return Looked(fault=sentence)
    silenced: Collection[str] = choice.silenced
    try:
        return pool().ask(affinity, look, text, choice.terms, choice.size, silenced)
    except TooMuchWork:
        return Looked(fault=SLOW)
    except Busy:
        return Looked(fault=BUSY, again=True)
    except FroglessError as error:
        return Looked(fault=f"{spoken(error)}. What you wrote is still here.")
    except RuntimeError:
        return Looked(fault=FAILED)


def opened(data: bytes, name: str) -> Opened:
    """The text of a file that somebody chose.

    Raises:
        InputError: it is no text, PDF or docx, is damaged, too large, or took too long.
    """
    if len(data) > LARGEST_FILE:
        raise InputError(f"this file has more than {LARGEST_FILE // 1_000_000} MB")
    try:
        return _when_there_is_time(data, name)
    except TooMuchWork:
        raise InputError(
            f"this file took longer than {SECONDS:.0f} seconds to open and was let go; "
            "copy its text and paste it"
        ) from None
    except RuntimeError:
        raise InputError("this file could not be opened; copy its text and paste it") from None


def _when_there_is_time(data: bytes, name: str) -> Opened:
    """A file is not sent twice for want of time: it waits for a worker that still starts."""
    for _ in range(WAITS):
        with suppress(Busy):
            return pool().ask(f"file {name}", open_file, data, name)
    return pool().ask(f"file {name}", open_file, data, name)
