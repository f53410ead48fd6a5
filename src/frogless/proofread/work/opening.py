"""The group that a round begins with: a chain that counts and what stands beside it make one too.

"Ch 4 (counts as dc and ch 1), dc in same st" is a V-stitch among others; so is "beg shell" a shell, and
half a shell at the beginning with the other half at the end of the round.
"""

from __future__ import annotations

from collections.abc import Sequence

from frogless.proofread.work.edge import Place, Run
from frogless.proofread.work.row import Outcome
from frogless.proofread.work.trade import Trade

#: Places of a group, at most.
_MOST = 24
_FIRST = ("beginning ", "beg ", "starting ", "start ", "first ", "opening ")
_Kind = tuple[str, str, int]


def opening_groups(outcome: Outcome, group: str, trade: Trade) -> int:
    """How many of a group there are that the row does not call by its name."""
    return _called_first(outcome, group, trade) or int(_is_begun(outcome, group, trade))


def _called_first(outcome: Outcome, group: str, trade: Trade) -> int:
    """Those of the pattern's own that are called "beginning …"."""
    own = trade.own(group)
    words = set(own.words) if own else {group, trade.called(group)}
    found = 0
    for key, many in outcome.made.items():
        first = trade.own(key)
        names = first.words if first and key != group else ()
        found += many if any(_plain(name) in words for name in names) else 0
    return found


def _plain(name: str) -> str:
    return next((name.removeprefix(each) for each in _FIRST if name.startswith(each)), "")


def _is_begun(outcome: Outcome, group: str, trade: Trade) -> bool:
    """Whether the chain that the row begins with and what follows are like the others of the group."""
    runs = outcome.edge.runs
    if not outcome.turning[1] or not runs or runs[0][0].kind != "stitch" or runs[0][0].of:
        return False
    shape = _shape(runs, group, trade)
    first = _kinds(runs, trade)
    if not shape or not first:
        return False
    if first[: len(shape)] == shape:
        return True
    last = _kinds(runs[::-1], trade)[::-1]
    return any(last[-cut:] + first[: len(shape) - cut] == shape for cut in range(1, len(shape)))


def _shape(runs: Sequence[Run], group: str, trade: Trade) -> list[_Kind]:
    """The places of the first of the group that the row works by its name."""
    inside: list[Run] = []
    for place, count in runs:
        if place.of != group:
            if inside:
                break
            continue
        if inside and place.ends & 1:
            break
        inside.append((place, count))
    return _kinds(inside, trade, of=group)


def _kinds(runs: Sequence[Run], trade: Trade, of: str = "") -> list[_Kind]:
    """What the first places are, up to one of another group."""
    found: list[_Kind] = []
    for place, count in runs:
        if place.of != of or len(found) >= _MOST:
            break
        found += [_kind(place, trade)] * min(count, _MOST)
    return found


def _kind(place: Place, trade: Trade) -> _Kind:
    space = place.kind == "space"
    return place.kind, "" if space else trade.base(place.stitch), place.chains if space else 0
