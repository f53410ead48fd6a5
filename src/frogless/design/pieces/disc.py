"""A disc or polygon worked from a ring: flat, domed or ruffled; on from it a tube, a brim."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from frogless.design.strict import SEVERAL, Formula, Strict
from frogless.design.trims import EdgingChoice
from frogless.design.work import Work
from frogless.files import Name


class DiscSection(Strict):
    """What goes on from the edge of the disc: straight, to another girth, or spread like a brim.

    It is so long, or ends so far from the middle of the disc (`to`), measured along the work. It
    is straight unless it has a `girth`, or a `lie`: 1 spreads flat, less like a cone.
    """

    name: Name
    length: Formula | None = None
    to: Formula | None = None
    girth: Formula | None = None
    lie: Annotated[float, Field(ge=0, le=4)] | None = None
    stitch: str | None = None
    turning_chain: Annotated[int, Field(ge=0, le=6)] | None = None


class DiscChoice(Strict):
    """A disc or polygon worked from a ring, to a radius, or to a girth (a crown to a head).

    `lie` is its share of what lies flat: 1 flat, less domed, more ruffled. `sides` makes it a
    polygon with its increases stacked at so many corners. `per_round` is how many stitches each
    round adds, `first` how many the first round has, where the author wants to say so.
    """

    construction: Literal["disc"]
    name: Name
    work: Work | None = None
    radius: Formula | None = None
    girth: Formula | None = None
    ease: Formula = "0 cm"
    ease_allowed: tuple[Formula, Formula] | None = None
    lie: Annotated[float, Field(gt=0, le=4)] = 1.0
    staggered: bool = True
    sides: Annotated[int, Field(ge=3, le=24)] | None = None
    per_round: Annotated[int, Field(ge=1, le=96)] | None = None
    first: Annotated[int, Field(ge=3, le=96)] | None = None
    section: Annotated[tuple[DiscSection, ...], SEVERAL] = ()
    edging: EdgingChoice | None = None
