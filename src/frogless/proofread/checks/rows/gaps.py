"""Gaps in a row: places passed over for an underarm or a neck, and what is left at both edges."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.lines import Line, counted, finding, lines_of, listed
from frogless.proofread.findings import Finding
from frogless.proofread.words.model import (
    Act,
    Aside,
    Bare,
    Chain,
    Evenly,
    Increase,
    Into,
    Leave,
    Met,
    Numbers,
    Repeat,
    Skip,
    Together,
)

#: So many places passed over are a gap in the piece, and no step of a stitch pattern.
WIDE = 8
#: The two sides of a garment.
PAIR = 2
#: Two edges that are shaped alike differ by more stitches when they are meant to.
NEAR = 4
#: "Sl st in first 7 sts, ch 3 (counts as dc)": the chain may stand on the last of the slip stitches.
_ALIKE = (0, 1)
_WORKS = (Bare, Into, Increase, Together, Evenly, Met, Repeat)


def gaps(reading: Reading) -> Iterator[Finding]:
    """Gaps of one row that are not bridged alike, two of them in one, edges that are left unlike."""
    for line in lines_of(reading):
        if line.told.label is not None:
            yield from _next_to_each_other(reading, line)
            yield from _not_bridged(reading, line)
            yield from _unlike_edges(reading, line)


def _is_gap(act: Act) -> bool:
    if not isinstance(act, Skip):
        return False
    return act.to or (act.times is not None and min(act.times.values) >= WIDE)


def _next_to_each_other(reading: Reading, line: Line) -> Iterator[Finding]:
    """ "Ch 5, skip to next ch-2 sp, ch 5, skip to next ch-2 sp": nothing is worked between."""
    last: Act | None = None
    for act in line.told.said.acts:
        if _is_gap(act):
            if last is not None:
                texts = (
                    reading.script.words(act.span),
                    "nothing is worked since the last skip",
                    f"{line.name} passes over places twice, and works no stitch between: stitches "
                    "may have been left out.",
                )
                yield finding("gaps-alike", reading, line, act.span, texts, "possible")
            last = act
        elif isinstance(act, _WORKS):
            last = None


def _not_bridged(reading: Reading, line: Line) -> Iterator[Finding]:
    """The only gap of a row without a chain over it."""
    acts = [act for act in line.told.said.acts if not isinstance(act, Aside)]
    bridged: list[tuple[Act, bool]] = []
    for at, act in enumerate(acts):
        if _is_gap(act):
            beside = acts[max(at - 1, 0) : at] + acts[at + 1 : at + 2]
            bridged.append((act, any(isinstance(each, Chain) for each in beside)))
    yield from _over_nothing(reading, line, acts)
    yield from _unlike_chains(reading, line, acts)
    without = [act for act, chain in bridged if not chain]
    if len(without) == 1 < len(bridged):
        texts = (
            f"{reading.script.words(without[0].span)}, no chain",
            "a chain over the other",
            f"{line.name} chains over one gap and not over another: the chain may have been "
            "forgotten.",
        )
        yield finding("gaps-alike", reading, line, without[0].span, texts, "possible")


def _unlike_chains(reading: Reading, line: Line, acts: Sequence[Act]) -> Iterator[Finding]:
    """Two gaps of a row, as the two underarms are, with chains of two lengths over them."""
    over = [
        next((each for each in acts[max(at - 1, 0) : at + 2] if isinstance(each, Chain)), None)
        for at, act in enumerate(acts)
        if _is_gap(act)
    ]
    if len(over) != PAIR or not over[0] or not over[1]:
        return
    one, other = over[0].times.values, over[1].times.values
    if one != other:
        texts = (
            f"ch {listed(one)} and ch {listed(other)}",
            "two gaps",
            f"{line.name} chains {one[0]} over one gap and {other[0]} over the other: if both are to "
            "be alike, a number is wrong.",
        )
        yield finding("gaps-alike", reading, line, over[1].span, texts, "possible")


def _over_nothing(reading: Reading, line: Line, acts: Sequence[Act]) -> Iterator[Finding]:
    """A chain as long as the one over a gap of the row, with nothing passed over under it."""
    beside: dict[tuple[int, ...], list[tuple[Chain, bool]]] = {}
    for at, act in enumerate(acts):
        if isinstance(act, Chain) and at and isinstance(acts[at - 1], _WORKS):
            near = acts[at - 1 : at + 2]
            gap = any(isinstance(each, Skip) for each in near)
            wide = any(_is_gap(each) for each in near)
            if gap == wide:
                beside.setdefault(act.times.values, []).append((act, gap))
    for chains in beside.values():
        over = [act for act, gap in chains if not gap]
        if len(over) == 1 < len(chains):
            texts = (
                reading.script.words(over[0].span),
                "nothing is passed over under it",
                f"{line.name} passes over places under one chain and not under another of the same "
                "length: what is skipped may have been forgotten.",
            )
            yield finding("gaps-alike", reading, line, over[0].span, texts, "possible")


def _unlike_edges(reading: Reading, line: Line) -> Iterator[Finding]:
    """ "Sl st in first 6 sts, ..., leave rem sts unworked": 5 are left, not 6."""
    slipped = _slipped(line.told.said.acts)
    if slipped is None:
        return
    sizes = len(reading.script.sizes)
    unlike: dict[int, tuple[int, int]] = {}
    for worked in line.first():
        first = slipped.of(worked.size, sizes)
        if first is None or worked.available is None or worked.consumed is None or worked.problems:
            return
        left = worked.available - worked.consumed
        if left == 0 or abs(first - left) > NEAR:
            return  # the other edge is another one
        if first - left not in _ALIKE:
            unlike[worked.size] = first, left
    if not unlike:
        return
    firsts = [first for first, _ in unlike.values()]
    lefts = [left for _, left in unlike.values()]
    texts = (
        f"{listed(firsts)} before the first stitch",
        f"{listed(lefts)} after the last",
        f"{line.name} passes {counted(firsts[0], 'stitch', 'stitches')} at one edge and leaves "
        f"{lefts[0]} at the other: if both are to be alike, a number is wrong.",
    )
    yield finding("gaps-alike", reading, line, line.told.span, texts, "possible", tuple(unlike))


def _slipped(acts: Sequence[Act]) -> Numbers | None:
    """The slip stitches that a row begins with, when it leaves stitches at its end too."""
    first = next((act for act in acts if not isinstance(act, Aside)), None)
    if not isinstance(first, Into) or first.extent.times is None or not _leaves(acts):
        return None
    slips = all(isinstance(each, Bare) and each.stitch == "slip_stitch" for each in first.body)
    return first.extent.times if slips else None


def _leaves(acts: Sequence[Act]) -> bool:
    last = next((a for a in reversed(acts) if isinstance(a, _WORKS)), None)
    short = isinstance(last, Into) and last.extent.kind == "but_last"
    return short or any(isinstance(act, Leave) for act in acts)
