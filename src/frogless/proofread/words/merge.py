"""Neighbouring clauses put together: a remark with its chain, "and in …" with what it repeats."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from frogless.proofread.script.model import Span
from frogless.proofread.words.build import (
    END,
    SLIP,
    AgainBefore,
    Begin,
    Elliptic,
    Piece,
)
from frogless.proofread.words.counts import Counts
from frogless.proofread.words.ending import Ending, ended
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
    Met,
    Numbers,
    Repeat,
    Ring,
    Target,
    Together,
    Turn,
    Unclear,
)
from frogless.proofread.words.places import Places


def merged(pieces: Iterable[Piece]) -> tuple[Act, ...]:
    """The acts of one level of a row."""
    acts: list[Act] = []
    begin: Begin | None = None
    for piece in _placed_first(pieces):
        match piece:
            case Counts():
                if begin is not None:
                    begin = replace(begin, target=_told(begin.target, piece))
                else:
                    _count(acts, piece)
            case Begin():
                begin = piece
            case Elliptic():
                _elliptic(acts, piece)
            case AgainBefore():
                _again(acts, piece)
            case Ending():
                _ended(acts, piece)
            case _:
                _add(acts, piece, begin)
                if begin is not None and not isinstance(piece, Aside):
                    begin = None
    if begin is not None:
        acts.append(Unclear(begin.span))
    return _to_corners(tuple(_to_center(acts)))


def _to_corners(acts: tuple[Act, ...], after: Act | None = None) -> tuple[Act, ...]:
    """ "1 dc in each dc along the side, (2 dc, ch 2, 2 dc) in next corner sp": up to that corner.

    Args:
        after: what comes after them, where they are repeated.
    """
    found: list[Act] = []
    for act, following in zip(acts, (*acts[1:], after), strict=False):
        corner = _corner_first(following)
        if isinstance(act, Into | Met) and act.extent == END and corner is not None:
            found.append(replace(act, extent=Extent("until", target=corner)))
        elif isinstance(act, Repeat) and _corner_first(act) is not None:
            found.append(replace(act, body=_to_corners(act.body, act)))
        else:
            found.append(act)
    return tuple(found)


def _corner_first(act: Act | None) -> Target | None:
    """The corner that an act begins in."""
    while isinstance(act, Repeat) and act.body:
        act = act.body[0]
    into = act.target if isinstance(act, Into) else None
    return into if into is not None and into.what == "corner" and into.which == "next" else None


def with_chain_first(acts: tuple[Act, ...]) -> tuple[Act, ...]:
    """ "Sl st to ch-2 sp, (ch 3, 2 dc, ch 2, 3 dc) in same sp": the chain that the row begins with."""
    for at, act in enumerate(acts):
        slips = isinstance(act, Into | Bare) and _is_slips(act)
        if isinstance(act, Aside | Turn | Join) or slips:
            continue
        chain = act.body[0] if isinstance(act, Into) and len(act.body) > 1 else None
        if at and isinstance(act, Into) and isinstance(chain, Chain) and act.target.what == "same":
            return (*acts[:at], chain, replace(act, body=act.body[1:]), *acts[at + 1 :])
        break
    return acts


def _is_slips(act: Into | Bare) -> bool:
    return act.stitch == SLIP if isinstance(act, Bare) else _is_slip(act)


def _to_center(acts: Sequence[Act]) -> Iterator[Act]:
    """ "dc in each dc to center, (2 dc, ch 2, 2 dc) in ch-2 sp": the center is that space."""
    for at, act in enumerate(acts):
        after = acts[at + 1] if at + 1 < len(acts) else None
        stop = act.extent.target if isinstance(act, Into) else None
        space = isinstance(after, Into) and after.target.what == "space"
        if isinstance(act, Into) and isinstance(after, Into) and space and stop and stop.nth < 0:
            extent = replace(act.extent, target=replace(after.target, which="next"))
            yield replace(act, extent=extent)
        else:
            yield act


def _placed_first(pieces: Iterable[Piece]) -> Sequence[Piece]:
    """ "In ring: ch 3, 2 dc, (ch 2, 3 dc) 3 times": the place said first holds for what follows."""
    told = list(pieces)
    for n, piece in enumerate(told[1:-1], 1):
        made = told[n + 1]
        if not isinstance(piece, Elliptic) or piece.places[0].target.what != "from_hook":
            continue
        if isinstance(told[n - 1], Chain) and isinstance(made, Bare | Repeat):
            # "ch 2 and, in the 2nd ch from hook, work 10 hdc"
            place = piece.places[0]
            into = Into(piece.span, (made,), place.target, _far(place, piece))
            return [*told[:n], into, *told[n + 2 :]]
    at = next((n for n, each in enumerate(told) if not isinstance(each, Ring | Aside)), None)
    first = told[at] if at is not None else None
    if at is not None and isinstance(first, Elliptic) and len(first.places) == 1:
        told = _opened(told, at, first)
    for n in range(len(told) - 2, 0, -1):
        each = told[n]
        if isinstance(each, Elliptic) and each.opens and len(each.places) == 1:
            told = _opened(told, n, each)
    return told


def _opened(told: list[Piece], at: int, first: Elliptic) -> list[Piece]:
    """What comes after a place that is said first, worked into it."""
    start = at + 1
    if (
        start < len(told)
        and isinstance(told[start], Chain)
        and (not first.opens or first.places[0].target.what == "ring")
    ):
        start += 1  # the chain that the round begins with
        while start < len(told) and isinstance(told[start], Counts | Aside):
            start += 1
    end = start
    while end < len(told) and isinstance(told[end], Bare | Chain | Repeat):
        end += 1
    body = tuple(each for each in told[start:end] if isinstance(each, Bare | Chain | Repeat))
    if not body:
        return told
    span = Span(body[0].span.start, body[-1].span.end)
    into = Into(span, body, first.places[0].target, _far(first.places[0], first))
    return [*told[:at], *told[at + 1 : start], into, *told[end:]]


def _add(acts: list[Act], act: Act, begin: Begin | None) -> None:
    if isinstance(act, Into):
        act = _in_ring(acts, act)
    elif isinstance(act, Bare) and act.stitch != SLIP and _is_in_ring(acts):
        act = Into(act.span, (act,), Target("ring"), Extent("times", _one(act.span)))
    if begin is not None and not isinstance(act, Aside):
        acts += _begun(begin, act)
    elif isinstance(act, Into) and _is_met(acts, act):
        _meet(acts, act)
    elif isinstance(act, Evenly | Increase | Together) and _evenly(acts, act):
        return
    elif isinstance(act, Into) and _closes(acts, act):
        top = act.target.what in ("top", "chain") and act.target.which != "first"
        chains = act.target.chains.values[0] if act.target.chains else 0
        acts.append(Join(act.span, "top" if top else "first", act.target.stitch, chains))
    else:
        acts.append(act)


def _begun(begin: Begin, act: Act) -> list[Act]:
    """The first of what an act works stands where the row begins."""
    span = Span(begin.span.start, begin.span.end)
    if isinstance(act, Into):
        first = Into(span, act.body, begin.target, Extent("times", _one(span)))
        if act.extent.kind != "times" or act.extent.times is None:
            return [first, act]
        less = tuple(max(0, each - 1) for each in act.extent.times.values)
        if begin.target.what == "same" or not any(less):
            less = act.extent.times.values
            return [replace(act, target=begin.target)] if not any(v > 1 for v in less) else [
                first, replace(act, extent=Extent("times", Numbers(tuple(v - 1 for v in less), act.extent.times.span)))
            ]  # fmt: skip
        extent = Extent("times", Numbers(less, act.extent.times.span))
        return [first, replace(act, extent=extent)]
    if isinstance(act, Bare):
        once = replace(act, times=None)
        first = Into(span, (once,), begin.target, Extent("times", _one(span)))
        if act.times is None:
            return [first]
        return [
            first,
            replace(act, times=Numbers(tuple(v - 1 for v in act.times.values), act.span)),
        ]
    if begin.target.what != "from_hook" or isinstance(act, Unclear):
        same = begin.target.what == "same" and isinstance(act, Repeat | Increase | Together)
        if same:  # the row begins there; the repeat takes its places from there on
            return [replace(act, span=Span(begin.span.start, act.span.end))]
        return [Unclear(begin.span, ""), act]
    # the chains are passed over, and nothing is worked there yet
    return [Into(span, (), begin.target, Extent("times", Numbers((0,), span))), act]


def _one(span: Span) -> Numbers:
    return Numbers((1,), span)


def _told(target: Target, counts: Counts) -> Target:
    return replace(target, counts=counts.counts, counts_as=counts.stitch)


def _count(acts: list[Act], counts: Counts) -> None:
    """A remark on what counts goes to the chain before it, or to the chains that were skipped."""
    for at in range(len(acts) - 1, -1, -1):
        act = acts[at]
        if isinstance(act, Chain):
            space = counts.space if counts.counts else 0
            acts[at] = replace(act, counts=counts.counts, counts_as=counts.stitch, space=space)
            break
        if isinstance(act, Into) and act.target.what == "from_hook":
            acts[at] = replace(act, target=_told(act.target, counts))
            break
        if isinstance(act, Into) and not counts.counts and _is_slip(act):
            acts[at] = replace(act, target=_told(act.target, counts))
            break
        if not isinstance(act, Aside | Turn):
            break
    acts.append(Aside(counts.span, "remark"))


def _is_slip(act: Into) -> bool:
    return len(act.body) == 1 and isinstance(act.body[0], Bare) and act.body[0].stitch == SLIP


def _elliptic(acts: list[Act], piece: Elliptic) -> None:
    last = next((n for n in range(len(acts) - 1, -1, -1) if not isinstance(acts[n], Aside)), None)
    before = acts[last] if last is not None else None
    if last is None or before is None or not piece.places:
        acts.append(Unclear(piece.span))
        return
    if isinstance(before, Into):
        acts += _again_in(_as_many(before.body, piece), piece)
    elif isinstance(before, Bare | Chain):
        # "5 dc, in next ch-1 sp": the place of what was said just before
        acts[last:] = _again_in((before,), piece)
    elif isinstance(before, Repeat) and _once(before.extent):
        acts[last:] = _again_in(before.body, piece)
    elif isinstance(before, Increase):
        (place, *_) = piece.places
        acts.append(
            replace(before, span=piece.span, target=place.target, extent=_far(place, piece))
        )
    else:
        acts.append(Unclear(piece.span))


def _as_many(body: tuple[Act, ...], piece: Elliptic) -> tuple[Act, ...]:
    """ "1 sc in next st, 2 in next st": the same stitch, as often as is said."""
    if piece.times is None or len(body) != 1 or not isinstance(body[0], Bare):
        return body
    return (replace(body[0], times=piece.times, span=piece.span, written_after=False),)


def _again_in(body: tuple[Act, ...], piece: Elliptic) -> list[Act]:
    return [Into(piece.span, body, place.target, _far(place, piece)) for place in piece.places]


def _far(place: Places, piece: Elliptic) -> Extent:
    if piece.extent is not None:
        return piece.extent
    if place.count is not None:
        return Extent("times", place.count)
    return END if place.target.which == "each" else Extent("times", _one(piece.span))


def _once(extent: Extent) -> bool:
    return extent.kind == "times" and extent.times is not None and extent.times.values == (1,)


def _again(acts: list[Act], piece: AgainBefore) -> None:
    """ "repeat around" after a group repeats it; else all of the row since its beginning.

    "Rep Rnd 4, 3 more times" is said of rows.
    """
    if acts and isinstance(acts[-1], Again) and acts[-1].times is None and piece.extent.times:
        span = Span(acts[-1].span.start, piece.span.end)
        acts[-1] = replace(acts[-1], span=span, times=piece.extent.times)
        return
    if (
        acts
        and isinstance(acts[-1], Repeat)
        and (_once(acts[-1].extent) or acts[-1].extent.kind == "unsaid")
    ):
        before = acts.pop()
        assert isinstance(before, Repeat)  # noqa: S101 - it was asked just now
        span = Span(before.span.start, piece.span.end)
        acts.append(
            replace(before, span=span, extent=piece.extent, more=piece.more, doubtful=False)
        )
        return
    if piece.doubtful and piece.extent == END:
        # "…, around": said of the group just before, or not clear of what
        told = bool(acts) and isinstance(acts[-1], Into) and acts[-1].extent == END
        acts.append(Aside(piece.span, "remark") if told else Unclear(piece.span))
        return
    begun = 0
    for n, act in enumerate(acts):
        opening = isinstance(act, Chain) and n == begun
        if opening or isinstance(act, Ring | Join | Turn | Aside | Again):
            begun = n + 1
    body = tuple(acts[begun:])
    if not body or any(isinstance(each, Unclear) for each in body):
        acts.append(Unclear(piece.span))
        return
    span = Span(body[0].span.start, piece.span.end)
    acts[begun:] = [Repeat(span, body, piece.extent, more=piece.more, doubtful=piece.doubtful)]


def _ended(acts: list[Act], piece: Ending) -> None:
    """The repeat just before ends otherwise the last time."""
    before = acts[-1] if acts else None
    otherwise = ended(before, piece) if isinstance(before, Repeat) else None
    if otherwise is None:
        acts.append(Unclear(piece.span))
    else:
        acts[-1:] = otherwise


def _evenly(acts: list[Act], act: Evenly | Increase | Together) -> bool:
    """ "sc evenly around, dec 6": both told together; whether they were."""
    if not acts:
        return False
    before = acts[-1]
    change = act.change if isinstance(act, Evenly) else None
    sense = act.sense if isinstance(act, Evenly) else -1 if isinstance(act, Together) else 1
    if not isinstance(act, Evenly):
        open_evenly = isinstance(before, Evenly) and before.total is None and before.change is None
        if not open_evenly or act.extent.kind != "times":
            return False
        change = act.extent.times
    total = act.total if isinstance(act, Evenly) and _is_plain_row(before) else None
    if change is None and total is None:
        return False
    span = Span(before.span.start, act.span.end)
    if isinstance(before, Evenly) and before.change is None and before.total is None:
        acts[-1] = Evenly(span, before.stitch, change=change, sense=sense)
        return True
    if isinstance(before, Into) and before.extent == END and len(before.body) == 1:
        (only,) = before.body
        if isinstance(only, Bare) and only.times is None and not before.target.others:
            acts[-1] = Evenly(span, only.stitch, change=change, total=total, sense=sense)
            return True
    return False


def _is_plain_row(before: Act) -> bool:
    """ "sc around", which "decreasing evenly to 40 sts" may follow."""
    return isinstance(before, Into) and before.extent == END


def _in_ring(acts: Sequence[Act], act: Into) -> Into:
    """ "Magic ring, 6 sc in it"."""
    if _is_in_ring(acts) and act.target.what == "same":
        return replace(act, target=replace(act.target, what="ring", which="next"))
    return act


def _is_in_ring(acts: Sequence[Act]) -> bool:
    """ "Magic ring, ch 1, 6 sc"."""
    for act in reversed(acts):
        if not isinstance(act, Chain | Aside):
            return isinstance(act, Ring) or (isinstance(act, Join) and act.to == "ring")
    return False


def _is_met(acts: Sequence[Act], act: Into) -> bool:
    """ "sc in each st around, 3 sc in each corner": nothing is left for the second but to be met."""
    if not acts or act.target.which != "each" or act.extent.kind not in ("end", "but_last"):
        return False
    before = acts[-1]
    if isinstance(before, Met):
        return True
    return (
        isinstance(before, Into)
        and before.target.which == "each"
        and before.extent.kind in ("end", "but_last")
        and before.target.what != "from_hook"
    )


def _meet(acts: list[Act], act: Into) -> None:
    before = acts[-1]
    parts = (
        before.parts if isinstance(before, Met) else (before,) if isinstance(before, Into) else ()
    )
    span = Span(before.span.start, act.span.end)
    acts[-1] = Met(span, (*parts, act), act.extent)


def _closes(acts: Sequence[Act], act: Into) -> bool:
    """Whether a slip stitch closes the round: into the first stitch or the top of the chain."""
    if not _is_slip(act) or not _once(act.extent) or act.body[0].span is None:
        return False
    chain = act.target.what == "chain"
    first = act.target.which == "first" and (chain or act.target.what == "stitch")
    top = act.target.what == "top" or (chain and act.target.nth > 0)
    worked = any(
        isinstance(each, Bare | Into | Repeat | Increase | Together | Evenly) for each in acts
    )
    return worked and (first or top)
