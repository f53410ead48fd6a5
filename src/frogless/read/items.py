"""The items of a row as nodes, each held to the places that it says it is worked into."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass, replace

from frogless.errors import InputError
from frogless.read.ground import Ground, taken_by
from frogless.read.spoken import (
    Across,
    Backwards,
    Bare,
    Changed,
    Each,
    Evenly,
    FromHook,
    Group,
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
        for place, kind in enumerate(self.ground.kinds(at, taken), start=at + 1):
            _check_kind(noun, kind, place, noted=self.noted)


def nodes_of(items: tuple[Item, ...], at: int, context: Context) -> tuple[tuple[Node, ...], int]:
    """The nodes of some items, the first of which begins at place `at`; and where they end.

    Raises:
        InputError: an item leaves something open, or a place is not what it is called.
    """
    nodes: list[Node] = []
    for index, item in enumerate(items):
        if isinstance(item, Each) and item is not items[-1]:
            raise InputError(
                '"in each" takes all places there are; with other stitches after it, write their '
                "numbers"
            )
        made: tuple[Node, ...]
        if isinstance(item, Evenly):
            made = _evenly(item, at, context)
        elif isinstance(item, Starred):
            made = (_starred(item, items[index + 1 :], at, context),)
        else:
            made = (_node(item, at, context),)
        nodes += made
        at += taken_by(made, context.vocabulary.stitches)
    return tuple(nodes), at


def _node(item: Item, at: int, context: Context) -> Node:
    match item:
        case Placed(node, where, noun):
            return _located(node, where, noun, at, context)
        case Skipped(times, noun):
            return _located(Skip(times), "next", noun, at, context)
        case Unworked(times, for_now, noun):
            return _located(Leave(times) if for_now else Skip(times), "last", noun, at, context)
        case Over(word, times, places, where, noun):
            return _located(_over(word, times, places, context), where, noun, at, context)
        case Tog(word):
            return _located(_together(word, context.vocabulary), "next", "place", at, context)
        case Each():
            return _each(item, at, context)
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
        case Starred():
            raise InputError('"*" begins what repeats to the end of the row, outside brackets')
        case (
            Evenly()
            | Backwards()
            | NoTurningChain()
            | FromHook()
            | Across()
            | SameStart()
            | Older()
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
        raise InputError('"same" is for the place of a turning chain that counts, right after it')
    context.check(noun, at, taken)
    return Into((node,)) if where == "same" and isinstance(node, Work) else node


def _check_kind(noun: Noun, kind: str, place: int, *, noted: bool) -> None:
    if noun == "ch":
        noun = "st"
    space, named = kind.startswith("sp"), noun.startswith("sp")
    if space and not named and not noted:
        raise InputError(
            "the row below leaves chain spaces, and it is not said whether they are worked into; "
            'write "Count each ch-sp as a st." first, or name them: "in next ch-2 sp"'
        )
    if named and (not space or noun not in ("sp", kind)):
        called = f"a ch-{kind[2:]} sp" if space else _CALLED.get(kind, kind)
        raise InputError(f"place {place} of the row below is {called}, no ch-{noun[2:]} sp")
    unlike = "end" in (noun, kind) or noun == "ring"
    if noun != "place" and unlike and noun != kind:
        raise InputError(
            f"place {place} of the row below is {_CALLED.get(kind, kind)}, not "
            f"{_CALLED.get(noun, noun)}"
        )


def _group(items: tuple[Item, ...], times: int, at: int, context: Context) -> Repeat:
    """Items worked so many times; the places of each turn are looked at."""
    if any(isinstance(item, Each) for item in items):
        raise InputError('"in each" is said outside brackets; inside them, write the numbers')
    nodes, reached = nodes_of(items, at, context)
    for turn in range(1, times if context.ground.spots else 0):
        nodes_of(items, at + turn * (reached - at), context)
    return Repeat(nodes, times)


def _starred(said: Starred, after: tuple[Item, ...], at: int, context: Context) -> Repeat:
    """What stands after a star, as often as the places before the rest of the row allow."""
    places = context.ground.places
    if places is None:
        raise InputError('"rep from *" needs an edge whose stitches are known; write how often')
    blind = replace(context, ground=replace(context.ground, spots=None))
    unit, reached = nodes_of(said.items, at, context)
    _, end = nodes_of(after, at, blind)
    each, behind = reached - at, end - at
    if said.to_last != behind:
        raise InputError(
            f'"*" repeats to the last {said.to_last} places, but what follows it takes {behind}'
        )
    times, over = divmod(places - at - behind, each) if each else (0, 1)
    if over or times < 1:
        raise InputError(_misfit(places, at, behind, each))
    for turn in range(1, times if context.ground.spots else 0):
        nodes_of(said.items, at + turn * each, context)
    return Repeat(unit, times)


def _misfit(places: int, at: int, behind: int, each: int) -> str:
    if not each:
        return '"*" repeats what takes no places, so that it never ends'
    room = places - at - behind
    told = f"the repeat takes {each} places, and there are {max(room, 0)} for it"
    if room < each:
        return told + f", from place {at + 1} on"
    times, over = divmod(room, each)
    return told + f": {times} times, and {over} left over from place {at + times * each + 1} on"


def _chain(said: SaidChain) -> Chain:
    if said.sense in ("counted", "not_counted", "counted_next"):
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


def _each(said: Each, at: int, context: Context) -> Node:
    """One in each place that is left, all of them named."""
    ground = context.ground
    if ground.places is None:
        raise InputError('"in each" needs an edge whose stitches are known; write the number')
    kinds = {"st" if noun == "ch" else noun for noun in said.nouns}
    for place, kind in enumerate(ground.kinds(at, ground.places - at), start=at + 1):
        if kind in kinds or (kind.startswith("sp") and "sp" in kinds) or "place" in kinds:
            continue
        if kind.startswith("sp"):
            raise InputError(
                "the row below leaves chain spaces, and it is not said whether they are worked "
                'into; write "in each st and ch-sp"'
            )
        raise InputError(f"place {place} of the row below is {_CALLED.get(kind, kind)}")
    if said.remaining != (at > 0):
        raise InputError(
            '"remaining" is for places after others that are taken: a turning chain that counts '
            "stands on the first; with one that does not count, every stitch is worked into"
        )
    times = ground.places - at
    return Repeat((said.into,), times) if said.into else Work(said.stitch, times)
