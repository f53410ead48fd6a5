"""The lengths of a design's own: few enough, and not made of each other without end."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Annotated

from pydantic import AfterValidator
from pydantic_core import PydanticCustomError

from frogless.design.strict import Formula

# Own choices; the examples have 3 lengths of their own at most, which are used once or twice.
MOST = 200
MOST_USES = 1000
"""Uses of lengths within lengths, one by way of another."""

DEEPEST = 50
"""Lengths that stand on each other, one on top of the other."""

_NAME = re.compile(r"[A-Za-z_]\w*", re.ASCII)


def _worked_out(lengths: Mapping[str, str]) -> Mapping[str, str]:
    """The same, when each can be worked out in so many steps.

    Lengths that use others twice each would double the steps with every length.
    """
    if len(lengths) > MOST:
        told = {"most": MOST, "there": len(lengths)}
        raise PydanticCustomError("lengths", "takes {most} at most, has {there}", told)
    uses = _Uses(lengths)
    for name in lengths:
        if uses.of(name) > MOST_USES:
            raise PydanticCustomError(
                "lengths",
                '"{name}" uses other lengths more than {most} times, one by way of another, or more '
                "than {deepest} deep",
                {"name": name, "most": MOST_USES, "deepest": DEEPEST},
            )
    return lengths


class _Uses:
    """How often each length uses others, one by way of another; each counted once."""

    def __init__(self, lengths: Mapping[str, str]) -> None:
        self.used = {
            name: [other for other in _NAME.findall(text) if other in lengths]
            for name, text in lengths.items()
        }
        self.counted: dict[str, int] = {}

    def of(self, name: str, trail: tuple[str, ...] = ()) -> int:
        if name in trail:  # a circle is told of where it is worked out
            return 0
        if len(trail) > DEEPEST:
            return MOST_USES + 1
        if name not in self.counted:
            inner = sum(1 + self.of(other, (*trail, name)) for other in self.used[name])
            self.counted[name] = min(inner, MOST_USES + 1)
        return self.counted[name]


Lengths = Annotated[dict[str, Formula], AfterValidator(_worked_out)]
"""A pydantic field: lengths of a design's own, each a formula, by name."""
