"""A text cut into parts, rows and sentences."""

from __future__ import annotations

from frogless.proofread.script.model import Script


def cut(text: str) -> Script:
    """The parts of a pattern and where each row stands."""
    raise NotImplementedError
