"""Stitch patterns that a design defines itself: as written rows, or as data."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import Field

from frogless.design.strict import MANY, Strict
from frogless.files import Name

Whole = int | str
"""A whole number, or a sum over the pattern's own numbers: "fan + 1"."""


class OwnNumber(Strict):
    """A number of a pattern that a section may choose: what it is, and how far it may go."""

    default: int
    low: int
    high: int


class OwnRow(Strict):
    """One row as data: `before`, `repeat` and `after` are lists of nodes.

    A node is `{ work = "double_crochet", times = 2 }`, `{ into = [...] }`, `{ together =
    "double_crochet", places = 2 }`, `{ skip = 2 }`, `{ chain = 3 }` or `{ repeat = [...], times = 2 }`.
    """

    turning_chain: Annotated[int, Field(ge=0, le=12)] = 0
    turning_chain_counts: bool = False
    before: tuple[dict[str, Any], ...] = ()
    repeat: tuple[dict[str, Any], ...] = ()
    after: tuple[dict[str, Any], ...] = ()
    join: Literal["first stitch", "top of chain"] | None = None
    turn: bool | None = None


class OwnPattern(Strict):
    """A stitch pattern of the design's own.

    `rows` and `rounds` are text in `terms`, one row to a line; `row` and `round` are the same as data.
    Where no `multiple` is said it is found, with its offset and the fewest repeats.
    """

    name: Name
    terms: Literal["us", "uk"] = "us"
    multiple: Whole | None = None
    offset: Whole = 0
    setup: Annotated[int, Field(ge=0, le=200)] = 0
    least: Annotated[int, Field(ge=1, le=500)] = 1
    parameters: dict[str, OwnNumber] = Field(default_factory=dict)
    rows: str | None = None
    rounds: str | None = None
    row: Annotated[tuple[OwnRow, ...], MANY] = ()
    round: Annotated[tuple[OwnRow, ...], MANY] = ()
