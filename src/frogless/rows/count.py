"""What a body takes of the row below, what it leaves, and what it works.

The tree knows no stitch by name, so the places a stitch takes and leaves are handed in by key.
Repeats are multiplied, never unrolled.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping

from frogless.errors import InputError, near_names
from frogless.rows.nodes import Chain, Into, Node, Repeat, Row, Skip, Together, Work
from frogless.rows.walk import nodes

#: The one stitch that the tree has a node for; counted under the key it has in every dictionary.
CHAIN = "chain"


def consumed(body: Iterable[Node], stands_on: Mapping[str, int]) -> int:
    """Places of the row below that a body takes, those it skips on purpose included.

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
            case Skip(times):
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


def row_consumed(row: Row, stands_on: Mapping[str, int]) -> int:
    """Places of the row below that a row takes; a turning chain that counts stands on one."""
    return _stands_in(row) + consumed(row.body, stands_on)


def row_left(row: Row, leaves: Mapping[str, int]) -> int:
    """Places that a row leaves; a turning chain that counts is one."""
    return _stands_in(row) + left(row.body, leaves)


def row_worked(row: Row) -> Counter[str]:
    """Stitches worked in a row, by key, the chains of its turning chain included."""
    return +(worked(row.body) + Counter({CHAIN: row.start.chains}))


def _stands_in(row: Row) -> int:
    return int(row.start.counts and row.start.chains > 0)


def _known(stitch: str, places: Mapping[str, int]) -> int:
    if stitch not in places:
        raise InputError(f'unknown stitch "{stitch}"{near_names(stitch, places)}')
    return places[stitch]
