"""What the program knows of a stitch: an entry of the dictionary, and patterns made of stitches."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from frogless.rows.nodes import Node

Dialect = Literal["us", "uk"]
Motion = Literal[
    "yarn_over", "insert", "pull_up", "pull_through", "slip_through", "chain", "slide_bead"
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
}


@dataclass(frozen=True, slots=True)
class Step:
    """One primitive motion; `loops` for pull_through and slip_through, times for chain."""

    motion: Motion
    loops: int = 1
    where: str = ""

    @property
    def times(self) -> int:
        """Times the motion is made: `loops` for chains, once for every other."""
        return self.loops if self.motion == "chain" else 1


@dataclass(frozen=True, slots=True)
class Term:
    """A stitch's name and abbreviation in one dialect."""

    name: str
    abbreviation: str


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
            nothing) or trim.
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
    """

    key: str
    kind: Literal["stitch", "foundation", "ornament", "trim"]
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

    @property
    def catches(self) -> int:
        """Times the yarn is caught, which its yarn is in proportion to: chain 1, sc 2, hdc 3, dc 4.

        Source: yarn ravelled from rows of one length, 1 : 2.08 : 3.08 : 4.00 (one measurement).
        """
        return sum(CATCHES[step.motion] * step.times for step in self.steps)


@dataclass(frozen=True, slots=True)
class Edging:
    """An edging pattern as fragments of rows, with its parameters filled in.

    Args:
        multiple, offset: it needs `multiple` * m + `offset` places of the row below.
        rounds: for each round the nodes of one repeat.
        backwards: for each round, whether it is worked back without turning.
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
