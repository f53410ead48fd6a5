"""The items of a row as nodes, each held to the places that it says it is worked into."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass, replace

from frogless.errors import InputError
from frogless.read.ground import Ground, taken_by
from frogless.read.kinds import gathered
from frogless.read.spoken import (
    Across,
    Backwards,
    Bare,
    Changed,
    Counted,
    Each,
    Evenly,
    FromHook,
    Group,
    InKind,
    Item,
    Made,
    NoTurningChain,
    Noun,
    Older,
    Over,
    Placed,
    SaidChain,
    SameStart,
    Skipped,
    SkippedOthers,
    Starred,
    Tog,
    Unworked,
    Where,
)
from frogless.read.vocabulary import Vocabulary, normal
from frogless.rows.nodes import (
    Chain,
    Change,
    Into,
    Leave,
    Node,
    Repeat,
    Skip,
    Start,
    Together,
    Work,
)
from frogless.rows.spread import even_spread, worked_over

_TOG = re.compile(r"(?P<stitch>.+?)(?P<places>\d+)tog", re.IGNORECASE)
_CALLED = {"st": "a stitch", "end": "a row end", "ring": "the ring"}


@dataclass(frozen=True, slots=True)
class Context:
    """What settles the items that a row leaves open.

    Args:
        noted: it was said that chain spaces count as stitches.
    """

    ground: Ground
    noted: bool
    start: Start
    vocabulary: Vocabulary

    def check(self, noun: Noun, at: int, taken: int) -> None:
        """Whether the places that are taken are what they are called."""
        for kind, place in _first_of_each(self.ground.made(at, taken), at).items():
            _check_kind(noun, kind, place, self)


def _first_of_each(kinds: tuple[str, ...], at: int) -> dict[str, int]:
    """For each kind of place the number of the first of them: what holds for it holds for all."""
    return {kind: at + 1 + kinds.index(kind) for kind in dict.fromkeys(kinds)}


def nodes_of(items: tuple[Item, ...], at: int, context: Context) -> tuple[tuple[Node, ...], int]:
    """The nodes of some items, the first of which begins at place `at`; and where they end.

    Raises:
        InputError: an item leaves something open, or a place is not what it is called.
    """
    nodes: list[Node] = []
    for index, item in enumerate(items):
        made: tuple[Node, ...]
        if isinstance(item, Evenly):
            made = _evenly(item, at, context)
        elif isinstance(item, Starred | Each):
            made = _to_the_end(item, items[index + 1 :], at, context)
        else:
            made = (_node(item, at, context),)
        nodes += made
        at += taken_by(made, context.vocabulary.stitches)
    return tuple(nodes), at


def _node(item: Item, at: int, context: Context) -> Node:
    match item:
        case Placed(node, where, noun):
            _check_top(item, at, context)
            return _located(node, where, noun, at, context)
        case Skipped(times, noun):
            return _located(Skip(times), "next", noun, at, context)
        case Unworked(times, for_now, noun):
            return _located(Leave(times) if for_now else Skip(times), "last", noun, at, context)
        case Over(word, times, places, where, noun):
            return _located(_over(word, times, places, context), where, noun, at, context)
        case Tog(word):
            return _located(_together(word, context.vocabulary), "next", "place", at, context)
        case Group(items, times):
            return _group(items, times, at, context)
        case SaidChain():
            return _chain(item)
        case Bare():
            return _bare(item, context.vocabulary)
        case Made(node):
            return node
        case Changed(colour, carried):
            return Change(colour, carried)
        case (
            Evenly()
            | Backwards()
            | NoTurningChain()
            | FromHook()
            | Across()
            | SameStart()
            | Older()
            | Starred()
            | Each()
            | SkippedOthers()
        ):
            raise InputError("how a row starts is said before its first stitch, outside brackets")


def _evenly(said: Evenly, at: int, context: Context) -> tuple[Node, ...]:
    """A spread that comes out as the text says that it does."""
    spread = even_spread(said.count, said.over)
    if {k: n for n, k in said.shares} != Counter(spread):
        meant = " and ".join(f"{n} take {k}" for k, n in sorted(Counter(spread).items())[::-1])
        raise InputError(f"of {said.count} stitches spread evenly over {said.over} places, {meant}")
    context.check(said.noun, at, said.over)
    return worked_over(said.stitch, spread)


def _located(node: Node, where: Where, noun: Noun, at: int, context: Context) -> Node:
    """A node whose places are where they are said to be, and what they are called."""
    taken = taken_by((node,), context.vocabulary.stitches)
    places, start = context.ground.places, context.start
    if where == "first" and (at or (start.counts and start.chains)):
        raise InputError(f'"first" is place 1 of the row below, but this is place {at + 1}')
    if where == "last" and places is not None and at + taken != places:
        raise InputError(
            f'"last" ends with place {places} of the row below, but this ends with {at + taken}'
        )
    if where == "same" and not (start.shares and at == start.across):
        raise InputError(
            '"same" is for the place of a turning chain that counts, right after it, or of the '
            "stitch just before"
        )
    context.check(noun, at, taken)
    return Into((node,)) if where == "same" and isinstance(node, Work) else node


def _check_top(said: Placed, at: int, context: Context) -> None:
    """Whether a place is the top of the turning chain that the row below began with."""
    if said.where != "top" or context.ground.spots is None:
        return
    start = context.ground.start
    if not (start.counts and context.ground.made(at, 1) == ("st",)):
        raise InputError(f"place {at + 1} of the row below is no turning chain that counts")
    if said.chains not in (0, start.chains):
        raise InputError(f"the turning chain of the row below is ch {start.chains}")


def _check_kind(noun: Noun, kind: str, place: int, context: Context) -> None:
    told = _CALLED.get(noun, noun)
    kind, _, made_by = kind.partition("=")
    stitch = noun[1:] if noun.startswith("=") else ""
    if noun == "ch" or stitch:
        noun = "st"
    space, named = kind.startswith("sp"), noun.startswith("sp")
    if space and not named and not context.noted:
        raise InputError(
            f"place {place} of the row below is a ch-{kind[2:]} sp: the row below leaves chain "
            'spaces, and it is not said whether they are worked into; write "Count each ch-sp as '
            f'a st." first, or name them: "in next ch-{kind[2:]} sp"'
        )
    if named and (not space or noun not in ("sp", kind)):
        called = f"a ch-{kind[2:]} sp" if space else _CALLED.get(kind, kind)
        what = f"ch-{noun[2:]} sp" if noun[2:] else "chain space"
        raise InputError(f"place {place} of the row below is {called}, no {what}")
    unlike = "end" in (noun, kind) or noun == "ring"
    if noun != "place" and unlike and noun != kind:
        raise InputError(f"place {place} of the row below is {_CALLED.get(kind, kind)}, not {told}")
    if stitch and made_by and stitch not in (made_by, context.vocabulary.stitches[made_by].like):
        found, meant = (_abbreviation(key, context) for key in (made_by, stitch))
        raise InputError(f'place {place} of the row below is "{found}", not "{meant}"')


def _abbreviation(key: str, context: Context) -> str:
    return context.vocabulary.stitches[key].terms[context.vocabulary.dialect].abbreviation


def _group(items: tuple[Item, ...], times: int, at: int, context: Context) -> Repeat:
    """Items worked so many times; the places of each turn are looked at."""
    if any(isinstance(item, Each) for item in items):
        raise InputError('"in each" is said outside brackets; inside them, write the numbers')
    if any(isinstance(item, Starred) for item in items):
        raise InputError('"rep from *" is said outside brackets; inside them, write how often')
    nodes, reached = nodes_of(items, at, context)
    _look_at_turns(items, times, at, reached - at, context)
    return Repeat(nodes, times)


def _look_at_turns(
    items: tuple[Item, ...], times: int, at: int, each: int, context: Context
) -> None:
    """The places of every turn but the first; beyond the last place there is nothing to look at."""
    places = context.ground.places
    if places is None or not each:
        return
    turns = range(1, min(times, (places - at) // each + 1))
    # Turns over the same places are all as the first of them is. "First" and "last", which are true
    # of one turn alone, are amiss in turn 0 or 1 already, and both of these are looked at.
    begins = [at + turn * each for turn in turns]
    unlike = {context.ground.made(begin, each): begin for begin in reversed(begins)}
    for begin in sorted(unlike.values()):
        nodes_of(items, begin, context)


def _to_the_end(
    said: Starred | Each, after: tuple[Item, ...], at: int, context: Context
) -> tuple[Node, ...]:
    """What is worked as often as there is room, up to what comes after it."""
    what = "in each" if isinstance(said, Each) else "rep from *"
    places = context.ground.places
    if places is None:
        raise InputError(f'"{what}" needs an edge whose stitches are known; write how often')
    if any(isinstance(item, Starred | Each) for item in after):
        raise InputError(
            f'after "{what}" comes another that repeats to the end; one of them has to say how often'
        )
    blind = replace(context, ground=replace(context.ground, spots=None))
    _, end = nodes_of(after, at, blind)
    behind = end - at
    _check_last(said, behind, context)
    if isinstance(said, Each):
        return _each(said, at, places - at - behind, context)
    return (_starred(said, at, places - at - behind, context),)


def _check_last(said: Starred | Each, behind: int, context: Context) -> None:
    """Whether it is said to stop before the places that what follows takes.

    "To last 2 sts" are places of any kind; "to last 2 ch-3 sps" is up to the last but one of these.
    """
    kinds = context.ground.kinds((context.ground.places or 0) - behind, behind)
    total = sum(last.times for last in said.last)
    if total == behind and (len(said.last) < 2 or _kinds_agree(said.last, kinds)):
        return
    match said.last:
        case (Counted(times, noun),) if kinds and _is_called(noun, kinds[0]):
            if sum(_is_called(noun, kind) for kind in kinds) == times:
                return
    if said.last:
        raise InputError(
            f"it repeats to the last {total} places, but what follows it takes {behind}"
        )
    what = (
        '"in each" takes all places there are'
        if isinstance(said, Each)
        else "it repeats to the end"
    )
    raise InputError(
        f'{what}, but what follows takes {behind}; write "to last {behind} '
        f'st{"s" if behind > 1 else ""}" where it stops'
    )


def _kinds_agree(last: tuple[Counted, ...], kinds: tuple[str, ...]) -> bool:
    told = [kind for kind in kinds for each in last if _is_called(each.noun, kind)]
    return len(told) == len(kinds) and all(
        sum(_is_called(each.noun, kind) for kind in kinds) == each.times for each in last
    )


def _is_called(noun: Noun, kind: str) -> bool:
    """Whether a place is of a kind that a word means, taken strictly: a stitch is no space."""
    if noun.startswith("sp"):
        return kind.startswith("sp") and noun in ("sp", kind)
    return noun == "place" or kind == ("st" if noun == "ch" or noun.startswith("=") else noun)


def _starred(said: Starred, at: int, room: int, context: Context) -> Repeat:
    """What stands after a star, as often as there is room."""
    if any(isinstance(item, Starred | Each) for item in said.items):
        raise InputError(
            'a repeat to the end within another never comes to its end; put the inner one in "[...]" '
            "and write how often"
        )
    unit, reached = nodes_of(said.items, at, context)
    each = reached - at
    times, over = divmod(room, each) if each else (0, 1)
    if over or times < 1:
        raise InputError(_misfit(at, room, each))
    _look_at_turns(said.items, times, at, each, context)
    return Repeat(unit, times)


def _misfit(at: int, room: int, each: int) -> str:
    if not each:
        return '"*" repeats what takes no places, so that it never ends'
    takes = "1 place" if each == 1 else f"{each} places"
    told = f"the repeat takes {takes}, and there are {max(room, 0)} for it"
    times, over = divmod(max(room, 0), each)
    if not times:
        return f"{told}, from place {at + 1} on; {each - room} more would fit"
    left = f"and {over} left over from place {at + times * each + 1} on"
    return f"{told}: {times} times, {left}; {over} fewer or {each - over} more would fit"


def _each(said: Each, at: int, times: int, context: Context) -> tuple[Node, ...]:
    """What is worked into each place that is left, all of them named."""
    if times < 1:
        raise InputError(f'there is no place for "in each" from place {at + 1} on')
    if said.remaining != (at > 0) and not (at and said.last):
        raise InputError(
            '"remaining" is for places after others that are taken: a turning chain that counts '
            "stands on the first; with one that does not count, every stitch is worked into"
        )
    kinds = (InKind(said.into or Work(said.stitch), said.nouns), *said.more)
    places = context.ground.made(at, times)
    firsts = _first_of_each(places, at)
    worked = {made: _of_kind(kinds, made, place, context) for made, place in firsts.items()}
    if said.more:
        return gathered([worked[made] for made in places])
    return (Repeat((said.into,), times) if said.into else Work(said.stitch, times),)


def _of_kind(kinds: tuple[InKind, ...], made: str, place: int, context: Context) -> Node:
    """What is worked into a place, by its kind."""
    kind = made.partition("=")[0]
    for each in kinds:
        if not each.nouns or any(_is_that(noun, made, context) for noun in each.nouns):
            return each.node
    named = [noun for each in kinds for noun in each.nouns if noun.startswith("=")]
    if kind.startswith("sp"):
        raise InputError(
            f"place {place} of the row below is a ch-{kind[2:]} sp: the row below leaves chain "
            "spaces, and it is not said whether they are worked into; write "
            '"in each st and ch-sp"'
        )
    if kind == "st" and named:
        _check_kind(named[-1], made, place, context)
    raise InputError(f"place {place} of the row below is {_CALLED.get(kind, kind)}")


def _is_that(noun: Noun, made: str, context: Context) -> bool:
    """Whether a place is what a word means, made by that stitch where one is named."""
    kind, _, made_by = made.partition("=")
    if kind.startswith("sp") and context.noted and noun == "st":
        return True
    if not noun.startswith("=") or kind != "st" or not made_by:
        return _is_called(noun, kind)
    return noun[1:] in (made_by, context.vocabulary.stitches[made_by].like)


def _chain(said: SaidChain) -> Chain:
    if said.sense in ("counted", "not_counted", "counted_next") or said.space:
        raise InputError("only the chain at the beginning of a row is a turning chain")
    return Chain(said.times, each=said.sense == "each_counted")


def _bare(said: Bare, vocabulary: Vocabulary) -> Node:
    stitch = vocabulary.stitches[vocabulary.key(said.word)]
    if stitch.stands_on:
        raise InputError(
            f'"{said.word}" does not say where it goes; write "{said.word} in next st" for one, '
            f'"{said.word} in next 2 sts" for one in each, '
            f'"2 {said.word} in next st" for both in one'
        )
    return Work(stitch.key, said.times)


def _over(word: str, times: int, places: int, context: Context) -> Work | Together:
    vocabulary = context.vocabulary
    if normal(word) not in vocabulary.keys and _TOG.fullmatch(word):
        together = _together(word, vocabulary)
        if together.places != places or times != 1:
            raise InputError(f'"{word}" takes {together.places} stitches, not {places}')
        return together
    key = vocabulary.key(word)
    takes = vocabulary.stitches[key].stands_on * times
    if takes != places:
        raise InputError(f'"{word}" worked {times} times takes {takes} stitches, not {places}')
    return Work(key, times)


def _together(word: str, vocabulary: Vocabulary) -> Together:
    found = _TOG.fullmatch(word)
    if found is None:
        raise TypeError(f"{word!r} is not stitches worked together")
    return Together(vocabulary.key(found["stitch"]), int(found["places"]))
