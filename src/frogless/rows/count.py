"""What a body takes of the row below, what it leaves, and what it works.

The tree knows no stitch by name, so the places a stitch takes and leaves are handed in by key.
Repeats are multiplied, never unrolled.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping

from frogless.errors import InputError, near_names
from frogless.rows.nodes import Chain, Into, Leave, Node, Repeat, Row, Skip, Together, Work
from frogless.rows.walk import nodes

#: The stitches that the tree works by itself (runs of chains, the slip stitches of `Start.across`);
#: counted under the keys they have in every dictionary.
CHAIN = "chain"
SLIP_STITCH = "slip_stitch"


def consumed(body: Iterable[Node], stands_on: Mapping[str, int]) -> int:
    """Places that a body accounts for: those it takes, skips on purpose or leaves for later.

    Args:
        stands_on: places that each stitch takes, by key.

    Raises:
        InputError: a stitch that `stands_on` does not know.
    """
    total = 0
    for node in body:
        match node:
            case Work(stitch, times):
                total += times * _known(stitch, stands_on)
            case Into():
                total += 1
            case Together(_, places):
                total += places
            case Skip(times) | Leave(times):
                total += times
            case Repeat(inner, times):
                total += times * consumed(inner, stands_on)
    return total


def left(body: Iterable[Node], leaves: Mapping[str, int]) -> int:
    """Places that a body leaves for the next row; a run of chains is one.

    Raises:
        InputError: a stitch that `leaves` does not know.
    """
    total = 0
    for node, met in nodes(body):
        match node:
            case Work(stitch, times):
                total += met * times * _known(stitch, leaves)
            case Together(stitch, _):
                total += met * _known(stitch, leaves)
            case Chain(times, each):
                total += met * (times if each else min(times, 1))
    return total


def worked(body: Iterable[Node]) -> Counter[str]:
    """Stitches worked, by key, single chains among them; ornaments count as what they are."""
    counts: Counter[str] = Counter()
    for node, met in nodes(body):
        match node:
            case Work(stitch, times):
                counts[stitch] += met * times
            case Together(stitch, _):
                counts[stitch] += met
            case Chain(times, _):
                counts[CHAIN] += met * times
    return +counts


def left_for_later(body: Iterable[Node]) -> int:
    """Places that a body leaves unworked for a later row."""
    return sum(met * node.times for node, met in nodes(body) if isinstance(node, Leave))


def row_consumed(row: Row, stands_on: Mapping[str, int]) -> int:
    """Places that a row accounts for: those of its start, and those of its body.

    A turning chain that counts stands on one, which it may share with the body's first.
    """
    start = row.start
    return start.across + (_stands_in(row) and not start.shares) + consumed(row.body, stands_on)


def row_left(row: Row, leaves: Mapping[str, int]) -> int:
    """Places that a row makes for the next row; a turning chain that counts is one."""
    return _stands_in(row) + left(row.body, leaves)


def row_worked(row: Row) -> Counter[str]:
    """Stitches worked in a row, by key: its turning chain and the slip stitches before it too."""
    start = Counter({CHAIN: row.start.chains, SLIP_STITCH: row.start.across})
    return +(worked(row.body) + start)


def _stands_in(row: Row) -> int:
    return int(row.start.counts and row.start.chains > 0)


def _known(stitch: str, places: Mapping[str, int]) -> int:
    if stitch not in places:
        raise InputError(f'unknown stitch "{stitch}"{near_names(stitch, places)}')
    return places[stitch]
