"""What is said on the page that follows something that was done."""

from __future__ import annotations

from collections.abc import Mapping

SAID: Mapping[str, str] = {
    "saved": "Saved.",
    "undo": "Undone.",
    "redo": "Done again.",
    "renamed": "It has another title.",
    "kept": "Kept as a version.",
    "deleted": "The version is deleted.",
    "back": "The version is back; undo takes it away again.",
    "made": "It is yours; change what you like.",
}
"""By the word that stands in the address."""
