"""A shawl that grows from its middle or from a point, in rows."""

from __future__ import annotations

from typing import Literal

from frogless.design.strict import Formula, Strict
from frogless.design.work import Work
from frogless.files import Name


class ShawlChoice(Strict):
    """A shawl that grows from its middle or from a point, in rows."""

    construction: Literal["shawl"]
    name: Name
    work: Work | None = None
    depth: Formula
