"""The edge that a row leaves: its places in the order in which they were made, as runs.

A row of 300 stitches is a handful of runs. A run of chains between two stitches is one place, a
chain of a foundation is one place each.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from typing import Literal, NamedTuple

#: Places that a row may have. No garment comes near it.
MOST_PLACES = 100_000
#: Runs of unlike places that a row may have: a mesh of 2,500 spaces.
MOST_RUNS = 5_000

_BOTH = 3


class Place(NamedTuple):
    """One place to work into.

    Args:
        kind: `turning` is the top of a turning chain that does not count; one that counts is a
            `stitch` with `chains`.
        chains: of a space, or of a turning chain.
        of: key of the group that it was worked in as a part of; "".
        ends: 1 for the first of its group, 2 for the last, 3 for both.
        corner: a space within stitches that all stand in one place.
    """

    kind: Literal["stitch", "space", "chain", "turning", "ring"]
    stitch: str = ""
    chains: int = 0
    of: str = ""
    ends: int = 0
    corner: bool = False


Run = tuple[Place, int]


class Edge(NamedTuple):
    """What can be worked into.

    Args:
        known: False where nobody says how many places there are (ends of rows).
        begun: "chain" for a foundation chain, "nothing" before anything was worked, "piece" where
            what is worked into was told to be another piece.
    """

    runs: tuple[Run, ...] = ()
    known: bool = True
    begun: Literal["", "chain", "ring", "nothing", "piece"] = ""


NOTHING = Edge(begun="nothing")
UNKNOWN = Edge(known=False)
OF_PIECE = Edge(known=False, begun="piece")
RING = Edge(((Place("ring"), 1),), begun="ring")


def of_chains(count: int) -> Edge:
    """A foundation chain, each chain a place."""
    return Edge(((Place("chain"), count),) if count else (), begun="chain")


def of_stitches(stitch: str, count: int) -> Edge:
    """A plain row of one stitch."""
    return Edge(((Place("stitch", stitch), count),) if count else ())


def merged(runs: Iterable[Run]) -> tuple[Run, ...]:
    """The same places in as few runs as there can be; two spaces stay two places of one run."""
    found: list[Run] = []
    last: Place | None = None
    for run in runs:
        place, count = run
        if not count:
            continue
        if place == last:
            found[-1] = (place, found[-1][1] + count)
        else:
            found.append(run)
            last = place
    return tuple(found)


def turned(edge: Edge) -> Edge:
    """The edge as the next row meets it when the work was turned."""
    return edge._replace(runs=tuple((_mirrored(p), n) for p, n in reversed(edge.runs)))


def _mirrored(place: Place) -> Place:
    if place.ends in (0, _BOTH):
        return place
    return place._replace(ends=_BOTH - place.ends)


def with_chains_apart(edge: Edge) -> Edge:
    """The edge with every chain of its spaces as a place of its own."""
    apart = ((Place("chain"), n * p.chains) if p.kind == "space" else (p, n) for p, n in edge.runs)
    return edge._replace(runs=merged(apart))


def has_spaces(edge: Edge) -> bool:
    """Whether any of its places is a chain space."""
    return any(place.kind == "space" for place, _ in edge.runs)


def stitches_of(edge: Edge) -> int:
    """Stitches and chains of a foundation; neither spaces nor chains that do not count."""
    return sum(n for p, n in edge.runs if p.kind in ("stitch", "chain"))


def is_plain(edge: Edge) -> bool:
    """Whether all that can be worked into are stitches, whichever, or chains of a foundation."""
    return edge.known and all(p.kind in ("stitch", "chain", "turning") for p, _ in edge.runs)


def main_stitch(edge: Edge) -> str:
    """The stitch that it has most of; "" for a chain."""
    counts: Counter[str] = Counter()
    for place, count in edge.runs:
        if place.kind == "stitch":
            counts[place.stitch] += count
    return max(counts, key=lambda key: counts[key], default="")


def resized(edge: Edge, count: int) -> Edge:
    """The edge with another number of stitches, as like it as can be.

    A repeat at its end is worked more or less often where that comes out; else the longest run of
    one stitch is made longer or shorter.
    """
    change = count - stitches_of(edge)
    if not change or count > MOST_PLACES:
        return edge
    return (
        _with_repeats(edge, change)
        or _with_longest(edge, change)
        or of_stitches(main_stitch(edge), count)
    )


def _with_repeats(edge: Edge, change: int) -> Edge | None:
    runs = edge.runs
    for length in range(2, min(16, len(runs) // 2) + 1):
        unit = runs[-length:]
        each = stitches_of(Edge(unit))
        if runs[-2 * length : -length] != unit or not each or change % each:
            continue
        times = change // each
        if times > 0:
            return edge._replace(runs=merged((*runs, *(unit * times))))
        kept = len(runs) + times * length
        if kept > 0:
            return edge._replace(runs=runs[:kept])
    return None


def _with_longest(edge: Edge, change: int) -> Edge | None:
    runs = [i for i, (p, _) in enumerate(edge.runs) if p.kind in ("stitch", "chain")]
    longest = max(runs, key=lambda i: edge.runs[i][1], default=None)
    if longest is None or edge.runs[longest][1] + change < 1:
        return None
    place, count = edge.runs[longest]
    changed = (place, count + change)
    return edge._replace(runs=(*edge.runs[:longest], changed, *edge.runs[longest + 1 :]))
