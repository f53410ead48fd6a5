"""The checks of a pattern's facts, in a table."""

from __future__ import annotations

from frogless.proofread.checks.facts.hook import HOOK
from frogless.proofread.checks.facts.length import LENGTH
from frogless.proofread.checks.facts.materials import MISSING, UNUSED
from frogless.proofread.checks.facts.multiple import MULTIPLE
from frogless.proofread.checks.facts.order import ORDER
from frogless.proofread.checks.facts.schematic import SCHEMATIC
from frogless.proofread.checks.facts.units import UNITS
from frogless.proofread.checks.facts.width import WIDTH
from frogless.proofread.checks.facts.yarn import YARN
from frogless.proofread.checks.model import Check

OF_FACTS: tuple[Check, ...] = (
    WIDTH,
    LENGTH,
    UNITS,
    YARN,
    HOOK,
    UNUSED,
    MISSING,
    MULTIPLE,
    SCHEMATIC,
    ORDER,
)
