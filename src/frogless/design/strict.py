"""What every table of a design document shares: strict models, and keys that hold formulas."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field
from pydantic.fields import FieldInfo

# The mark by which `formulas_of` knows the keys whose text is a formula.
FORMULA = "formula"
Formula = Annotated[str, Field(min_length=1), FORMULA]
Points = Annotated[int, Field(ge=1, le=48)]

# The limits are own choices, far beyond what is worn: they keep a slip from being worked at for
# minutes. A section has 400 rounds at most.
Rounds = Annotated[int, Field(ge=1, le=400)]
Multiple = Annotated[int, Field(ge=1, le=500)]
Offset = Annotated[int, Field(ge=0, le=500)]
FEW, SEVERAL, MANY = Field(max_length=24), Field(max_length=60), Field(max_length=200)


class Strict(BaseModel):
    """Unknown keys are refused; values are frozen; surplus blanks are cut off."""

    model_config = ConfigDict(
        extra="forbid", frozen=True, str_strip_whitespace=True, allow_inf_nan=False
    )


def formulas_of(part: Strict, key: str = "") -> Iterator[tuple[str, str]]:
    """Every formula of a table and of the tables in it, with its key ("section.2.girth").

    Tables of a list are counted from 1, as people do.
    """
    for name, info in type(part).model_fields.items():
        value = getattr(part, name)
        shown = f"{key}.{info.alias or name}".lstrip(".")
        if isinstance(value, Strict):
            yield from formulas_of(value, shown)
        elif isinstance(value, tuple) and value and isinstance(value[0], Strict):
            for i, each in enumerate(value, 1):
                yield from formulas_of(each, f"{shown}.{i}")
        elif value is not None and FORMULA in _metadata(info):
            texts = value if isinstance(value, tuple) else (value,)
            yield from ((shown, text) for text in texts if isinstance(text, str))


def _metadata(info: FieldInfo) -> set[object]:
    """What a field is annotated with, also inside a union."""
    found: set[object] = set()
    stack: list[object] = [info.annotation]
    for item in info.metadata:
        found.add(item if isinstance(item, str) else type(item))
    while stack:
        kind = stack.pop()
        found.update(m for m in getattr(kind, "__metadata__", ()) if isinstance(m, str))
        stack.extend(getattr(kind, "__args__", ()))
    return found
