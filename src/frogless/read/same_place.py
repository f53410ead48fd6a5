"""What is worked into one and the same place: listed in brackets, or said one after the other."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import takewhile

from frogless.errors import InputError
from frogless.read.spoken import (
    NOTHING,
    Across,
    Bare,
    Changed,
    Each,
    Group,
    InKind,
    Item,
    Made,
    Placed,
    SaidChain,
    SkippedOthers,
)
from frogless.read.vocabulary import SLIP_STITCH, Vocabulary
from frogless.rows.nodes import Chain, Change, Into, Node, Repeat, Skip, Work

#: What may stand between two stitches of one place: it takes no place of its own.
_BETWEEN = (SaidChain, Bare, Made, Changed)


def inside(item: Item, words: Vocabulary) -> Node:
    """An item that stands in a place with others.

    Raises:
        InputError: it takes a place of its own, or says something of the row's start.
    """
    match item:
        case Bare(word, times):
            return Work(words.key(word), times)
        case Made(node):
            return node
        case Changed(colour, carried):
            return Change(colour, carried)
        case Group(items, times):
            return Repeat(tuple(inside(each, words) for each in items), times)
        case SaidChain(times, sense, 0) if sense in ("", "each_counted"):
            return Chain(times, each=sense == "each_counted")
    raise InputError(
        "brackets before a place list what is worked into that one place, such as "
        '"(dc, ch 1, dc) in next st"'
    )


def in_same_place(items: Iterable[Item], words: Vocabulary) -> tuple[Item, ...]:
    """Items with "dc in next st, ch 1, dc in same st" brought together: (dc, ch 1, dc) in next st."""
    told: list[Item] = []
    for item in items:
        at = _last_placed(told) if isinstance(item, Placed) and item.where == "same" else None
        if at is None or not isinstance(item, Placed):
            told.append(item)
            continue
        between = tuple(inside(each, words) for each in told[at + 1 :])
        told[at:] = _with(told[at], (*between, *_body(item.node)))
    return tuple(told)


def _last_placed(told: list[Item]) -> int | None:
    """The item whose place is the last that was worked into, if that was one of its own."""
    for at in range(len(told) - 1, -1, -1):
        if isinstance(told[at], Placed):
            return at
        if not isinstance(told[at], _BETWEEN):
            return None
    return None


def _with(item: Item, more: tuple[Node, ...]) -> list[Item]:
    """An item with more in the last place that it takes."""
    if not isinstance(item, Placed):
        raise TypeError(f"{item!r} takes no place")
    node, before = item.node, list[Item]()
    match node:
        case Work(stitch, times) if times > 1:
            before.append(Placed(Work(stitch, times - 1), item.where, item.noun))
            node = Work(stitch)
        case Repeat((Into() as into,), times):
            before.append(Placed(Repeat((into,), times - 1), item.where, item.noun))
            node = into
    where = "next" if before else item.where
    return [*before, Placed(Into(_joined(_body(node), more)), where, item.noun, item.chains)]


def _joined(before: tuple[Node, ...], after: tuple[Node, ...]) -> tuple[Node, ...]:
    """Two runs as one, without a seam between stitches of one kind."""
    match before[-1], after[0]:
        case Work(stitch, m), Work(other, n) if stitch == other:
            return (*before[:-1], Work(stitch, m + n), *after[1:])
    return (*before, *after)


def _body(node: Work | Into | Repeat) -> tuple[Node, ...]:
    return node.body if isinstance(node, Into) else (node,)


def with_others(items: Iterable[Item]) -> Iterator[Item]:
    """Items with "skip all others" as a part of the "in each" that it follows.

    Raises:
        InputError: it follows something else.
    """
    told = list(items)
    for index, item in enumerate(told):
        if isinstance(item, SkippedOthers):
            if index == 0 or not isinstance(told[index - 1], Each):
                raise InputError(
                    '"skip all others" follows what is worked "in each" of some places'
                )
            continue
        skips = isinstance(item, Each) and told[index + 1 : index + 2] == [SkippedOthers()]
        if skips and isinstance(item, Each):
            yield replace(item, more=(*item.more, InKind(Skip(), ())))
        else:
            yield item


def led_to_chain(items: list[Item], words: Vocabulary) -> list[Item]:
    """The items of a row; slip stitches that lead to a chain that counts become one item."""
    slips = list(takewhile(_slips, items))
    match items[len(slips) : len(slips) + 1]:
        case [SaidChain(sense="counted")] if slips:
            told = words.stitches[SLIP_STITCH].terms[words.dialect].abbreviation
            return [_led(slips, told), *items[len(slips) :]]
    return items


def _slips(item: Item) -> bool:
    match item:
        case Placed(Work(stitch, _), "next"):
            return stitch == SLIP_STITCH
    return False


def _led(slips: list[Item], word: str) -> Across:
    """Slip stitches whose last one goes into the place of the chain."""
    nouns = [slip.noun for slip in slips if isinstance(slip, Placed) for _ in range(_times(slip))]
    before = set(nouns[:-1])
    return Across(word, len(nouns), before.pop() if len(before) == 1 else "place", nouns[-1])


def _times(slip: Placed) -> int:
    return slip.node.times if isinstance(slip.node, Work) else 0


def is_worked(item: Item) -> bool:
    """Whether an item is worked at all: what a sum makes 0 times of is left out."""
    match item:
        case Placed(node):
            return getattr(node, "times", 1) > 0
        case Group(items, times):
            return item == NOTHING or (times > 0 and bool(items))
        case SaidChain(times, sense):
            return times > 0 or bool(sense)
    return bool(getattr(item, "times", 1))


def first_worked(node: Work | Into) -> str:
    """The key of the stitch that comes first; "" of chains."""
    works = (node,) if isinstance(node, Work) else node.body
    return next((each.stitch for each in works if isinstance(each, Work)), "")
