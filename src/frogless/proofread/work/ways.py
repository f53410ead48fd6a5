"""Ways to read what a pattern leaves open, and how one row is read."""

from __future__ import annotations

from typing import Literal, NamedTuple

#: What a turning chain is: no stitch, a stitch, or a stitch with a space after it.
Counts = Literal["no", "yes", "space"]
#: Chains in a row's beginning, and the stitch that they stand before.
ChainKey = tuple[int, str]


class Ways(NamedTuple):
    """The readings of what holds throughout a pattern.

    Args:
        counts: of turning chains of which nothing is said.
        one: "5 sc" is five in one place.
        all_told: "rep from * 5 times" is five in all.
        in_one: "(2 sc, 4 dc) 4 times" is worked into one place each time.
    """

    counts: tuple[tuple[ChainKey, Counts], ...] = ()
    one: bool = False
    all_told: bool = False
    in_one: bool = False


class RowWay(NamedTuple):
    """How one row is read.

    Args:
        counts: of the turning chains that the row may begin with.
        spaces: what "st" means where there are chain spaces: they are passed over, a space is one
            place, each chain is one.
        next_foot: after slip stitches the turning chain stands on the next place, not on the last
            of these.
        led: slip stitches before a chain only lead to where the row begins; else they are a part of
            it, and the chain is a space.
    """

    counts: tuple[tuple[ChainKey, Counts], ...] = ()
    one: bool = False
    all_told: bool = False
    in_one: bool = False
    spaces: Literal["passed", "space", "each"] = "passed"
    next_foot: bool = False
    led: bool = True

    def count_of(self, key: ChainKey) -> Counts:
        """What the row's turning chain is; no stitch where nothing is known of it."""
        for known, counts in self.counts:
            if known == key:
                return counts
        return "no"
