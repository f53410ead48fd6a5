"""A shawl that grows from its middle or from a point, in rows."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from frogless.design.strict import SEVERAL, Formula, Strict
from frogless.design.trims import EdgingChoice
from frogless.design.work import Work
from frogless.files import Name


class ShawlBand(Strict):
    """A stretch of rows with a stitch of its own; the last one may leave its length to the rest."""

    name: Name
    length: Formula | None = None
    stitch: str | None = None
    turning_chain: Annotated[int, Field(ge=0, le=6)] | None = None


class ShawlChoice(Strict):
    """A shawl in rows that are turned.

    A triangle grows from the middle of its long edge, to a depth or a wingspan; `angle_deg` is the
    angle at its lower point. A crescent grows so too, to a depth and a wingspan. An asymmetric one
    grows from a point, along one edge; `angle_deg` is the angle there. A rectangle is as wide as
    its wingspan and as long as its depth.
    """

    construction: Literal["shawl"]
    name: Name
    work: Work | None = None
    shape: Literal["triangle", "crescent", "asymmetric", "rectangle"] = "triangle"
    depth: Formula | None = None
    wingspan: Formula | None = None
    angle_deg: Annotated[float, Field(ge=20, le=150)] | None = None
    multiple: Annotated[int, Field(ge=1, le=200)] = 1
    offset: Annotated[int, Field(ge=0, le=200)] = 0
    band: Annotated[tuple[ShawlBand, ...], SEVERAL] = ()
    edging: EdgingChoice | None = None
