"""A design tried for a body and a swatch: planned, nothing more."""

from __future__ import annotations

from dataclasses import dataclass

from frogless.draft import Texts, load_texts, work_out
from frogless.errors import Fault, FroglessError


@dataclass(frozen=True, slots=True)
class Trial:
    """Why it does not come out; "" when it does."""

    why: str = ""


def trial(design: str, body: str, swatches: tuple[str, ...]) -> Trial:
    """Whether a design comes out for a body in a yarn, without its proof."""
    try:
        basis, _ = load_texts(Texts(design, body, swatches))
        work_out(basis)
    except FroglessError as error:
        return Trial(_why(error.faults[0]))
    return Trial()


def _why(fault: Fault) -> str:
    """The fault; of a measurement with what it is called."""
    table, _, key = fault.place.key.partition(".")
    named = table == "measurements" and key
    told = f"{key.replace('_', ' ')} {fault.message}" if named else fault.message
    return told[:1].upper() + told[1:]
