"""A yoke from the top with rings of increases."""

from __future__ import annotations

from typing import Literal

from frogless.design.strict import Formula, Strict
from frogless.design.work import Work
from frogless.files import Name


class RoundYokeChoice(Strict):
    """A yoke from the top with rings of increases."""

    construction: Literal["round yoke"]
    name: Name
    work: Work | None = None
    neck: Formula
    depth: Formula
