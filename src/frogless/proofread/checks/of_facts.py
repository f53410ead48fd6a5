"""The checks of a pattern's facts, in a table."""

from __future__ import annotations

from frogless.proofread.checks.model import Check

OF_FACTS: tuple[Check, ...] = ()
