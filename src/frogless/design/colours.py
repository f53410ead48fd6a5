"""The colours of a garment: what they are called, and which rows are worked in which."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from frogless.design.strict import MANY, SEVERAL, Strict
from frogless.files import Letter, Name


class Stripe(Strict):
    """So many rows of one colour; without `rows` all that are left."""

    colour: Letter
    rows: Annotated[int, Field(ge=1, le=400)] | None = None


class Stripes(Strict):
    """Stripes that repeat over pieces or sections (`on`); without `on`, over the whole garment."""

    on: Annotated[tuple[Name, ...], SEVERAL] = ()
    repeat: Annotated[tuple[Stripe, ...], Field(min_length=1), MANY]


class Colours(Strict):
    """Each colour by its letter; what is not striped is in the first of the alphabet."""

    names: Annotated[dict[Letter, Name], Field(min_length=1)]
    stripes: Annotated[tuple[Stripes, ...], SEVERAL] = ()
