"""A yoke from the top with four raglan lines."""

from __future__ import annotations

from typing import Literal

from frogless.design.strict import Formula, Strict
from frogless.design.work import Work
from frogless.files import Name


class RaglanChoice(Strict):
    """A yoke from the top with four raglan lines."""

    construction: Literal["raglan yoke"]
    name: Name
    work: Work | None = None
    neck: Formula
    depth: Formula
