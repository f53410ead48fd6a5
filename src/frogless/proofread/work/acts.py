"""Looks at the acts of a row before it is worked."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import fields, is_dataclass
from functools import cache
from itertools import pairwise
from types import NoneType

from frogless.proofread.words.model import (
    Act,
    Again,
    Aside,
    Bare,
    Chain,
    Evenly,
    Extent,
    Increase,
    Into,
    Join,
    Leave,
    Met,
    Numbers,
    Repeat,
    Ring,
    Skip,
    Stated,
    Target,
    Together,
    Turn,
    Unclear,
)
from frogless.proofread.work.trade import Trade

#: Acts that make or take nothing.
QUIET = (Aside, Unclear, Turn, Join)
#: Acts that put the hook to work.
WORKING = (Bare, Into, Met, Increase, Together, Chain, Skip, Leave, Repeat, Evenly, Ring)


def every(acts: Iterable[Act]) -> Iterator[Act]:
    """All acts, inner ones after the one that holds them."""
    for act in acts:
        yield act
        if isinstance(act, Into | Repeat):
            yield from every(act.body)
        elif isinstance(act, Met):
            yield from every(act.parts)


def unclear_in(acts: Iterable[Act]) -> Iterator[Unclear]:
    """What was not understood of them, inner acts among them."""
    return (act for act in every(acts) if isinstance(act, Unclear))


def is_quiet(act: Act) -> bool:
    """Whether an act makes and takes nothing by itself."""
    return not isinstance(act, WORKING)


def works(acts: Iterable[Act]) -> bool:
    """Whether anything is worked."""
    return any(
        works(act.body) if isinstance(act, Repeat) else isinstance(act, WORKING) for act in acts
    )


def makes_spaces(acts: Iterable[Act]) -> bool:
    """Whether chains are made within groups: what is stated of the stitches is not all there is."""
    inner = (a for act in acts if isinstance(act, Into | Repeat) for a in every(act.body))
    return any(isinstance(act, Chain) for act in inner)


def numbers_in(said: tuple[Act | Stated, ...]) -> tuple[Numbers, ...]:
    """All numbers that stand in acts and counts, in the order of the text."""
    found: list[Numbers] = []
    waiting: list[object] = list(said)
    while waiting:
        value = waiting.pop()
        if isinstance(value, Numbers):
            found.append(value)
        elif isinstance(value, tuple):
            waiting += value
        elif isinstance(value, _SIMPLE):
            continue
        elif is_dataclass(value) and not isinstance(value, type):
            waiting += [getattr(value, name) for name in _names(type(value))]
    return tuple(sorted(found, key=lambda each: each.span.start))


def shape(value: object) -> object:
    """What acts say without where they say it: equal for rows that are written alike."""
    if isinstance(value, tuple):
        return tuple(shape(each) for each in value)
    if not is_dataclass(value) or isinstance(value, type):
        return value
    kept = (getattr(value, name) for name in _names(type(value)))
    return (type(value).__name__, *(v if isinstance(v, _SIMPLE) else shape(v) for v in kept))


_SIMPLE = (str, int, float, NoneType)


@cache
def _names(kind: type) -> tuple[str, ...]:
    return tuple(field.name for field in fields(kind) if field.name != "span")


def targets(acts: Iterable[Act]) -> Iterator[Target]:
    """All places that acts name, those that an extent goes up to among them."""
    for act in every(acts):
        target = getattr(act, "target", None)
        if isinstance(target, Target):
            yield target
            yield from target.others
        extent = getattr(act, "extent", None)
        if isinstance(extent, Extent) and extent.target is not None:
            yield extent.target


def first_stitch(acts: Sequence[Act], trade: Trade) -> str:
    """The stitch that is worked first, slip stitches apart; "" where none is named."""
    for act in every(acts):
        stitch = getattr(act, "stitch", "")
        if isinstance(act, Bare | Increase | Together | Evenly) and stitch:
            own = trade.body(stitch)
            found = first_stitch(own.body, trade) if own and own.key != stitch else ""
            found = found or _plain_of(stitch, trade)
            if found not in trade.slips and trade.takes(stitch):
                return found
    return ""


def _plain_of(stitch: str, trade: Trade) -> str:
    own = trade.body(stitch)
    if own is not None:
        inner = (a.stitch for a in every(own.body) if isinstance(a, Bare) and a.stitch != stitch)
        return trade.base(next(inner, stitch))
    if trade.is_group(stitch):
        return next((trade.base(place.stitch) for place, _ in trade.leaves(stitch)), stitch)
    return trade.base(stitch)


def is_slip(act: Act, trade: Trade) -> bool:
    """Whether an act is slip stitches and nothing else."""
    if isinstance(act, Bare):
        return act.stitch in trade.slips
    return (
        isinstance(act, Into | Repeat)
        and bool(act.body)
        and all(is_slip(a, trade) for a in act.body)
    )


def is_strand(acts: Sequence[Act], trade: Trade) -> bool:
    """Whether nothing but chains is made, with beads or picots between them: a cord by itself."""
    told = [act for act in every(acts) if not isinstance(act, (*QUIET, Chain, Repeat))]
    return bool(told) and all(isinstance(a, Bare) and trade.is_trim(a.stitch) for a in told)


def leads_on(act: Into, trade: Trade) -> bool:
    """Whether an act is slip stitches that are said not to count."""
    return act.target.counts is False and act.target.what != "from_hook" and is_slip(act, trade)


def begins_with_slips(acts: Sequence[Act], trade: Trade) -> bool:
    """Whether slip stitches come first that a chain follows: the work is moved by them."""
    slipped = False
    for act in acts:
        if isinstance(act, QUIET):
            continue
        if isinstance(act, Chain):
            return slipped
        if not is_slip(act, trade):
            return False
        slipped = True
    return False


def rejoins(acts: Sequence[Act]) -> int:
    """Where the chain stands of a row that is led to by skipping, "sk next 3 sts, join yarn, ch 3"; 0.

    Its places are those that were left unworked below another part of the piece.
    """
    skipped = joined = False
    for index, act in enumerate(acts):
        if isinstance(act, Skip) and not joined and act.target.what == "stitch":
            skipped = True
        elif isinstance(act, Aside):
            joined = joined or (skipped and act.kind == "join_yarn")
        else:
            return index if skipped and joined else 0
    return 0


def turns_first(acts: Sequence[Act]) -> bool | None:
    """Whether the work is said to be turned, or not, before anything is worked; None: unsaid."""
    for act in acts:
        if isinstance(act, Turn):
            return act.turned
        if isinstance(act, Chain | Aside | Unclear | Join):
            continue
        return None
    return None


def says(acts: Sequence[Act], kind: str) -> bool:
    """Whether an aside of that kind stands among them."""
    return any(isinstance(act, Aside) and act.kind == kind for act in acts)


def turns_last(acts: Sequence[Act]) -> bool | None:
    """Whether the work is said to be turned, or not, after all is worked; None: unsaid."""
    for act in reversed(acts):
        if isinstance(act, Turn):
            return act.turned
        if not isinstance(act, Chain | Aside | Unclear | Join):
            return None
    return None


def without_last_chain(
    acts: tuple[Act, ...], *, flat: bool
) -> tuple[tuple[Act, ...], Chain | None]:
    """The acts without a chain at their end that lifts the work to the row above, and that chain."""
    index, chain = len(acts), None
    turned = flat
    for at in range(len(acts) - 1, -1, -1):
        act = acts[at]
        if isinstance(act, Turn):
            turned = turned or act.turned
        elif isinstance(act, Chain):
            index, chain = at, act
            break
        elif not isinstance(act, Aside | Unclear) or _is_end(act):
            return acts, None
    if chain is None or not turned or not _stitches_before(acts[:index]):
        return acts, None
    return (*acts[:index], *acts[index + 1 :]), chain


def _is_end(act: Act) -> bool:
    """Whether no row comes after it that a chain could lift the work to."""
    return says((act,), "fasten_off")


def _stitches_before(acts: Sequence[Act]) -> bool:
    return any(isinstance(act, WORKING) and not isinstance(act, Chain | Ring) for act in acts)


def together(acts: Sequence[Act]) -> Sequence[Act]:
    """The acts with "sc in each dc and in each ch around" as one: what comes first is met first."""
    if not any(_goes_on(a, b) for a, b in pairwise(acts)):
        return acts
    found: list[Act] = []
    for act in acts:
        before = found[-1] if found else None
        if before is not None and isinstance(act, Into) and _goes_on(before, act):
            parts = before.parts if isinstance(before, Met) else (before,)
            found[-1] = Met(
                before.span, tuple(p for p in (*parts, act) if isinstance(p, Into)), act.extent
            )
        else:
            found.append(act)
    return found


def _goes_on(before: Act, act: Act) -> bool:
    if not isinstance(before, Into | Met) or not isinstance(act, Into):
        return False
    if before.extent.kind != "end" or act.extent.kind != "end":
        return False
    kinds = (
        {before.target.what} if isinstance(before, Into) else {p.target.what for p in before.parts}
    )
    return (kinds | {act.target.what}) <= {"stitch", "space", "chain", "corner"}


def again_in(acts: Sequence[Act]) -> Again | None:
    """The act that says to work rows again; of several the one that names the most."""
    found = [act for act in acts if isinstance(act, Again)]
    return next((act for act in found if act.name != "pattern"), found[0] if found else None)
