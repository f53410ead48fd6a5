"""A flat piece worked in rows, shaped at its edges or inside."""

from __future__ import annotations

from typing import Literal

from frogless.design.strict import Formula, Strict
from frogless.design.work import Work
from frogless.files import Name


class PanelChoice(Strict):
    """A flat piece worked in rows, shaped at its edges or inside."""

    construction: Literal["panel"]
    name: Name
    work: Work | None = None
    width: Formula
    length: Formula
