"""A border picked up along edges of earlier pieces."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from frogless.design.strict import SEVERAL, Formula, Multiple, Offset, Strict
from frogless.design.trims import EdgingChoice
from frogless.files import Name
from frogless.units import Hook

Rate = Annotated[int, Field(ge=1, le=100)]


class BorderChoice(Strict):
    """A band or edging along one or several edges ("front.neck", "back.neck"), met in that order.

    As many stitches are picked up as the length of the edges asks for at the stitch's gauge, or
    `per_rows` of them: (3, 2) takes three stitches to two row ends. Its rows are worked in rounds
    when `closed`, else in rows.
    """

    construction: Literal["border"]
    name: Name
    on: Annotated[tuple[str, ...], Field(min_length=1), SEVERAL]
    stitch: str
    closed: bool = True
    height: Formula | None = None
    per_rows: tuple[Rate, Rate] | None = None
    multiple: Multiple = 1
    offset: Offset = 0
    hook: Hook | None = None
    edging: EdgingChoice | None = None
