"""What the program knows of a stitch: an entry of the dictionary, and patterns made of stitches."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Literal

from frogless.rows.nodes import Node

Dialect = Literal["us", "uk"]
Kind = Literal["stitch", "foundation", "ornament", "trim", "group"]
Motion = Literal[
    "yarn_over",
    "insert",
    "pull_up",
    "pull_through",
    "slip_through",
    "chain",
    "slide_bead",
    "set_aside",
    "take_up",
]

#: Times a motion catches the yarn; a loop slipped through another catches none.
CATCHES: Mapping[Motion, int] = {
    "yarn_over": 1,
    "insert": 0,
    "pull_up": 1,
    "pull_through": 1,
    "slip_through": 0,
    "chain": 1,
    "slide_bead": 0,
    "set_aside": 0,
    "take_up": 0,
}
#: The motions that are said with a number: loops, or times for chains.
COUNTED: frozenset[Motion] = frozenset(
    {"pull_through", "slip_through", "chain", "set_aside", "take_up"}
)
#: The parts that a stitch's chart symbol is put together from, and whether each takes a number.
SYMBOL_PARTS: Mapping[str, bool] = {
    "oval": False,
    "ovals": True,
    "dot": False,
    "cross": False,
    "ring": False,
    "stem": False,
    "bars": True,
    "top_bar": False,
    "foot_hook_right": False,
    "foot_hook_left": False,
    "foot_open": False,
    "foot_beside": False,
    "foot_split": False,
    "foot_over": True,
    "foot_long": True,
    "arc_open_up": False,
    "arc_open_down": False,
    "line_under": False,
    "tilde_over": False,
    "oval_over": False,
    "loop_over": False,
    "oval_between": True,
    "joined_foot": True,
    "joined_top": True,
    "bulge": True,
    "side_by_side": True,
    "crossed": True,
    "crossed_behind": True,
    "coil": True,
    "linked_left": False,
    "triangle": False,
    "diamond": False,
    "foot_bar": False,
    "oval_under": False,
    "side_loop": False,
    "slanted": False,
    "stacked": True,
    "branch": False,
}


@dataclass(frozen=True, slots=True)
class Step:
    """One primitive motion: `loops` drawn through, set aside or taken up; times for chain."""

    motion: Motion
    loops: int = 1
    where: str = ""

    @property
    def times(self) -> int:
        """Times the motion is made: `loops` for chains, once for every other."""
        return self.loops if self.motion == "chain" else 1

    def put_into(self, place: str) -> Step:
        """The same motion with the hook inserted into `place`; others than inserting stay."""
        return replace(self, where=place) if self.motion == "insert" else self


@dataclass(frozen=True, slots=True)
class Term:
    """A stitch's name and abbreviation in one dialect.

    Args:
        others: abbreviations that are in use besides; they are read and never written.
    """

    name: str
    abbreviation: str
    others: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Ratio:
    """A ratio against single crochet with its usual range."""

    low: float
    typical: float
    high: float


@dataclass(frozen=True, slots=True)
class Stitch:
    """One entry of the dictionary.

    Args:
        key: full US name, `half_double_crochet`.
        kind: stitch, foundation (chain and stitch in one), ornament (picot: stands on and leaves
            nothing), trim, or group (several worked into one place: only a name for `Into(works)`,
            which is what a row holds).
        stands_on: places it takes of the row below (0: none).
        leaves: places it leaves for the next row.
        turning_chain: chains as tall as the stitch (0: none).
        begins_on: for a foundation stitch, the chains it begins on.
        height: row height over that of single crochet.
        width: stitch width over that of single crochet.
        steps: motions, from one loop on the hook back to one loop.
        how: one sentence; `{key}` stands for the term of a stitch or a reading word, `load.explain`
            fills it.
        source: where the ratios come from; `basis` says how sure, `terms_basis` how sure the terms.
        chain_counts: whether its turning chain usually counts as a stitch ("" when it has none).
        foundation_extra: chains beyond the stitch count when the first row is worked into a chain.
        height_over_width: row height over stitch width, where it is known; a flat disc grows by
            2 pi times this in each round.
        symbol: the parts of its chart symbol, `SYMBOL_PARTS`, each with its number if it takes one.
        also: what else it is called, in any dialect.
        abroad: its name and abbreviation by language (`de`, `ja`), where these were confirmed.
        like, into: the stitch that it is but for the place that the hook goes into.
        reaches: rows further down than the row below that it is worked into (spike: 1).
        left_handed: `how` for a left-hander, where the words differ.
        works: what a group works into its one place.
        yarn_basis: `measured` where yarn was ravelled; otherwise `derived` from the steps.
    """

    key: str
    kind: Kind
    terms: Mapping[Dialect, Term]
    stands_on: int
    leaves: int
    turning_chain: int
    height: Ratio
    width: Ratio
    steps: tuple[Step, ...]
    how: str
    source: str
    basis: str
    begins_on: int = 0
    terms_basis: str = ""
    chain_counts: Literal["yes", "no", "varies", ""] = ""
    foundation_extra: int = 0
    height_over_width: Ratio | None = None
    symbol: tuple[str, ...] = ()
    also: tuple[str, ...] = ()
    abroad: Mapping[str, Term] = field(default_factory=dict)
    like: str = ""
    into: str = ""
    reaches: int = 0
    left_handed: str = ""
    works: tuple[Node, ...] = ()
    yarn_basis: Literal["measured", "derived"] = "derived"

    @property
    def catches(self) -> int:
        """Times the yarn is caught, which its yarn is in proportion to: chain 1, sc 2, hdc 3, dc 4.

        Source: yarn ravelled from rows of one length, 1 : 2.08 : 3.08 : 4.00 (one measurement).
        """
        return sum(CATCHES[step.motion] * step.times for step in self.steps)


@dataclass(frozen=True, slots=True)
class EdgeRow:
    """One row of an edging that begins and ends: in rows along an edge, or on one side of a square.

    Args:
        before, after: worked once, before and after the repeats.
        corner: worked into what the corner after the side leaves; empty in rows.
    """

    before: tuple[Node, ...]
    repeat: tuple[Node, ...]
    after: tuple[Node, ...]
    corner: tuple[Node, ...] = ()


@dataclass(frozen=True, slots=True)
class Fringe:
    """Strands knotted into the last round of an edging, one knot in each repeat.

    Args:
        strands: to a knot; folded they hang as twice as many.
        length: of what hangs, mm.
    """

    strands: int
    length: float


@dataclass(frozen=True, slots=True)
class Edging:
    """An edging pattern as fragments of rows, with its parameters filled in.

    Args:
        multiple, offset: it needs `multiple` * m + `offset` places of the row below.
        rounds: for each round the nodes of one repeat.
        backwards: for each round, whether it is worked back without turning.
        rows: the same in rows along an edge; empty when it is worked in rounds only.
        row_offset: places beyond the multiple in rows.
        sides: the same on a side between two corners; empty when it goes round no corners.
        side_offset: places of a side beyond the multiple, its corners not among them.
        note: what a maker should know; "" for nothing.
        fringe: what is knotted into its last round; None for nothing.
    """

    key: str
    terms: Mapping[Dialect, Term]
    multiple: int
    offset: int
    rounds: tuple[tuple[Node, ...], ...]
    backwards: tuple[bool, ...]
    turning_chains: tuple[int, ...]
    stitches: tuple[str, ...]
    source: str
    basis: str
    rows: tuple[EdgeRow, ...] = ()
    row_offset: int = 0
    sides: tuple[EdgeRow, ...] = ()
    side_offset: int = 0
    note: str = ""
    fringe: Fringe | None = None
