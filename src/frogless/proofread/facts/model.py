"""What a pattern says of itself outside its rows: gauge, materials, finished measurements."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Facts:
    """The front matter of a pattern, as far as it was understood."""
