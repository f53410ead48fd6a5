"""The checks of a pattern's rows, in a table."""

from __future__ import annotations

from frogless.proofread.checks.model import Check

OF_ROWS: tuple[Check, ...] = ()
