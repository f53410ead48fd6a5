"""How a garment is worked: the designer's gauge, the stitch, rounds and turning chains."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from frogless.design.strict import Strict
from frogless.units import Hook

Rounds = Literal["joined and turned", "joined", "spiral"]
JoinAt = Literal["centre back", "left side", "right side"]


class DesignerGauge(Strict):
    """The designer's own gauge: what the sample was worked at. Edging sizes are scaled from it."""

    stitch: str
    stitches_in_10cm: Annotated[float, Field(gt=0)]
    rows_in_10cm: Annotated[float, Field(gt=0)]
    hook: Hook
    yarn_category: Annotated[int, Field(ge=0, le=7)] | None = None


class Work(Strict):
    """How rounds are worked, and the turning chain."""

    stitch: str
    rounds: Rounds = "joined and turned"
    join_at: JoinAt = "centre back"
    turning_chain: Annotated[int, Field(ge=0, le=6)]
    turning_chain_counts: bool = False
    join_into: Literal["first stitch", "top of chain"] = "top of chain"
