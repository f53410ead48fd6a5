"""The checks of a pattern's words, in a table."""

from __future__ import annotations

from frogless.proofread.checks.model import Check

OF_WORDS: tuple[Check, ...] = ()
