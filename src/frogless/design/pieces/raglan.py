"""A yoke from the top with four raglan lines."""

from __future__ import annotations

from typing import Literal

from frogless.design.pieces.yoke import YokeChoice
from frogless.design.strict import Formula


class RaglanChoice(YokeChoice):
    """A yoke from the top with four raglan lines.

    `sleeve_top` is how wide a sleeve is at the neck; without it the planner chooses. `add` is how
    many stitches one side of a line may gain in one round where it needs more than the other.
    """

    construction: Literal["raglan yoke"]
    sleeve_top: Formula | None = None
    add: Literal[1, 2] = 1
