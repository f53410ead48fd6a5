"""Ties, straps and cords of chain, single or worked back along."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from frogless.design.strict import Formula, Strict
from frogless.files import Name
from frogless.units import Hook


class CordChoice(Strict):
    """A cord of chain stitches, with `rows` of a stitch worked back along it when it is a strap."""

    construction: Literal["cord"]
    name: Name
    length: Formula
    stitch: str = "slip_stitch"
    rows: Annotated[int, Field(ge=0, le=40)] = 0
    make: Annotated[int, Field(ge=1, le=20)] = 1
    hook: Hook | None = None
