"""A yoke from the top with rings of increases."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from frogless.design.pieces.yoke import YokeChoice
from frogless.design.strict import FEW, Formula, Multiple


class RoundYokeChoice(YokeChoice):
    """A yoke from the top with rings of increases.

    `rings` is how many of them there are; `at` their depths, when they are not to lie evenly; after
    each the count is a `multiple`, for a stitch pattern in the band below it.
    """

    construction: Literal["round yoke"]
    rings: Annotated[int, Field(ge=1, le=12)] = 4
    at: Annotated[tuple[Formula, ...], FEW] = ()
    multiple: Multiple = 1
