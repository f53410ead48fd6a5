"""Every number of a draft, asked why it is what it is.

A page shows a number together with its key; when somebody asks, `reason` tells the chain that led
to it. Keys are stable: of the same files the same number has the same key.
"""

from __future__ import annotations

from collections.abc import Iterator

from frogless.errors import InputError, near_names
from frogless.publish.drafted import Drafted
from frogless.publish.pattern import ROOMS, Room, rooms
from frogless.publish.reasons_fit import body_entries, fit_entries, whole_entries
from frogless.publish.reasons_gauge import gauge_entries
from frogless.publish.reasons_landmarks import landmark_entries
from frogless.publish.reasons_model import Asked, Entry, KeyedTable, Reason, ReasonStep
from frogless.publish.reasons_pieces import join_entries, piece_entries
from frogless.publish.reasons_rows import row_entries
from frogless.publish.reasons_sections import section_entries
from frogless.publish.reasons_tables import (
    fit_table,
    glance_lines,
    landmark_table,
    materials_lines,
    materials_table,
    piece_tables,
    row_keys,
    section_table,
)
from frogless.publish.reasons_trims import trim_entries
from frogless.publish.reasons_yarn import notion_entries, yarn_entries

__all__ = [
    "ROOMS", "Asked", "KeyedTable", "Reason", "ReasonStep", "Room", "fit_table", "glance_lines",
    "keys", "landmark_table", "materials_lines", "materials_table", "piece_tables", "reason",
    "rooms", "row_keys", "section_table",
]  # fmt: skip

KINDS = (
    body_entries,
    whole_entries,
    landmark_entries,
    fit_entries,
    piece_entries,
    join_entries,
    section_entries,
    trim_entries,
    yarn_entries,
    notion_entries,
    gauge_entries,
    row_entries,
)
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
