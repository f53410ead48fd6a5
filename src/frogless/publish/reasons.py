"""Every number of a draft, asked why it is what it is.

A page shows a number together with its key; when somebody asks, `reason` tells the chain that led
to it. Keys are stable: of the same files the same number has the same key.
"""

from __future__ import annotations

from collections.abc import Iterator

from frogless.errors import InputError, near_names
from frogless.publish.drafted import Drafted
from frogless.publish.pattern import ROOMS, Room, rooms
from frogless.publish.reasons_landmarks import landmark_entries
from frogless.publish.reasons_model import Asked, Entry, KeyedTable, Reason, ReasonStep
from frogless.publish.reasons_rows import row_entries
from frogless.publish.reasons_sections import section_entries

__all__ = [
    "ROOMS", "Asked", "KeyedTable", "Reason", "ReasonStep", "Room", "keys", "reason", "rooms",
]  # fmt: skip

KINDS = (landmark_entries, section_entries, row_entries)
"""What gives entries, in the order of the pattern."""


def keys(drafted: Drafted) -> tuple[str, ...]:
    """The key of every number that can be asked for, in the order of the pattern."""
    return tuple(key for key, _ in _entries(drafted))


def reason(drafted: Drafted, key: str) -> Reason:
    """Why the number with that key is what it is.

    Raises:
        InputError: no number has that key.
    """
    for name, tell in _entries(drafted):
        if name == key:
            return tell()
    raise InputError(f'no number has the key "{key}"{near_names(key, keys(drafted))}')


def _entries(drafted: Drafted) -> Iterator[Entry]:
    for kind in KINDS:
        yield from kind(drafted)
