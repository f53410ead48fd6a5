"""Where in a round the shaping falls, as nodes of a row and as the stitch each marker moves up into.

Shaping point i of k lies at the fraction (i + 1/2) / k of the round, counted from the join: symmetric about
the join and the point opposite, to half a stitch. In every shaping round the place that covers this
fraction takes the increase. It is always one of the stitches of the increase below it (adding s stitches
at each of k points moves the place by i·s + s/2), so the points keep their line in turned and in unturned
rounds, and the marker has only to know which stitch of the group to move into.

Places ⌊(i + 1/2) n / k⌋: a rotation of the maximally even set (Demaine et al., The distance geometry of
music, Computational Geometry 42, 2009); gaps differ by one at most.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from frogless.rows.nodes import Into, Node, Repeat, Side, Together, Work


@dataclass(frozen=True, slots=True)
class Round:
    """A shaping round before it is worked: n places, k points, s stitches added (negative: taken away) at each.

    Args:
        chain_counts: the turning chain takes place 0, so that stitch 0 lies on the join, not beside it.
    """

    places: int
    points: int
    add: int
    side: Side = "RS"
    chain_counts: bool = False

    @property
    def left(self) -> int:
        """Stitches after the round."""
        return self.places + self.points * self.add

    def positions(self) -> list[int]:
        """For each point the first place it takes, in the order worked."""
        n, k = self.places, self.points
        if self.add < 0:
            over = 1 - self.add
            at = [((2 * i + 1) * n - k * (over - 1)) // (2 * k) for i in range(k)]
        elif self.chain_counts:
            at = [((2 * i + 1) * n + k) // (2 * k) for i in range(k)]
        else:
            at = [((2 * i + 1) * n) // (2 * k) for i in range(k)]
        floor = 1 if self.chain_counts else 0
        return [max(p, floor) for p in at]

    def groups(self) -> list[int]:
        """For each point the first stitch it makes, in the order worked."""
        return [p + i * self.add for i, p in enumerate(self.positions())]


def body(stitch: str, round_: Round) -> tuple[Node, ...]:
    """The nodes of a shaping round, equal stretches folded into repeats."""
    over = 1 - round_.add if round_.add < 0 else 1
    change: Node = (
        Into((Work(stitch, round_.add + 1),)) if round_.add > 0 else Together(stitch, over)
    )
    at = round_.positions()
    start = 1 if round_.chain_counts else 0
    gaps = [b - a - over for a, b in zip(at, [*at[1:], round_.places], strict=True)]
    units = [(change, *_plain(stitch, gap)) for gap in gaps]
    return (*_plain(stitch, at[0] - start), *_folded(units))


def _folded(units: Sequence[tuple[Node, ...]]) -> list[Node]:
    """Stretches that repeat, one or several units long, as repeats; from each place on the one that covers most."""
    nodes: list[Node] = []
    i = 0
    while i < len(units):
        length, times = max(
            ((p, _times(units[i:], p)) for p in range(1, (len(units) - i) // 2 + 1)),
            key=lambda found: (found[0] * found[1] if found[1] > 1 else 0, -found[0]),
            default=(1, 1),
        )
        if times < 2:
            length, times = 1, 1
        once = tuple(node for unit in units[i : i + length] for node in unit)
        nodes.extend([Repeat(once, times)] if times > 1 else once)
        i += length * times
    return nodes


def _times(units: Sequence[tuple[Node, ...]], period: int) -> int:
    """How often the first `period` units come again, one after the other."""
    times = 1
    while units[times * period : (times + 1) * period] == units[:period]:
        times += 1
    return times


def _plain(stitch: str, times: int) -> list[Node]:
    return [Work(stitch, times)] if times > 0 else []


def even_gaps(places: int, marks: int) -> tuple[int, ...]:
    """Lengths of the gaps between `marks` marks spread over a round of `places`; they differ by one at most.

    Source: ⌊n/k⌋ and ⌈n/k⌉, n mod k long ones (Toussaint, BRIDGES 2005; common practice).
    """
    ends = [(i + 1) * places // marks for i in range(marks)]
    return tuple(b - a for a, b in zip([0, *ends], ends, strict=False))


def marks(round_: Round, following: Round | None) -> tuple[int, ...]:
    """Which stitch of each group (0 first, in the order worked) carries the marker on to `following`."""
    size = round_.add + 1 if round_.add > 0 else 1
    if size == 1 or following is None or following.points != round_.points or following.add < 0:
        return (size // 2 if size > 2 else 0,) * round_.points
    targets = following.positions()
    if following.side != round_.side:
        targets = _mirrored(targets, following)
    return tuple(t - g for t, g in zip(targets, round_.groups(), strict=True))


def _mirrored(positions: Sequence[int], round_: Round) -> list[int]:
    """The same places counted in the other direction; a counted chain stays place 0."""
    last = round_.places if round_.chain_counts else round_.places - 1
    return [last - p for p in reversed(positions)]
