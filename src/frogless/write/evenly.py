"""Stitches picked up evenly along an edge: nobody works from a list of a hundred."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from frogless.rows.count import consumed
from frogless.rows.nodes import Into, Node, Skip, Work
from frogless.rows.spread import even_spread
from frogless.rows.walk import flatten
from frogless.write.words import Words

#: A spread of fewer runs of like places is as short told place by place.
LEAST_RUNS = 4


@dataclass(frozen=True, slots=True)
class Evenly:
    """So many of a stitch over so many places, as `even_spread` has them."""

    stitch: str
    count: int
    over: int


Part = Evenly | tuple[Node, ...]


def even_parts(
    body: Sequence[Node], stretches: Sequence[int], stands_on: Mapping[str, int]
) -> tuple[Part, ...]:
    """A body cut at the ends of stretches, each that is picked up evenly told as such.

    Where all places of a stretch take alike, or nothing is spread at all, the body is left as it
    is: a body without any such stretch is one part.

    Args:
        stretches: places of each stretch that the body is worked over.
    """
    if not stretches:
        return (tuple(body),)
    cut = _cut(flatten(body), stretches, stands_on)
    parts = [part for nodes, places in cut for part in _parts(nodes, places)]
    if not any(isinstance(part, Evenly) for part in parts):
        return (tuple(body),)
    return tuple(parts)


def say_shares(spread: Sequence[int], words: Words) -> str:
    """How many places take how many: "46 take 2 and 52 take 1"."""
    taken = sorted(Counter(spread).items(), reverse=True)
    shares = [words.phrases.count("share", places, k=k) for k, places in taken]
    return words.phrases.say("and", a=shares[0], b=shares[-1])


def _cut(
    body: Sequence[Node], stretches: Sequence[int], stands_on: Mapping[str, int]
) -> list[tuple[tuple[Node, ...], int]]:
    """The nodes over each stretch; none when one of them lies across an end."""
    found, rest = list[tuple[tuple[Node, ...], int]](), list(body)
    for places in stretches:
        here, reached = list[Node](), 0
        while rest and (reached < places or not consumed(rest[:1], stands_on)):
            node = rest.pop(0)
            takes = consumed((node,), stands_on)
            if reached + takes > places:
                if not isinstance(node, Work | Skip) or takes != node.times:
                    return []
                over = reached + takes - places
                node, last = _split(node, over)
                rest.insert(0, last)
                takes -= over
            here.append(node)
            reached += takes
        found.append((tuple(here), places))
    return [*found, (tuple(rest), 0)] if rest else found


def _split(node: Work | Skip, over: int) -> tuple[Node, Node]:
    if isinstance(node, Work):
        return Work(node.stitch, node.times - over), Work(node.stitch, over)
    return Skip(node.times - over), Skip(over)


def _parts(nodes: tuple[Node, ...], places: int) -> list[Part]:
    """One stretch: what is picked up evenly, and what takes no place after it."""
    taking = list(nodes)
    after: list[Node] = []
    while taking and not isinstance(taking[-1], Work | Into | Skip):
        after.insert(0, taking.pop())
    spread, stitches = list[int](), set[str]()
    for node in taking:
        match node:
            case Work(stitch, times):
                spread += [1] * times
                stitches.add(stitch)
            case Into((Work(stitch, many),)):
                spread.append(many)
                stitches.add(stitch)
            case Skip(times):
                spread += [0] * times
            case _:
                return [nodes]
    even = even_spread(sum(spread), places) if places else ()
    runs = sum(1 for _ in groupby(spread))
    if len(stitches) != 1 or runs < LEAST_RUNS or tuple(spread) != even:
        return [nodes]
    told: list[Part] = [Evenly(stitches.pop(), sum(spread), places)]
    return [*told, tuple(after)] if after else told
