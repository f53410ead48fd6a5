"""Where the nodes of a body stand: which places each takes, and what those are called."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from frogless.rows.count import consumed
from frogless.rows.nodes import Node, Repeat, Work
from frogless.write.ground import Ground, Noun, one_noun

#: A run of stitches over unlike places is cut into no more pieces than this.
MOST_PIECES = 3


@dataclass(frozen=True, slots=True)
class Spot:
    """A node and the places it takes.

    Args:
        at: the first of them, in the order met.
        takes: how many, all repetitions together.
        nouns: what they are called, in the order met; inside a repeat those of all repetitions.
        inner: of a repeat, what is repeated.
        repeated: it stands inside a repeat.
    """

    node: Node
    at: int
    takes: int
    nouns: tuple[Noun, ...]
    inner: tuple[Spot, ...] = ()
    repeated: bool = False

    @property
    def is_cut(self) -> bool:
        """Whether it is a run over a few stretches of unlike places, each to be told by itself."""
        runs = [noun for noun, _ in groupby(self.nouns)]
        is_run = isinstance(self.node, Work) and self.node.times == self.takes
        return is_run and not self.repeated and 1 < len(runs) <= MOST_PIECES

    def counted_as_stitches(self) -> Spot:
        """The same with every chain space called a stitch."""
        nouns = tuple("st" if noun.startswith("sp") else noun for noun in self.nouns)
        inner = tuple(spot.counted_as_stitches() for spot in self.inner)
        return replace(self, nouns=nouns, inner=inner)


def spots(
    body: Sequence[Node], at: int, ground: Ground, stands_on: Mapping[str, int]
) -> tuple[Spot, ...]:
    """Where each node of a body stands that begins at place `at`; what is worked 0 times is not."""
    found = []
    for node in body:
        if not getattr(node, "times", 1):
            continue
        takes = consumed((node,), stands_on)
        inner = _repeated(node, at, ground, stands_on) if isinstance(node, Repeat) else ()
        found.append(Spot(node, at, takes, ground.of(at, takes), inner))
        at += takes
    return tuple(found)


def needs_note(found: Sequence[Spot]) -> bool:
    """Whether chain spaces are worked over together with stitches, so that neither can be named."""
    for spot in found:
        if spot.inner:
            if needs_note(spot.inner):
                return True
        elif not spot.is_cut and _is_mixed(spot.nouns):
            return True
    return False


def _is_mixed(nouns: Sequence[Noun]) -> bool:
    spaces = any(noun.startswith("sp") for noun in nouns)
    return spaces and one_noun(nouns) in ("place", "st")


def _repeated(
    node: Repeat, at: int, ground: Ground, stands_on: Mapping[str, int]
) -> tuple[Spot, ...]:
    """What a repeat holds, each with the places of all its repetitions."""
    takes = consumed(node.body, stands_on)
    begins = [at + turn * takes for turn in range(node.times)]
    # Turns over the same places are told alike, so that the first of them will do.
    unlike = {ground.of(begin, takes): begin for begin in reversed(begins)}
    turns = [spots(node.body, begin, ground, stands_on) for begin in sorted(unlike.values())]
    return tuple(_merged(each) for each in zip(*turns, strict=True))


def _merged(same: Sequence[Spot]) -> Spot:
    """One node of a repeat in all its repetitions."""
    nouns = tuple(dict.fromkeys(noun for spot in same for noun in spot.nouns))
    inner = tuple(_merged(each) for each in zip(*(spot.inner for spot in same), strict=True))
    return replace(same[0], nouns=nouns, inner=inner, repeated=True)
