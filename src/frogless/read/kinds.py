"""What is worked into places of several kinds: "sc in each st and 3 sc in each ch-3 sp around"."""

from __future__ import annotations

from collections.abc import Sequence

from frogless.rows.nodes import Node, Repeat
from frogless.rows.walk import flatten

#: A repeat of more places than this is not looked for.
_LONGEST = 60


def gathered(nodes: Sequence[Node]) -> tuple[Node, ...]:
    """Nodes of one place each, with the part that repeats as a `Repeat`.

    Of all ways to cut them the one that leaves least to read; of equal ones the first.

    >>> from frogless.rows.nodes import Skip, Work
    >>> gathered((Skip(), Work("treble"), Skip(), Work("treble"), Skip()))[0].times
    2
    """
    best = (len(nodes), 0, 0, 0)
    for period in range(1, min(_LONGEST, len(nodes) // 2) + 1):
        for begin, times in _runs(nodes, period):
            left = len(nodes) - period * (times - 1)
            best = min(best, (left, begin, period, times))
    _, begin, period, times = best
    if not times:
        return flatten(nodes)
    unit, end = nodes[begin : begin + period], begin + period * times
    return (*flatten(nodes[:begin]), Repeat(flatten(unit), times), *flatten(nodes[end:]))


def _runs(nodes: Sequence[Node], period: int) -> list[tuple[int, int]]:
    """Where a part of some length comes again and again, and how often it is there."""
    found, begin = [], 0
    for at in range(period, len(nodes) + 1):
        if at < len(nodes) and nodes[at] == nodes[at - period]:
            continue
        times = (at - begin) // period
        if times > 1:
            found.append((begin, times))
        begin = at - period + 1
    return found
