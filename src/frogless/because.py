"""Why a number is what it is: the chain of steps that led to it, as plain data."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Unit = Literal["mm", "g", "stitches", "rows", "stitches per 10 cm", "rows per 10 cm", "ratio", ""]


@dataclass(frozen=True, slots=True)
class Step:
    """One link of a because.

    Args:
        what: a measurement key ("hip_girth") or one of the words listed in `write.phrases`
            ("ease", "wanted", "gauge", "exact", "landed", "girth", "off", …).
        value: in `unit`.
        note: what the number was landed on or taken from ("multiple of 8", "estimated from stature").
    """

    what: str
    value: float
    unit: Unit = "mm"
    note: str = ""
    estimated: bool = False


@dataclass(frozen=True, slots=True)
class Because:
    """The steps, first cause first; the last one is the number itself."""

    steps: tuple[Step, ...] = ()

    def then(self, *steps: Step) -> Because:
        """This chain, continued."""
        return Because(self.steps + steps)
