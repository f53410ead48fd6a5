"""The tree of a clause as acts: what its words come to together."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace

from lark import Token as Leaf

from frogless.proofread.script.model import Span
from frogless.proofread.words.counts import Counts
from frogless.proofread.words.ending import Ending
from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.words.model import (
    Act,
    Bare,
    Chain,
    Evenly,
    Extent,
    Increase,
    Into,
    Join,
    Leave,
    Numbers,
    Repeat,
    Ring,
    Skip,
    Target,
    Together,
    Turn,
)
from frogless.proofread.words.parse import Parsed
from frogless.proofread.words.places import (
    Places,
    UnclearError,
    item_of,
    numbers,
    places,
    some,
    span_of,
)
from frogless.proofread.words.structure import Group, Item
from frogless.proofread.words.tokens import Times, Token

SLIP = "slip_stitch"
#: "5 sc in next 5 sts" is one in each from so many on; "2 dc in next 2 sts" is two in each.
ONE_IN_EACH = 4
END = Extent("end")


@dataclass(frozen=True, slots=True)
class Elliptic:
    """ "and in next ch-1 sp": what was worked before, worked there too.

    Args:
        opens: "into each loop work 1 dc, 5 tr and 1 dc": what comes after it is worked there.
    """

    span: Span
    places: tuple[Places, ...]
    extent: Extent | None
    times: Numbers | None = None
    opens: bool = False


@dataclass(frozen=True, slots=True)
class Begin:
    """ "beginning in 4th ch from hook": where the next act begins."""

    span: Span
    target: Target


@dataclass(frozen=True, slots=True)
class AgainBefore:
    """ "repeat around": the acts before, once more; `extent` says how far."""

    span: Span
    extent: Extent
    more: bool
    doubtful: bool


#: What neighbours have to be asked for; `merge.py` puts it together with them.
Loose = Elliptic | Begin | AgainBefore | Ending | Counts
Piece = Act | Loose


@dataclass(frozen=True, slots=True)
class Asked:
    """What building needs to know of the pattern.

    Args:
        inside: the acts of a group.
    """

    lexicon: Lexicon
    inside: Callable[[Group], tuple[Act, ...]]


@dataclass(slots=True)
class _Work:
    """A clause of work: what is made, and all that is said of where, how far and how often."""

    span: Span
    made: str
    stitch: str = ""
    times: Numbers | None = None
    after: bool = False
    takes: int = 2
    group: Group | None = None
    body: tuple[Act, ...] = ()
    stitches_said: bool = False  # "inc 8 sts"
    where: tuple[Places, ...] = ()
    over: bool = False
    between: bool = False
    extent: Extent | None = None
    often: Times | None = None  # said behind the place: all of it again
    again: bool = False
    tog: bool = False
    evenly: bool = False
    to_join: bool = False
    form_ring: bool = False
    each_end: bool = False
    counts: Counts | None = None
    said: list[str] = field(default_factory=list)


def built(tree: Parsed, items: Sequence[Item], asked: Asked) -> list[Piece]:
    """The acts of a clause.

    Raises:
        UnclearError: words that do not go together.
    """
    (inner,) = tree.children
    assert not isinstance(inner, Leaf)  # noqa: S101 - a clause is one of its rules
    span = span_of(items)
    match inner.data:
        case "turn":
            return [Turn(span)]
        case "turn_counts":
            counts = getattr(items[-1], "value", None)
            return [Turn(items[0].span), counts] if isinstance(counts, Counts) else [Turn(span)]
        case "no_turn":
            return [Turn(span, turned=False)]
        case "no_join":
            return [Join(span, "none")]
        case "join":
            return [_join(inner, items, span)]
        case "skip":
            return [_skip(inner, items, span)]
        case "leave":
            return [_leave(inner, items, span, asked)]
        case "together_next":
            found = some(inner.children[:-1], items)
            count = found.count.values[0] if found.count else 2
            return [Together(span, "", count, Extent("times", _one(span)), found.target)]
        case "magic_with":
            times, stitch = numbers(items[2]), str(getattr(items[3], "value", ""))
            body = (Bare(span, stitch, times),)
            return [Into(span, body, Target("ring"), Extent("times", _one(span)))]
        case "begin_in":
            return [Begin(span, _place_in(inner, items)[0].target)]
        case "elliptic":
            return _elliptic(inner, items, span)
        case _:
            return _worked(_read(inner, items, span, asked), asked)


def _place_in(tree: Parsed, items: Sequence[Item]) -> tuple[Places, ...]:
    inner = next((each for each in tree.children if not isinstance(each, Leaf)), None)
    if inner is None:
        return ()
    return places(inner, items)


def _skip(tree: Parsed, items: Sequence[Item], span: Span) -> Act:
    found = _place_in(tree, items)
    if not found:
        return Skip(span, Target())
    if any(isinstance(c, Leaf) and c.type == "TO" for c in tree.children):
        return Skip(span, found[0].target, to=True)
    return Skip(span, found[0].target, found[0].count)


def _leave(tree: Parsed, items: Sequence[Item], span: Span, asked: Asked) -> Act:
    found = _place_in(tree, items)
    if not found:
        return Leave(span)
    named = found[0].target.stitch
    stitch, own = asked.lexicon.stitches.get(named), asked.lexicon.own.get(named)
    if (own and own.leaves > 1) or (stitch and stitch.kind == "group"):
        return Leave(span)  # "leaving the last 2 V-sts unworked": each of them is several places
    if found[0].count is None and not found[0].rest and found[0].target.which in ("next", "last"):
        return Leave(span, Numbers((1,), span))
    return Leave(span, None if found[0].rest and found[0].count is None else found[0].count)


def _elliptic(tree: Parsed, items: Sequence[Item], span: Span) -> list[Piece]:
    work = _Work(span, "")
    for child in tree.children:
        if not isinstance(child, Leaf):
            _tail(work, child, items)
    first = item_of(
        next((c for c in tree.children if isinstance(c, Leaf)), Leaf("NUM", "0")), items
    )
    times = numbers(first) if first.kind == "NUM" else None
    return [Elliptic(span, work.where, work.extent, times)]


def _join(tree: Parsed, items: Sequence[Item], span: Span) -> Act:
    where: tuple[Places, ...] = ()
    ring = False
    for child in tree.children:
        if isinstance(child, Leaf):
            continue
        if child.data == "join_to":
            where = where or _place_in(child, items)
        ring = ring or child.data == "join_ring"
    if ring and not where:
        return Join(span, "ring")
    return _joined(where, span)


def _joined(where: Sequence[Places], span: Span) -> Join:
    """The join that goes into a place."""
    if not where:
        return Join(span, "unsaid")
    target = where[0].target
    if target.what in ("top", "space") or (target.what == "chain" and target.nth):
        return Join(span, "top", chains=target.chains.values[0] if target.chains else 0)
    if target.what == "ring":
        return Join(span, "ring")
    return Join(span, "first", target.stitch)


# What is made, word by word


def _read(tree: Parsed, items: Sequence[Item], span: Span, asked: Asked) -> _Work:
    made, *tails = (each for each in tree.children if not isinstance(each, Leaf))
    words = [item_of(leaf, items) for leaf in made.children if isinstance(leaf, Leaf)]
    work = _Work(span, str(made.data))
    for word in words:
        if isinstance(word, Group):
            work.group = word
            work.body = asked.inside(word)
        elif word.kind == "NTIMES" and isinstance(word.value, Times):
            work.often = word.value
        elif word.kind == "NUM" and work.times is not None:
            work.times = _sum(work.times, numbers(word))
        elif word.kind == "NUM":
            work.times = numbers(word)
        elif word.kind == "STITCH":
            work.stitch = str(word.value)
        elif word.kind == "TOGETHER" and isinstance(word.value, tuple):
            work.stitch, work.takes = word.value
    work.after = str(made.data).endswith("after") or str(made.data).startswith("after")
    work.stitches_said = str(made.data).endswith("_stitches")
    if work.stitches_said:
        work.stitch = ""
    for tail in tails:
        _tail(work, tail, items)
    return work


def _sum(some: Numbers, more: Numbers) -> Numbers:
    """ "ch 40 + 3", size by size."""
    most = max(len(some.values), len(more.values))
    first = some.values if len(some.values) == most else some.values * most
    rest = more.values if len(more.values) == most else more.values * most
    span = Span(some.span.start, more.span.end)
    return Numbers(tuple(a + b for a, b in zip(first, rest, strict=False)), span)


def _tail(work: _Work, tree: Parsed, items: Sequence[Item]) -> None:
    data = str(tree.data)
    work.said.append(data)
    match data:
        case "in_place" | "over" | "around_post" | "between" | "before_place":
            if work.where:
                raise UnclearError("two places in one clause; put a comma between them")
            work.where = _place_in(tree, items)
            work.over = data == "over"
            work.between = data in ("between", "before_place")
        case "places":
            if work.where:
                raise UnclearError("two places in one clause; put a comma between them")
            work.where = (some(tree.children, items),)
        case "across" | "around":
            work.extent = work.extent or END
        case "to" | "to_before" | "to_end":
            work.extent = _to(tree, items)
        case "times" | "times_again":
            _often(work, tree, items, again=data == "times_again")
        case "rep_extent":
            for child in tree.children:
                if not isinstance(child, Leaf):
                    _tail(work, child, items)
        case "counts":
            token = item_of(next(c for c in tree.children if isinstance(c, Leaf)), items)
            if isinstance(token, Token) and isinstance(token.value, Counts):
                work.counts = token.value
        case _:
            work.tog = work.tog or data == "tog"
            work.evenly = work.evenly or data == "evenly"
            work.to_join = work.to_join or data == "to_join"
            work.form_ring = work.form_ring or data == "form_ring"
            work.each_end = work.each_end or data == "each_end"


def _often(work: _Work, tree: Parsed, items: Sequence[Item], *, again: bool) -> None:
    token = item_of([c for c in tree.children if isinstance(c, Leaf)][-1], items)
    assert isinstance(token, Token)  # noqa: S101 - NTIMES is no group
    assert isinstance(token.value, Times)  # noqa: S101 - what NTIMES holds
    if not work.where and work.times is None and work.group is None and not again:
        # "inc 6 times", "dc twice in next st"
        work.times, work.after = token.value.times, True
        return
    if work.often is not None:
        raise UnclearError("it is said twice how often")
    work.often, work.again = token.value, again


def _to(tree: Parsed, items: Sequence[Item]) -> Extent:
    """ "to last 2 sts", "until 2 sts remain", "to marked st"."""
    first, *more = (places(each, items) for each in tree.children if not isinstance(each, Leaf))
    if len(first) != 1:
        raise UnclearError("")
    (place,) = first
    if tree.data == "to_end":
        return Extent("but_last", place.count or _one(span_of(items)), place.target)
    if more:
        return Extent("until", place.count or _one(span_of(items)), more[0][0].target)
    if place.target.which == "last" or place.left or place.rest:
        named = place.target.what == "space" and place.target.chains is not None
        last = place.target.which == "last" and not named
        target = replace(place.target, which="next" if last else place.target.which)
        return Extent("but_last", place.count or _one(span_of(items)), target)
    if place.count is not None:
        raise UnclearError('"to last … sts"')
    return Extent("until", target=place.target)


# What it comes to


def _worked(work: _Work, asked: Asked) -> list[Piece]:
    if work.made in ("group", "starred", "times_group"):
        return _group(work)
    if work.made.startswith("chain"):
        return _chain(work)
    if work.made == "magic":
        return [Ring(work.span)]
    if work.each_end:
        return _at_each_end(work)
    if work.evenly or work.stitches_said:
        return [_evenly(work)]
    if "inc" in work.made:
        return [_again(work, _increase(work, asked))]
    if "dec" in work.made or "together" in work.made or work.tog:
        return [_again(work, _together(work, asked))]
    return _stitch(work, asked)


def _stitch(work: _Work, asked: Asked) -> list[Piece]:
    if work.stitch == SLIP and (work.to_join or work.form_ring):
        if work.form_ring and not work.where:
            return [Join(work.span, "ring")]
        return [_joined(work.where or _first_of(work.extent), work.span)]
    if work.stitch == SLIP and work.extent and _is_first(work.extent) and not work.where:
        return [_joined(_first_of(work.extent), work.span)]
    stitch = asked.lexicon.stitches.get(work.stitch)
    own = asked.lexicon.own.get(work.stitch)
    if stitch is not None and not own and stitch.stands_on == 2 and stitch.leaves == 1:
        work.takes = 2
        return [_again(work, _together(work, asked))]
    if stitch is not None and not own and stitch.stands_on > 1 and work.over:
        return [_again(work, each) for each in _over_several(work, stitch.stands_on)]
    if stitch is not None and not own and stitch.kind == "foundation" and not stitch.begins_on:
        return [Ring(work.span)]
    bare = Bare(work.span, work.stitch, work.times, work.after)
    return [_again(work, each) for each in _placed(work, (bare,), work.times)]


def _over_several(work: _Work, takes: int) -> list[Act]:
    """ "3 crossed tr over next 6 sts": so many in all, each over several places."""
    (place,) = work.where[:1]
    if place.count is None or any(value % takes for value in place.count.values):
        raise UnclearError(f"it is worked over {takes} stitches at a time")
    often = Numbers(tuple(value // takes for value in place.count.values), place.count.span)
    if work.times is not None and work.times.values != often.values:
        raise UnclearError("how many of them are meant")
    body = (Bare(work.span, work.stitch),)
    return [Into(work.span, body, place.target, Extent("times", often))]


def _placed(work: _Work, body: tuple[Act, ...], times: Numbers | None) -> list[Act]:
    """The body worked into the places that are said; as it is where none are."""
    if not work.where:
        if work.extent is None:
            return list(body)
        return [Into(work.span, body, Target(which="each"), work.extent)]
    acts: list[Act] = []
    for n, place in enumerate(work.where):
        extent = _extent(work, place, last=n == len(work.where) - 1)
        inside = body
        if _one_in_each(place, times, extent):
            inside = tuple(
                replace(each, times=None) if isinstance(each, Bare) else each for each in body
            )
        target = replace(place.target, what="between") if work.between else place.target
        acts.append(Into(work.span, inside, target, extent))
    return acts


def _one_in_each(place: Places, times: Numbers | None, extent: Extent) -> bool:
    """ "5 sc in next 5 sts": one in each (common practice)."""
    return (
        times is not None
        and extent.kind == "times"
        and place.count is not None
        and place.target.which != "each"
        and extent.times is not None
        and extent.times.values == times.values
        and min(times.values) >= ONE_IN_EACH
    )


def _extent(work: _Work, place: Places, *, last: bool) -> Extent:
    if work.extent is not None and last and not (place.count and work.extent == END):
        return work.extent
    if place.count is not None:
        return Extent("times", place.count)
    if place.target.which == "each" or (place.rest and place.target.which == "next"):
        return END
    return Extent("times", _one(work.span))


def _again(work: _Work, act: Act) -> Act:
    """ "2 dc in next st 3 times": all of it as often."""
    if work.often is None:
        return act
    extent = Extent("times", work.often.times)
    return Repeat(work.span, (act,), extent, more=work.often.more)


def _one(span: Span) -> Numbers:
    return Numbers((1,), span)


def _times(work: _Work) -> Extent:
    return Extent("times", work.times or _one(work.span))


def _increase(work: _Work, asked: Asked) -> Act:
    own = asked.lexicon.own.get("inc")
    makes = own.leaves if own is not None and own.leaves > 1 else 2
    work.stitch = work.stitch or (own.meaning if own is not None else "")
    if not work.where:
        return Increase(work.span, work.stitch, makes, work.extent or _times(work))
    (place,) = work.where[:1]
    extent = _extent(work, place, last=True)
    if work.times and extent.kind == "times" and extent.times and extent.times.values == (1,):
        extent = _times(work)
    elif work.times and extent.times and work.times.values != extent.times.values:
        raise UnclearError("how many increases are meant")
    return Increase(work.span, work.stitch, makes, extent, place.target)


def _together(work: _Work, asked: Asked) -> Act:
    own = asked.lexicon.own.get("dec")
    if own is not None and "dec" in work.made and own.takes > 1:
        work.takes, work.stitch = own.takes, work.stitch or own.meaning
    takes = work.takes
    if not work.where:
        return Together(work.span, work.stitch, takes, work.extent or _times(work))
    (place,) = work.where[:1]
    target = place.target
    if (
        work.tog
        and place.count is not None
        and "together" not in work.made
        and "dec" not in work.made
    ):
        return Together(work.span, work.stitch, place.count.values[0], _times(work), target)
    if work.extent is not None or (place.target.which == "each" and place.count is None):
        return Together(work.span, work.stitch, takes, work.extent or END, target)
    if place.count is None:
        return Together(work.span, work.stitch, takes, _times(work), target)
    shared = [value % takes for value in place.count.values]
    if any(shared):
        raise UnclearError(f"{takes} stitches are worked together at a time")
    often = Numbers(tuple(value // takes for value in place.count.values), place.count.span)
    if work.times is not None and work.times.values != often.values:
        raise UnclearError("how many decreases are meant")
    return Together(work.span, work.stitch, takes, Extent("times", often), target)


def _chain(work: _Work) -> list[Piece]:
    chain = Chain(work.span, work.times or _one(work.span))
    pieces: list[Piece] = [chain]
    if work.where and not work.to_join and not work.form_ring:
        pieces = [*_placed(work, (chain,), None)]
    elif work.extent is not None or work.evenly:
        raise UnclearError("")
    if work.often is not None:
        pieces = [Repeat(work.span, (chain,), Extent("times", work.often.times))]
    if work.counts is not None:
        pieces.append(work.counts)
    if work.form_ring or work.to_join:
        pieces.append(Join(work.span, "ring"))
    return pieces


def _group(work: _Work) -> list[Piece]:
    group = work.group
    assert group is not None  # noqa: S101 - it is made of one
    starred = work.made == "starred"
    if work.evenly or work.tog:
        raise UnclearError("")
    if work.where and not work.over:
        if work.often is not None and _is_often_first(work.said):
            # "(dc, ch 1) twice in next st": all of it in one
            body = (Repeat(work.span, work.body, Extent("times", work.often.times)),)
            return [*_placed(work, body, None)]
        return [_again(work, act) for act in _placed(work, work.body, None)]
    doubtful = more = False
    if work.extent is not None:
        extent = work.extent
    elif work.often is not None:
        extent = Extent("times", work.often.times)
        more = work.often.more
        doubtful = (starred or work.again) and not more and not work.often.total
    elif starred or "rep" in work.said:
        extent = Extent("unsaid")
    else:
        extent = Extent("times", _one(work.span))
    in_place = group.opens == "(" and _may_be_in_place(work.body)
    return [
        Repeat(
            work.span,
            work.body,
            extent,
            more=more,
            doubtful=doubtful and starred,
            in_place=in_place,
        )
    ]


def _is_often_first(said: Sequence[str]) -> bool:
    """Whether it is told how often before it is told where."""
    return said[:2] == ["times", "in_place"]


def _may_be_in_place(body: Sequence[Act]) -> bool:
    """ "(2 sc, 4 dc)": nothing in it names a place of its own."""
    stitches = [each for each in body if isinstance(each, Bare)]
    plain = all(isinstance(each, Bare | Chain) for each in body)
    return plain and len(body) > 1 and bool(stitches)


def _evenly(work: _Work) -> Act:
    """ "inc 8 evenly", "work 90 sc evenly along edge"."""
    if work.often is not None or (work.where and not work.over and not work.evenly):
        raise UnclearError("")
    if "inc" in work.made:
        return Evenly(work.span, work.stitch, change=work.times)
    if "dec" in work.made:
        return Evenly(work.span, work.stitch, change=work.times, sense=-1)
    over = work.where[0].count if work.where and work.over else None
    return Evenly(work.span, work.stitch, total=work.times, over=over)


def _at_each_end(work: _Work) -> list[Piece]:
    """ "inc 1 at each end": one at the beginning and one at the end."""
    times = work.times or _one(work.span)
    if "inc" in work.made or "dec" in work.made:
        change = Numbers(tuple(2 * each for each in times.values), times.span)
        return [
            Evenly(work.span, work.stitch, change=change, sense=-1 if "dec" in work.made else 1)
        ]
    raise UnclearError("")


def _first_of(extent: Extent | None) -> tuple[Places, ...]:
    return (Places(extent.target),) if extent and extent.target else ()


def _is_first(extent: Extent) -> bool:
    target = extent.target
    if target is None:
        return False
    chain = target.what == "chain" and target.nth > 0
    return target.which == "first" or target.what == "top" or chain
