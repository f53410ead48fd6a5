"""A row as it is said, before it is known what it is worked into."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from frogless.rows.nodes import Into, Repeat, Skip, Work

Sense = Literal["", "not_counted", "counted", "each_counted", "one_space"]


Handling = Literal["", "placed", "replaced", "moved"]
"""What is done with markers: placed first, taken out and placed anew, or moved up."""


@dataclass(frozen=True, slots=True)
class SaidChain:
    """Chains, and what was said that they count as."""

    times: int
    sense: Sense = ""


@dataclass(frozen=True, slots=True)
class Bare:
    """A stitch without a word on where it goes."""

    word: str
    times: int = 1


@dataclass(frozen=True, slots=True)
class Over:
    """A stitch worked over several places, so many times."""

    word: str
    times: int
    places: int


@dataclass(frozen=True, slots=True)
class Tog:
    """A stitch closed together over so many places: "dc2tog"."""

    word: str


@dataclass(frozen=True, slots=True)
class Each:
    """The same in each place there is.

    Args:
        into: several in one place; without it one `stitch` in each.
        remaining: the first place is taken by the turning chain.
        spaces: chain spaces are named as places.
    """

    stitch: str
    into: Into | None
    remaining: bool
    spaces: bool


@dataclass(frozen=True, slots=True)
class Group:
    """Items worked so many times."""

    items: tuple[Item, ...]
    times: int


@dataclass(frozen=True, slots=True)
class Backwards:
    """Working back without turning."""


@dataclass(frozen=True, slots=True)
class NoTurningChain:
    """The chain that follows is no turning chain."""


Item = (
    Work
    | Into
    | Skip
    | Repeat
    | SaidChain
    | Bare
    | Over
    | Tog
    | Each
    | Group
    | Backwards
    | NoTurningChain
)


@dataclass(frozen=True, slots=True)
class Ending:
    """One thing said of a row's end; `slip` is the stitch it is joined with, `word` what to."""

    kind: Literal["untwisted", "join_first", "join_top", "no_join", "turn"]
    slip: str = ""
    word: str = ""
    chains: int = 0


@dataclass(frozen=True, slots=True)
class Marked:
    """Markers and the stitch of its group (1 first) that each goes into."""

    numbers: tuple[int, ...]
    nth: int


@dataclass(frozen=True, slots=True)
class Label:
    """What rows a line is about, and their sides as far as they are said."""

    kind: Literal["foundation", "round", "row"]
    first: int
    last: int
    sides: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Said:
    """A whole line.

    Args:
        handling: what is done with the markers.
        noted: whether it was said that chain spaces count as stitches.
        stated: places that the count adds up to; None when nothing was stated.
    """

    label: Label
    items: tuple[Item, ...]
    endings: tuple[Ending, ...] = ()
    hook: float | None = None
    noted: bool = False
    marked: tuple[Marked, ...] = ()
    handling: Handling = ""
    fasten_off: bool = False
    stated: int | None = None
