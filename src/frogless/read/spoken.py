"""A row as it is said, before it is known what it is worked into."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from frogless.rows.nodes import Into, Repeat, Skip, Work

Sense = Literal["", "not_counted", "counted", "counted_next", "each_counted", "one_space"]
Where = Literal["next", "first", "last", "same", "ring", "top"]

#: What a place was called: "st", "ch", "end" (of a row), "ring", "place", "sp" (a chain space), "sp"
#: and the number of its chains, or "=" and the key of the stitch that made it.
Noun = str

Handling = Literal["", "placed", "replaced", "moved"]
"""What is done with markers: placed first, taken out and placed anew, or moved up."""


@dataclass(frozen=True, slots=True)
class SaidChain:
    """Chains, and what was said that they count as.

    Args:
        space: so many of them, after those that count as the first stitch, are a chain space.
    """

    times: int
    sense: Sense = ""
    space: int = 0


@dataclass(frozen=True, slots=True)
class FromHook:
    """Where a row begins in a foundation chain, and whether the chains before it count.

    Args:
        nth: the chain that it begins in, counted from the hook.
        skipped: how many chains were said to come before it.
        counts: None when nobody said; what `stitch` usually has for a turning chain decides then.
    """

    nth: int
    skipped: int
    counts: bool | None
    stitch: str = ""


@dataclass(frozen=True, slots=True)
class Across:
    """Slip stitches over the first places, which do not count.

    Args:
        into: what the place is that the last of them leads into, for the chain that counts to stand
            in; "" where the chain stands on the place after them.
    """

    word: str
    times: int
    noun: Noun = "st"
    into: Noun = ""


@dataclass(frozen=True, slots=True)
class SameStart:
    """The row begins in the place that the turning chain stands on."""


@dataclass(frozen=True, slots=True)
class Older:
    """So many places that earlier rows left are worked into as well."""

    times: int


@dataclass(frozen=True, slots=True)
class Placed:
    """A stitch in so many places, or several in one, and which places were meant.

    Args:
        node: a repeat where several are worked into each of some places.
        chains: of a turning chain whose top was named; 0 when their number was not.
    """

    node: Work | Into | Repeat
    where: Where = "next"
    noun: Noun = "st"
    chains: int = 0


@dataclass(frozen=True, slots=True)
class Evenly:
    """So many stitches spread evenly over places.

    Args:
        shares: how many places take how many.
    """

    stitch: str
    count: int
    over: int
    shares: tuple[tuple[int, int], ...]
    noun: Noun


@dataclass(frozen=True, slots=True)
class Skipped:
    """Places that are passed over."""

    times: int
    noun: Noun = "st"


@dataclass(frozen=True, slots=True)
class Unworked:
    """The last places of a row, not worked into; for now, or for good."""

    times: int
    for_now: bool
    noun: Noun = "st"


@dataclass(frozen=True, slots=True)
class Made:
    """Something that stands on nothing: beads, foundation stitches, a ring."""

    node: Work


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
    where: Where = "next"
    noun: Noun = "st"


@dataclass(frozen=True, slots=True)
class Tog:
    """A stitch closed together over so many places: "dc2tog"."""

    word: str


@dataclass(frozen=True, slots=True)
class Counted:
    """So many places of a kind."""

    times: int
    noun: Noun = "st"


@dataclass(frozen=True, slots=True)
class InKind:
    """What is worked into each place of some kinds.

    Args:
        nouns: every kind of place that was named; none: all that were not.
    """

    node: Work | Into | Skip
    nouns: tuple[Noun, ...]


@dataclass(frozen=True, slots=True)
class Each:
    """The same in each place there is, or in each but the last ones.

    Args:
        into: several in one place; without it one `stitch` in each.
        remaining: places before them are taken.
        nouns: every kind of place that was named.
        last: the places that it leaves for what follows.
        more: what is worked into places of other kinds.
    """

    stitch: str
    into: Into | None
    remaining: bool
    nouns: tuple[Noun, ...] = ("st",)
    last: tuple[Counted, ...] = ()
    more: tuple[InKind, ...] = ()


@dataclass(frozen=True, slots=True)
class SkippedOthers:
    """All places that were not named are passed over."""


@dataclass(frozen=True, slots=True)
class Group:
    """Items worked so many times."""

    items: tuple[Item, ...]
    times: int


@dataclass(frozen=True, slots=True)
class Starred:
    """Items worked as often as there is room: around, or up to the last so many places."""

    items: tuple[Item, ...]
    last: tuple[Counted, ...] = ()


@dataclass(frozen=True, slots=True)
class Changed:
    """Another colour from here on; the one before it is carried or cut."""

    colour: str
    carried: bool


#: Nothing at all is worked.
NOTHING = Group((), 0)


@dataclass(frozen=True, slots=True)
class Backwards:
    """Working back without turning."""


@dataclass(frozen=True, slots=True)
class NoTurningChain:
    """The chain that follows is no turning chain."""


Item = (
    SaidChain
    | FromHook
    | Across
    | SameStart
    | Older
    | Placed
    | Evenly
    | Skipped
    | SkippedOthers
    | Unworked
    | Made
    | Bare
    | Over
    | Tog
    | Each
    | Group
    | Starred
    | Changed
    | Backwards
    | NoTurningChain
)


@dataclass(frozen=True, slots=True)
class Ending:
    """One thing said of a row's end; `slip` is the stitch it is joined with, `word` what to."""

    kind: Literal[
        "untwisted", "join", "join_first", "join_top", "join_ring", "no_join", "turn", "no_turn"
    ]
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
        short: whether it was called a short row.
        rejoined: whether yarn is joined for it.
        stated: places that the count adds up to; None when nothing was stated.
        colour: what it was said to begin with.
    """

    label: Label
    items: tuple[Item, ...]
    endings: tuple[Ending, ...] = ()
    hook: float | None = None
    noted: bool = False
    short: bool = False
    rejoined: bool = False
    marked: tuple[Marked, ...] = ()
    handling: Handling = ""
    fasten_off: bool = False
    stated: int | None = None
    colour: str = ""


@dataclass(frozen=True, slots=True)
class SaidSame:
    """A line that tells to work as an earlier row: "Row 5: Rep row 1."."""

    label: Label
    source: int
    stated: int | None = None


@dataclass(frozen=True, slots=True)
class SaidAgain:
    """A line that tells to work rows again: `first` to `last`, so many times more."""

    label: Label
    first: int
    last: int
    times: int
    stated: int | None = None
