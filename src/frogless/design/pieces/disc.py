"""A disc or polygon worked from a ring: flat, domed or ruffled."""

from __future__ import annotations

from typing import Literal

from frogless.design.strict import Formula, Strict
from frogless.design.work import Work
from frogless.files import Name


class DiscChoice(Strict):
    """A disc or polygon worked from a ring: flat, domed or ruffled."""

    construction: Literal["disc"]
    name: Name
    work: Work | None = None
    radius: Formula
