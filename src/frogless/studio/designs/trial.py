"""A design tried for a body and a swatch: planned, nothing more."""

from __future__ import annotations

from dataclasses import dataclass

from frogless.draft import Texts, load_texts, work_out
from frogless.errors import FroglessError


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
        message = error.faults[0].message
        return Trial(message[:1].upper() + message[1:])
    return Trial()
