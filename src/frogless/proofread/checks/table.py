"""All checks, in the order in which the documentation lists them."""

from __future__ import annotations

from frogless.proofread.checks.model import Check
from frogless.proofread.checks.of_facts import OF_FACTS
from frogless.proofread.checks.of_rows import OF_ROWS
from frogless.proofread.checks.of_words import OF_WORDS

CHECKS: tuple[Check, ...] = (*OF_ROWS, *OF_WORDS, *OF_FACTS)
BY_NAME = {check.name: check for check in CHECKS}
