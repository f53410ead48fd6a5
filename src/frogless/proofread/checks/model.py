"""What a check is given, and what it is."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from frogless.proofread.facts.model import Facts
from frogless.proofread.findings import Finding
from frogless.proofread.script.model import Script
from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.work.model import Reckoning, Told


@dataclass(frozen=True, slots=True, eq=False)
class Reading:
    """A pattern as it was read and reckoned; alike only to itself."""

    script: Script
    lexicon: Lexicon
    told: tuple[Told, ...]
    reckoning: Reckoning
    facts: Facts


@dataclass(frozen=True, slots=True)
class Check:
    """One thing that is looked for.

    Args:
        name: by which it is silenced; words joined by hyphens.
        title: what it looks for, one clause.
        example: a few lines of a pattern that it finds something in.
        finds: what it finds in a pattern.
    """

    name: str
    title: str
    example: str
    finds: Callable[[Reading], Iterable[Finding]]
