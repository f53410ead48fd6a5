"""Where in a round the shaping falls: nodes of a row, and the stitch each marker moves up into.

Shaping point i of k lies at the fraction (i + 1/2) / k of the round, counted from the join:
symmetric about the join and the point opposite, to half a stitch. In every shaping round the place
that covers this fraction takes the increase; a decrease takes the places with their middle nearest
to it. An increase always lies on one of the stitches of the increase below it (adding s stitches at
each of k points moves the place by i·s + s/2), a decrease takes the stitch of the decrease below it
among its places, so the points keep their line in turned and in unturned rounds, and the marker
has only to know which stitch of the group to move into. Above a decrease there is just one stitch
to increase in: the one that the marker is in, half a stitch off the line at most.

Places ⌊(i + 1/2) n / k⌋: a rotation of the maximally even set (Demaine et al., The distance
geometry of music, Computational Geometry 42, 2009); gaps differ by one at most.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from frogless.rows.nodes import Into, Node, Repeat, Side, Together, Work


@dataclass(frozen=True, slots=True)
class Round:
    """A shaping round before it is worked: n places, k points, s stitches added at each.

    Args:
        add: negative when stitches are taken away.
        chain_counts: the turning chain takes place 0, so that stitch 0 lies on the join, not
            beside it.
        at: first place of each point, when it is not the one that covers the line.
        loose: its points stand in no line, so that no markers lead to them.
    """

    places: int
    points: int
    add: int
    side: Side = "RS"
    chain_counts: bool = False
    at: tuple[int, ...] = ()
    loose: bool = False

    @property
    def left(self) -> int:
        """Stitches after the round."""
        return self.places + self.points * self.add

    @property
    def taken(self) -> int:
        """Places that one point takes."""
        return 1 - min(self.add, 0)

    @property
    def made(self) -> int:
        """Stitches that one point makes."""
        return 1 + max(self.add, 0)

    def positions(self) -> tuple[int, ...]:
        """For each point the first place it takes, in the order worked."""
        if self.at:
            return self.at
        n, k = self.places, self.points
        # Half a stitch further where the chain stands on the join, back by half of what is taken.
        shift = k * (int(self.chain_counts) + 1 - self.taken)
        first = int(self.chain_counts)
        return tuple(max(((2 * i + 1) * n + shift) // (2 * k), first) for i in range(k))

    def groups(self) -> tuple[int, ...]:
        """For each point the first stitch it makes, in the order worked."""
        return tuple(p + i * self.add for i, p in enumerate(self.positions()))


def in_line(rounds: Sequence[Round]) -> tuple[Round, ...]:
    """The shaping rounds of a piece, each increase above a decrease set on the marked stitch."""
    lined: list[Round] = []
    for one in rounds:
        below = lined[-1] if lined else None
        if below is not None and below.made == 1 and one.taken == 1 and _goes_on(below, one):
            groups = below.groups()
            turned = below.side != one.side
            lined.append(replace(one, at=_turned(groups, one) if turned else groups))
        else:
            lined.append(one)
    return tuple(lined)


def staggered(round_: Round) -> Round:
    """The round with its points half way between their lines, the first of them at the join."""
    n, k, first = round_.places, round_.points, int(round_.chain_counts)
    return replace(round_, at=tuple(max(i * n // k, first) for i in range(k)))


def gored(round_: Round) -> Round:
    """The round with two points at each line between gores, one on either side of it.

    Half a gore lies on either side of the join. Lines between gores of m stitches lie at
    ⌊(i + 1/2) m⌋; two stitches more in a gore move line i by 2i + 1, which is a whole number, so
    the lines stay straight.
    """
    gores, n = round_.points // 2, round_.places
    between = [(2 * i + 1) * n // (2 * gores) for i in range(gores)]
    at = tuple(place for line in between for place in (line - round_.taken, line))
    lined = replace(round_, at=at)
    return replace(lined, at=_turned(at, lined)) if round_.side == "WS" else lined


def body(stitch: str, round_: Round) -> tuple[Node, ...]:
    """The nodes of a shaping round, equal stretches folded into repeats."""
    change: Node = (
        Into((Work(stitch, round_.made),)) if round_.add > 0 else Together(stitch, round_.taken)
    )
    at = round_.positions()
    start = int(round_.chain_counts)
    gaps = [b - a - round_.taken for a, b in zip(at, [*at[1:], round_.places], strict=True)]
    units = [(change, *_plain(stitch, gap)) for gap in gaps]
    return (*_plain(stitch, at[0] - start), *_folded(units))


def marks(round_: Round, following: Round | None) -> tuple[int, ...]:
    """Which stitch of each group (0 first, in the order worked) carries the marker on.

    Args:
        following: the next shaping round.
    """
    if round_.loose:
        return ()
    middle = (round_.made - 1) // 2
    if round_.made == 1 or following is None or not _goes_on(round_, following):
        return (middle,) * round_.points
    targets = following.positions()
    if following.side != round_.side:
        targets = _turned(targets, following)
    return tuple(
        _nearest(middle, [t - g + extra for extra in range(following.taken)], round_.made)
        for t, g in zip(targets, round_.groups(), strict=True)
    )


def _goes_on(below: Round, above: Round) -> bool:
    """Whether the markers of one shaping round lead to those of the next."""
    return below.points == above.points and not (below.loose or above.loose)


def _turned(at: Sequence[int], round_: Round) -> tuple[int, ...]:
    """First places of points, counted in the other direction; a counted chain stays place 0.

    Where several places are taken, the first in one direction is the last in the other.
    """
    last = round_.places - int(not round_.chain_counts) - (round_.taken - 1)
    return tuple(last - p for p in reversed(at))


def _nearest(wanted: int, reached: Sequence[int], made: int) -> int:
    """Of the stitches of a group that the next round reaches, the one nearest to `wanted`."""
    inside = [r for r in reached if 0 <= r < made]
    return min(inside or [wanted], key=lambda r: abs(r - wanted))


def _folded(units: Sequence[tuple[Node, ...]]) -> list[Node]:
    """Stretches as repeats of one or several units; from each place on the one that covers most."""
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
