"""What a row is worked into, place by place, as far as its words depend on it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import accumulate, groupby

import numpy as np

from frogless.fabric.expand import expand
from frogless.fabric.model import Fabric, Ints
from frogless.fabric.stretches import Stretch, stretch
from frogless.fabric.waiting import NO_PLACES, Waiting, at_next_row, places_of
from frogless.rows.count import left_for_later
from frogless.rows.nodes import (
    ROW_ENDS,
    Base,
    Chain,
    Into,
    Node,
    Piece,
    Program,
    Repeat,
    Row,
    Together,
    Work,
)
from frogless.stitches.model import Stitch
from frogless.write.words import Places, Words

#: What a place is called: "st", "ch", "end" (of a row), "ring", or "sp" and the number of its
#: chains. Of several: "sp" when they are spaces of any size, "place" when they have nothing in
#: common.
Noun = str


KEPT = 64
"""Pieces whose places are remembered: those of one dialect are those of the others."""


@dataclass(frozen=True, slots=True)
class Ground:
    """The places that a row is offered.

    Args:
        nouns: what each is called, in the order met; None when the piece stands on an edge that is
            not at hand.
        noun: what they are called then.
        stretches: how many places each stretch has that a piece is begun on, in the order met.
        older: which of them, in the order met, an earlier row than the one below has left unworked.
    """

    nouns: tuple[Noun, ...] | None
    noun: Noun = "st"
    older: frozenset[int] = frozenset()
    stretches: tuple[int, ...] = ()

    @property
    def places(self) -> int | None:
        """How many there are."""
        return None if self.nouns is None else len(self.nouns)

    def of(self, at: int, taken: int) -> tuple[Noun, ...]:
        """What some of them are called; what goes beyond the last is a stitch."""
        if self.nouns is None:
            return (self.noun,) * taken
        found = self.nouns[at : at + taken]
        return found + ("st",) * (taken - len(found))

    def stretches_from(self, at: int) -> tuple[int, ...]:
        """What is left of each stretch when the first `at` places are taken."""
        ends = accumulate(self.stretches)
        left = zip(ends, self.stretches, strict=True)
        return tuple(min(end - at, count) for end, count in left if end > at)


NOTHING = Ground(())


def grounds(piece: Piece, first: Ground, words: Words) -> tuple[Ground, ...]:
    """What each row of a piece is worked into, the first of them into `first`."""
    return _grounds(piece, first, words.places)


@lru_cache(maxsize=KEPT)
def _grounds(piece: Piece, first: Ground, stitches: Places) -> tuple[Ground, ...]:
    found = list[Ground]()
    made = [_unnumbered(first, piece)]
    waiting: Waiting | None = None
    for index, row in enumerate(piece.rows):
        ground, ahead, behind = first, places_of(0, len(made[0])), NO_PLACES
        if waiting is not None:
            met = at_next_row(waiting, row, piece.rows[index - 1], closed=piece.closed)
            ahead, behind = met.ahead, met.behind
            ground = _ground(ahead, made, index)
        found.append(ground)
        made.append(nouns_of(row, stitches.stitches, closed=piece.closed))
        later = min(left_for_later(row.body), len(ahead))
        here = places_of(index + 1, len(made[-1]))
        waiting = Waiting(np.concatenate((behind, here)), ahead[len(ahead) - later :])
    return tuple(found)


def edge_ground(program: Program, piece: Piece, words: Words) -> Ground:
    """What the edges offer that a piece is begun on, in the order in which its first row meets them.

    Raises:
        InputError: an edge of a piece that is not before it, or that has no such row.
    """
    if not piece.bases:
        return NOTHING
    return edges_met(program, piece, expand(program, words.stitches), words)


def edges_met(program: Program, piece: Piece, fabric: Fabric, words: Words) -> Ground:
    """The same, of a program that is expanded already."""
    nouns = [
        stretch_nouns(program, base, stretch(base, fabric.pieces), words) for base in piece.bases
    ]
    first = fabric.pieces[piece.name][0]
    of_base, number = first.from_row[first.order], first.from_place[first.order]
    return Ground(
        tuple(nouns[-1 - b][p] for b, p in zip(of_base.tolist(), number.tolist(), strict=True)),
        stretches=tuple(len(list(run)) for _, run in groupby(of_base.tolist())),
    )


def stretch_nouns(program: Program, base: Base, found: Stretch, words: Words) -> tuple[Noun, ...]:
    """What each place of a stretch is called; the underside of a chain is that of chains."""
    if base.edge in ROW_ENDS:
        return ("end",) * found.size
    piece = program.piece(base.piece)
    rows: dict[int, tuple[Noun, ...]] = {}
    named: list[Noun] = []
    for row, place in zip(found.rows.tolist(), found.places.tolist(), strict=True):
        if row not in rows:
            rows[row] = _side_nouns(piece.rows[row], found, words, closed=piece.closed)
        named.append(rows[row][place])
    return tuple(named)


def nouns_of(row: Row, stitches: Mapping[str, Stitch], *, closed: bool) -> tuple[Noun, ...]:
    """What each place is called that a row makes.

    The chains of a foundation are chains; those that bridge a gap are said to count as stitches.
    """
    if is_ring(row, stitches, closed=closed):
        return ("ring",)
    chains_alone = bool(row.body) and all(isinstance(node, Chain) for node in row.body)
    return (*_stands_in(row), *_made(row.body, stitches, "ch" if chains_alone else "st"))


def is_ring(row: Row, stitches: Mapping[str, Stitch], *, closed: bool) -> bool:
    """Whether a row is a ring that is one place: an adjustable one, or chains closed to one."""
    match row.body:
        case (Work(stitch, 1),) if row.number == 0:
            return is_ring_stitch(stitches[stitch])
        case (Chain(_, False),) if row.number == 0:
            return closed and row.end.join != "none"
    return False


def is_ring_stitch(stitch: Stitch) -> bool:
    """Whether a foundation is a ring: it begins on no chains."""
    return stitch.kind == "foundation" and not stitch.begins_on


def one_noun(nouns: Iterable[Noun]) -> Noun:
    """What several places are called together."""
    kinds = set(nouns)
    if len(kinds) < 2:
        return kinds.pop() if kinds else "st"
    if all(kind.startswith("sp") for kind in kinds):
        return "sp"
    return "st" if kinds == {"st", "ch"} else "place"


def say_place(noun: Noun, n: int, words: Words) -> str:
    """A place, or `n` of them: "st", "row ends", "ch-2 sp"."""
    size = noun.removeprefix("sp") if noun.startswith("sp") else ""
    name = "place_sized" if size else f"place_{noun}"
    return words.phrases.count(name, n, chain=words.chain, size=size)


def _unnumbered(first: Ground, piece: Piece) -> tuple[Noun, ...]:
    """The first row's places; of an unknown edge, those that the row leaves for later."""
    if first.nouns is not None:
        return first.nouns
    return (first.noun,) * sum(left_for_later(row.body) for row in piece.rows[:1])


def _ground(ahead: Ints, made: Sequence[tuple[Noun, ...]], below: int) -> Ground:
    rows, places = ahead[:, 0], ahead[:, 1].tolist()
    if (rows == below).all():
        return Ground(tuple(map(made[below].__getitem__, places)))
    return Ground(
        tuple(made[row][place] for row, place in zip(rows.tolist(), places, strict=True)),
        older=frozenset(np.flatnonzero(rows != below).tolist()),
    )


def _side_nouns(row: Row, found: Stretch, words: Words, *, closed: bool) -> tuple[Noun, ...]:
    if found.part != "underside" or is_ring(row, words.stitches, closed=closed):
        return nouns_of(row, words.stitches, closed=closed)
    return (*_stands_in(row), *_made(row.body, words.stitches, "ch"))


def _stands_in(row: Row) -> tuple[Noun, ...]:
    return ("st",) if row.start.counts and row.start.chains else ()


def _made(body: Iterable[Node], stitches: Mapping[str, Stitch], chain: Noun) -> list[Noun]:
    made: list[Noun] = []
    for node in body:
        match node:
            case Work(stitch, times):
                made += ("st",) * (times * stitches[stitch].leaves)
            case Together(stitch, _):
                made += ("st",) * stitches[stitch].leaves
            case Chain(times, each) if times:
                made += (chain,) * times if each else (f"sp{times}",)
            case Into(inner):
                made += _made(inner, stitches, chain)
            case Repeat(inner, times):
                made += _made(inner, stitches, chain) * times
    return made
